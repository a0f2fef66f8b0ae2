package site

import (
	"bytes"
	"encoding/json"
	"slices"
	"strconv"
	"sync"

	"foundrow/internal/source"
)

// A Result is what one part of a site came to: a pattern, a plain page, the assets, the catalogue. It is all that is
// remembered of it.
type Result struct {
	Looks    []Look          `json:"looks"`             // everything it was made from, by name and digest
	Findings source.Findings `json:"findings,omitzero"` // what there was to say of it
	State    State           `json:"state,omitzero"`
	Outputs  []Made          `json:"outputs,omitzero"`
	Summary  json.RawMessage `json:"summary,omitzero"` // what the catalogue tells of it
	Anchors  string          `json:"anchors,omitzero"` // its headings that may be linked to, each with a space before it
	Links    []Link          `json:"links,omitzero"`   // to headings of other pages: looked at when all are known
}

// State says whether a part is published.
type State uint8

const (
	Published  State = iota
	Faulty           // it has an error: what was published of it before stays
	Unreleased       // it has no date of release
	Nothing          // there is no text
)

// A Made is an output by its name and what is in it.
type Made struct {
	Name   string `json:"name"`
	Digest Digest `json:"digest"`
}

// A Memory holds the results of the last build and, where they differ, of the one before: going back to how a file was costs
// nothing. The zero value remembers nothing. A Memory belongs to one build at a time.
type Memory struct {
	mu    sync.Mutex
	parts map[string][2]remembered // the newest first
	fresh bool                     // something in it is not in the text it was read from
}

// remembered is a result, or its text until somebody asks.
type remembered struct {
	text   []byte
	result *Result
}

func (r *remembered) get() *Result {
	if r.result == nil && r.text != nil {
		result := new(Result)
		if json.Unmarshal(r.text, result) != nil {
			result = &Result{Looks: []Look{{At: atProgram, Saw: "forgotten"}}}
		}
		r.result = result
	}
	return r.result
}

// recall returns the results remembered of a part, the newest first.
func (m *Memory) recall(part string) []*Result {
	if m == nil {
		return nil
	}
	m.mu.Lock()
	both := m.parts[part]
	m.mu.Unlock()
	var results []*Result
	for i := range both {
		if r := both[i].get(); r != nil {
			results = append(results, r)
		}
	}
	return results
}

// keep remembers a result as the newest of its part.
func (m *Memory) keep(part string, r *Result) {
	if m == nil {
		return
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.parts == nil {
		m.parts = map[string][2]remembered{}
	}
	m.parts[part] = [2]remembered{{result: r}, m.parts[part][0]}
	m.fresh = true
}

// refresh makes an older result that held once more the newest again.
func (m *Memory) refresh(part string) {
	m.mu.Lock()
	defer m.mu.Unlock()
	both := m.parts[part]
	m.parts[part] = [2]remembered{both[1], both[0]}
	m.fresh = true
}

// keepOnly forgets the parts that are gone.
func (m *Memory) keepOnly(parts map[string]bool) {
	if m == nil {
		return
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	for name := range m.parts {
		if !parts[name] {
			delete(m.parts, name)
			m.fresh = true
		}
	}
}

// Fresh reports whether the memory holds anything that the text it was read from does not.
func (m *Memory) Fresh() bool { return m.fresh }

// Text returns the newest result of every part as text, a line each, for Remember to read.
func (m *Memory) Text() []byte {
	m.mu.Lock()
	defer m.mu.Unlock()
	var names []string
	for name := range m.parts {
		names = append(names, name)
	}
	slices.Sort(names)
	var b bytes.Buffer
	for _, name := range names {
		newest := m.parts[name][0]
		text := newest.text
		if text == nil {
			var err error
			if text, err = json.Marshal(newest.result); err != nil {
				panic(err) // a result holds nothing that JSON cannot
			}
		}
		b.WriteString(strconv.Quote(name) + " ")
		b.Write(text)
		b.WriteByte('\n')
	}
	return b.Bytes()
}

// Remember reads what Text returned. Lines that cannot be read are forgotten.
func Remember(text []byte) *Memory {
	m := &Memory{parts: map[string][2]remembered{}}
	for line := range bytes.Lines(text) {
		line = bytes.TrimSuffix(line, []byte("\n"))
		quoted, err := strconv.QuotedPrefix(string(line))
		if err != nil {
			continue
		}
		name, _ := strconv.Unquote(quoted)
		m.parts[name] = [2]remembered{{text: bytes.TrimSpace(line[len(quoted):])}}
	}
	return m
}
