package whole

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"

	"foundrow/internal/grade"
	"foundrow/internal/manuscript"
	"foundrow/internal/pattern"
	"foundrow/internal/proof"
	"foundrow/internal/prose"
	"foundrow/internal/source"
)

// The handbook is the specification: a fenced block of these kinds, by the words behind its fence, is an example, and is run.
//
//	formula            lines as on a slip of paper: formulas_test.go says how they are written
//	notation           a piece of a pattern. "uk" sets its terms, "sizes S M L" its sizes, "finds RULE" what must be found
//	toml front         front matter, or some of it
//	markdown pattern   a whole pattern
//	toml               a file or a part of one that is only shown; it must be TOML
//
// Blocks of the kinds in shown are there to be looked at.
var (
	examples = map[string]func(*testing.T, example){
		"formula": runFormulas, "notation": runNotation, "toml front": runFront, "markdown pattern": runPattern, "toml": runToml,
	}
	shown = []string{"", "text", "markdown"}
)

// An example is one fenced block of the handbook.
type example struct {
	kind    string // of examples
	options []string
	text    string
	name    string // of its page
	line    int
	studio  pattern.Studio
}

func (e example) String() string { return fmt.Sprintf("%s:%d", e.name, e.line) }

// TestHandbook runs every example of the handbook, and fails for one that it cannot run and for a kind that has none.
func TestHandbook(t *testing.T) {
	files := demonstration(t)
	set := files.settings(t)
	ran := map[string]int{}
	for _, name := range slices.Sorted(maps.Keys(files)) {
		slug, is := strings.CutPrefix(strings.TrimSuffix(name, ".md"), "content/pages/")
		if !is {
			continue
		}
		file := source.NewFile(name, files[name])
		plain, findings := manuscript.ReadPlain(file, slug, set)
		none(t, findings)
		for _, code := range codes(plain.Text) {
			if slices.Contains(shown, code.Info) {
				continue
			}
			e := example{text: code.Text, name: name, line: file.Place(code.Span).Line, studio: set}
			words := strings.Fields(code.Info)
			for n := range words {
				if kind := strings.Join(words[:n+1], " "); examples[kind] != nil {
					e.kind, e.options = kind, words[n+1:]
				}
			}
			if e.kind == "" {
				t.Errorf("%s: a block marked %q is neither run nor one that is only shown", e, code.Info)
				continue
			}
			ran[e.kind]++
			t.Run(fmt.Sprintf("%s/%d", slug, e.line), func(t *testing.T) { examples[e.kind](t, e) })
		}
	}
	for kind := range examples {
		if ran[kind] == 0 {
			t.Errorf("the handbook has no example of the kind %q", kind)
		}
	}
	t.Logf("examples run: %v", ran)
}

// codes are the blocks of code of a text, wherever they stand in it.
func codes(blocks []prose.Block) []*prose.Code {
	var out []*prose.Code
	for _, b := range blocks {
		switch b := b.(type) {
		case *prose.Code:
			out = append(out, b)
		case *prose.Quote:
			out = append(out, codes(b.Blocks)...)
		case *prose.List:
			for _, item := range b.Items {
				out = append(out, codes(item)...)
			}
		}
	}
	return out
}

// noOptions fails an example that says more of itself than is understood.
func noOptions(t *testing.T, e example) {
	t.Helper()
	if len(e.options) > 0 {
		t.Errorf("%s: nothing is known of %q behind %s", e, strings.Join(e.options, " "), e.kind)
	}
}

// finds compares what was found with the one rule that must be; with no rule nothing may be found.
func finds(t *testing.T, e example, found source.Findings, rule string) {
	t.Helper()
	if rule != "" && len(found) == 1 && found[0].Rule == rule || rule == "" && len(found) == 0 {
		return
	}
	if rule == "" {
		rule = "nothing"
	}
	t.Errorf("%s finds %d (%s), where it must find %s", e, len(found), rules(found), rule)
	for _, f := range found {
		t.Logf("%s\n%s", f, f.Excerpt())
	}
}

// runNotation works a piece, and nothing but the piece, as the piece of a pattern that says no more than it has to.
func runNotation(t *testing.T, e example) {
	terms, rule := "us", ""
	var sizes []string
	for words := e.options; len(words) > 0; {
		word := words[0]
		words = words[1:]
		switch {
		case word == "uk":
			terms = word
		case word == "finds" && len(words) == 1:
			rule, words = words[0], nil
		case word == "sizes":
			for len(words) > 0 && words[0] != "finds" {
				sizes, words = append(sizes, words[0]), words[1:]
			}
		default:
			t.Fatalf("%s: nothing is known of %q behind notation", e, word)
		}
	}
	front := ""
	if len(sizes) > 0 {
		front = fmt.Sprintf("[sizes]\noffer = [\"%s\"]\nsample = %q\n", strings.Join(sizes, `", "`), sizes[0])
	}
	text := complete(front, terms) + "\n```rows example\n" + e.text + "```\n"
	_, found := read(patternFile("example"), text, e.studio)
	finds(t, e, found, rule)
}

// complete is a whole front matter made of a part of one.
func complete(front, terms string) string {
	var before strings.Builder
	for _, line := range []string{"title = \"Example\"\n", "kind = \"other\"\n", "terms = \"" + terms + "\"\n"} {
		if key, _, _ := strings.Cut(line, "="); !strings.Contains("\n"+front, "\n"+key) {
			before.WriteString(line)
		}
	}
	return "```toml\n" + before.String() + front + "```\n"
}

// runFront reads and works front matter. What it has of materials and formulas goes unused without a text, so only an error counts.
func runFront(t *testing.T, e example) {
	noOptions(t, e)
	file := source.NewFile(patternFile("example"), complete(e.text, "us"))
	p, found := manuscript.ReadPattern(file, "example", e.studio, manuscript.Published())
	_, more := grade.Work(p)
	found = slices.DeleteFunc(append(found, more...), func(f source.Finding) bool { return f.Severity != source.Error })
	finds(t, e, found, "")
}

// runPattern lets a whole pattern be proofread in the demonstration studio.
func runPattern(t *testing.T, e example) {
	noOptions(t, e)
	files := studio{"content/studio.toml": demonstration(t)["content/studio.toml"], patternFile("example"): e.text}
	_, found := files.open(t).Proof(nil)
	finds(t, e, found, "")
}

func runToml(t *testing.T, e example) {
	noOptions(t, e)
	var all map[string]any
	if _, err := toml.Decode(e.text, &all); err != nil {
		t.Errorf("%s is no TOML: %v", e, err)
	}
}

// TestFirstPattern follows the handbook's first pattern to where a count is broken on purpose: what is printed then is what the page
// shows.
func TestFirstPattern(t *testing.T) {
	files := demonstration(t)
	const name = "content/pages/first-pattern.md"
	plain, _ := manuscript.ReadPlain(source.NewFile(name, files[name]), "first-pattern", files.settings(t))
	var whole, shown string
	for _, code := range codes(plain.Text) {
		switch {
		case code.Info == "markdown pattern":
			whole = code.Text
		case code.Info == "" && strings.Contains(code.Text, "error: "):
			shown = code.Text
		}
	}
	broken := strings.Replace(whole, "({wide} sts)\nRows 3", "({wide + 1} sts)\nRows 3", 1)
	if broken == whole || shown == "" {
		t.Fatalf("%s has no row 2 to break, or no finding", name)
	}
	_, found := studio{"content/studio.toml": files["content/studio.toml"], patternFile("wharf-headband"): broken}.open(t).Proof(nil)
	if printed := (proof.Hand{}).Print(found); strings.TrimSpace(printed) != strings.TrimSpace(shown) {
		t.Errorf("%s shows\n%s\nand what is printed is\n%s", name, shown, printed)
	}
}
