package watch

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"sync"
	"time"

	"foundrow/internal/site"
)

// A past is what is remembered of a studio between previews, so that the next one begins where this one ended. It lies in the
// user's cache and may be lost: then everything is worked out once more, and comes out the same.
type past struct {
	file    string // empty where there is no cache
	program string
	memory  *site.Memory

	mu      sync.Mutex
	waiting *time.Timer
	why     string // why it could not be kept; empty while it can
	kept    []byte
}

const pastTitle = "foundrow previewed 1 "

// rest is how long it must be quiet before a past is written.
const rest = 5 * time.Second

func recallPast(studio string, forget bool) *past {
	p := &past{program: program(), memory: new(site.Memory)}
	cache, err := os.UserCacheDir()
	if err != nil {
		return p
	}
	where, err := filepath.Abs(studio)
	if err == nil {
		where, err = filepath.EvalSymlinks(where)
	}
	if err != nil {
		return p
	}
	p.file = filepath.Join(cache, "foundrow", string(site.DigestOf([]byte(where))), "previewed")
	text, err := os.ReadFile(p.file)
	if err != nil || forget {
		return p
	}
	if text, same := bytes.CutPrefix(text, []byte(pastTitle+p.program+"\n")); same {
		p.memory, p.kept = site.Remember(text), text
	}
	return p
}

// later keeps the past when nothing has happened for a while, and calls then.
func (p *past) later(then func()) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.waiting != nil {
		p.waiting.Stop()
	}
	p.waiting = time.AfterFunc(rest, func() { p.keep(); then() })
}

// keep writes the past where it can be found the next time.
func (p *past) keep() {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.waiting != nil {
		p.waiting.Stop()
	}
	if p.file == "" {
		return
	}
	text := p.memory.Text()
	if bytes.Equal(text, p.kept) {
		return
	}
	p.why = ""
	if err := replace(p.file, append([]byte(pastTitle+p.program+"\n"), text...)); err != nil {
		p.why = err.Error()
		return
	}
	p.kept = text
}

// trouble says why the past could not be kept when that was tried last.
func (p *past) trouble() string {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.why
}

// replace writes a file beside its place and moves it there.
func replace(name string, text []byte) error {
	if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
		return err
	}
	part, err := os.CreateTemp(filepath.Dir(name), ".previewed-*")
	if err != nil {
		return err
	}
	_, err = part.Write(text)
	if closed := part.Close(); err == nil {
		err = closed
	}
	if err == nil {
		err = os.Rename(part.Name(), name)
	}
	if err != nil {
		os.Remove(part.Name())
	}
	return err
}

// program names the program that is running: another build of it may work out other things.
func program() string {
	name, err := os.Executable()
	if err != nil {
		return ""
	}
	info, err := os.Stat(name)
	if err != nil {
		return ""
	}
	return fmt.Sprintf("%x-%x", info.Size(), info.ModTime().UnixNano())
}
