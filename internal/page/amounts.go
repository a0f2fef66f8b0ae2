package page

import (
	"foundrow/internal/formula"
	"foundrow/internal/grade"
	"foundrow/internal/measure"
	"foundrow/internal/pattern"
)

// amounts are how much of each yarn and how many of each notion are needed, by their names in the grade.
type amounts struct {
	values map[string][]formula.Value
	tape   measure.Tape
}

func amountsOf(g *grade.Grade) amounts {
	a := amounts{map[string][]formula.Value{}, g.Pattern.Tape}
	for _, v := range g.Values {
		if v.Role == grade.Amount {
			a.values[v.Name] = v.BySize
		}
	}
	return a
}

// ofYarn words what is needed of a yarn: as it was said, and in balls where it is known what a ball holds. A plain number is
// one of balls.
func (a amounts) ofYarn(y pattern.Yarn) []Slot {
	var out []Slot
	for _, d := range y.Amounts {
		worked := a.values[y.Name.Text+"."+d.Name.Text]
		if len(worked) == 0 {
			continue
		}
		need := nums(worked)
		switch worked[0].Kind {
		case formula.Length:
			for i, n := range need {
				need[i] = a.tape.BodyInCentimetres(n).Div(measure.Int(100))
			}
			out = append(append(out, yarnLengths(need)), balls(need, y.Runs)...)
		case formula.Mass:
			out = append(append(out, masses(need)), balls(need, y.Weighs)...)
		default:
			out = append(out, counted(numbers(worked), "balls"))
		}
	}
	return out
}

// balls words how many balls hold what is needed: whole ones, for a shop sells no part of one. It is nothing where it is not
// known what one holds.
func balls(need []measure.Num, holds measure.Num) []Slot {
	if holds.Sign() <= 0 {
		return nil
	}
	figures := make([]string, len(need))
	for i, n := range need {
		if figures[i] = unknown; !n.IsLost() {
			figures[i] = n.Div(holds).Ceil().String()
		}
	}
	return []Slot{counted(figures, "balls")}
}
