package manuscript

import (
	"strings"
	"testing"

	"github.com/BurntSushi/toml"

	"foundrow/internal/source"
)

// Everything that can be written, to be found again at its place: each line is one key with its value, after the headers.
var tomlTexts = []string{
	"",
	"a = 1",
	"a.b.c = 1\na.b.d = 2\na.\"e f\" = 3\n'g.h' . i = 4\n",
	"[a]\nb = 1\n[a.c]\nd = 2\n[a . \"e.f\"]\ng = 3\n",
	"[a.b]\nc = 1\n[a]\nd = 2\n",
	"[[a]]\nb = 1\n[[a]]\nb = 2\n[a.c]\nd = 3\n[[a.e]]\nf = 4\n[[a.e]]\nf = 5\n",
	"a = { b = 1, c.d = \"x, }\", e = { f = [1, 2] } }\nz = 1\n",
	"a = [ 1, # one ]\n  \"two ]\", [3, { b = 4 }],\n]\nz = 1\n",
	"a = \"#\\\"'=\" # c\nb = '#\"\\'\nc = \"\"\"\nx \"\" y\\\n  z\"\"\"\"\nd = '''\n'a''''\ne = \"\"\"\"\"\"\nf = ''\ng = \"\"\n",
	"a = true\nb = 2026-04-02\nc = 2026-04-02 10:00:00\nd = -1.5e3\ne = 0xff\nf = inf\n",
	"\"\\u00e4\" = 1\n\"\" = 2\n\"a\\\"b\" = 3\n",
	"a = 1\r\n[b]\r\nc = \"\"\"\r\nx\r\n\"\"\"\r\n\td\t=\t2\r\n",
	"a = {\n  b = 1, # one\n  c = 2,\n}\n",
	"# only\n   # comments\n",
	"a = \"é\"\nb = 'ü'\nc = 3",
	"a.b.c = 1\na.b = 1\na.b.d = 2\n",
}

func TestLocate(t *testing.T) {
	for _, text := range tomlTexts {
		checkLocated(t, text)
	}
}

// checkLocated compares the tree of a text that package toml accepts with what that decodes: the same keys, and at every place
// what stands there.
func checkLocated(t *testing.T, text string) {
	t.Helper()
	var values map[string]any
	if _, err := toml.Decode(text, &values); err != nil {
		return
	}
	const before = "some lines\nbefore\n"
	root := locate(text, len(before))
	m := mender{file: source.NewFile("a.toml", before+text)}
	if m.onceEach(root); len(m.fs) > 0 {
		return // what package toml keeps of two is not what stands first
	}
	fill(root, values)
	checkNode(t, before+text, root, values)
}

func checkNode(t *testing.T, file string, n *node, value any) {
	t.Helper()
	if n.span.From < 0 || n.span.To > len(file) || n.span.From > n.span.To || n.text.To > len(file) || n.text.From > n.text.To {
		t.Fatalf("%q: %v and %v are outside of %q", n.name, n.span, n.text, file)
	}
	switch v := value.(type) {
	case map[string]any:
		if len(n.entries) != len(v) {
			t.Fatalf("%q has %d entries, not %d, in %q", n.name, len(n.entries), len(v), file)
		}
		for _, e := range n.entries {
			inner, ok := v[e.name]
			if !ok {
				t.Fatalf("there is no %q in %q", e.name, file)
			}
			key := file[e.key.From:e.key.To]
			if !strings.Contains(key, `\`) && key != e.name && key != `"`+e.name+`"` && key != "'"+e.name+"'" {
				t.Fatalf("the key of %q stands at %q in %q", e.name, key, file)
			}
			checkNode(t, file, e, inner)
		}
	case []map[string]any:
		for i, item := range n.items {
			checkNode(t, file, item, v[i])
		}
	case []any:
		if len(n.items) != len(v) {
			t.Fatalf("%q has %d items, not %d, in %q", n.name, len(n.items), len(v), file)
		}
		for i, item := range n.items {
			checkNode(t, file, item, v[i])
		}
	case string:
		raw := file[n.text.From:n.text.To]
		if !n.escapes && raw != v {
			t.Fatalf("%q says %q, and stands at %q in %q", n.name, v, raw, file)
		}
		if len(level(raw)) != len(raw) {
			t.Fatalf("%q is not as wide as %q", level(raw), raw)
		}
	default:
		if n.kind == 0 || n.span.From == n.span.To {
			t.Fatalf("%q stands nowhere in %q", n.name, file)
		}
	}
}

func TestLevel(t *testing.T) {
	for in, want := range map[string]string{
		`4 cm`:       `4 cm`,
		`4\"`:        `4 "`,
		`a\tb\\c`:    `a  b \c`,
		`\u00bd cm`:  `    ½ cm`,
		`\x41b`:      `   Ab`,
		"a\\\n  b":   "a    b",
		`\U0001F9F6`: strings.Repeat(" ", 6) + "🧶",
	} {
		if got := level(in); got != want {
			t.Errorf("%q levels to %q, not %q", in, got, want)
		}
	}
}

func FuzzLocate(f *testing.F) {
	for _, text := range tomlTexts {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		checkLocated(t, text)
		locate(text, 0)
		if at := statementAt(text, len(text)/2); at < 0 || at > len(text) {
			t.Errorf("a statement begins at %d of %d", at, len(text))
		}
	})
}
