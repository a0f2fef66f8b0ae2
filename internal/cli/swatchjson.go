package cli

import (
	"encoding/json"

	"foundrow/internal/grade"
	"foundrow/internal/measure"
	"foundrow/internal/proof"
)

// spreadJSON is a spread for programs: stitches or rows over the length named beside it.
type spreadJSON struct {
	Readings int    `json:"readings"`
	Mean     string `json:"mean"`
	Least    string `json:"least"`
	Most     string `json:"most"`
}

// stateJSON is what was read in one state.
type stateJSON struct {
	State    string      `json:"state"`
	Stitches *spreadJSON `json:"stitches"`
	Rows     *spreadJSON `json:"rows"`
}

// becomesJSON is a finished measurement in every size: as it is, and in the gauge of the swatch.
type becomesJSON struct {
	Name string    `json:"name"`
	Now  []*string `json:"now"`
	Kept []*string `json:"counts_kept"`
	Anew []*string `json:"counted_anew"`
}

func (sw *swatch) json() []byte {
	g := sw.gauge()
	out := struct {
		Gauge        string        `json:"gauge"`
		Stitches     string        `json:"stitches,omitempty"`
		Rows         string        `json:"rows,omitempty"`
		Over         string        `json:"over"`
		State        string        `json:"state"`
		States       []stateJSON   `json:"states"`
		For          string        `json:"for,omitempty"`
		Sizes        []string      `json:"sizes,omitempty"`
		Measurements []becomesJSON `json:"measurements,omitempty"`
	}{Gauge: sw.name, Over: sw.over().String() + " " + unitOf(sw.tape).String(), State: stateNames[sw.last].written, For: sw.slug}
	if g.Stitches.Sign() > 0 {
		out.Stitches = g.Stitches.Decimal(1)
	}
	if g.Rows.Sign() > 0 {
		out.Rows = g.Rows.Decimal(1)
	}
	for state, of := range sw.states {
		if of.Stitches.Readings+of.Rows.Readings > 0 {
			out.States = append(out.States, stateJSON{stateNames[state].written, jsonOfSpread(of.Stitches), jsonOfSpread(of.Rows)})
		}
	}
	if sw.grade != nil {
		out.Sizes = sw.grade.Sizes
		kept, anew := grade.InGauge(sw.grade.Pattern, sw.name, g)
		for i, f := range sw.grade.Finished {
			out.Measurements = append(out.Measurements, becomesJSON{f.Name, exacts(f.Made), exacts(kept.Finished[i].Made), exacts(anew.Finished[i].Made)})
		}
	}
	text, err := json.MarshalIndent(out, "", "  ")
	if err != nil {
		panic(err) // there is nothing in it that JSON cannot hold
	}
	return append(text, '\n')
}

func jsonOfSpread(s grade.Spread) *spreadJSON {
	if s.Readings == 0 {
		return nil
	}
	return &spreadJSON{s.Readings, proof.Exact(s.Mean), proof.Exact(s.Least), proof.Exact(s.Most)}
}

// exacts are numbers by size; null where one could not be worked out.
func exacts(made []measure.Num) []*string {
	out := make([]*string, len(made))
	for i, n := range made {
		if !n.IsLost() {
			s := proof.Exact(n)
			out[i] = &s
		}
	}
	return out
}
