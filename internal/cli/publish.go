package cli

import (
	"fmt"
	"io"
	"strings"
	"sync"
	"time"

	"foundrow/internal/proof"
	"foundrow/internal/publish"
	"foundrow/internal/source"
)

func publishCommand() command {
	return command{
		name: "publish",
		does: "make the site: a page and a printable page for each pattern, and the catalogue",
		lesson: `
usage: foundrow publish [--studio FOLDER] [--into FOLDER]

Works every pattern of the studio in every size and writes the finished site
into the folder public, ready to be put on the web as it is.

A pattern with an error is left out, and the others are published; if it was
published before, its old pages stay until it is mended. A pattern without a
date, as in

  released = 2026-04-02

is not out yet and is not published. Pages that have not changed are not
written again, and pages of patterns that you took away are removed. Whatever
else lies in the folder is left alone.

Exit status: 0 when there are no errors, 1 when there are, 2 when it could not
run.
`,
		example: `
  foundrow publish
      the studio in this folder, into ./public
  foundrow publish --studio ~/patterns --into ~/www/patterns
      the studio in ~/patterns, into a folder of its own elsewhere
`,
		options: func(o *options) {
			o.takeStudio()
			o.taken.StringVar(&o.into, "into", "", "the `folder` to write the site into; public in the studio if left out")
			o.taken.BoolVar(&o.forget, "forget", false, "make everything anew, remembering nothing of earlier runs")
		},
		run: runPublish,
	}
}

func runPublish(s *call, o options, words []string) (int, error) {
	if len(words) > 0 {
		return couldNot, usageError{"publish makes the whole studio and takes no " + words[0], "to name the studio, write --studio " + words[0]}
	}
	line := &progress{to: s.talk, live: s.live, began: time.Now()}
	report, found, err := publish.Run(publish.Order{Studio: o.studio, Into: o.into, Forget: o.forget, Step: line.step})
	line.wipe()
	if err != nil {
		return couldNot, err
	}
	found = fromHere(found, o.studio)
	s.findings(s.talk, found, s.colourTalk)
	fmt.Fprintln(s.talk, summary(report, found))
	return statusOf(found), nil
}

// summary says in one line what was done.
func summary(r publish.Report, found source.Findings) string {
	var not []string
	if n := len(r.Unreleased); n > 0 {
		not = append(not, fmt.Sprint(n)+" not released")
	}
	if r.LeftOut != nil {
		not = append(not, manuscripts(r.LeftOut)+" left out")
	}
	if r.Stayed != nil {
		not = append(not, manuscripts(r.Stayed)+" as before")
	}
	but := ""
	if not != nil {
		but = " (" + strings.Join(not, ", ") + ")"
	}
	return fmt.Sprintf("%s in %s%s: %d written, %d kept, %d removed in %s; %s",
		proof.Number(r.Patterns, "pattern", "patterns"), r.Into, but, r.Written, r.Kept, r.Removed, shortly(r.Took), proof.Count(found))
}

// manuscripts words how many patterns and pages there are among some files: "1 pattern and 2 pages".
func manuscripts(files []string) string {
	var patterns, pages int
	for _, name := range files {
		if strings.Contains(name, "/patterns/") {
			patterns++
		} else {
			pages++
		}
	}
	var words []string
	if patterns > 0 {
		words = append(words, proof.Number(patterns, "pattern", "patterns"))
	}
	if pages > 0 {
		words = append(words, proof.Number(pages, "page", "pages"))
	}
	return source.List(words, "and")
}

// shortly prints how long something took, to two figures or so.
func shortly(d time.Duration) string {
	switch {
	case d < 10*time.Millisecond:
		return d.Round(100 * time.Microsecond).String()
	case d < time.Second:
		return d.Round(time.Millisecond).String()
	}
	return d.Round(10 * time.Millisecond).String()
}

// progress is a line on a terminal that says how far a run has come, once it takes longer than anybody waits without a word.
type progress struct {
	to    io.Writer
	live  bool
	began time.Time

	mu     sync.Mutex
	last   time.Time
	showed bool
}

func (p *progress) step(done, of int) {
	if !p.live {
		return
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	now := time.Now()
	if now.Sub(p.began) < time.Second || now.Sub(p.last) < 100*time.Millisecond {
		return
	}
	p.last, p.showed = now, true
	fmt.Fprintf(p.to, "\r%d of %d patterns and pages ", done, of)
}

func (p *progress) wipe() {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.showed {
		fmt.Fprint(p.to, "\r\x1b[K")
		p.showed = false
	}
}
