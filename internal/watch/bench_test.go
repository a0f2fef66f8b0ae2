package watch

import (
	"bufio"
	"fmt"
	"io"
	"net/http"
	"os"
	"runtime"
	"runtime/debug"
	"slices"
	"strings"
	"testing"
	"time"

	"foundrow/internal/publish"
	"foundrow/internal/site"
	"foundrow/internal/testkit"
)

// thousand is how many patterns the studios of the benchmarks have.
const thousand = 1000

const measured = "content/patterns/thing-0007/pattern.md"

// revised is the text of the measured pattern after some saves: another number in one of its counts.
func revised(n int) string {
	return strings.Replace(testkit.Pattern(7), "d3 = \"front + 6\"", fmt.Sprintf("d3 = \"front + %d\"", 8+2*(n%100)), 1)
}

// tune sets the collector as the program does.
func tune(b *testing.B) {
	old, limit := debug.SetGCPercent(400), debug.SetMemoryLimit(256<<20)
	b.Cleanup(func() { debug.SetGCPercent(old); debug.SetMemoryLimit(limit) })
}

// large is a studio of a thousand patterns that has been looked over, with a page that is looked at.
func large(b *testing.B) (folder string, s *studio) {
	tune(b)
	folder = b.TempDir()
	testkit.WriteStudio(b, folder, testkit.Studio(thousand))
	tree, err := openTree(folder)
	if err != nil {
		b.Fatal(err)
	}
	s = newStudio(tree, new(site.Memory))
	m := s.open("bench", time.Now())
	s.looked(m.preview.Overview(nil), m)
	if _, found := s.show("patterns/thing-0007/index.html"); !found {
		b.Fatal("the page is not there")
	}
	return folder, s
}

// BenchmarkSave is the server's own share of a save: from looking at the file until the open page is there with its band, and then
// until the whole studio was looked over behind it.
func BenchmarkSave(b *testing.B) {
	for _, c := range []struct {
		what, file string
		text       func(int) string
	}{
		{"pattern", measured, revised},
		{"style", "layouts/pattern/pattern.css", func(n int) string { return fmt.Sprintf("h1 { margin: %dpx }", n) }},
	} {
		b.Run(c.what, func(b *testing.B) {
			folder, s := large(b)
			testkit.WriteStudio(b, folder, map[string]string{c.file: c.text(0)})
			s.tree.look(notices{all: true}, true)
			s.open("bench", time.Now())
			h := &host{studio: s}
			var shown, whole []time.Duration
			for n := 1; b.Loop(); n++ {
				testkit.WriteStudio(b, folder, map[string]string{c.file: c.text(n)})
				began := time.Now()
				if changed, _ := s.tree.look(noticesOf(c.file), true); len(changed) != 1 {
					b.Fatal(changed)
				}
				m := s.open("bench", began)
				if _, _, found := h.page("/patterns/thing-0007/"); !found {
					b.Fatal("the page is gone")
				}
				shown = append(shown, time.Since(began))
				s.looked(m.preview.Overview(nil), m)
				whole = append(whole, time.Since(began))
			}
			b.ReportMetric(0, "ns/op")
			report(b, shown, "page")
			report(b, whole, "whole")
		})
	}
}

// report reports the median and the 99th of 100.
func report(b *testing.B, took []time.Duration, what string) {
	slices.Sort(took)
	b.ReportMetric(float64(took[len(took)/2].Microseconds())/1000, what+"-median-ms")
	b.ReportMetric(float64(took[len(took)*99/100].Microseconds())/1000, what+"-p99-ms")
}

// BenchmarkSaveToBrowser is what a designer waits: from the end of a save until a browser that hears of it has read the new page, through
// the disk's own telling and over a connection. The 50 ms that are waited for an editor to finish are taken off.
func BenchmarkSaveToBrowser(b *testing.B) {
	tune(b)
	s := sit(b, testkit.Studio(thousand))
	at := s.address + "patterns/thing-0007/"
	events, err := http.Get(s.address + "~/changes?of=/patterns/thing-0007/")
	if err != nil {
		b.Fatal(err)
	}
	defer events.Body.Close()
	heard := bufio.NewReader(events.Body)
	fetch := func() string {
		answer, err := http.Get(at)
		if err != nil {
			b.Fatal(err)
		}
		defer answer.Body.Close()
		body, err := io.ReadAll(answer.Body)
		if err != nil {
			b.Fatal(err)
		}
		return string(body)
	}
	hear := func() {
		for {
			line, err := heard.ReadString('\n')
			if err != nil {
				b.Fatal(err)
			}
			if strings.HasPrefix(line, "data: ") {
				return
			}
		}
	}
	hear()
	var took []time.Duration
	for n := 0; b.Loop(); n++ {
		old := fetch()
		s.save(measured, revised(n))
		began := time.Now()
		for {
			hear()
			if body := fetch(); body != old {
				if page, _ := parted(body); page != partedPage(old) {
					break
				}
			}
		}
		took = append(took, time.Since(began)-quiet)
		s.awaitChange(measured)
	}
	b.ReportMetric(0, "ns/op")
	report(b, took, "beyond-debounce")
}

// BenchmarkSaveToChromium is the same in a real browser: until it has brought its page to what was saved. The bars are a median of 40 ms
// and 120 ms for 99 of 100, over -benchtime 500x.
func BenchmarkSaveToChromium(b *testing.B) {
	tune(b)
	s := sit(b, testkit.Studio(thousand))
	tab := openTab(b, s.address+"patterns/thing-0007/")
	if tab == nil {
		return
	}
	tab.see(inBand, "As saved at")
	tab.tell(`document.addEventListener("renewed", () => { window.renewed = performance.timeOrigin + performance.now() })`)
	var took []time.Duration
	for n := 0; b.Loop(); n++ {
		s.save(measured, revised(n))
		began := float64(time.Now().UnixMicro()) / 1000
		s.awaitChange(measured)
		var at float64
		s.until("the browser has the page", func() bool {
			fmt.Sscan(tab.tell("window.renewed || 0"), &at)
			return at > began && strings.Contains(tab.tell(inBand), "d3 ")
		})
		took = append(took, time.Duration((at-began)*1e6)-quiet)
		tab.tell("delete window.renewed")
	}
	b.ReportMetric(0, "ns/op")
	report(b, took, "beyond-debounce")
}

func partedPage(body string) string {
	page, _ := parted(body)
	return page
}

// BenchmarkStart is from nothing to the first page, beside publishing the same studio from nothing.
func BenchmarkStart(b *testing.B) {
	tune(b)
	b.Setenv("XDG_CACHE_HOME", b.TempDir())
	folder := b.TempDir()
	testkit.WriteStudio(b, folder, testkit.Studio(thousand))
	var start, front, cold time.Duration
	for b.Loop() {
		for _, at := range []struct {
			page string
			sum  *time.Duration
		}{{"/patterns/thing-0007/", &start}, {"/", &front}} {
			runtime.GC()
			began := time.Now()
			tree, err := openTree(folder)
			if err != nil {
				b.Fatal(err)
			}
			s := newStudio(tree, new(site.Memory))
			s.open("bench", began)
			if _, _, found := (&host{studio: s}).page(at.page); !found {
				b.Fatal("the page is not there")
			}
			*at.sum += time.Since(began)
		}
		runtime.GC()
		if err := os.RemoveAll(folder + "/public"); err != nil {
			b.Fatal(err)
		}
		r, _, err := publish.Run(publish.Order{Studio: folder, Forget: true})
		if err != nil {
			b.Fatal(err)
		}
		cold += r.Took
	}
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(float64(start)/float64(cold), "page-to-publish")
	b.ReportMetric(float64(front)/float64(cold), "front-page-to-publish")
}

// BenchmarkMemory saves and saves; what matters is how much more memory is in use at the end than after the first hundred. Give it
// -benchtime 10000x.
func BenchmarkMemory(b *testing.B) {
	folder, s := large(b)
	h := &host{studio: s}
	var first, last uint64
	for n := 0; b.Loop(); n++ {
		testkit.WriteStudio(b, folder, map[string]string{measured: revised(n)})
		s.tree.look(noticesOf(measured), true)
		m := s.open("bench", time.Now())
		h.page("/patterns/thing-0007/")
		s.looked(m.preview.Overview(nil), m)
		if n == 99 {
			first = inUse()
		}
	}
	last = inUse()
	runtime.KeepAlive(s)
	if first == 0 {
		first = last
	}
	b.ReportMetric(float64(last)/(1<<20), "MB")
	b.ReportMetric(float64(int64(last)-int64(first))/(1<<20), "MB-more")
}

func inUse() uint64 {
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.HeapAlloc
}
