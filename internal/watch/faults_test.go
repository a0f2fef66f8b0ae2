package watch

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/fsnotify/fsnotify"
)

// TestFaults makes one mistake after another in a studio that is looked at, finds it told under the last good version of the page
// and to the terminal, mends it, and finds all well again.
func TestFaults(t *testing.T) {
	t.Parallel()
	remove := func(s *sitting, name string) { s.do(os.RemoveAll(s.on(name))) }
	const page = "/patterns/scarf/"
	for _, c := range []struct {
		what  string
		spoil func(s *sitting)
		says  []string // what the page says then, besides the last good version
		mend  func(s *sitting)
	}{
		{
			what:  "a value that is not there",
			spoil: func(s *sitting) { s.save(manuscript, strings.Replace(scarf, "hem + 1", "hemm + 1", 1)) },
			says:  []string{"What was saved since has 1 error", "nothing is named hemm", "write hem", manuscript + ":28:17 [unknown-name]", "Foundation: Ch {hemm + 1}.", "^^^^"},
		},
		{
			what: "a circle of values",
			spoil: func(s *sitting) {
				s.save(manuscript, strings.Replace(scarf, "tall = 12", "tall = \"wide\"\nwide = \"tall\"", 1))
			},
			says: []string{"What was saved since has", "[circle]"},
		},
		{
			what:  "half a file",
			spoil: func(s *sitting) { s.save(manuscript, scarf[:200]) },
			says:  []string{"What was saved since has"},
		},
		{
			what:  "an empty file",
			spoil: func(s *sitting) { s.save(manuscript, "") },
			says:  []string{"What was saved since has"},
		},
		{
			what:  "bytes that are no text",
			spoil: func(s *sitting) { s.save(manuscript, strings.Replace(scarf, "A scarf", "A sc\xff\xferf", 1)) },
			says:  []string{"What was saved since has 1 error", "UTF-8"},
		},
		{
			what: "a mistake in the rows",
			spoil: func(s *sitting) {
				s.save(manuscript, strings.Replace(scarf, "across. ({hem} sts)", "across. ({hem + 1} sts)", 1))
			},
			says: []string{"What was saved since has", "row 1 leaves 62 sts, but the pattern says 63", "[count-differs]"},
		},
		{
			what:  "a manuscript taken away",
			spoil: func(s *sitting) { remove(s, "content/patterns/scarf") },
			says:  []string{"The file of this page is gone."},
		},
		{
			what:  "a folder in its place",
			spoil: func(s *sitting) { remove(s, manuscript); s.do(os.Mkdir(s.on(manuscript), 0o777)) },
			says:  []string{"What was saved since has 1 error", "[unreadable]"},
			mend:  func(s *sitting) { remove(s, manuscript); s.save(manuscript, scarf) },
		},
		{
			what:  "a link that leads nowhere",
			spoil: func(s *sitting) { remove(s, manuscript); s.do(os.Symlink("nowhere.md", s.on(manuscript))) },
			says:  []string{"What was saved since has 1 error", "a link that leads nowhere"},
			mend:  func(s *sitting) { remove(s, manuscript); s.save(manuscript, scarf) },
		},
		{
			what: "a link out of the studio",
			spoil: func(s *sitting) {
				remove(s, manuscript)
				outside := filepath.Join(s.t.TempDir(), "other.md")
				s.do(os.WriteFile(outside, []byte(long("stolen")), 0o666))
				s.do(os.Symlink(outside, s.on(manuscript)))
			},
			says: []string{"What was saved since has 1 error", "[link-outside]"},
			mend: func(s *sitting) { remove(s, manuscript); s.save(manuscript, scarf) },
		},
		{
			what: "a folder that became a link out of the studio",
			spoil: func(s *sitting) {
				outside := s.t.TempDir()
				s.do(os.WriteFile(filepath.Join(outside, "pattern.md"), []byte(long("stolen")), 0o666))
				remove(s, "content/patterns/scarf")
				s.do(os.Symlink(outside, s.on("content/patterns/scarf")))
			},
			says: []string{"What was saved since has 1 error", "[link-outside]"},
			mend: func(s *sitting) { remove(s, "content/patterns/scarf"); s.save(manuscript, scarf) },
		},
		{
			what:  "a mistake in a layout",
			spoil: func(s *sitting) { s.save("layouts/pattern/pattern.html", "{{define \"main\"}}{{if}}{{end}}") },
			says:  []string{"No page can be made until studio.toml and the layouts are mended.", "[layout-syntax]", "layouts/pattern/pattern.html:1"},
			mend:  func(s *sitting) { remove(s, "layouts") },
		},
		{
			what: "a layout that asks for what there is not",
			spoil: func(s *sitting) {
				s.save("layouts/pattern/pattern.html", "{{define \"main\"}}{{template \"nothing\" .}}{{end}}")
			},
			says: []string{"No page can be made", "[layout-syntax]"},
			mend: func(s *sitting) { remove(s, "layouts") },
		},
		{
			what:  "a layout without its part",
			spoil: func(s *sitting) { s.save("layouts/pattern/pattern.html", "") },
			says:  []string{"No page can be made", "[layout-syntax]"},
			mend:  func(s *sitting) { remove(s, "layouts") },
		},
		{
			what:  "a mistake in studio.toml",
			spoil: func(s *sitting) { s.save("content/studio.toml", "title = ") },
			says:  []string{"No page can be made", "content/studio.toml:1"},
			mend:  func(s *sitting) { s.save("content/studio.toml", studioOf(scarf)["content/studio.toml"]) },
		},
		{
			what:  "no studio.toml",
			spoil: func(s *sitting) { remove(s, "content/studio.toml") },
			says:  []string{"There is no content/studio.toml any more. This is the page as it was at"},
			mend:  func(s *sitting) { s.save("content/studio.toml", studioOf(scarf)["content/studio.toml"]) },
		},
		{
			what:  "no content",
			spoil: func(s *sitting) { remove(s, "content") },
			says:  []string{"There is no content/studio.toml any more. This is the page as it was at"},
			mend: func(s *sitting) {
				for name, text := range studioOf(scarf) {
					s.save(name, text)
				}
			},
		},
		{
			what:  "no studio at all",
			spoil: func(s *sitting) { s.do(os.Rename(s.folder, s.folder+"-away")) },
			says:  []string{"There is no content/studio.toml any more. This is the page as it was at"},
			mend:  func(s *sitting) { s.do(os.Rename(s.folder+"-away", s.folder)) },
		},
		{
			what:  "another studio in its place",
			spoil: func(s *sitting) { s.do(os.Rename(s.folder, s.folder+"-away")); s.do(os.Mkdir(s.folder, 0o777)) },
			says:  []string{"There is no content/studio.toml any more. This is the page as it was at"},
			mend: func(s *sitting) {
				for name, text := range studioOf(scarf) {
					s.save(name, text)
				}
			},
		},
	} {
		t.Run(c.what, func(t *testing.T) {
			t.Parallel()
			s := sit(t, studioOf(scarf))
			before, _ := s.page(page)
			c.spoil(s)
			for _, words := range c.says {
				s.see(page, words)
			}
			_, body := s.get(page)
			if shown, _ := parted(body); shown != before {
				t.Errorf("it does not stand over the last good version of the page, but over\n%s", shown)
			}
			s.await(func(told Told) bool {
				return told.New.Errors() || told.Lost != "" || told.Changed != nil && len(told.Findings) == 0
			})
			if c.mend == nil {
				c.mend = func(s *sitting) { s.save(manuscript, scarf) }
			}
			c.mend(s)
			s.see(page, "As saved at")
			s.save(manuscript, long("mended"))
			s.see(page, "A mended scarf.")
			if _, band := s.page(page); strings.Contains(band, "error") {
				t.Errorf("mended, it still says %q", band)
			}
		})
	}
}

// TestForbidden takes away the permission to read, where that is a thing that can be taken away: not from the one who may do anything.
func TestForbidden(t *testing.T) {
	t.Parallel()
	s := sit(t, studioOf(scarf))
	s.page("/patterns/scarf/")
	for _, name := range [...]string{manuscript, "content/patterns/scarf", "content/patterns"} {
		info, err := os.Stat(s.on(name))
		s.do(err)
		s.do(os.Chmod(s.on(name), 0))
		if os.Geteuid() == 0 {
			s.page("/patterns/scarf/")
		} else {
			s.see("/patterns/scarf/", "permission denied")
		}
		s.do(os.Chmod(s.on(name), info.Mode()))
		s.see("/patterns/scarf/", "As saved at")
		s.save(manuscript, long("freed-"+filepath.Base(name)))
		s.see("/patterns/scarf/", "A freed-"+filepath.Base(name)+" scarf.")
	}
}

// TestRough opens a page that never was without a mistake: it comes as far as it goes.
func TestRough(t *testing.T) {
	t.Parallel()
	s := sit(t, studioOf(strings.Replace(scarf, "hem + 1", "hemm + 1", 1)))
	body := s.see("/patterns/scarf/", "This is as much of the page as can be made, because it has 1 error")
	for _, words := range []string{"A scarf.", "Ch ?", "nothing is named hemm"} {
		if !strings.Contains(body, words) {
			t.Errorf("it does not say %q: %s", words, body)
		}
	}
	if _, front := s.get("/"); strings.Contains(front, "patterns/scarf/index.html") {
		t.Error("the catalogue has it already")
	}
	s.save(manuscript, scarf)
	s.see("/patterns/scarf/", "As saved at")
	s.see("/", "Scarf")
}

// TestBand reads what stands under a page from save to save.
func TestBand(t *testing.T) {
	t.Parallel()
	files := studioOf(scarf)
	files["content/patterns/mitten/pattern.md"] = strings.NewReplacer("Scarf", "Mitten", "released = 2026-04-02\n", "").Replace(scarf)
	s := sit(t, files)
	if _, band := s.page("/patterns/scarf/"); strings.Contains(band, "This save changed") || strings.Contains(band, "Not out yet") {
		t.Errorf("before anything was saved it says %q", band)
	}
	if _, band := s.page("/patterns/mitten/"); !strings.HasPrefix(band, "Not out yet As saved at") {
		t.Errorf("a pattern that is not out says %q", band)
	}
	if page, _ := s.page("/"); strings.Contains(page, "Mitten") {
		t.Error("the catalogue has a pattern that is not out")
	}
	s.save(manuscript, strings.Replace(scarf, "L = 62", "L = 64", 1))
	s.see("/patterns/scarf/", "This save changed hem 62 → 64 in L hem.stitches 62 → 64 in L Hem, Foundation in L Ch 63. Ch 65.")
	s.save(manuscript, strings.Replace(long("long"), "L = 62", "L = 64", 1))
	s.see("/patterns/scarf/", "This save changed No value and no row")

	t.Log("a save with a mistake, and the one that mends it, are told of together")
	s.save(manuscript, strings.Replace(strings.Replace(scarf, "L = 62", "L = 64", 1), "tall = 12", "tall = \"tal\"", 1))
	if body := s.see("/patterns/scarf/", "What was saved since has"); strings.Contains(body, "This save changed") {
		t.Errorf("something that is not shown is said to have changed: %q", body)
	}
	s.save(manuscript, strings.Replace(strings.Replace(scarf, "L = 62", "L = 64", 1), "tall = 12", "tall = 16", 1))
	s.see("/patterns/scarf/", "This save changed tall 12 → 16 in every size")

	t.Log("a pattern that is not out is marked so while it has a mistake, too")
	s.save("content/patterns/mitten/pattern.md", strings.NewReplacer("Scarf", "Mitten", "released = 2026-04-02\n", "", "hem + 1", "hemm + 1").Replace(scarf))
	s.see("/patterns/mitten/", "Not out yet This is the page as it was at")

	t.Log("a mistake elsewhere is told of, and no more")
	s.save("content/patterns/mitten/pattern.md", "")
	s.see("/patterns/scarf/", "Elsewhere in the studio there are errors in 1 file.")
	s.see("/~/whole/", "Patterns content/patterns/mitten/pattern.md 1 error Scarf")
}

// TestOwnPages looks at the pages that are the preview's own.
func TestOwnPages(t *testing.T) {
	t.Parallel()
	s := sit(t, studioOf(scarf))
	s.see("/~/sizes/patterns/scarf/", "Value XS S M L XL 2X 3X 4X 5X")
	s.see("/~/sizes/patterns/scarf/", "hem 60 60 60 62 64 66 68 70 72 tall 12")
	s.see("/~/sizes/patterns/scarf/", "Foundation Ch 61. Ch 61. Ch 61. Ch 63. Ch 65. Ch 67. Ch 69. Ch 71. Ch 73.")
	s.see("/~/phone/patterns/scarf/", "A small phone, 320 wide")
	s.save(manuscript, strings.Replace(scarf, "XS = 60, S = 60", "XS = 56, S = 58", 1))
	s.see("/~/sizes/patterns/scarf/", "hem 56 58 60 62 64 66 68 70 72 tall 12")
	if _, body := s.get("/~/phone/patterns/scarf/"); !strings.Contains(body, `<iframe src="/patterns/scarf/"`) {
		t.Errorf("no phone shows the page: %s", body)
	}
}

// TestThousand changes a thousand files at once, and takes them away again.
func TestThousand(t *testing.T) {
	t.Parallel()
	s := sit(t, studioOf(scarf))
	s.page("/patterns/scarf/")
	files := map[string]string{}
	for n := range 1000 {
		files[fmt.Sprintf("content/pages/page-%d.md", n)] = fmt.Sprintf("# Page %d\n\nWords.\n", n)
	}
	for name, text := range files {
		s.save(name, text)
	}
	s.save(manuscript, long("last"))
	s.see("/page-999/", "Words.")
	s.see("/page-0/", "Words.")
	s.see("/patterns/scarf/", "A last scarf.")
	s.do(os.RemoveAll(s.on("content/pages")))
	s.save(manuscript, long("lonely"))
	s.see("/patterns/scarf/", "A lonely scarf.")
	s.until("the menu has no pages that are gone", func() bool {
		page, _ := s.page("/patterns/scarf/")
		return !strings.Contains(page, "page-7")
	})
}

// TestRoundInstead goes round where the system does not tell, says why, and shows the changes all the same.
func TestRoundInstead(t *testing.T) {
	t.Parallel()
	s := sit(t, studioOf(scarf), func(o *Order) { o.Round = true })
	s.see("/patterns/scarf/", "Changes are looked for three times a second instead of being told of: as it was asked to.")
	s.save(manuscript, long("slow"))
	s.see("/patterns/scarf/", "A slow scarf.")
	s.do(os.Rename(s.on("content/patterns/scarf"), s.on("content/patterns/shawl")))
	s.see("/patterns/shawl/", "A slow scarf.")
	s.see("/patterns/scarf/", "The file of this page is gone.")
}

// TestLimits meets the limits of the system while it is watching.
func TestLimits(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		err  error
		says string
	}{
		{syscall.ENOSPC, "fs.inotify.max_user_watches"},
		{syscall.EMFILE, "fs.inotify.max_user_instances"},
		{syscall.ENFILE, "fs.file-max"},
		{errors.New("no such thing here"), "no such thing here"},
	} {
		if said := limit(fmt.Errorf("adding: %w", c.err)); !strings.Contains(said, c.says) {
			t.Errorf("%v is said to be %q", c.err, said)
		}
	}
	folder := t.TempDir()
	if err := os.MkdirAll(filepath.Join(folder, "content", "patterns"), 0o777); err != nil {
		t.Fatal(err)
	}
	l := newLookout(folder, false)
	full := 0
	l.watch = func(*fsnotify.Watcher, string) error { full++; return syscall.ENOSPC }
	l.walkAll()
	if full != 1 || l.watcher != nil || !strings.Contains(l.Rounding(), "max_user_watches") {
		t.Errorf("after %d refusals it says %q", full, l.Rounding())
	}
	if noted := l.take(); !noted.all {
		t.Error("nothing is looked for after that")
	}
}

// A queue that runs over tells of nothing but that: then everything is looked at.
func TestOverflow(t *testing.T) {
	t.Parallel()
	s := sit(t, studioOf(scarf))
	s.page("/patterns/scarf/")
	l := newLookout(s.folder, false)
	ctx := t.Context()
	go l.run(ctx)
	l.watcher.Errors <- fsnotify.ErrEventOverflow
	noted, _, err := l.next(ctx)
	if err != nil || !noted.all {
		t.Errorf("%+v is noted, %v", noted, err)
	}
}

// TestCacheFull cannot keep what it has worked out: that is told and shown, all else goes on, and it is kept when there is room again.
func TestCacheFull(t *testing.T) {
	t.Parallel()
	s := sit(t, studioOf(scarf))
	s.do(s.stop())
	cache := filepath.Dir(recallPast(s.folder, false).file)
	s.do(os.RemoveAll(cache))
	s.do(os.WriteFile(cache, []byte("in the way"), 0o666)) // a full disk refuses in the same way
	s.begin()
	const says = "What was worked out cannot be remembered for the next time: "
	s.await(func(told Told) bool { return len(told.Notices) == 1 && strings.HasPrefix(told.Notices[0], says) })
	s.see("/patterns/scarf/", says)
	s.do(os.Remove(cache))
	s.save(manuscript, long("roomy"))
	s.see("/patterns/scarf/", "A roomy scarf.")
	s.do(s.stop())
	if p := recallPast(s.folder, false); p.kept == nil || p.trouble() != "" {
		t.Errorf("with room again it is not kept: %s", p.trouble())
	}
}

// TestRemembers begins again where it ended, and from nothing when it is to forget.
func TestRemembers(t *testing.T) {
	t.Parallel()
	s := sit(t, studioOf(scarf))
	s.do(s.stop())
	for _, c := range []struct {
		forget bool
		read   int64
	}{{false, 0}, {true, 1}, {false, 0}} {
		s.begin(func(o *Order) { o.Forget = c.forget })
		if told := s.await(func(told Told) bool { return told.First }); told.Work.Read != c.read {
			t.Errorf("beginning again, forgetting %v, the work is %+v", c.forget, told.Work)
		}
		s.page("/patterns/scarf/")
		s.do(s.stop())
	}
}

// It stops when it is told to, whoever is listening.
func TestStops(t *testing.T) {
	t.Parallel()
	s := sit(t, studioOf(scarf))
	answer, _, _ := s.ask("GET / HTTP/1.1\nHost: HERE")
	if answer != 200 {
		t.Fatal(answer)
	}
	heard := make(chan int)
	go func() {
		n, _, _ := s.ask("GET /~/changes?of=/patterns/scarf/ HTTP/1.1\nHost: HERE")
		heard <- n
	}()
	time.Sleep(quiet)
	if err := s.stop(); err != nil {
		t.Errorf("it ends with %v", err)
	}
	if n := <-heard; n != 200 && n != 0 {
		t.Errorf("who was listening hears %d", n)
	}
	if err := Run(t.Context(), Order{Studio: t.TempDir()}); err == nil {
		t.Error("it runs without a studio")
	}
}
