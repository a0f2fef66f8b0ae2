package publish

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"foundrow/internal/site"
)

// A past is what is remembered of a studio between runs. It lies in the user's cache, and may be lost: then everything is made
// anew and comes out the same.
type past struct {
	file    string // where it is kept; empty when the user has no cache
	program string
	stamps  map[string]stamped
	memory  *site.Memory
}

// What is remembered is a title with the program's name, a line for each file read, and a line for each result.
const (
	pastTitle  = "foundrow remembers 1 "
	pastMiddle = "--\n"
)

// recallPast reads what is remembered of a studio, if it is the same program that remembered it.
func recallPast(studio string, forget bool) *past {
	p := &past{program: program(), memory: new(site.Memory)}
	cache, err := os.UserCacheDir()
	if err != nil {
		return p
	}
	if studio, err = settled(studio); err != nil {
		return p
	}
	p.file = filepath.Join(cache, "foundrow", string(site.DigestOf([]byte(studio))), "remembered")
	text, err := os.ReadFile(p.file)
	if err != nil || forget {
		return p
	}
	text, same := bytes.CutPrefix(text, []byte(pastTitle+p.program+"\n"))
	stamps, memory, whole := bytes.Cut(text, []byte(pastMiddle))
	if !same || !whole {
		return p
	}
	p.stamps = make(map[string]stamped, bytes.Count(stamps, []byte("\n"))+1)
	for line := range strings.Lines(string(stamps)) {
		if name, s, ok := parseStamp(strings.TrimSuffix(line, "\n")); ok {
			p.stamps[name] = s
		}
	}
	p.memory = site.Remember(memory)
	return p
}

// keep remembers a run. That it cannot is nobody's concern but the next run's.
func (p *past) keep(d *disk) {
	if p.file == "" || !p.memory.Fresh() && !d.fresh {
		return
	}
	text := d.appendStamps([]byte(pastTitle + p.program + "\n"))
	text = append(text, pastMiddle...)
	text = append(text, p.memory.Text()...)
	if os.MkdirAll(filepath.Dir(p.file), 0o777) != nil {
		return
	}
	replaceFile(p.file, text)
}

// program names the program that is running: another build of it may make other pages of the same studio.
func program() string {
	name, err := os.Executable()
	if err != nil {
		return ""
	}
	info, err := os.Stat(name)
	if err != nil {
		return ""
	}
	s := stampOf(info)
	return fmt.Sprintf("%x-%x-%x", s.size, s.modified, s.inode)
}
