package watch

import (
	"context"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"foundrow/internal/testkit"
)

// A tab is a page that is open in Chromium.
type tab struct {
	t   testing.TB
	ctx context.Context
}

// openTab starts Chromium, without a network of its own, and opens a page. It is nil where there is no Chromium.
func openTab(t testing.TB, address string) *tab {
	t.Helper()
	chromium, there := testkit.Judge(t, "chromium")
	if !there {
		return nil
	}
	options := append([]chromedp.ExecAllocatorOption{
		chromedp.ExecPath(chromium), chromedp.NoSandbox, chromedp.UserDataDir(t.TempDir()),
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-sync", true),
	}, chromedp.DefaultExecAllocatorOptions[:]...)
	allocated, stop := chromedp.NewExecAllocator(context.Background(), options...)
	ctx, cancel := chromedp.NewContext(allocated)
	ctx, done := context.WithTimeout(ctx, 5*time.Minute)
	t.Cleanup(func() { done(); cancel(); stop() })
	b := &tab{t, ctx}
	b.size(390, 800)
	b.open(address)
	return b
}

func (b *tab) size(width, height int64) {
	b.t.Helper()
	if _, err := chromedp.Run(b.ctx, chromedp.EmulateViewport(width, height)); err != nil {
		b.t.Fatal(err)
	}
}

func (b *tab) open(address string) {
	b.t.Helper()
	if _, err := chromedp.Run(b.ctx, chromedp.Navigate(address)); err != nil {
		b.t.Fatal(err)
	}
}

// tell evaluates a script and returns what it gives as text.
func (b *tab) tell(script string) string {
	b.t.Helper()
	said, err := chromedp.Run(b.ctx, chromedp.Evaluate[string]("String("+script+")"))
	if err != nil {
		b.t.Fatalf("%s: %v", script, err)
	}
	return said
}

// see waits until a script gives a text that holds some words.
func (b *tab) see(script, words string) {
	b.t.Helper()
	var said string
	for end := time.Now().Add(patient); time.Now().Before(end); time.Sleep(5 * time.Millisecond) {
		if said = b.tell(script); strings.Contains(said, words) {
			return
		}
	}
	b.t.Fatalf("%s never says %q, but %q", script, words, said)
}

const (
	inPage = `document.querySelector("main").innerText`
	inBand = `[...document.getElementById("~band").shadowRoot.querySelectorAll(".band")].map(e => e.innerText.replace(/\s+/g, " ")).join()`
)

// TestPageFollows edits, errs and mends while a page is open: it follows in place, and what its reader did to it stays.
func TestPageFollows(t *testing.T) {
	t.Parallel()
	s := sit(t, studioOf(strings.Replace(scarf, "A scarf.", "A scarf.\n\n"+strings.Repeat("- a line\n", 200)+"\nThe end. [A link](#scarf)", 1)))
	edited := func(old, new string) string {
		text, err := os.ReadFile(s.on(manuscript))
		s.do(err)
		return strings.Replace(string(text), old, new, 1)
	}
	b := openTab(t, s.address+"patterns/scarf/")
	if b == nil {
		return
	}
	b.see(inBand, "As saved at")
	b.tell(`(() => {
		window.before = true; // is gone when the page is loaded anew
		const link = [...document.links].find(a => a.innerText === "A link");
		link.focus();
		link.scrollIntoView();
		const tick = document.createElement("input"); // as a script of the page's own would
		tick.type = "checkbox";
		link.after(tick);
		tick.click();
		link.closest("p").classList.add("done");
		document.documentElement.dataset.size = "L";
		document.body.dataset.hand = "left";
	})()`)
	state := `[window.before, document.activeElement.innerText, document.querySelector("input:checked") !== null, document.querySelector("p.done") !== null,
		document.documentElement.dataset.size, document.body.dataset.hand, Math.round(document.activeElement.getBoundingClientRect().top)].join(" · ")`
	kept := b.tell(state)
	if !strings.HasPrefix(kept, "true · A link · true · true · L · left") {
		t.Fatalf("the state of the page is %q", kept)
	}
	check := func(when string) {
		t.Helper()
		if now := b.tell(state); now != kept {
			t.Errorf("%s the state of the page is %q, and was %q", when, now, kept)
		}
	}

	s.save(manuscript, edited("L = 62", "L = 64"))
	b.see(inPage, "60 (60, 60, 64, 64)")
	b.see(inBand, "This save changed hem 62 → 64 in L hem.stitches 62 → 64 in L")
	check("after an edit below")

	s.save(manuscript, edited("- a line\n", "- another line\n- a line\n"))
	b.see(inPage, "another line")
	b.see(inBand, "No value and no row")
	check("after an edit above")

	s.save(manuscript, edited("hem + 1", "hemm + 1"))
	b.see(inBand, "What was saved since has 1 error")
	b.see(inBand, "nothing is named hemm content/patterns/scarf/pattern.md:")
	b.see(inPage, "Ch 61 (61, 61, 65, 65)")
	check("after a mistake")

	s.save(manuscript, strings.Replace(edited("hemm + 1", "hem + 1"), "M = 60", "M = 62", 1))
	b.see(inPage, "Ch 61 (61, 63, 65, 65)")
	b.see(inBand, "As saved at")
	check("after it was mended")

	s.save("layouts/words/words.css", "main p { color: rgb(1, 2, 3) }")
	b.see(`getComputedStyle(document.querySelector("main p.done")).color`, "rgb(1, 2, 3)")
	b.see(`document.querySelectorAll("link[rel=stylesheet]").length`, "1")
	if b.tell("window.before") != "true" {
		t.Error("the page was loaded anew for a style")
	}

	s.do(os.Rename(s.on("content/patterns/scarf"), s.on("content/patterns/shawl")))
	b.see(inBand, "It seems to be patterns/shawl now.")
	b.see(inPage, "another line")

	s.do(s.stop())
	b.see(inBand, "Not connected")
	b.see(inPage, "another line")
	if b.tell("window.before") != "true" {
		t.Error("the page was loaded anew")
	}
}

// TestPageComesBack stops the preview and starts it again, with another text: the open page finds it.
func TestPageComesBack(t *testing.T) {
	t.Parallel()
	s := sit(t, studioOf(scarf))
	b := openTab(t, s.address+"patterns/scarf/")
	if b == nil {
		return
	}
	b.see(inBand, "As saved at")
	at := s.address
	s.do(s.stop())
	b.see(inBand, "Not connected")
	s.save(manuscript, long("later"))
	for s.address = ""; s.address != at; { // another test may have taken the port for a moment
		s.begin(func(o *Order) { o.Port = portOf(at) })
		if s.address != at {
			s.do(s.stop())
		}
	}
	b.see(inPage, "A later scarf.")
	b.see(inBand, "As saved at")
}

// TestOwnPagesInBrowser opens the preview's own pages, and the band over a mistake, at the widths of a phone and of a desk, light and dark:
// nothing may stick out sideways, and axe-core may find no violation.
func TestOwnPagesInBrowser(t *testing.T) {
	t.Parallel()
	axe, there := testkit.Judge(t, "axe-core/axe.min.js")
	if !there {
		return
	}
	rules, err := os.ReadFile(axe)
	if err != nil {
		t.Fatal(err)
	}
	files := studioOf(scarf)
	files["content/patterns/mitten/pattern.md"] = strings.NewReplacer("Scarf", "Mitten", "released = 2026-04-02\n", "").Replace(scarf)
	files["content/patterns/shawl/pattern.md"] = strings.NewReplacer("Scarf", "Shawl", "hem + 1", "hemm + 1").Replace(scarf)
	s := sit(t, files)
	b := openTab(t, s.address)
	if b == nil {
		return
	}
	s.page("/patterns/scarf/")
	s.save(manuscript, strings.Replace(scarf, "L = 62", "L = 64", 1))
	s.see("/patterns/scarf/", "This save changed")
	for _, at := range []string{"patterns/scarf/", "patterns/mitten/", "patterns/shawl/", "~/sizes/patterns/scarf/", "~/phone/patterns/scarf/", "~/whole/", "nowhere/"} {
		for _, width := range []int64{320, 1280} {
			scheme := "light"
			if width == 320 {
				scheme = "dark"
			}
			b.size(width, 900)
			media := emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}}
			if _, err := chromedp.Call(b.ctx, emulation.SetEmulatedMedia, media); err != nil {
				t.Fatal(err)
			}
			b.open(s.address + at)
			b.see(inBand, "Whole studio")
			if over := b.tell(`document.documentElement.scrollWidth - document.documentElement.clientWidth`); over != "0" {
				t.Errorf("%s at %d px sticks out by %s px", at, width, over)
			}
			found, err := chromedp.Run(b.ctx, chromedp.Evaluate[[]string](string(rules)+";"+runAxe, chromedp.EvalAwaitPromise))
			if err != nil {
				t.Fatalf("axe on %s at %d px: %v", at, width, err)
			}
			for _, v := range found {
				t.Errorf("%s at %d px, %s: %s", at, width, scheme, v)
			}
		}
	}
}

// runAxe asks axe-core for what it finds and where, three places at most for each.
const runAxe = `axe.run(document, {iframes: false, runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]})
	.then(r => r.violations.map(v => v.id + ": " + v.nodes.map(n => n.target.join(" ") + " " + n.failureSummary).slice(0, 3).join("; ")))`
