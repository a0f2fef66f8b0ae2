package site

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/tools/txtar"
)

// TestStudios builds small studios and compares what comes out with what is written below them. A studio is a txtar file in
// testdata/studios: the comment says what it shows; files are its files; those whose name begins with "then" and a number are
// changes made after a build, an empty one taking the file away. After "want" stand the outputs, the findings and the work of the
// first build, after "want 1" what is different after the first changes. UPDATE=1 writes them anew.
func TestStudios(t *testing.T) {
	found, err := filepath.Glob(filepath.Join("..", "..", "testdata", "studios", "*"))
	if err != nil || len(found) == 0 {
		t.Fatal("no studios", err)
	}
	for _, name := range found {
		t.Run(filepath.Base(name), func(t *testing.T) {
			archive, err := txtar.ParseFile(name)
			if err != nil {
				t.Fatal(err)
			}
			s := read(t, archive)
			got := s.run(t)
			if os.Getenv("UPDATE") != "" {
				s.update(t, name, archive, got)
				return
			}
			for step, text := range got {
				if want := s.want[step]; text != want {
					t.Errorf("after %d changes\n%s\nwant\n%s", step, text, want)
				}
			}
			for step := range s.want {
				if _, is := got[step]; !is {
					t.Errorf("“%s” belongs to no build", wantName(step))
				}
			}
		})
	}
}

// A steppedStudio is a studio with the changes that are made to it.
type steppedStudio struct {
	files map[string]string
	then  []map[string]string
	want  map[int]string
}

func read(t *testing.T, archive *txtar.Archive) steppedStudio {
	s := steppedStudio{files: map[string]string{}, want: map[int]string{}}
	for _, f := range archive.Files {
		text := string(f.Data)
		step := 0
		if f.Name == "want" {
			s.want[0] = text
		} else if n, _ := fmt.Sscanf(f.Name, "want %d", &step); n == 1 {
			s.want[step] = text
		} else if n, _ := fmt.Sscanf(f.Name, "then %d/", &step); n == 1 && step >= 1 {
			for len(s.then) < step {
				s.then = append(s.then, map[string]string{})
			}
			_, name, _ := strings.Cut(f.Name, "/")
			s.then[step-1][name] = text
		} else if strings.HasPrefix(f.Name, "content/") || strings.HasPrefix(f.Name, "layouts/") {
			s.files[f.Name] = text
		} else {
			t.Errorf("%s is no file of a studio", f.Name)
		}
	}
	return s
}

// run builds the studio, then makes each of the changes and builds it again, remembering.
func (s steppedStudio) run(t *testing.T) map[int]string {
	var shelf shelf
	var memory Memory
	got := map[int]string{}
	for step := 0; ; step++ {
		site, findings := shelf.build(t, s.files, &memory)
		got[step] = report(site, findings, shelf.names(), shelf.puts)
		if step == len(s.then) {
			return got
		}
		for name, text := range s.then[step] {
			if s.files[name] = text; text == "" {
				delete(s.files, name)
			}
		}
	}
}

// named takes the hash from the name of an asset: it changes with every touch to the styles.
var named = regexp.MustCompile(`-[0-9a-f]{10}\.(css|js)$`)

func report(site Site, findings, have, put []string) string {
	var b strings.Builder
	b.WriteString("outputs, those put marked +\n")
	for _, name := range have {
		mark := " "
		if slices.Contains(put, name) {
			mark = "+"
		}
		fmt.Fprintf(&b, "%s %s\n", mark, named.ReplaceAllString(name, ".$1"))
	}
	b.WriteString("\nfindings\n")
	for _, f := range findings {
		fmt.Fprintf(&b, "  %s\n", f)
	}
	for _, list := range []struct {
		what  string
		files []string
	}{{"unreleased", site.Unreleased}, {"as before", site.Stayed}, {"left out", site.LeftOut}} {
		if list.files != nil {
			fmt.Fprintf(&b, "\n%s\n  %s\n", list.what, strings.Join(list.files, "\n  "))
		}
	}
	w := site.Work
	fmt.Fprintf(&b, "\nwork\n  %d read, %d set, %d remembered, layouts loaded %d times, %d pages of the catalogue\n", w.Read, w.Set, w.Replayed, w.Layouts, w.Catalogue)
	return b.String()
}

func wantName(step int) string {
	if step == 0 {
		return "want"
	}
	return fmt.Sprint("want ", step)
}

func (s steppedStudio) update(t *testing.T, name string, archive *txtar.Archive, got map[int]string) {
	archive.Files = slices.DeleteFunc(archive.Files, func(f txtar.File) bool { return strings.HasPrefix(f.Name, "want") })
	for _, step := range slices.Sorted(maps.Keys(got)) {
		archive.Files = append(archive.Files, txtar.File{Name: wantName(step), Data: []byte(got[step])})
	}
	if err := os.WriteFile(name, txtar.Format(archive), 0o666); err != nil {
		t.Fatal(err)
	}
}
