// Package arch holds the shape of the program: which package may know which. It has tests and nothing else.
package arch

import (
	"encoding/json"
	"io"
	"os/exec"
	"slices"
	"strings"
	"testing"
)

// A ring is a set of packages under one law; packages later in a ring may import those before them.
type ring struct {
	name     string
	packages []string
}

// rings are named from the inside out. A ring imports itself downward and the rings inside it.
var rings = []ring{
	{"engine", []string{"source", "measure", "shaping", "formula", "stitch", "prose", "notation", "ledger", "pattern", "grade", "draw", "page"}},
	{"bench", []string{"manuscript", "proof", "web", "paper", "site"}},
	{"edges", []string{"publish", "watch", "cli"}},
}

// Every forbidden import of the engine would add to what a maker's browser loads, or let a page depend on the machine:
// an empty program is 544 KB there, fmt and math/big add 200 KB, encoding/json 370 KB.
var forbiddenInEngine = []string{
	"fmt", "math/big", "math/rand", "reflect", "regexp", "encoding/", "text/template", "html/template", "html", "time", "os", "net", "path/filepath", "io/fs", "log",
}

// touching the machine is for the edges alone.
var forbiddenInBench = []string{"os", "net", "time", "math/rand", "path/filepath", "log"}

// excused are imports that are for a type and not for what they touch: TOML's dates are decoded as time.Time.
var excused = map[string]string{"manuscript": "time"}

// Alone, because the format of a manuscript is one package's business.
var onlyIn = map[string][]string{
	"github.com/yuin/goldmark":     {"manuscript"},
	"github.com/BurntSushi/toml":   {"manuscript"},
	"github.com/fsnotify/fsnotify": {"watch"},
	"github.com/tdewolff/minify":   {"web"},
	"html/template":                {"web", "watch"}, // watch: the band that a preview puts over a page
	"codeberg.org/go-pdf/fpdf":     {"paper"},
}

// What sets pages knows what a reader sees and nothing of how it came about; source is for findings about the layouts.
var onlyOfOurs = map[string][]string{
	"web":   {"source", "prose", "page", "draw"},
	"paper": {"source", "prose", "page", "draw"},
}

type listed struct {
	ImportPath string
	Imports    []string
	Standard   bool
}

// imports asks the go tool for every package of the program and what each imports outside of its tests.
func imports(t *testing.T) map[string][]string {
	t.Helper()
	out, err := exec.Command("go", "list", "-json=ImportPath,Imports", "foundrow/...").Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	all := map[string][]string{}
	for d := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p listed
		if err := d.Decode(&p); err == io.EOF {
			break
		} else if err != nil {
			t.Fatal(err)
		}
		all[p.ImportPath] = p.Imports
	}
	return all
}

func position(name string) (ringIndex, place int) {
	for r, ring := range rings {
		if i := slices.Index(ring.packages, name); i >= 0 {
			return r, i
		}
	}
	return -1, -1
}

func within(path, root string) bool {
	return path == root || strings.HasPrefix(path, strings.TrimSuffix(root, "/")+"/")
}

func TestRings(t *testing.T) {
	outside := []string{"arch", "testkit", "judges", "whole"} // for tests only
	for path, imported := range imports(t) {
		name, ours := strings.CutPrefix(path, "foundrow/internal/")
		if !ours || slices.Contains(outside, name) {
			continue
		}
		r, place := position(name)
		if r < 0 {
			t.Errorf("package %s stands in no ring: add it to one, in its order", name)
			continue
		}
		for _, other := range imported {
			dep, ours := strings.CutPrefix(other, "foundrow/internal/")
			if !ours {
				continue
			}
			dr, dplace := position(dep)
			if dr < 0 || dr > r || dr == r && dplace >= place {
				t.Errorf("package %s imports %s, which is not below it", name, dep)
			}
			if allowed, narrow := onlyOfOurs[name]; narrow && !slices.Contains(allowed, dep) {
				t.Errorf("package %s imports %s; of ours it may know only %s", name, dep, strings.Join(allowed, ", "))
			}
		}
	}
}

func TestForbiddenImports(t *testing.T) {
	for path, imported := range imports(t) {
		name, ours := strings.CutPrefix(path, "foundrow/internal/")
		if !ours {
			continue
		}
		var forbidden []string
		switch r, _ := position(name); r {
		case 0:
			forbidden = forbiddenInEngine
		case 1:
			forbidden = forbiddenInBench
		}
		for _, dep := range imported {
			for _, f := range forbidden {
				if within(dep, f) && dep != excused[name] {
					t.Errorf("package %s imports %s, which its ring does without", name, dep)
				}
			}
			for lib, homes := range onlyIn {
				if within(dep, lib) && !slices.Contains(homes, name) && name != "testkit" {
					t.Errorf("package %s imports %s, which belongs to %s alone", name, dep, strings.Join(homes, ", "))
				}
			}
		}
	}
}

// TestEngineIsLight looks at everything the engine pulls in, not only at what it names.
func TestEngineIsLight(t *testing.T) {
	have := imports(t)
	for _, name := range rings[0].packages {
		path := "foundrow/internal/" + name
		if _, there := have[path]; !there {
			continue
		}
		out, err := exec.Command("go", "list", "-deps", path).Output()
		if err != nil {
			t.Fatalf("go list -deps %s: %v", path, err)
		}
		for dep := range strings.FieldsSeq(string(out)) {
			if slices.Contains([]string{"fmt", "math/big", "regexp", "encoding/json", "text/template", "html/template", "os", "net"}, dep) {
				t.Errorf("package %s pulls in %s", name, dep)
			}
		}
	}
}
