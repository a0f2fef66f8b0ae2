package publish

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"foundrow/internal/site"
)

// The record of what was published lies beside it. It is what tells our files from everybody else's, so it is not a memory that
// may be lost: without it nothing there is replaced or removed.
const (
	recordName  = ".published"
	journalName = ".publishing" // the names a run that was cut short was about to write
	recordTitle = "foundrow published 1"
)

// A record is what was published, by part of the site.
type record struct {
	parts []part
	files map[string]file // by name; a file has one owner
	stray map[string]bool // names that a run which was cut short may have written
}

// A part is one pattern, page or catalogue as it was published.
type part struct {
	name    string
	uses    string          // the part whose assets its pages use
	summary json.RawMessage // what the catalogue tells of it
	files   []string
}

// A file is an output as we left it.
type file struct {
	name    string
	digest  site.Digest
	size    int64
	changed int64 // nanoseconds since 1970, as the disk keeps it
}

// readRecord reads what was published into a folder; an empty record where nothing was.
func readRecord(folder string) (*record, error) {
	r := &record{files: map[string]file{}, stray: map[string]bool{}}
	text, err := os.ReadFile(filepath.Join(folder, recordName))
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return nil, err
	}
	if len(text) > 0 {
		if err := r.parse(string(text)); err != nil {
			return nil, fmt.Errorf("%s: %w", filepath.Join(folder, recordName), err)
		}
	}
	names, err := os.ReadFile(filepath.Join(folder, journalName))
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return nil, err
	}
	for line := range bytes.Lines(names) {
		// A line that was cut short names no file that was begun.
		if name, whole := strings.CutSuffix(string(line), "\n"); whole && filepath.IsLocal(name) {
			r.stray[name] = true
		}
	}
	return r, nil
}

// parse reads the record's text: a line for each part, and below it, indented, a line for each of its files.
func (r *record) parse(text string) error {
	lines := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	if lines[0] != recordTitle {
		return errors.New("this is not a record that this foundrow can read; move the folder away and publish into a new one")
	}
	r.files = make(map[string]file, len(lines))
	for i, line := range lines[1:] {
		f, ok := strings.CutPrefix(line, " ")
		if ok = ok && len(r.parts) > 0; ok {
			var this file
			if this, ok = parseFile(f); ok {
				owner := &r.parts[len(r.parts)-1]
				owner.files = append(owner.files, this.name)
				r.files[this.name] = this
			}
		} else if name, rest, cut := strings.Cut(line, "\t"); cut {
			uses, summary, _ := strings.Cut(rest, "\t")
			r.parts = append(r.parts, part{name: name, uses: uses, summary: json.RawMessage(summary)})
			ok = true
		}
		if !ok {
			return fmt.Errorf("line %d is damaged; move the folder away and publish into a new one", i+2)
		}
	}
	return nil
}

// parseFile reads "digest size changed name".
func parseFile(line string) (file, bool) {
	digest, line, _ := strings.Cut(line, " ")
	size, line, _ := strings.Cut(line, " ")
	changed, name, _ := strings.Cut(line, " ")
	f := file{name: name, digest: site.Digest(digest)}
	var err1, err2 error
	f.size, err1 = strconv.ParseInt(size, 10, 64)
	f.changed, err2 = strconv.ParseInt(changed, 10, 64)
	return f, err1 == nil && err2 == nil && filepath.IsLocal(name)
}

func (r *record) sort() {
	slices.SortFunc(r.parts, func(a, b part) int { return strings.Compare(a.name, b.name) })
}

// text prints the record for parse to read.
func (r *record) text() []byte {
	r.sort()
	b := append(make([]byte, 0, 128*(len(r.files)+len(r.parts))), recordTitle+"\n"...)
	for _, p := range r.parts {
		b = append(b, p.name+"\t"+p.uses+"\t"...)
		b = append(append(b, p.summary...), '\n')
		for _, name := range p.files {
			f := r.files[name]
			b = append(b, " "+string(f.digest)+" "...)
			b = append(strconv.AppendInt(b, f.size, 10), ' ')
			b = append(strconv.AppendInt(b, f.changed, 10), ' ')
			b = append(append(b, f.name...), '\n')
		}
	}
	return b
}

// before returns what was published of each part, for site to keep what it must.
func (r *record) before() map[string]site.Standing {
	all := make(map[string]site.Standing, len(r.parts))
	for _, p := range r.parts {
		all[p.name] = site.Standing{Uses: p.uses, Summary: p.summary, Outputs: p.files}
	}
	return all
}
