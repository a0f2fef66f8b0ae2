package judges

import (
	"context"
	"fmt"
	"io/fs"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"foundrow/internal/testkit"
)

// published publishes the demonstration studio as the README's first command does, into a folder of its own, and returns the
// folder with the addresses of its pages.
func published(t *testing.T) (folder string, pages []string) {
	t.Helper()
	folder = t.TempDir()
	run := exec.Command("go", "run", "./cmd/foundrow", "publish", "--into", folder)
	run.Dir = filepath.Join("..", "..")
	if out, err := run.CombinedOutput(); err != nil {
		t.Fatalf("publish: %v\n%s", err, out)
	}
	err := fs.WalkDir(os.DirFS(folder), ".", func(name string, d fs.DirEntry, err error) error {
		if err == nil && strings.HasSuffix(name, ".html") {
			pages = append(pages, name)
		}
		return err
	})
	if err != nil || len(pages) == 0 {
		t.Fatalf("no pages published: %v", err)
	}
	return folder, pages
}

// TestHTML puts every page before the Nu HTML Checker (npm vnu-jar), styles and drawings included.
func TestHTML(t *testing.T) {
	checker, there := testkit.Judge(t, "vnu-jar/build/dist/vnu.jar")
	java, java17 := testkit.Judge(t, "java")
	if !there || !java17 {
		return
	}
	folder, pages := published(t)
	out, err := exec.Command(java, "-Xss8m", "-jar", checker, "--skip-non-html", "--also-check-css", "--also-check-svg", folder).CombinedOutput()
	if err != nil {
		t.Fatalf("the checker has errors on %d pages: %v\n%s", len(pages), err, out)
	}
	t.Logf("%d pages checked", len(pages))
}

// sample are the pages put before the browser: one of each make, and all of the pattern with the most sizes.
func sample(pages []string) []string {
	var chosen []string
	seen := map[string]bool{}
	for _, p := range pages {
		kind := fmt.Sprint(strings.Count(p, "/"), strings.HasPrefix(p, "patterns/"), strings.Contains(p, "/print/"))
		if !seen[kind] || strings.Contains(p, "pullover") {
			seen[kind] = true
			chosen = append(chosen, p)
		}
	}
	return chosen
}

// browser starts Chromium without a network of its own.
func browser(t *testing.T, path string) context.Context {
	t.Helper()
	options := append([]chromedp.ExecAllocatorOption{
		chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.UserDataDir(t.TempDir()),
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-sync", true),
	}, chromedp.DefaultExecAllocatorOptions[:]...)
	allocated, stop := chromedp.NewExecAllocator(t.Context(), options...)
	t.Cleanup(stop)
	ctx, cancel := chromedp.NewContext(allocated)
	t.Cleanup(cancel)
	ctx, done := context.WithTimeout(ctx, 5*time.Minute)
	t.Cleanup(done)
	return ctx
}

// TestPagesInBrowser opens pages in Chromium at the widths of a small phone, a phone, a tablet and a desk, light and dark: nothing may
// stick out sideways, axe-core may find no violation of WCAG 2.2 A and AA, and no request may leave the machine.
func TestPagesInBrowser(t *testing.T) {
	chromium, there := testkit.Judge(t, "chromium")
	axe, axeThere := testkit.Judge(t, "axe-core/axe.min.js")
	if !there || !axeThere {
		return
	}
	rules, err := os.ReadFile(axe)
	if err != nil {
		t.Fatal(err)
	}
	folder, pages := published(t)
	site := httptest.NewServer(http.FileServer(http.Dir(folder)))
	defer site.Close()
	ctx := browser(t, chromium)

	for _, name := range sample(pages) {
		for _, width := range []int64{320, 360, 768, 1280} {
			scheme := "light"
			if width == 360 || width == 1280 {
				scheme = "dark"
			}
			look(t, ctx, site.URL+"/"+name, width, scheme)
			overflow, err := chromedp.Run(ctx, chromedp.Evaluate[float64](`document.documentElement.scrollWidth - document.documentElement.clientWidth`))
			if err != nil {
				t.Fatalf("%s at %d px: %v", name, width, err)
			}
			if overflow > 0 {
				t.Errorf("%s at %d px sticks out by %g px", name, width, overflow)
			}
			found, err := chromedp.Run(ctx, chromedp.Evaluate[[]string](string(rules)+";"+runAxe, chromedp.EvalAwaitPromise))
			if err != nil {
				t.Fatalf("axe on %s at %d px: %v", name, width, err)
			}
			for _, v := range found {
				t.Errorf("%s at %d px, %s: %s", name, width, scheme, v)
			}
		}
	}
}

// runAxe asks axe-core for what it finds and where, three places at most for each.
const runAxe = `axe.run(document, {runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]})
	.then(r => r.violations.map(v => v.id + ": " + v.nodes.map(n => n.target.join(" ")).slice(0, 3).join("; ")))`

// look opens an address at a width, in light or dark.
func look(t *testing.T, ctx context.Context, address string, width int64, scheme string) {
	t.Helper()
	media := emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}}
	if _, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, media); err != nil {
		t.Fatal(err)
	}
	if _, err := chromedp.Run(ctx, chromedp.Steps(chromedp.EmulateViewport(width, 900), chromedp.Navigate(address))); err != nil {
		t.Fatalf("%s at %d px: %v", address, width, err)
	}
}

// TestPrint prints pages to A4 and to Letter and has poppler read what came out: the paper asked for, and no complaint.
func TestPrint(t *testing.T) {
	chromium, there := testkit.Judge(t, "chromium")
	pdfinfo, info := testkit.Judge(t, "pdfinfo")
	if !there || !info {
		return
	}
	folder, pages := published(t)
	site := httptest.NewServer(http.FileServer(http.Dir(folder)))
	defer site.Close()
	ctx := browser(t, chromium)
	for _, name := range pages {
		if !strings.Contains(name, "/print/") {
			continue
		}
		for paper, size := range map[string][2]float64{"A4": {8.27, 11.69}, "letter": {8.5, 11}} {
			look(t, ctx, site.URL+"/"+name, 1280, "light")
			printed, err := chromedp.Call(ctx, page.PrintToPDF, page.PrintToPDFParams{PaperWidth: size[0], PaperHeight: size[1]})
			if err != nil {
				t.Fatalf("%s on %s: %v", name, paper, err)
			}
			file := filepath.Join(t.TempDir(), "printed.pdf")
			if err := os.WriteFile(file, printed.Data, 0o644); err != nil {
				t.Fatal(err)
			}
			out, err := exec.Command(pdfinfo, file).CombinedOutput()
			if err != nil || !strings.Contains(string(out), "("+paper+")") {
				t.Errorf("%s on %s: %v\n%s", name, paper, err, out)
			}
		}
	}
}
