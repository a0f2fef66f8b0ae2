package shaping

import (
	"testing"

	"foundrow/internal/measure"
)

// BenchmarkShaping works what a size of a garment asks for. A sweep of 2,000 bodies and tensions works it as many times.
func BenchmarkShaping(b *testing.B) {
	sleeve := Want{From: 72, To: 156, Over: 196, Each: []int{2}, PlainAtEnd: 20, First: Right, On: Right}
	armhole := StepsWant{From: 93, To: Say(67), Over: Say(38), Ends: 2, Steps: []Step{{Act: Leave, Stitches: 5, Times: 1}, {Stitches: 1, ToEnd: true}}}
	body, arm := [2]int{80, 240}, [2]int{40, 120}
	bench := func(name string, work func() *Refusal) {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if refused := work(); refused != nil {
					b.Fatal(refused.Why)
				}
			}
		})
	}
	bench("schedule", func() *Refusal { _, r := Solve(sleeve); return r })
	bench("steps", func() *Refusal { _, r := SolveSteps(armhole); return r })
	bench("raglan", func() *Refusal {
		_, r := Raglan{Body: body, Sleeve: arm, Over: 80, First: Right, On: Right}.Solve()
		return r
	})
	bench("spread", func() *Refusal { _, r := SolveSpread(SpreadWant{Over: 186, Events: 14, Layout: Round}); return r })
	bench("sphere", func() *Refusal { _, r := Sphere(40, measure.Int(1)); return r })
	s, _ := Solve(sleeve)
	bench("words", func() *Refusal { s.Words(Manner{Ends: 2}); return nil })
	// A refusal looks for what could be instead, so it takes longer; a pattern has few.
	b.Run("refusal", func(b *testing.B) {
		w := sleeve
		w.Over = 40
		for b.Loop() {
			if _, refused := Solve(w); refused == nil {
				b.Fatal("84 stitches over 40 rows")
			}
		}
	})
}
