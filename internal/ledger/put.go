package ledger

// put works m into each of the next count places that are looked for, m.N in each; uses is how many places one of them takes up.
func (h *hand) put(m *Made, w want, count, uses int) {
	each := m.N
	if w.what == group && uses <= 1 {
		h.putGroups(m, w, count)
		return
	}
	if each > 1 && m.Kind == Stitches && uses <= 1 && m.Unit == 0 {
		m.Each = each
	}
	for count > 0 {
		r := h.seek(w)
		if r == nil {
			h.beyond(m, w, count, each, max(uses, 1))
			return
		}
		if r.made.Kind == Turnings && !r.made.Stands {
			h.s.dead = true
		}
		if r.made.Kind == Rings {
			m.N, m.Into = each*count, r.span(0, 1)
			m.Each = 0
			h.s.begun = true
			h.s.last = place{r.made, m.Into}
			h.s.soft = true
			h.emit(m)
			return
		}
		if uses <= 1 {
			span, n := h.use(count, byChains(w))
			if n == 0 {
				h.beyond(m, w, count, each, 1)
				return
			}
			m.N, m.Into = each*n, span
			h.emit(m)
			count -= n
			continue
		}
		if whole := (r.n - h.s.off) / uses; whole > 0 && !(byChains(w) && r.made.Kind == Spaces) {
			whole = min(whole, count)
			span, n := h.use(whole*uses, false)
			m.N, m.Into = each*n/uses, span
			h.emit(m)
			count -= whole
			continue
		}
		count--
		if !h.across(m, w, each, uses) {
			if count > 0 {
				h.beyond(m, w, count, each, uses)
			}
			return
		}
	}
}

// putGroups works m in the middle of each of the next count shells or other groups, which are taken whole.
func (h *hand) putGroups(m *Made, w want, count int) {
	for range count {
		if h.step(); h.tired() {
			return
		}
		p, ok := h.nextPlace(w)
		if !ok {
			if !h.so.open {
				h.s.short++
			}
			p = place{&nowhere, Span{}}
		}
		one := *m
		if one.N > 1 && one.Unit == 0 {
			one.Each = one.N
		}
		h.into(&one, p)
	}
}

// across works one stitch over places of several runs.
func (h *hand) across(m *Made, w want, each, uses int) bool {
	var into Span
	for need := uses; need > 0; {
		n := 0
		var span Span
		if h.seek(w) != nil {
			span, n = h.use(need, byChains(w))
		}
		if n == 0 {
			m.Into, m.N = into, each
			if !h.so.open {
				h.s.short += need
			}
			h.emit(m)
			return false
		}
		if both, ok := follows(into, span); ok || into.N == 0 {
			into = both
		}
		need -= n
	}
	m.Into, m.N = into, each
	h.emit(m)
	return true
}

// beyond makes what is asked for where there is nothing left to make it in: the count goes on as it is written.
func (h *hand) beyond(m *Made, w want, count, each, uses int) {
	m.N, m.Into = each*count, Span{}
	if h.loosely(w) {
		h.s.hidden, h.s.soft, h.s.begun = true, true, true
		h.s.last = place{&hiddenSpace, Span{}}
		if each > 1 {
			for range count {
				m.N = each
				h.append(m)
			}
			return
		}
		h.emit(m)
		return
	}
	if !h.so.open {
		h.s.short += count * uses
	}
	h.s.begun = true
	h.s.last = place{&nowhere, Span{}}
	if m.N > 0 {
		h.emit(m)
	}
}

var (
	hiddenSpace = Made{Kind: Spaces, N: 1}
	nowhere     = Made{Kind: Stitches, N: 1}
)

// loosely reports whether a place that is not there may be there all the same: a start that only counts stitches says nothing of
// spaces and shells.
func (h *hand) loosely(w want) bool {
	return h.so.loose && (w.what == space || w.what == group || w.what == ring) || w.what == space && h.s.hidden
}

// emit adds what was made, to the last of it where everything agrees.
func (h *hand) emit(m *Made) {
	if m.N <= 0 {
		return
	}
	if n := len(h.made); n > h.first {
		if l := &h.made[n-1]; merges(l, m) {
			l.N += m.N
			l.Into, _ = follows(l.Into, m.Into)
			return
		}
	}
	h.made = append(h.made, *m)
}

func (h *hand) append(m *Made) { h.made = append(h.made, *m) }

// merges reports whether two neighbours agree in everything, so that they are one run.
func merges(a, b *Made) bool {
	if a.Kind != b.Kind || a.Unit != b.Unit || a.Each != b.Each || a.Chains != b.Chains || a.Stands != b.Stands || a.Counted != b.Counted ||
		a.Whole != b.Whole || int(a.Into.N)*b.N != int(b.Into.N)*a.N || a.Of != b.Of {
		return false
	}
	if a.Into.N == 0 {
		return a.Each <= 1
	}
	_, ok := follows(a.Into, b.Into)
	return ok
}

// into works n of a stitch in the place named, which takes up nothing more.
func (h *hand) into(m *Made, p place) {
	m.Into = p.span
	h.s.begun = true
	h.emit(m)
}
