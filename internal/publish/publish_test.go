package publish

import (
	"bytes"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"foundrow/internal/testkit"
)

// tree reads all files below a folder, but for our own record of them.
func tree(t testing.TB, folder string) map[string]string {
	t.Helper()
	all := map[string]string{}
	err := filepath.WalkDir(folder, func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || d.Name() == recordName {
			return err
		}
		text, err := os.ReadFile(name)
		rest, _ := filepath.Rel(folder, name)
		all[filepath.ToSlash(rest)] = string(text)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// madeUp writes a made-up studio into a folder of its own, with a cache of its own.
func madeUp(t testing.TB, patterns int) string {
	t.Setenv("XDG_CACHE_HOME", t.TempDir())
	folder := t.TempDir()
	testkit.WriteStudio(t, folder, testkit.Studio(patterns))
	return folder
}

func run(t testing.TB, o Order) Report {
	t.Helper()
	r, findings, err := Run(o)
	if err != nil || len(findings) > 0 {
		t.Fatal(err, findings)
	}
	return r
}

// An edit gives a pattern of a studio another text, or takes it away.
type edit struct {
	slug   string
	number int
	remove bool
}

var edits = rapid.SliceOfN(rapid.SliceOfN(rapid.Custom(func(t *rapid.T) edit {
	return edit{
		rapid.SampledFrom([]string{"hat", "bag", "scarf"}).Draw(t, "slug"), rapid.IntRange(0, 5).Draw(t, "number"),
		rapid.IntRange(0, 3).Draw(t, "remove") == 0,
	}
}), 0, 3), 2, 4)

// After any edits, publishing again leaves what publishing for the first time does: the same files with the same bytes. Package site
// holds this over many more edits; here it is the disk that is looked at.
func TestPublishAgainIsPublish(t *testing.T) {
	t.Setenv("XDG_CACHE_HOME", t.TempDir())
	for seed := range 12 {
		studio, clean := t.TempDir(), t.TempDir()
		testkit.WriteStudio(t, studio, testkit.Studio(0))
		for _, step := range edits.Example(seed) {
			for _, e := range step {
				name := filepath.Join(studio, "content", "patterns", e.slug)
				if e.remove {
					os.RemoveAll(name)
				} else {
					testkit.WriteStudio(t, name, map[string]string{"pattern.md": testkit.Pattern(e.number)})
				}
			}
			run(t, Order{Studio: studio})
			os.RemoveAll(clean)
			run(t, Order{Studio: studio, Into: clean, Forget: true})
			if got, want := tree(t, filepath.Join(studio, "public")), tree(t, clean); !maps.Equal(got, want) {
				t.Fatalf("after %v publishing again left\n%v\nand for the first time\n%v", step, slices.Sorted(maps.Keys(got)), slices.Sorted(maps.Keys(want)))
			}
		}
	}
}

// What was published a moment ago is remembered, though its files are too new to be told from their times alone.
func TestRemembered(t *testing.T) {
	studio := madeUp(t, 3)
	if w := run(t, Order{Studio: studio}).Work; w.Read != 3 || w.Set != 3 {
		t.Errorf("at first %+v", w)
	}
	if w := run(t, Order{Studio: studio}).Work; w.Read != 0 || w.Set != 0 || w.Layouts != 0 {
		t.Errorf("a moment later %+v", w)
	}
}

// An edit that leaves a file's size and time as they were is seen all the same.
func TestEditBehindTheClock(t *testing.T) {
	studio := madeUp(t, 1)
	name := filepath.Join(studio, "content", "patterns", "thing-0000", "pattern.md")
	old := time.Now().Add(-time.Hour)
	change := func(from, to string) {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		text = bytes.ReplaceAll(text, []byte(from), []byte(to))
		if err := os.WriteFile(name, text, 0o666); err != nil {
			t.Fatal(err)
		}
		if err := os.Chtimes(name, old, old); err != nil {
			t.Fatal(err)
		}
	}
	change("Weave in the ends", "Weave in all ends")
	run(t, Order{Studio: studio})
	change("Weave in all ends", "Leave in the ends")
	run(t, Order{Studio: studio})
	page := tree(t, filepath.Join(studio, "public"))["patterns/thing-0000/index.html"]
	if !strings.Contains(page, "Leave in the ends") {
		t.Error("the edit was not seen")
	}
}

// Two runs at once would undo each other's work: the second does not begin.
func TestOneAtATime(t *testing.T) {
	studio := madeUp(t, 1)
	public := filepath.Join(studio, "public")
	if err := os.Mkdir(public, 0o777); err != nil {
		t.Fatal(err)
	}
	lock, err := lockFolder(public)
	if err != nil {
		t.Fatal(err)
	}
	if _, _, err := Run(Order{Studio: studio}); err == nil || !strings.Contains(err.Error(), "another foundrow is publishing") {
		t.Errorf("beside another run: %v", err)
	}
	lock.Close()
	run(t, Order{Studio: studio})
}

// What is remembered is only ever a help: damaged, it is left out of account.
func TestDamagedPast(t *testing.T) {
	studio := madeUp(t, 3)
	run(t, Order{Studio: studio})
	want := tree(t, filepath.Join(studio, "public"))
	cache, _ := os.UserCacheDir()
	found, err := filepath.Glob(filepath.Join(cache, "foundrow", "*", "remembered"))
	if err != nil || len(found) != 1 {
		t.Fatal(found, err)
	}
	text, err := os.ReadFile(found[0])
	if err != nil {
		t.Fatal(err)
	}
	for _, damaged := range []string{"", "nonsense", string(text[:len(text)/2]), strings.ReplaceAll(string(text), "{", "["), strings.ReplaceAll(string(text), "patterns", "pattern")} {
		if err := os.WriteFile(found[0], []byte(damaged), 0o666); err != nil {
			t.Fatal(err)
		}
		run(t, Order{Studio: studio})
		if got := tree(t, filepath.Join(studio, "public")); !maps.Equal(got, want) {
			t.Errorf("after damage there are %v", slices.Sorted(maps.Keys(got)))
		}
	}
}
