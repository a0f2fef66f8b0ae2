package shaping

import (
	"os"
	"strconv"
	"strings"
	"testing"

	"foundrow/internal/source"
)

// asked is a line of a table and what stands below it.
type asked struct {
	line int
	ask  string
	said string
}

// table reads a table of questions and answers.
func table(t *testing.T, name string) []asked {
	t.Helper()
	text, err := os.ReadFile("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	var out []asked
	for i, line := range strings.Split(string(text), "\n") {
		switch {
		case strings.TrimSpace(line) == "" || strings.HasPrefix(line, "#"):
		case strings.HasPrefix(line, "\t"):
			out[len(out)-1].said = strings.TrimSpace(line)
		default:
			out = append(out, asked{line: i + 1, ask: line})
		}
	}
	return out
}

func (a asked) check(t *testing.T, table, said string) {
	t.Helper()
	if said != a.said {
		t.Errorf("%s:%d: %s\n  says   %s\n  wanted %s", table, a.line, a.ask, said, a.said)
	}
}

func answer(words string, refused *Refusal) string {
	if refused == nil {
		return "= " + words
	}
	said := "! " + refused.Why
	if fix := refused.Fix(); fix != "" {
		said += ": " + fix
	}
	return said + " [" + refused.Reason.String() + "]"
}

// words reads a question word by word.
type words struct {
	t    *testing.T
	left []string
}

func (w *words) next() string {
	if len(w.left) == 0 {
		w.t.Fatal("a question ends too early")
	}
	first := w.left[0]
	w.left = w.left[1:]
	return first
}

func (w *words) number() int {
	n, err := strconv.Atoi(w.next())
	if err != nil {
		w.t.Fatal(err)
	}
	return n
}

func (w *words) side() Side { return map[string]Side{"right": Right, "wrong": Wrong}[w.next()] }

func TestSchedulesAsWritten(t *testing.T) {
	for _, a := range table(t, "schedules.txt") {
		want, m := Want{First: Right}, Manner{Ends: 2}
		for w := (words{t, strings.Fields(a.ask)}); len(w.left) > 0; {
			switch word := w.next(); word {
			case "from":
				want.From = w.number()
			case "to":
				want.To = w.number()
			case "over":
				want.Over = w.number()
			case "each":
				for want.Each = []int{w.number()}; len(w.left) > 0 && strings.Trim(w.left[0], "-0123456789") == ""; {
					want.Each = append(want.Each, w.number())
				}
			case "begins":
				want.First = w.side()
			case "on":
				want.On = w.side()
			case "at":
				if w.next() == "once" {
					want.AtOnce = true
				} else {
					w.next()
					want.AtMost = w.number()
				}
			case "start":
				want.PlainAtStart = w.number()
			case "end":
				want.PlainAtEnd = w.number()
			case "even":
				want.Rows = Even
			case "odd":
				want.Rows = Odd
			case "long":
				want.Order = LongFirst
			case "by":
				want.Order = ByTurn
			case "one":
				want.Order = OneRate
			case "alternate":
				want.Order = Alternate
			case "seamless":
				m.Ends = 0
			case "neck":
				m = Manner{At: "at the neck edge"}
			case "rounds":
				want.First, m.Row = Either, "round"
			}
		}
		s, refused := Solve(want)
		a.check(t, "schedules.txt", answer(s.Words(m), refused))
	}
}

func TestStepsAsWritten(t *testing.T) {
	for _, a := range table(t, "steps.txt") {
		want, m := StepsWant{}, Manner{}
		asks, steps, _ := strings.Cut(a.ask, ":")
		for w := (words{t, strings.Fields(asks)}); len(w.left) > 0; {
			switch w.next() {
			case "from":
				want.From = w.number()
			case "to":
				want.To = Say(w.number())
			case "over":
				want.Over = Say(w.number())
			case "both":
				want.Ends, m.Ends = 2, 2
			case "begins":
				want.First = w.side()
			}
		}
		f := source.NewFile("steps.txt", steps)
		for text := range strings.SplitSeq(steps, ";") {
			st, findings := ReadStep(f, 0, text)
			for _, finding := range findings {
				t.Errorf("steps.txt:%d: %s: %s", a.line, text, finding.Message)
			}
			numbers, _ := st.In(0, nil)
			want.Steps = append(want.Steps, numbers)
		}
		s, refused := SolveSteps(want)
		a.check(t, "steps.txt", answer(s.Words(m), refused))
	}
}

func TestSpreadsAsWritten(t *testing.T) {
	for _, a := range table(t, "spreads.txt") {
		var want SpreadWant
		for w := (words{t, strings.Fields(a.ask)}); len(w.left) > 0; {
			switch word := w.next(); word {
			case "over":
				want.Over = w.number()
			case "inc", "dec", "skip", "between":
				want.Event = map[string]Event{"inc": Increase, "dec": Decrease, "skip": Skip, "between": Between}[word]
				want.Events = w.number()
			case "round", "sections":
				want.Layout = map[string]Layout{"round": Round, "sections": Sections}[word]
			case "long":
				want.Order = LongFirst
			case "by":
				want.Order = ByTurn
			case "one":
				want.Order = OneRate
			case "alternate":
				want.Order = Alternate
			case "symmetric":
				want.Symmetric = true
			case "keep":
				want.PlainEnds = w.number()
			case "to":
				want.Most = w.number()
				w.left = nil
			}
		}
		s, refused := SolveSpread(want)
		a.check(t, "spreads.txt", answer(s.Words([...]string{"inc", "dec", "skip", "inc"}[want.Event], "double"), refused))
	}
}
