package manuscript

import (
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/BurntSushi/toml"

	"foundrow/internal/source"
)

// A mender reports the mistakes of a TOML text one after the other. It takes each out without moving anything else, so that one
// slip of the pen does not hide all that stands below it.
type mender struct {
	file   *source.File
	base   int // offset of text in the file
	text   string
	broken []int // offsets of keys whose value was taken out
	whole  bool  // no name was lost with what was taken out
	times  int
	fs     source.Findings
}

// mostMended is how many mistakes of one text are reported: a text with more is not TOML.
const mostMended = 20

// mend reports a mistake and takes it out. It returns false when it knows no way on.
func (m *mender) mend(problem toml.ParseError) bool {
	if m.times++; m.times > mostMended {
		return false
	}
	at := min(max(problem.Position.Start, 0), len(m.text))
	from := statementAt(m.text, at)
	if from >= len(m.text) {
		return false
	}
	s := slip{text: m.text, from: from, at: at, width: problem.Position.Len, library: problem.Message}
	s.to = statementEnd(m.text, from)
	found := s.explain()
	m.fs.Report(m.file, found.span.Shift(m.base), found.rule, found.message, found.fix)

	to := s.to
	if m.text[from] == '[' {
		// Whatever stands below a header that cannot be read belongs to it.
		to = nextHeader(m.text, to)
		m.whole = false
	}
	before := m.text
	m.text = m.cut(from, to, found.rule == "key-twice")
	return m.text != before
}

// cut blanks a statement. Where there is room its key stays, with an empty value that is marked as broken: nothing will be
// said of a name that is missing.
func (m *mender) cut(from, to int, twice bool) string {
	const empty = `""`
	key, equals, hasKey := keyOf(m.text[from:to])
	value := from + equals + 1
	for value < to && m.text[value] == ' ' && value+len(empty) < to {
		value++
	}
	written := m.base + from + key
	if twice || !hasKey || slices.Contains(m.broken, written) || value+len(empty) > to || strings.ContainsAny(m.text[value:value+len(empty)], "\r\n") {
		m.whole = m.whole && twice
		return m.text[:from] + blanked(m.text[from:to]) + m.text[to:]
	}
	m.broken = append(m.broken, written)
	return m.text[:value] + empty + blanked(m.text[value+len(empty):to]) + m.text[to:]
}

// mark says of the nodes whose values were taken out that they are broken.
func (m *mender) mark(n *node) {
	if len(m.broken) == 0 {
		return
	}
	for _, e := range n.entries {
		if slices.Contains(m.broken, e.key.From) {
			e.broken = true
		}
		m.mark(e)
	}
}

// onceEach takes out a key that stands twice in one table. Package toml lets one pass where a dotted key made a table of the name
// before, and keeps only the second.
func (m *mender) onceEach(n *node) {
	kept := n.entries[:0]
	for _, e := range n.entries {
		first := (&node{entries: kept}).entry(e.name)
		if first == nil {
			kept = append(kept, e)
			m.onceEach(e)
			continue
		}
		first.broken, m.whole = true, false
		m.fs.Report(m.file, e.key, "key-twice", "`"+e.name+"` is written twice, or once as a value and once as a table", "keep one of them")
	}
	n.entries = kept
	for _, item := range n.items {
		m.onceEach(item)
	}
}

// keyOf finds the last part of the key of a statement and its equals sign.
func keyOf(statement string) (key, equals int, ok bool) {
	l := newLocator(statement, 0)
	path := l.path()
	if len(path) == 0 || l.peek() != '=' {
		return 0, 0, false
	}
	return path[len(path)-1].span.From, l.at, true
}

// blanked replaces everything but line ends by spaces.
func blanked(s string) string {
	out := []byte(s)
	for i, c := range out {
		if c != '\n' && (c != '\r' || i+1 < len(out) && out[i+1] != '\n') {
			out[i] = ' '
		}
	}
	return string(out)
}

// statementEnd returns where the lines of a statement that cannot be read end: with its first, or where a bracket or three quotes
// open a value of several lines, before the next line that begins like a statement.
func statementEnd(text string, from int) int {
	to := lineEnd(text, from)
	_, equals, _ := keyOf(text[from:to])
	value := strings.TrimLeft(text[from+equals:to], "= \t")
	if equals == 0 || value == "" || strings.IndexByte("[{", value[0]) < 0 && !strings.HasPrefix(value, `"""`) && !strings.HasPrefix(value, "'''") {
		return to
	}
	for to < len(text) && !beginsStatement(text[to:]) {
		to = lineEnd(text, to)
	}
	return to
}

// nextHeader returns where the next [header] begins.
func nextHeader(text string, from int) int {
	for ; from < len(text); from = lineEnd(text, from) {
		if strings.HasPrefix(strings.TrimLeft(text[from:], " \t"), "[") {
			return from
		}
	}
	return len(text)
}

// lineEnd returns the offset after the line end that follows.
func lineEnd(text string, from int) int {
	if i := strings.IndexByte(text[from:], '\n'); i >= 0 {
		return from + i + 1
	}
	return len(text)
}

// beginsStatement reports whether a line looks like a comment, a header, or a key with its equals sign.
func beginsStatement(rest string) bool {
	line, _, _ := strings.Cut(rest, "\n")
	line = strings.TrimSpace(line)
	if line == "" {
		return false
	}
	if line[0] == '[' || line[0] == '#' {
		return true
	}
	_, _, ok := keyOf(line)
	return ok
}

// A slip is a statement that package toml refused, and the place where it did.
type slip struct {
	text     string
	from, to int // the statement and the lines that belong to it
	at       int // where the library stumbled
	width    int
	library  string // what it said
}

// An explanation is a slip in our own words.
type explanation struct {
	span               source.Span
	rule, message, fix string
}

// explain says what is wrong with a statement. The library's sentence tells only which kind of mistake it is.
func (s slip) explain() explanation {
	line := strings.TrimRight(s.text[s.from:min(lineEnd(s.text, s.from), len(s.text))], " \t\r\n")
	whole := source.Span{From: s.from, To: s.from + len(line)}
	here := source.Span{From: s.at, To: min(s.at+max(s.width, 1), len(s.text))}
	key, equals, hasKey := keyOf(line)
	name, value := line, ""
	if hasKey {
		name, value = strings.TrimSpace(line[key:equals]), strings.TrimSpace(line[equals+1:])
	}
	valueSpan := source.Span{From: s.from + len(line) - len(value), To: s.from + len(line)}
	said := func(words ...string) bool {
		return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(s.library, w) })
	}
	switch {
	case line == "" || said("control characters"):
		return explanation{here, "toml-syntax", "a character that cannot be seen stands here", "delete it and write the line anew"}
	case said("already been defined", "already created"):
		if line[0] != '[' {
			return explanation{whole, "key-twice", "`" + name + "` is written twice, or once as a value and once as a table", `keep one of them; in [sample] a count and a piece of one name are told apart by quotes: "hem.rows" = 12`}
		}
		return explanation{whole, "key-twice", "the table " + line + " is opened twice", "write its lines below the first one, or give it a name of its own"}
	case said("strings cannot contain newlines", `expected '"'`, `expected "'"`):
		return explanation{valueSpan, "toml-syntax", "the quotes that open here are not closed on the same line", "close them: " + name + ` = "` + strings.Trim(value, `"'`) + `"`}
	case said(`expected '"""'`, `expected "'''"`):
		return explanation{valueSpan, "toml-syntax", "the three quotes that open here are never closed", "close them with three more"}
	case line[0] == '[' && !hasKey:
		return explanation{whole, "toml-syntax", "the table name " + line + " cannot be read", "write it in square brackets, words joined by underscores: [gauge.rib]"}
	case !hasKey:
		return s.explainKey(line, whole)
	case value == "" || value[0] == '#':
		return explanation{whole, "toml-syntax", "`" + name + "` has no value", "write one after the equals sign, or leave the line out"}
	case startsCurly(value):
		return explanation{valueSpan, "toml-syntax", "`" + name + "` stands in curly quotes", "write straight ones: " + name + ` = "` + strings.Trim(value, "“”„‘’\" ") + `"`}
	case said("invalid datetime"):
		return explanation{here, "toml-syntax", "`" + s.text[here.From:here.To] + "` is no day of the calendar", "write year, month and day: 2026-04-02"}
	case said("invalid escape", "hexadecimal digits", "Escaped character"):
		return explanation{here, "toml-syntax", "in double quotes a backslash begins an escape, and `" + s.text[here.From:here.To] + "` is none", "write the backslash twice, or use single quotes: '…'"}
	case said("out of range"):
		return explanation{here, "toml-syntax", "`" + value + "` is too large a number", "nothing in crochet has as many; look for a digit too many"}
	case said("comma", "array terminator", "table terminator"):
		return explanation{here, "toml-syntax", "a comma or a closing bracket is missing before this", "see that every [ and { of `" + name + "` is closed"}
	case value[0] == '"' || value[0] == '\'':
		return explanation{here, "toml-syntax", "something follows after the closing quotes of `" + name + "`", `where a value has quotes in it, write single ones around it: '4" wide'`}
	}
	return explanation{valueSpan, "toml-syntax", "the value of `" + name + "` stands without quotes", "write " + name + ` = "` + withoutComment(value) + `"`}
}

// explainKey says what is wrong with a line that has no key and equals sign.
func (s slip) explainKey(line string, whole source.Span) explanation {
	before, after, equals := strings.Cut(line, "=")
	before, after = strings.TrimSpace(before), strings.TrimSpace(after)
	if name, value, colon := strings.Cut(line, ":"); colon && !equals && isName(strings.TrimSpace(name)) {
		return explanation{whole, "toml-syntax", "`" + strings.TrimSpace(name) + "` is followed by a colon", "write an equals sign: " + strings.TrimSpace(name) + " = " + quotedIfWords(strings.TrimSpace(value))}
	}
	switch {
	case !equals:
		return explanation{whole, "toml-syntax", "this line has no equals sign", `write a name, an equals sign and a value: title = "…"; a comment begins with #`}
	case before == "":
		return explanation{whole, "toml-syntax", "there is no name before the equals sign", "write one: front = " + after}
	case isName(underscored(before)):
		return explanation{whole, "bad-name", "`" + before + "` is not one word", "join its words by underscores: " + underscored(before) + " = " + after}
	}
	return explanation{whole, "bad-name", "`" + before + "` cannot stand before an equals sign as it is", `write it with letters a to z, digits and underscores, or in quotes: "` + strings.ReplaceAll(before, `"`, "") + `" = ` + after}
}

func quotedIfWords(value string) string {
	if value == "" || value[0] == '"' || value[0] >= '0' && value[0] <= '9' {
		return value
	}
	return `"` + value + `"`
}

func startsCurly(s string) bool {
	r, _ := utf8.DecodeRuneInString(s)
	return strings.ContainsRune("“”„‘’", r)
}

func withoutComment(value string) string {
	value, _, _ = strings.Cut(value, "#")
	return strings.TrimSpace(value)
}
