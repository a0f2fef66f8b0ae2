package cli

import (
	"fmt"
	"runtime"
	"strings"
	"sync"
	"sync/atomic"
	"text/tabwriter"

	"foundrow/internal/grade"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/proof"
	"foundrow/internal/source"
)

// A sweep is one pattern tried for makers between and beyond its sizes. It is nil inside where the pattern has errors of its own.
type sweep struct {
	slug, title string
	file        func(source.Findings) source.Findings // names files from here
	*grade.Swept
}

// sweeps tries patterns of a studio, one after the other.
func sweeps(d desk, patterns []proof.Pattern) []sweep {
	var out []sweep
	for _, p := range patterns {
		s := sweep{slug: p.Slug, title: p.Title, file: func(found source.Findings) source.Findings { return fromHere(found, d.studio) }}
		if g, found := d.Pattern(p.Slug); g != nil && !found.Errors() {
			s.Swept = sweepOf(g.Pattern)
		}
		out = append(out, s)
	}
	return out
}

// sweepOf tries the parts of a pattern's grid on all processors.
func sweepOf(p *pattern.Pattern) *grade.Swept {
	g, _ := grade.NewGrid(p, grade.Steps{})
	if g == nil {
		return nil
	}
	parts := make([][]grade.Trial, g.Parts())
	var next atomic.Int64
	var hands sync.WaitGroup
	for range min(len(parts), runtime.GOMAXPROCS(0)) {
		hands.Go(func() {
			for i := int(next.Add(1)) - 1; i < len(parts); i = int(next.Add(1)) - 1 {
				parts[i] = g.Try(i)
			}
		})
	}
	hands.Wait()
	return g.Sum(parts)
}

// print reports a sweep for people.
func (s sweep) print() string {
	var b strings.Builder
	if s.Swept == nil {
		fmt.Fprintf(&b, "%s was not swept: it has errors in its own sizes\n", s.title)
		return b.String()
	}
	tried := proof.Number(s.Pairs, "maker", "makers")
	if s.CameOut == s.Pairs {
		fmt.Fprintf(&b, "%s: every row comes out for all %s tried\n\n", s.title, tried)
	} else {
		fmt.Fprintf(&b, "%s: every row comes out for %d of %s tried\n\n", s.title, s.CameOut, tried)
	}
	s.ranges(&b)
	s.found(&b)
	if e := s.Smallest; e != nil {
		fmt.Fprintf(&b, "\nthe smallest change for which something does not come out: %s\n", s.example(*e))
		for _, f := range s.file(e.Findings) {
			b.WriteString("  " + f.String() + "\n")
		}
	}
	return b.String()
}

// ranges writes a line for every measurement and for the tension.
func (s sweep) ranges(b *strings.Builder) {
	t := tabwriter.NewWriter(b, 0, 0, 3, ' ', 0)
	fmt.Fprintln(t, "every row comes out\tin your tension\tin theirs\ttried")
	for i, r := range s.Own {
		fmt.Fprintf(t, "  %s\t%s\t%s\t%s\n", r.Label, s.length(s.InHers[i]), s.length(r), s.span(r.Tried))
	}
	fmt.Fprintf(t, "  stitches\t\t%s\t%s\n", tension(s.Stitches), ofTension(s.Stitches.Tried))
	fmt.Fprintf(t, "  rows\t\t%s\t%s\n", tension(s.Rows), ofTension(s.Rows.Tried))
	t.Flush()
}

func (s sweep) length(r grade.Range) string {
	if r.None {
		return "nowhere"
	}
	return s.span(r.Good)
}

func (s sweep) span(b grade.Bounds) string {
	if b.From == b.To {
		return "only " + s.say(b.From)
	}
	if s.Pattern.Tape.Unit == measure.Inch {
		return measure.Inches(b.From) + " to " + s.say(b.To)
	}
	return b.From.Decimal(1) + " to " + s.say(b.To)
}

func (s sweep) say(n measure.Num) string {
	if s.Pattern.Tape.Unit == measure.Inch {
		return measure.Inches(n) + " inch"
	}
	return n.Decimal(1) + " cm"
}

func tension(r grade.Range) string {
	if r.None {
		return "nowhere"
	}
	return ofTension(r.Good)
}

func ofTension(b grade.Bounds) string {
	if b.From == b.To {
		return more(b.From)
	}
	return more(b.From) + " to " + more(b.To)
}

// more words a tension: "5% fewer", "as yours", "10% more".
func more(share measure.Num) string {
	percent := share.Abs().Mul(measure.Int(100)).Decimal(1) + "%"
	switch share.Sign() {
	case -1:
		return percent + " fewer"
	case 1:
		return percent + " more"
	}
	return "as yours"
}

// mostFound is how many errors a report shows before it only counts them.
const mostFound = 6

// found writes what was found: errors with the nearest maker, queries by their rules.
func (s sweep) found(b *strings.Builder) {
	var rules []string
	pairs := map[string]int{}
	shown, hidden := 0, 0
	for _, m := range s.Met {
		switch {
		case m.Finding.Severity == source.Query:
			if _, there := pairs[m.Finding.Rule]; !there {
				rules = append(rules, m.Finding.Rule)
			}
			pairs[m.Finding.Rule] = max(pairs[m.Finding.Rule], m.Pairs)
		case shown == mostFound:
			hidden++
		default:
			if shown++; shown == 1 {
				b.WriteString("\nwhat does not come out, for how many, and nearest to a size for whom\n")
			}
			fmt.Fprintf(b, "%6d  line %d: %s [%s]\n        %s\n", m.Pairs, m.Finding.Place.Line, m.Finding.Message, m.Finding.Rule, s.example(m.Nearest))
		}
	}
	if hidden > 0 {
		fmt.Fprintf(b, "        and %s more, which --json lists\n", proof.Number(hidden, "finding", "findings"))
	}
	if len(rules) > 0 {
		for i, r := range rules {
			rules[i] = fmt.Sprintf("%s for %d", r, pairs[r])
		}
		b.WriteString("\nqueries: " + source.List(rules, "and") + "\n")
	}
}

// example words one maker: "5X, but bust 161.5 cm and not 157.5 cm, rows 5% fewer".
func (s sweep) example(e grade.Example) string {
	var words []string
	for _, c := range e.Own {
		is := c.Label + " " + s.say(c.Is)
		if !c.InSize.IsLost() {
			is += " and not " + s.say(c.InSize)
		}
		words = append(words, is)
	}
	if e.Tension.Stitches.Sign() != 0 {
		words = append(words, "stitches "+more(e.Tension.Stitches))
	}
	if e.Tension.Rows.Sign() != 0 {
		words = append(words, "rows "+more(e.Tension.Rows))
	}
	size := "size " + e.Size
	if e.Size == "" {
		size = "the one size"
	}
	if words == nil {
		return size + " as it is, without what you pinned"
	}
	return size + ", but " + strings.Join(words, ", ")
}
