package manuscript

import (
	"errors"
	"strings"
	"time"
	"unicode/utf8"

	"github.com/BurntSushi/toml"

	"foundrow/internal/source"
)

// kinds is a set of the kinds of values that TOML has.
type kinds uint8

const (
	isText kinds = 1 << iota
	isWhole
	isDecimal
	isTruth
	isDate
	isList
	isTable
)

// kindWords are in the order of the bits.
var kindWords = [...]string{"words in quotes", "a whole number", "a number", "true or false", "a date", "a list in [ ]", "a table"}

// String says what a value of the kinds is: "words in quotes or a whole number".
func (k kinds) String() string {
	if k&isDecimal != 0 {
		k &^= isWhole
	}
	var words []string
	for i, w := range kindWords {
		if k&(1<<i) != 0 {
			words = append(words, w)
		}
	}
	return source.List(words, "or")
}

// widestTOML bounds the front matter, and with it how deep package toml may have to go: the largest in sight has 4 KB.
const widestTOML = 256 << 10

// readTOML reads part of a file as TOML. Where it has mistakes each is reported, the line of it left out and the rest read; whole
// is false when names may have been lost that way.
func readTOML(f *source.File, span source.Span) (root *node, whole bool, fs source.Findings) {
	text := f.Slice(span)
	if len(text) > widestTOML {
		fs.Report(f, source.At(span.From), "file-too-large", "this TOML is larger than 256 KB", "keep the text of the pattern outside of the block")
		return &node{kind: isTable, span: source.At(span.From)}, false, fs
	}
	m := mender{file: f, base: span.From, text: text, whole: true}
	for {
		var values map[string]any
		_, err := toml.Decode(m.text, &values)
		if err == nil {
			root = locate(m.text, span.From)
			m.onceEach(root)
			fill(root, values)
			m.mark(root)
			return root, m.whole, m.fs
		}
		var problem toml.ParseError
		if !errors.As(err, &problem) || !m.mend(problem) {
			m.fs.Report(f, source.At(span.From), "toml-syntax", "this TOML cannot be read", "compare it with an example of the handbook")
			return &node{kind: isTable, span: source.At(span.From)}, false, m.fs
		}
	}
}

// fill gives the nodes the kinds and words that package toml decoded.
func fill(n *node, value any) {
	switch v := value.(type) {
	case string:
		n.kind, n.words = isText, strings.ReplaceAll(v, "\r\n", "\n")
	case int64:
		n.kind = isWhole
	case float64:
		n.kind = isDecimal
	case bool:
		n.kind = isTruth
	case time.Time:
		n.kind = isDate
	case []any:
		n.kind = isList
		for i, item := range n.items {
			if i < len(v) {
				fill(item, v[i])
			}
		}
	case []map[string]any:
		n.kind = isList
		for i, item := range n.items {
			if i < len(v) {
				fill(item, v[i])
			}
		}
	case map[string]any:
		n.kind = isTable
		for _, e := range n.entries {
			fill(e, v[e.name])
		}
	}
}

// level returns the text of a string with every escape replaced by what it stands for, filled up with spaces to the width it was
// written in: what is then found in it is found at its place in the file. Spaces mean nothing to those who read it.
func level(raw string) string {
	if strings.IndexByte(raw, '\\') < 0 {
		return raw
	}
	out := make([]byte, 0, len(raw))
	for i := 0; i < len(raw); {
		if raw[i] != '\\' || i+1 == len(raw) {
			out = append(out, raw[i])
			i++
			continue
		}
		r, width := ' ', 2
		switch c := raw[i+1]; c {
		case '"', '\\':
			r = rune(c)
		case 'x':
			r, width = hex(raw[i+2:], 2)
		case 'u':
			r, width = hex(raw[i+2:], 4)
		case 'U':
			r, width = hex(raw[i+2:], 8)
		}
		width = min(width, len(raw)-i)
		for range width - utf8.RuneLen(r) {
			out = append(out, ' ')
		}
		out = utf8.AppendRune(out, r)
		i += width
	}
	return string(out)
}

// hex reads the digits of an escape and returns the character with the width of the whole escape.
func hex(s string, digits int) (rune, int) {
	var r rune
	for i := 0; i < digits && i < len(s); i++ {
		r = r<<4 | rune(strings.IndexByte("0123456789abcdef", s[i]|0x20)&15)
	}
	if !utf8.ValidRune(r) || r < ' ' {
		r = ' '
	}
	return r, digits + 2
}
