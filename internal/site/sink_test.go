package site

import (
	"io/fs"
	"maps"
	"slices"
	"sync"
	"testing/fstest"
)

// A shelf is a sink that keeps the outputs and what was published of each part, as a folder on disk does.
type shelf struct {
	files  fs.FS
	before map[string]Standing

	mu   sync.Mutex
	have map[string][]byte
	puts []string // those that were not there already, in the order of their coming
}

func (s *shelf) Stands(name string, digest Digest) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	data, is := s.have[name]
	return is && DigestOf(data) == digest
}

func (s *shelf) Put(o Output) error {
	if o.From != "" {
		var err error
		if o.Data, err = fs.ReadFile(s.files, o.From); err != nil {
			return err
		}
	}
	if s.Stands(o.Name, DigestOf(o.Data)) {
		return nil
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	s.have[o.Name] = o.Data
	s.puts = append(s.puts, o.Name)
	return nil
}

// A reporter is a test, drawn at random or not.
type reporter interface {
	Helper()
	Errorf(string, ...any)
	Fatal(...any)
}

// build publishes a studio onto the shelf and takes off what is stale.
func (s *shelf) build(t reporter, files map[string]string, m *Memory) (Site, []string) {
	t.Helper()
	studio := fstest.MapFS{}
	for name, text := range files {
		studio[name] = &fstest.MapFile{Data: []byte(text)}
	}
	if s.have == nil {
		s.have = map[string][]byte{}
	}
	s.files, s.puts = studio, nil
	site, findings, err := Build(Job{Files: Plainly(studio), Program: "test", Memory: m, Before: s.before, Sink: s})
	if err != nil {
		t.Fatal(err)
	}
	s.before = map[string]Standing{}
	wanted := map[string]bool{}
	for _, p := range site.Parts {
		s.before[p.Name] = Standing{p.Uses, p.Summary, p.Outputs}
		for _, name := range p.Outputs {
			wanted[name] = true
			if s.have[name] == nil {
				t.Errorf("%s lists %s, which was never put", p.Name, name)
			}
		}
	}
	maps.DeleteFunc(s.have, func(name string, _ []byte) bool { return !wanted[name] })
	said := make([]string, len(findings))
	for i, f := range findings {
		said[i] = f.String()
		if f.Fix != "" {
			said[i] += "\n    fix: " + f.Fix
		}
	}
	return site, said
}

// names are the outputs on the shelf.
func (s *shelf) names() []string { return slices.Sorted(maps.Keys(s.have)) }
