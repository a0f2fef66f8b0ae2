//go:build unix

package publish

import (
	"bytes"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"runtime/metrics"
	"slices"
	"sync"
	"sync/atomic"
	"syscall"
	"testing"
	"time"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"

	"foundrow/internal/formula"
	"foundrow/internal/grade"
	"foundrow/internal/manuscript"
	"foundrow/internal/notation"
	"foundrow/internal/pattern"
	"foundrow/internal/proof"
	"foundrow/internal/source"
	"foundrow/internal/testkit"
)

var sizes = []int{100, 1000, 5000}

// BenchmarkFloor is the least that publishing could cost: reading and rendering the same texts with the Markdown library, parsing,
// working and proofing the same formulas and rows, and moving the same files into place. No front matter is read, no link followed, no
// page worded.
func BenchmarkFloor(b *testing.B) {
	tune(b)
	for _, n := range sizes {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			m := measured(b, n)
			var floor cost
			for b.Loop() {
				floor = floor.plus(m.floor(b))
			}
			b.ReportMetric(0, "ns/op") // reading beforehand is in it
			b.ReportMetric(float64(floor.clock.Microseconds())/float64(b.N)/float64(n), "µs/pattern")
		})
	}
}

// BenchmarkPublish publishes a studio that nothing is known of into an empty folder, and measures the floor in turn with it, so that
// the ratio of the two depends on the machine as little as it can. What it costs when nothing has changed is measured after.
func BenchmarkPublish(b *testing.B) {
	tune(b)
	for _, n := range sizes {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			m := measured(b, n)
			var floor, cold cost
			var peak uint64
			for b.Loop() {
				b.StopTimer()
				floor = floor.plus(m.floor(b))
				m.empty(b)
				debug.FreeOSMemory()
				b.StartTimer()
				began := costs()
				peak = max(peak, heapPeak(func() { m.publish(b) }))
				cold = cold.plus(costs().less(began))
			}
			b.ReportMetric(float64(cold.clock.Microseconds())/float64(b.N)/float64(n), "µs/pattern")
			b.ReportMetric(float64(cold.clock)/float64(floor.clock), "ratio-to-floor")
			b.ReportMetric(float64(cold.processor)/float64(floor.processor), "processor-ratio")
			b.ReportMetric(float64(peak)/(1<<20), "peak-MB")
			unchanged, files := m.unchanged(b)
			b.ReportMetric(float64(unchanged.Microseconds())/float64(n), "unchanged-µs/pattern")
			allowed := 40*float64(n) + 3*float64(files)
			b.ReportMetric(float64(unchanged.Microseconds())/allowed, "unchanged-to-allowed")
		})
	}
}

// tune sets the collector as the program does.
func tune(b *testing.B) {
	old := debug.SetGCPercent(400)
	limit := debug.SetMemoryLimit(256 << 20)
	b.Cleanup(func() {
		debug.SetGCPercent(old)
		debug.SetMemoryLimit(limit)
	})
}

// A cost is what something took by the clock, and of the processors: on a machine that others are using only the second means much.
type cost struct{ clock, processor time.Duration }

var started = time.Now()

// costs returns what the process has taken so far.
func costs() cost {
	var used syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &used); err != nil {
		panic(err)
	}
	return cost{time.Since(started), time.Duration(used.Utime.Nano() + used.Stime.Nano())}
}

func (c cost) plus(d cost) cost { return cost{c.clock + d.clock, c.processor + d.processor} }
func (c cost) less(d cost) cost { return cost{c.clock - d.clock, c.processor - d.processor} }

// A measuredStudio is a made-up studio on disk, with what the floor needs to know of its site.
type measuredStudio struct {
	folder, bare string
	names        []string // of the patterns' texts
	outputs      []string // of the site, with how large each is
	size         map[string]int
}

func measured(b *testing.B, n int) *measuredStudio {
	b.Setenv("XDG_CACHE_HOME", b.TempDir())
	m := &measuredStudio{folder: b.TempDir(), bare: b.TempDir(), size: map[string]int{}}
	files := testkit.Studio(n)
	testkit.WriteStudio(b, m.folder, files)
	for _, name := range slices.Sorted(maps.Keys(files)) {
		if filepath.Base(name) == "pattern.md" {
			m.names = append(m.names, filepath.Join(m.folder, name))
		}
	}
	m.publish(b)
	record, err := readRecord(filepath.Join(m.folder, "public"))
	if err != nil {
		b.Fatal(err)
	}
	for name, f := range record.files {
		m.outputs, m.size[name] = append(m.outputs, name), int(f.size)
	}
	slices.Sort(m.outputs)
	return m
}

func (m *measuredStudio) publish(b *testing.B) Report {
	r, findings, err := Run(Order{Studio: m.folder})
	if err != nil || findings.Errors() {
		b.Fatal(err, findings)
	}
	return r
}

// empty forgets all that was published and remembered.
func (m *measuredStudio) empty(b *testing.B) {
	cache, _ := os.UserCacheDir()
	for _, name := range []string{cache, filepath.Join(m.folder, "public"), m.bare} {
		if err := os.RemoveAll(name); err != nil {
			b.Fatal(err)
		}
	}
	runtime.GC()
}

// floor does the least that could be done and returns how long that took. It goes by batches, so that the patterns which are read
// beforehand, outside of the time that is taken, are never many.
func (m *measuredStudio) floor(b *testing.B) (took cost) {
	m.empty(b)
	markdown := goldmark.New(goldmark.WithExtensions(extension.Table))
	filler := bytes.Repeat([]byte("sc in next st. "), 1<<16)
	var made sync.Map
	const batch = 100
	batches := (len(m.names) + batch - 1) / batch
	for at := range batches {
		names := share(m.names, at, batches)
		outputs := share(m.outputs, at, batches)
		patterns := read(b, names)
		began := costs()
		each(len(names), func(i int) {
			text, err := os.ReadFile(names[i])
			if err != nil {
				b.Error(err)
			}
			var page bytes.Buffer
			if err := markdown.Convert(text, &page); err != nil {
				b.Error(err)
			}
			workBare(patterns[i])
		})
		each(len(outputs), func(i int) {
			name := filepath.Join(m.bare, outputs[i])
			if _, is := made.Load(filepath.Dir(name)); !is {
				os.MkdirAll(filepath.Dir(name), 0o777)
				made.Store(filepath.Dir(name), true)
			}
			if err := replaceFile(name, filler[:min(m.size[outputs[i]], len(filler))]); err != nil {
				b.Error(err)
			}
		})
		took = took.plus(costs().less(began))
	}
	return took
}

// workBare takes a pattern from what is written to what is found: its formulas and rows are parsed, worked in every size and proofread.
func workBare(p *pattern.Pattern) {
	parse := func(parts []pattern.Part) {
		for _, part := range parts {
			formula.Parse(p.File, part.Formula.Span.From, part.Formula.Text)
		}
	}
	for _, m := range p.Measures {
		parse(m.Parts)
	}
	for _, c := range p.Counts {
		parse(c.Parts)
	}
	slots := make(map[int]int, len(p.Slots))
	for i, s := range p.Slots {
		formula.Parse(p.File, s.Formula.Span.From, s.Formula.Text)
		slots[s.Span.From] = i
	}
	in := notation.Input{File: p.File, Terms: p.Terms, Sizes: p.Sizes.Names, Slot: func(from int) int {
		if i, there := slots[from]; there {
			return i
		}
		return -1
	}}
	for _, piece := range p.Pieces {
		in.Body = piece.Body
		notation.Parse(in)
	}
	g, _ := grade.Work(p)
	proof.Check(g, pattern.Studio{})
}

// share returns one of so many equal parts of a list.
func share(all []string, part, parts int) []string {
	return all[part*len(all)/parts : (part+1)*len(all)/parts]
}

// read reads patterns beforehand: the floor only grades them.
func read(b *testing.B, names []string) []*pattern.Pattern {
	tables := manuscript.Published()
	patterns := make([]*pattern.Pattern, len(names))
	each(len(names), func(i int) {
		text, err := os.ReadFile(names[i])
		if err != nil {
			b.Error(err)
		}
		patterns[i], _ = manuscript.ReadPattern(source.NewFile(names[i], string(text)), "made-up", pattern.Studio{}, tables)
	})
	return patterns
}

func each(n int, work func(int)) {
	var next atomic.Int64
	var all sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		all.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				work(i)
			}
		})
	}
	all.Wait()
}

// unchanged publishes again and again what has not changed, once its times are old enough to be sure of.
func (m *measuredStudio) unchanged(b *testing.B) (time.Duration, int) {
	time.Sleep(grain + 100*time.Millisecond)
	m.publish(b)
	least, files := time.Hour, 0
	for range 5 {
		r := m.publish(b)
		if r.Written+r.Removed > 0 {
			b.Fatalf("%d written and %d removed where nothing has changed", r.Written, r.Removed)
		}
		least, files = min(least, r.Took), r.Kept
	}
	return least, files
}

// heapPeak returns the most memory that the program held from the system while something was done.
func heapPeak(do func()) uint64 {
	sample := []metrics.Sample{{Name: "/memory/classes/total:bytes"}, {Name: "/memory/classes/heap/released:bytes"}}
	held := func() uint64 {
		metrics.Read(sample)
		return sample[0].Value.Uint64() - sample[1].Value.Uint64()
	}
	done := make(chan struct{})
	peak := make(chan uint64)
	go func() {
		most := uint64(0)
		for tick := time.Tick(5 * time.Millisecond); ; {
			most = max(most, held())
			select {
			case <-tick:
			case <-done:
				peak <- most
				return
			}
		}
	}()
	do()
	close(done)
	return <-peak
}
