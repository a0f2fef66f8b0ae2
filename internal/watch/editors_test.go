package watch

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

const manuscript = "content/patterns/scarf/pattern.md"

// long is the scarf with another word in it.
func long(word string) string { return strings.Replace(scarf, "A scarf.", "A "+word+" scarf.", 1) }

// TestEditors saves a file in every way that editors have, and sees the page follow.
func TestEditors(t *testing.T) {
	t.Parallel()
	write := func(name, text string) error { return os.WriteFile(name, []byte(text), 0o666) }
	for _, c := range []struct {
		how  string
		save func(name, text string) error
	}{
		{"truncate and write", write},
		{"truncate, wait, and write", func(name, text string) error {
			if err := os.Truncate(name, 0); err != nil {
				return err
			}
			time.Sleep(3 * quiet) // the disk was slow, or the editor was
			return write(name, text)
		}},
		{"write in two halves", func(name, text string) error {
			f, err := os.Create(name)
			if err != nil {
				return err
			}
			defer f.Close()
			f.WriteString(text[:len(text)/2])
			time.Sleep(quiet / 2)
			_, err = f.WriteString(text[len(text)/2:])
			return err
		}},
		{"write beside and rename over", func(name, text string) error {
			part := filepath.Join(filepath.Dir(name), ".pattern.md.new")
			if err := write(part, text); err != nil {
				return err
			}
			return os.Rename(part, name)
		}},
		{"try the folder, back up by renaming, write anew, and remove the backup", func(name, text string) error {
			folder := filepath.Dir(name)
			if err := write(filepath.Join(folder, "4913"), ""); err != nil {
				return err
			}
			os.Remove(filepath.Join(folder, "4913"))
			if err := os.Rename(name, name+"~"); err != nil {
				return err
			}
			if err := write(name, text); err != nil {
				return err
			}
			return os.Remove(name + "~")
		}},
		{"back up by renaming, wait, and write anew", func(name, text string) error {
			if err := os.Rename(name, name+"~"); err != nil {
				return err
			}
			time.Sleep(3 * quiet)
			return write(name, text)
		}},
		{"write elsewhere and move in", func(name, text string) error {
			part := filepath.Join(filepath.Dir(name), "..", "..", "..", "sed8ab2")
			if err := write(part, text); err != nil {
				return err
			}
			return os.Rename(part, name)
		}},
		{"remove and write anew", func(name, text string) error {
			if err := os.Remove(name); err != nil {
				return err
			}
			return write(name, text)
		}},
		{"overwrite in place", func(name, text string) error {
			f, err := os.OpenFile(name, os.O_WRONLY, 0)
			if err != nil {
				return err
			}
			defer f.Close()
			if _, err := f.WriteAt([]byte(text), 0); err != nil {
				return err
			}
			return f.Truncate(int64(len(text)))
		}},
		{"with the time of the last change set back", func(name, text string) error {
			info, err := os.Stat(name)
			if err != nil {
				return err
			}
			if err := write(name, text); err != nil {
				return err
			}
			return os.Chtimes(name, info.ModTime(), info.ModTime())
		}},
		{"with another file left open beside it", func(name, text string) error {
			if err := write(filepath.Join(filepath.Dir(name), ".pattern.md.swp"), "x"); err != nil {
				return err
			}
			return write(name, text)
		}},
	} {
		t.Run(c.how, func(t *testing.T) {
			t.Parallel()
			s := sit(t, studioOf(scarf))
			s.see("/patterns/scarf/", "A scarf.")
			for _, word := range [...]string{"long", "wide"} {
				s.do(c.save(s.on(manuscript), long(word)))
				s.see("/patterns/scarf/", "A "+word+" scarf.")
			}
			s.until("all is well", func() bool {
				_, band := s.page("/patterns/scarf/")
				return strings.Contains(band, "As saved at") && !strings.Contains(band, "error")
			})
		})
	}
}

// TestNothingChanged touches files without changing what they say, and leaves things lying about. None of it is told.
func TestNothingChanged(t *testing.T) {
	t.Parallel()
	s := sit(t, studioOf(scarf))
	s.page("/patterns/scarf/")
	s.page("/")
	name := s.on(manuscript)
	for _, touch := range []func() error{
		func() error { return os.Chmod(name, 0o600) },
		func() error { return os.Chtimes(name, time.Now(), time.Now()) },
		func() error { return os.WriteFile(name, []byte(scarf), 0o666) },
		func() error { return os.WriteFile(name+"~", []byte("x"), 0o666) },
		func() error { return os.WriteFile(filepath.Join(filepath.Dir(name), "notes.txt"), []byte("x"), 0o666) },
		func() error { return os.WriteFile(s.on("content/patterns/.DS_Store"), []byte("x"), 0o666) },
		func() error { return os.WriteFile(s.on("content/pages.swp"), []byte("x"), 0o666) },
		func() error { return os.WriteFile(s.on("shopping.txt"), []byte("wool"), 0o666) },
		func() error { return os.MkdirAll(s.on("public/patterns/scarf"), 0o777) },
		func() error { return os.WriteFile(s.on("public/patterns/scarf/index.html"), []byte("x"), 0o666) },
	} {
		s.do(touch())
		time.Sleep(quiet / 5)
	}
	s.save("content/patterns/scarf/pattern.md", long("long"))
	told := s.await(func(Told) bool { return true })
	if len(told.Changed) != 1 || told.Changed[0] != manuscript || told.Work.Read != 1 {
		t.Errorf("the first thing told is %+v", told)
	}
}

// TestFolders moves whole folders about.
func TestFolders(t *testing.T) {
	t.Parallel()
	s := sit(t, studioOf(scarf))
	s.page("/patterns/scarf/")

	t.Log("a tree that comes in one go")
	part := filepath.Join(s.folder, "elsewhere", "shawl")
	s.do(os.MkdirAll(part, 0o777))
	s.do(os.WriteFile(filepath.Join(part, "pattern.md"), []byte(strings.Replace(long("triangular"), "Scarf", "Shawl", 1)), 0o666))
	s.do(os.Rename(part, s.on("content/patterns/shawl")))
	s.see("/patterns/shawl/", "A triangular scarf.")
	s.see("/", "Shawl")

	t.Log("and is edited where it came to")
	s.save("content/patterns/shawl/pattern.md", strings.Replace(long("square"), "Scarf", "Shawl", 1))
	s.see("/patterns/shawl/", "A square scarf.")

	t.Log("a folder that is renamed, and edited under its new name")
	s.do(os.Rename(s.on("content/patterns/shawl"), s.on("content/patterns/wrap")))
	s.see("/patterns/wrap/", "A square scarf.")
	s.see("/patterns/shawl/", "The file of this page is gone. This is the page as it was at")
	s.see("/patterns/shawl/", "It seems to be patterns/wrap now.")
	s.save("content/patterns/wrap/pattern.md", strings.Replace(long("round"), "Scarf", "Wrap", 1))
	s.see("/patterns/wrap/", "A round scarf.")

	t.Log("the folder above it, too")
	s.do(os.Rename(s.on("content/patterns"), s.on("content/put-away")))
	s.see("/patterns/wrap/", "The file of this page is gone.")
	s.do(os.Rename(s.on("content/put-away"), s.on("content/patterns")))
	s.see("/patterns/wrap/", "As saved at")
	s.save("content/patterns/wrap/pattern.md", strings.Replace(long("green"), "Scarf", "Wrap", 1))
	s.see("/patterns/wrap/", "A green scarf.")

	t.Log("a name that is also one of the files editors try a folder with")
	s.save("content/patterns/4913/pattern.md", strings.Replace(long("numbered"), "Scarf", "Number", 1))
	s.see("/patterns/4913/", "A numbered scarf.")
	s.save("content/patterns/4913/pattern.md", strings.Replace(long("counted"), "Scarf", "Number", 1))
	s.see("/patterns/4913/", "A counted scarf.")

	t.Log("layouts that were not there when it began")
	s.save("layouts/pattern/pattern.css", "h1 { color: teal }")
	style := func() string {
		page, _ := s.page("/patterns/wrap/")
		_, style, _ := strings.Cut(page, "../../assets/")
		style, _, _ = strings.Cut(style, `"`)
		_, css := s.get("/assets/" + style)
		return css
	}
	s.until("the style is teal", func() bool { return strings.Contains(style(), "teal") })
	s.save("layouts/pattern/pattern.css", "h1 { color: navy }")
	s.until("the style is navy", func() bool { return strings.Contains(style(), "navy") })
}

// TestLinks shows what lies elsewhere in the studio, when that is edited.
func TestLinks(t *testing.T) {
	t.Parallel()
	files := studioOf(scarf)
	files["shared/pattern.md"] = strings.Replace(scarf, "Scarf", "Stole", 1)
	s := sit(t, files)
	s.do(os.Symlink(s.on("shared"), s.on("content/patterns/stole")))
	s.see("/patterns/stole/", "A scarf.")
	s.save("shared/pattern.md", strings.Replace(long("linked"), "Scarf", "Stole", 1))
	s.see("/patterns/stole/", "A linked scarf.")
	s.save("spare.md", long("spare"))
	s.do(os.Mkdir(s.on("content/patterns/spare"), 0o777))
	s.do(os.Symlink(s.on("spare.md"), s.on("content/patterns/spare/pattern.md")))
	s.see("/patterns/spare/", "A spare scarf.")
	s.save("spare.md", long("torn"))
	s.see("/patterns/spare/", "A torn scarf.")
}
