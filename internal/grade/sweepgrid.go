package grade

import "foundrow/internal/measure"

// loosest is how far from the designer's a maker's tension is tried, in hundredths. Common practice, no source: who is further off
// changes her hook.
const loosest = 15

// percent is so many hundredths.
func percent(n int) measure.Num { return measure.Ratio(int64(n), 100) }

// starOfTensions has stitches alone, rows alone and both together from one end to the other, and stitches against rows.
func starOfTensions() []Tension {
	const step = 5
	star := []Tension{{}}
	for n := -loosest; n <= loosest; n += step {
		if n != 0 {
			p := percent(n)
			star = append(star, Tension{Stitches: p}, Tension{Rows: p}, Tension{p, p})
		}
	}
	least, most := percent(-loosest), percent(loosest)
	return append(star, Tension{least, most}, Tension{most, least})
}

// tensionsFor has every stitch tension with every row tension as finely as there is room for, and the star where there is not.
func tensionsFor(room int, star []Tension) []Tension {
	for _, step := range [...]int{1, 3, 5} {
		side := 2*loosest/step + 1
		if side*side > room {
			continue
		}
		all := []Tension{{}}
		for s := -loosest; s <= loosest; s += step {
			for r := -loosest; r <= loosest; r += step {
				if s != 0 || r != 0 {
					all = append(all, Tension{percent(s), percent(r)})
				}
			}
		}
		return all
	}
	return star[:max(1, min(room, len(star)))]
}

// layBodies lays out as many bodies as there is room for: each size by itself, each measurement by itself over its range, and
// measurements together. Where one of the body is among them, what is not given is taken from the size nearest to it, as for any
// maker; otherwise from one size after the other.
func (g *Grid) layBodies(room int) []body {
	var out []body
	for s := range g.sizes {
		out = append(out, g.bodyOf(s))
	}
	sets := setsOf(len(g.axes))
	if len(sets) == 0 {
		return out
	}
	each := (room - len(out)) / len(sets)
	near := newPlan(g.p)
	for _, set := range sets {
		for i := range each {
			b := g.bodyOf(i % len(g.sizes))
			given := map[string]measure.Num{}
			for k, axis := range set {
				a := &g.axes[axis]
				b.own[axis] = g.tape(a.low.Add(a.high.Sub(a.low).Mul(along(i, each, k, len(set)))))
				if a.ofBody {
					given[a.name] = b.own[axis]
				}
			}
			if len(given) > 0 {
				b.size = near.sizeFor(Maker{Body: given})
			}
			out = append(out, b)
		}
	}
	return out
}

func (g *Grid) bodyOf(size int) body {
	b := body{size: size, own: make([]measure.Num, len(g.axes))}
	for i := range b.own {
		b.own[i] = measure.Lost
	}
	return b
}

// setsOf are the sets of measurements that are changed together: each alone, each two, and all.
func setsOf(axes int) [][]int {
	var alone, twos [][]int
	var all []int
	for i := range axes {
		alone, all = append(alone, []int{i}), append(all, i)
		for j := range i {
			twos = append(twos, []int{j, i})
		}
	}
	sets := append(alone, twos...)
	if axes > 2 {
		sets = append(sets, all)
	}
	return sets
}

// along is how far along its range, from 0 to 1, the k-th of several measurements lies in the i-th of n bodies. One alone goes
// evenly. Of several, the first bodies are the corners; then the first goes evenly and the others in strides that have no measure
// in common with n, so that low meets high and middle alike.
func along(i, n, k, together int) measure.Num {
	if n < 2 {
		return measure.Ratio(1, 2)
	}
	if together > 1 && i < 4 {
		return measure.Int(int64(i >> min(k, 1) & 1))
	}
	stride := 1
	for range k {
		stride = nextStride(stride, n)
	}
	return measure.Ratio(int64(i*stride%n), int64(n-1))
}

// nextStride is a stride about 5/8 of n on that shares no divisor with n.
func nextStride(stride, n int) int {
	for s := (stride+n*5/8)%n + 1; ; s++ {
		if divisor(s, n) == 1 {
			return s
		}
	}
}

func divisor(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
