package cli

import (
	"encoding/json"
	"io"

	"foundrow/internal/grade"
	"foundrow/internal/measure"
	"foundrow/internal/proof"
)

// A sweptJSON is a sweep for programs. Lengths are in the pattern's unit, tensions are shares: "-0.05" is 5% fewer.
type sweptJSON struct {
	Slug     string       `json:"slug"`
	Title    string       `json:"title"`
	Unit     string       `json:"unit"`
	Pairs    int          `json:"pairs"`
	CameOut  int          `json:"came_out"`
	Own      []rangeJSON  `json:"own"`
	Stitches *rangeJSON   `json:"stitches"`
	Rows     *rangeJSON   `json:"rows"`
	Findings []metJSON    `json:"findings"`
	Smallest *exampleJSON `json:"smallest"`
}

// A rangeJSON is where a measurement was tried and where every row comes out: in every tension of the ranges, and in the designer's
// own; null where that is nowhere.
type rangeJSON struct {
	Name     string      `json:"name"`
	Tried    boundsJSON  `json:"tried"`
	ComesOut *boundsJSON `json:"comes_out"`
	InYours  *boundsJSON `json:"in_your_tension,omitempty"`
}

type boundsJSON struct {
	From string `json:"from"`
	To   string `json:"to"`
}

type metJSON struct {
	Rule     string      `json:"rule"`
	Severity string      `json:"severity"`
	Line     int         `json:"line"`
	Column   int         `json:"column"`
	Pairs    int         `json:"pairs"`
	Message  string      `json:"message"`
	Nearest  exampleJSON `json:"nearest"`
}

type exampleJSON struct {
	Size     string            `json:"size"`
	Own      map[string]string `json:"own"`
	Stitches string            `json:"stitches"`
	Rows     string            `json:"rows"`
	Findings []string          `json:"findings"`
}

func (s sweep) json() sweptJSON {
	out := sweptJSON{Slug: s.slug, Title: s.title, Own: []rangeJSON{}, Findings: []metJSON{}}
	if s.Swept == nil {
		return out
	}
	out.Unit, out.Pairs, out.CameOut = unitOf(s.Pattern.Tape).String(), s.Pairs, s.CameOut
	for i, r := range s.Own {
		j := jsonOf(r)
		j.InYours = jsonOf(s.InHers[i]).ComesOut
		out.Own = append(out.Own, j)
	}
	stitches, rows := jsonOf(s.Stitches), jsonOf(s.Rows)
	out.Stitches, out.Rows = &stitches, &rows
	for _, m := range s.Met {
		f := m.Finding
		out.Findings = append(out.Findings, metJSON{f.Rule, f.Severity.String(), f.Place.Line, f.Place.Column, m.Pairs, f.Message, s.exampleJSON(m.Nearest)})
	}
	if s.Smallest != nil {
		e := s.exampleJSON(*s.Smallest)
		out.Smallest = &e
	}
	return out
}

func (s sweep) exampleJSON(e grade.Example) exampleJSON {
	out := exampleJSON{Size: e.Size, Own: map[string]string{}, Stitches: proof.Exact(e.Tension.Stitches), Rows: proof.Exact(e.Tension.Rows), Findings: []string{}}
	for _, c := range e.Own {
		out.Own[c.Name] = proof.Exact(c.Is)
	}
	for _, f := range s.file(e.Findings) {
		out.Findings = append(out.Findings, f.String())
	}
	return out
}

func jsonOf(r grade.Range) rangeJSON {
	of := func(b grade.Bounds) boundsJSON { return boundsJSON{proof.Exact(b.From), proof.Exact(b.To)} }
	out := rangeJSON{Name: r.Name, Tried: of(r.Tried)}
	if !r.None {
		good := of(r.Good)
		out.ComesOut = &good
	}
	return out
}

// unitOf is the unit a tape's lengths are in.
func unitOf(t measure.Tape) measure.Unit {
	if t.Unit == measure.Inch {
		return measure.Inch
	}
	return measure.Centimetre
}

// printSweeps writes what proof --sweep prints for programs: all that proof --json has, and the sweeps.
func printSweeps(to io.Writer, p proof.Proof, all []sweep) error {
	out := struct {
		proof.Proof
		Sweeps []sweptJSON `json:"sweeps"`
	}{p, []sweptJSON{}}
	for _, s := range all {
		out.Sweeps = append(out.Sweeps, s.json())
	}
	text, err := json.MarshalIndent(out, "", "  ")
	if err != nil {
		return err
	}
	_, err = to.Write(append(text, '\n'))
	return err
}
