package manuscript

import (
	"strings"
	"testing"

	"foundrow/internal/pattern"
)

func TestCheckText(t *testing.T) {
	for _, c := range []struct {
		name, data, text string
		rule             string
		line, column     int
		words            string
	}{
		{name: "plain", data: "a\r\nb\n", text: "a\r\nb\n"},
		{name: "byte order mark", data: "\ufeffa", text: "a"},
		{name: "replacement character", data: "a \ufffd", text: "a \ufffd"},
		{name: "Latin-1", data: "one\nbl\xfcten", text: "one\nbl?ten", rule: "not-utf8", line: 2, column: 3, words: "in the older Latin-1 this byte is ü"},
		{name: "several", data: "\x80\xff", text: "??", rule: "not-utf8", line: 1, column: 1, words: "the byte 80 here is not UTF-8 text, and 1 more"},
		{name: "after characters of several bytes", data: "é\xe9", text: "é?", rule: "not-utf8", line: 1, column: 2, words: "byte E9"},
		{name: "byte 0", data: "a\x00b", text: "a?b", rule: "not-utf8", line: 1, column: 2, words: "a byte 0"},
		{name: "UTF-16", data: "\xff\xfea\x00", text: "", rule: "not-utf8", line: 1, column: 1, words: "UTF-16"},
		{name: "50 MB", data: strings.Repeat("a line of text\n", 50<<20/15), text: "", rule: "file-too-large", line: 1, column: 1, words: "larger than 8 MB"},
	} {
		t.Run(c.name, func(t *testing.T) {
			f, fs := CheckText("a.md", []byte(c.data))
			if f.Text != c.text {
				t.Errorf("the text is %q", f.Text)
			}
			if c.rule == "" {
				must(t, fs)
				return
			}
			if len(fs) != 1 || fs[0].Rule != c.rule || fs[0].Place.Line != c.line || fs[0].Place.Column != c.column || !strings.Contains(fs[0].Message+fs[0].Fix, c.words) {
				t.Errorf("found is %v", fs)
			}
			for _, f := range fs {
				checkWording(t, f)
			}
		})
	}
}

// A text that nests as deep as a text can is read or refused, and nothing runs out of stack.
func TestHostileTexts(t *testing.T) {
	head := "```toml\ntitle = \"a\"\nkind = \"hat\"\nterms = \"us\"\n```\n"
	for name, text := range map[string]string{
		"quotes":                        head + strings.Repeat(">", 1<<20),
		"quotes in a line that is read": head + strings.Repeat("> 1. ", deepest/2),
		"lists":                         head + strings.Repeat("- ", 1<<14),
		"emphasis":                      head + strings.Repeat("*a **b ", 1<<12),
		"brackets":                      head + strings.Repeat("[", 1<<14),
		"toml":                          "```toml\na = " + strings.Repeat("[", 200<<10) + "\n```\n",
		"large":                         "```toml\n" + strings.Repeat("a = 1\n", 1<<16) + "```\n",
		"slips":                         "```toml\n" + strings.Repeat("a\n", 1<<10) + "```\n",
		"braces":                        head + strings.Repeat("{", 1<<14),
	} {
		t.Run(name, func(t *testing.T) {
			f, _ := CheckText("pattern.md", []byte(text))
			_, fs := ReadPattern(f, "a", pattern.Studio{}, Published())
			if len(fs) == 0 && (name == "quotes" || name == "lists" || name == "toml" || name == "large" || name == "slips") {
				t.Error("nothing was found")
			}
		})
	}
}
