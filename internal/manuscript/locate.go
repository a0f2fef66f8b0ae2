package manuscript

import (
	"strings"

	"github.com/BurntSushi/toml"

	"foundrow/internal/source"
)

// A locator walks over TOML that package toml has accepted and notes where everything stands. It decides nothing: on a text that
// was not accepted it stops early, and it never fails.
type locator struct {
	text string
	base int // offset of text in the file
	at   int
	into *node // the table that keys go to
	root *node
	keys []keyPart // the key read last
}

// locate returns the tree of a text that begins at an offset of a file.
func locate(text string, base int) *node {
	l := newLocator(text, base)
	for l.statement() {
	}
	return l.root
}

func newLocator(text string, base int) *locator {
	root := &node{kind: isTable, span: source.At(base)}
	return &locator{text: text, base: base, root: root, into: root}
}

// statementAt returns where the statement begins that an offset of the text lies in or on the line of. Where there is none, in a
// comment, it is the line. The text need be good TOML only up to there.
func statementAt(text string, offset int) int {
	l := newLocator(text, 0)
	start := 0
	for {
		l.blank()
		if l.at > offset || l.at >= len(text) {
			break
		}
		if start = l.at; !l.statement() || l.at > offset {
			return start
		}
	}
	if line := strings.LastIndexByte(text[:offset], '\n') + 1; line > start {
		return line
	}
	return start
}

// statement reads a header or a key with its value, and reports whether there was one.
func (l *locator) statement() bool {
	l.blank()
	switch l.peek() {
	case 0:
		return false
	case '[':
		return l.header()
	}
	return l.pair(l.into)
}

// header reads [a.b] or [[a.b]] and turns to that table.
func (l *locator) header() bool {
	from := l.at
	double := strings.HasPrefix(l.text[l.at:], "[[")
	l.at++
	if double {
		l.at++
	}
	path := l.path()
	if len(path) == 0 || l.peek() != ']' {
		return false
	}
	l.at++
	if double && l.peek() == ']' {
		l.at++
	}
	t := l.root
	for _, part := range path[:len(path)-1] {
		t = t.child(part)
	}
	end := path[len(path)-1]
	span := source.Span{From: l.base + from, To: l.base + l.at}
	if double {
		list := t.entry(end.name)
		if list == nil {
			list = t.add(end.name, end.span)
			list.span = span
		}
		list.items = append(list.items, &node{kind: isTable, name: end.name, key: end.span, span: span})
	} else {
		table := t.child(end)
		table.key, table.span = end.span, span
	}
	l.into = t.entry(end.name).last()
	return true
}

// pair reads a key, dotted or not, and its value into a table.
func (l *locator) pair(t *node) bool {
	path := l.path()
	if len(path) == 0 || l.peek() != '=' {
		return false
	}
	l.at++
	l.spaces()
	for _, part := range path[:len(path)-1] {
		t = t.child(part)
	}
	end := path[len(path)-1]
	return l.value(t.add(end.name, end.span))
}

// A keyPart is one name of a dotted key.
type keyPart struct {
	name string
	span source.Span
}

// path reads a dotted key and the spaces after it. What it returns holds until the next key is read.
func (l *locator) path() []keyPart {
	l.keys = l.keys[:0]
	for {
		l.spaces()
		from := l.at
		var name string
		switch c := l.peek(); {
		case c == '"' || c == '\'':
			n := node{}
			if !l.quoted(&n) {
				return nil
			}
			name = l.text[n.text.From-l.base : n.text.To-l.base]
			if n.escapes {
				name = unescaped(l.text[from:l.at])
			}
		default:
			for l.at < len(l.text) && isBare(l.text[l.at]) {
				l.at++
			}
			name = l.text[from:l.at]
		}
		if l.at == from {
			return nil
		}
		l.keys = append(l.keys, keyPart{name, source.Span{From: l.base + from, To: l.base + l.at}})
		l.spaces()
		if l.peek() != '.' {
			return l.keys
		}
		l.at++
	}
}

func isBare(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '_' || c == '-'
}

// unescaped returns what a quoted key with escapes says; package toml knows the escapes.
func unescaped(quoted string) string {
	var doc struct{ K string }
	if _, err := toml.Decode("K = "+quoted, &doc); err != nil {
		return quoted
	}
	return doc.K
}

// value reads any value into a node.
func (l *locator) value(n *node) bool {
	from := l.at
	ok := true
	switch l.peek() {
	case '"', '\'':
		ok = l.quoted(n)
	case '[':
		ok = l.list(n)
	case '{':
		ok = l.inlineTable(n)
	default:
		for l.at < len(l.text) && strings.IndexByte(",]}#\n\r", l.text[l.at]) < 0 {
			l.at++
		}
		l.at = from + len(strings.TrimRight(l.text[from:l.at], " \t"))
		ok = l.at > from
	}
	n.span = source.Span{From: l.base + from, To: l.base + l.at}
	return ok
}

func (l *locator) list(n *node) bool {
	n.inline = true
	l.at++
	for {
		l.blank()
		switch l.peek() {
		case ']':
			l.at++
			return true
		case ',':
			l.at++
			continue
		}
		item := &node{name: n.name, key: n.key}
		if !l.value(item) {
			return false
		}
		n.items = append(n.items, item)
	}
}

func (l *locator) inlineTable(n *node) bool {
	n.inline = true
	l.at++
	for {
		l.blank()
		switch l.peek() {
		case '}':
			l.at++
			return true
		case ',':
			l.at++
			continue
		}
		if !l.pair(n) {
			return false
		}
	}
}

// quoted reads a string of any of the four kinds.
func (l *locator) quoted(n *node) bool {
	quote := l.text[l.at]
	marks := 1
	if strings.HasPrefix(l.text[l.at:], strings.Repeat(string(quote), 3)) {
		marks = 3
	}
	l.at += marks
	from := l.at
	if marks == 3 {
		from += len(l.text[from:]) - len(strings.TrimPrefix(strings.TrimPrefix(l.text[from:], "\r"), "\n"))
	}
	for ; l.at < len(l.text); l.at++ {
		switch c := l.text[l.at]; {
		case c == '\\' && quote == '"':
			n.escapes = true
			l.at++
		case c == '\n' && marks == 1:
			return false
		case c == quote && marks == 1:
			n.text = source.Span{From: l.base + from, To: l.base + l.at}
			l.at++
			return true
		case c == quote && strings.HasPrefix(l.text[l.at:], strings.Repeat(string(quote), 3)):
			// Up to two quotes may stand before the three that close.
			end := l.at
			for end-l.at < 2 && strings.HasPrefix(l.text[end+1:], strings.Repeat(string(quote), 3)) {
				end++
			}
			n.text = source.Span{From: l.base + from, To: l.base + end}
			l.at = end + 3
			return true
		}
	}
	l.at = len(l.text) // a backslash at the very end went one too far
	return false
}

// peek returns the byte at hand, 0 at the end.
func (l *locator) peek() byte {
	if l.at < len(l.text) {
		return l.text[l.at]
	}
	return 0
}

func (l *locator) spaces() {
	for l.at < len(l.text) && (l.text[l.at] == ' ' || l.text[l.at] == '\t') {
		l.at++
	}
}

// blank skips spaces, line ends and comments.
func (l *locator) blank() {
	for l.at < len(l.text) {
		switch l.text[l.at] {
		case ' ', '\t', '\n', '\r':
			l.at++
		case '#':
			for l.at < len(l.text) && l.text[l.at] != '\n' {
				l.at++
			}
		default:
			return
		}
	}
}
