package watch

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"foundrow/internal/site"
	"foundrow/internal/testkit"
)

// TestTree asks a tree for a few files, then changes what is on the disk and looks again: what is told is what was asked for and is
// not as it was.
func TestTree(t *testing.T) {
	t.Parallel()
	const asked, beside = "content/pages/about.md", "content/pages/never-asked.md"
	for _, c := range []struct {
		does    string
		change  func(on func(string) string) error
		where   notices // everywhere where it is empty
		changed []string
		waits   bool // it looks as if the file were just being saved
	}{
		{does: "nothing", change: func(func(string) string) error { return nil }},
		{does: "write the same", change: func(on func(string) string) error { return os.WriteFile(on(asked), []byte("one"), 0o666) }},
		{does: "write another text", change: func(on func(string) string) error { return os.WriteFile(on(asked), []byte("two"), 0o666) },
			changed: []string{asked}},
		{does: "write what nobody asked for", change: func(on func(string) string) error { return os.WriteFile(on(beside), []byte("two"), 0o666) }},
		{does: "empty it", change: func(on func(string) string) error { return os.Truncate(on(asked), 0) },
			changed: []string{asked}, waits: true},
		{does: "take it away", change: func(on func(string) string) error { return os.Remove(on(asked)) },
			changed: []string{asked}, waits: true},
		{does: "take its folder away", change: func(on func(string) string) error { return os.RemoveAll(on("content/pages")) },
			changed: []string{"content/pages", asked, beside}, waits: true},
		{does: "put a folder in its place", change: func(on func(string) string) error { os.Remove(on(asked)); return os.Mkdir(on(asked), 0o777) },
			changed: []string{asked}},
		{does: "make what was not there", change: func(on func(string) string) error {
			return os.WriteFile(on("content/pages/new.md"), []byte("new"), 0o666)
		},
			changed: []string{"content/pages/new.md"}},
		{does: "leave something lying about", change: func(on func(string) string) error {
			return os.WriteFile(on("content/pages/about.md~"), []byte("one"), 0o666)
		}},
		{does: "write as many bytes at the same time of the clock, which is told of",
			change:  func(on func(string) string) error { return sameStamp(on(asked), "two") },
			where:   noticesOf(asked),
			changed: []string{asked}},
		{does: "the same, which is not told of", change: func(on func(string) string) error { return sameStamp(on(asked), "two") },
			changed: []string{asked}},
		{does: "write where nothing was noticed", change: func(on func(string) string) error { return os.WriteFile(on(asked), []byte("two"), 0o666) },
			where: noticesOf("content/patterns/hat/pattern.md")},
		{does: "write beside what was noticed", change: func(on func(string) string) error { return os.WriteFile(on(asked), []byte("three"), 0o666) },
			where: noticesOf(beside), changed: []string{asked}},
		{does: "write below what was noticed", change: func(on func(string) string) error { return os.WriteFile(on(asked), []byte("two"), 0o666) },
			where: noticesOf("content"), changed: []string{asked}},
	} {
		t.Run(c.does, func(t *testing.T) {
			t.Parallel()
			folder := t.TempDir()
			testkit.WriteStudio(t, folder, map[string]string{asked: "one", beside: "one", "content/studio.toml": "x"})
			tree, err := openTree(folder)
			if err != nil {
				t.Fatal(err)
			}
			ask := func() (site.Digest, error) {
				tree.List("content/pages")
				tree.Digest("content/pages/new.md")
				return tree.Digest(asked)
			}
			before, _ := ask()
			if err := c.change(func(name string) string { return filepath.Join(folder, name) }); err != nil {
				t.Fatal(err)
			}
			if c.where.empty() {
				c.where.all = true
			}
			if now, _ := ask(); now != before {
				t.Error("it is told something new before it was looked at")
			}
			if changed, unsettled := tree.look(c.where, false); unsettled != c.waits || !c.waits && !slices.Equal(changed, c.changed) {
				t.Errorf("%v changed, unsettled %v; wanted %v", changed, unsettled, c.changed)
			}
			if c.waits {
				if now, _ := ask(); now != before {
					t.Error("what is unsettled was believed")
				}
				if changed, unsettled := tree.look(c.where, true); unsettled || !slices.Equal(changed, c.changed) {
					t.Errorf("at last %v changed, unsettled %v; wanted %v", changed, unsettled, c.changed)
				}
			}
			if changed, unsettled := tree.look(notices{all: true}, false); c.where.all && (unsettled || changed != nil) {
				t.Errorf("looking once more, %v changed", changed)
			}
			if now, err := ask(); c.where.all && err == nil {
				if data, err := os.ReadFile(filepath.Join(folder, asked)); err != nil || site.DigestOf(data) != now {
					t.Errorf("the digest is not that of %q, %v", data, err)
				}
			}
		})
	}
}

func noticesOf(name string) (n notices) {
	n.add(name)
	return n
}

// sameStamp writes a text so that the disk says of the file what it said before.
func sameStamp(name, text string) error {
	info, err := os.Stat(name)
	if err != nil {
		return err
	}
	if err := os.WriteFile(name, []byte(text), 0o666); err != nil {
		return err
	}
	return os.Chtimes(name, time.Time{}, info.ModTime())
}

// A tree whose folder goes has nothing in it, and is what it was when the folder comes back.
func TestTreeGone(t *testing.T) {
	t.Parallel()
	folder := filepath.Join(t.TempDir(), "studio")
	testkit.WriteStudio(t, folder, map[string]string{"content/studio.toml": "x"})
	tree, err := openTree(folder)
	if err != nil {
		t.Fatal(err)
	}
	before, _ := tree.Digest("content/studio.toml")
	if err := os.Rename(folder, folder+"-away"); err != nil {
		t.Fatal(err)
	}
	tree.look(notices{all: true}, true)
	if _, err := tree.Digest("content/studio.toml"); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("a file of it is %v", err)
	}
	if _, err := tree.Open("content/studio.toml"); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("it can be opened: %v", err)
	}
	if err := os.Rename(folder+"-away", folder); err != nil {
		t.Fatal(err)
	}
	tree.look(notices{all: true}, true)
	if after, err := tree.Digest("content/studio.toml"); err != nil || after != before {
		t.Errorf("come back it is %v %v", after, err)
	}
}
