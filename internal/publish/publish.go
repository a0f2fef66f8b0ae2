// Package publish writes a studio's site into a folder on disk.
//
// A file is written beside its place and moved there, so that at no moment is one half-written; files that are there already as
// they should be are left alone; files that we wrote and that belong to nothing any more are removed, last of all. What others
// put into the folder is never touched. Which files make up a site is package site's business: publish only keeps the disk.
package publish

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"foundrow/internal/site"
	"foundrow/internal/source"
)

// An Order says what to publish where.
type Order struct {
	Studio string // the folder that has content in it; the current one if empty
	Into   string // the folder to publish into; public in the studio if empty
	Forget bool   // make everything anew, whatever is remembered
	Step   func(done, of int)
}

// A Report says what was done.
type Report struct {
	site.Site
	Into                   string
	Written, Kept, Removed int // files
	Took                   time.Duration
}

// Run publishes a studio. An error is one of the machine, or that there is no studio, or no place to publish it into; whatever is
// wrong with the studio itself is a finding, and the rest of it is published.
func Run(o Order) (Report, source.Findings, error) {
	began := time.Now()
	where, err := o.into()
	if err != nil {
		return Report{}, nil, err
	}
	if _, err := os.Stat(filepath.Join(o.studio(), "content", "studio.toml")); errors.Is(err, os.ErrNotExist) {
		return Report{}, nil, fmt.Errorf("there is no studio in %s: no content/studio.toml", Shown(o.studio()))
	}
	r := Report{Into: Shown(where)}
	findings, err := o.run(where, &r)
	r.Took = time.Since(began)
	return r, findings, err
}

func (o Order) run(where string, r *Report) (source.Findings, error) {
	past := recallPast(o.studio(), o.Forget)
	files, err := openDisk(o.studio(), past.stamps)
	if err != nil {
		return nil, err
	}
	to, err := openFolder(where, r.Into, files)
	if err != nil {
		return nil, err
	}
	defer to.close()
	var findings source.Findings
	r.Site, findings, err = site.Build(site.Job{
		Files: files, Program: past.program, Memory: past.memory, Before: to.had.before(), Sink: to, Step: o.Step,
	})
	if err != nil {
		return nil, errors.Join(err, to.finish(nil))
	}
	if err := to.finish(r.Parts); err != nil {
		return nil, err
	}
	r.Written, r.Removed = len(to.written), to.removed
	r.Kept = len(to.last.files) - r.Written
	past.keep(files)
	findings = append(findings, to.findings...)
	findings.Sort()
	return findings, nil
}

// Read opens a studio's files to be looked into; nothing is remembered of them.
func Read(studio string) (site.Files, error) {
	if studio == "" {
		studio = "."
	}
	return openDisk(studio, nil)
}

func (o Order) studio() string {
	if o.Studio == "" {
		return "."
	}
	return o.Studio
}

// into returns the folder to publish into, having seen that nothing of the studio's own lies in harm's way there.
func (o Order) into() (string, error) {
	into := o.Into
	if into == "" {
		into = filepath.Join(o.studio(), "public")
	}
	place, err := settled(into)
	if err != nil {
		return "", err
	}
	studio, err := settled(o.studio())
	if err != nil {
		return "", err
	}
	if within(studio, place) {
		return "", fmt.Errorf("%s holds the studio itself: publish into a folder of its own", Shown(into))
	}
	for _, own := range [...]string{"content", "layouts"} {
		own, err := settled(filepath.Join(o.studio(), own))
		if err != nil {
			return "", err
		}
		if within(place, own) {
			return "", fmt.Errorf("%s lies in the studio's own %s: publish into a folder of its own", Shown(into), filepath.Base(own))
		}
	}
	return place, nil
}

// settled returns the path of a folder without links, of which the end may not be there yet.
func settled(name string) (string, error) {
	name, err := filepath.Abs(name)
	if err != nil {
		return "", err
	}
	rest := ""
	for at := name; ; at = filepath.Dir(at) {
		real, err := filepath.EvalSymlinks(at)
		if err == nil {
			return filepath.Join(real, rest), nil
		}
		if !errors.Is(err, os.ErrNotExist) || at == filepath.Dir(at) {
			return "", err
		}
		rest = filepath.Join(filepath.Base(at), rest)
	}
}

// within reports whether a path is a folder or lies in it.
func within(name, folder string) bool {
	rest, err := filepath.Rel(folder, name)
	return err == nil && rest != ".." && !strings.HasPrefix(rest, ".."+string(filepath.Separator))
}

// Shown returns a path as it is best read where the command was run.
func Shown(name string) string {
	here, err := os.Getwd()
	if err != nil {
		return name
	}
	full, err := filepath.Abs(name)
	if err != nil {
		return name
	}
	if rest, err := filepath.Rel(here, full); err == nil && len(rest) < len(full) {
		return filepath.ToSlash(rest)
	}
	return filepath.ToSlash(full)
}
