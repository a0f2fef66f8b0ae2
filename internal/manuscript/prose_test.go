package manuscript

import (
	"strings"
	"testing"

	"golang.org/x/tools/txtar"

	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// readProse reads a text and writes it as dump does.
func readProse(t *testing.T, name, text string) (string, source.Findings) {
	t.Helper()
	f := source.NewFile(name, text)
	p := &pattern.Pattern{File: f}
	fs := readText(f, 0, p)
	return dump(p.Text, func(i int) string {
		s := p.Slots[i]
		return "<" + s.Formula.Text + [...]string{"", "th", " times", " "}[s.Form] + s.Noun + ">"
	}), fs
}

func TestProse(t *testing.T) {
	archive, err := txtar.ParseFile("testdata/prose.txtar")
	if err != nil {
		t.Fatal(err)
	}
	for i := 0; i+1 < len(archive.Files); i += 2 {
		in, want := archive.Files[i], archive.Files[i+1]
		t.Run(strings.TrimSuffix(in.Name, ".md"), func(t *testing.T) {
			for _, ends := range []string{"\n", "\r\n"} {
				got, fs := readProse(t, in.Name, strings.ReplaceAll(string(in.Data), "\n", ends))
				must(t, fs)
				if got != string(want.Data) {
					t.Errorf("with %q, read is\n%s\nnot\n%s", ends, got, want.Data)
				}
			}
		})
	}
}

// Whatever cannot be carried is kept as words or has a finding: nothing a designer wrote disappears.
func TestNoWordIsLost(t *testing.T) {
	for _, text := range []string{
		"<div>\nkeptword\n</div>\n", "a <b>keptword</b>\n", "[keptword]: https://a.example\n", "[a](b 'keptword')\n",
		"| a |\n|---|\n| b | keptword |\n", "![keptword](a.jpg)\n", "> > > keptword\n", "<!-- keptword -->\n", "~~keptword~~\n", "- - - keptword\n",
		"```keptword\n```\n", "# keptword #\n", "keptword\n===\n", "[^1]: keptword\n", "{keptword\n", "`` keptword ``\n", "<keptword>\n", "a\n: keptword\n",
	} {
		got, fs := readProse(t, "text.md", text)
		if !strings.Contains(got, "keptword") && len(fs) == 0 {
			t.Errorf("%q became %q, without a finding", text, got)
		}
	}
}

// Places hold in headings, tables, links, emphasis, quotes and lists, with tabs and with characters of several bytes before them.
func TestSlotPlaces(t *testing.T) {
	text := "# Ä {front}\n\n| é | b |\n|---|---|\n| {front} | {max(front, 1)} |\n\n> *ü {front}* [ß {front}](a)\n\n1.\t{front}\n\n\t- {front}\n\n```rows a\nRow {front}: é {front}\n```\n"
	f := source.NewFile("text.md", text)
	p := &pattern.Pattern{File: f}
	must(t, readText(f, 0, p))
	if len(p.Slots) != 9 {
		t.Errorf("%d slots", len(p.Slots))
	}
	for _, s := range p.Slots {
		if got := f.Slice(s.Span); got != "{"+s.Formula.Text+"}" || !strings.Contains(got, "front") {
			t.Errorf("a slot stands at %q", got)
		}
	}
}
