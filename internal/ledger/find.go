package ledger

// seek moves to the next place that is looked for, passing what may be passed, and returns its run; nil when there is none. Spaces
// are passed in silence, and stitches on the way to a space or to the rest of a shell; others are a hole in the row.
func (h *hand) seek(w want) *run {
	s := &h.s
	if w.what == space && w.chains > 0 && !h.circle() && !h.so.loose && !h.hasSpace(w.chains) {
		w.what = anyLoop // the chain at the edge is as good as a space: the last block of a corner-to-corner row
	}
	i, off := s.run, s.off
	for ; i < len(s.runs); i, off = i+1, 0 {
		r := &s.runs[i]
		if off >= r.n || !h.accepts(r, w) {
			if off < r.n && h.weight(r) > 0 && (w.what == rowEnd || w.what == ring) {
				return nil
			}
			continue
		}
		if i != s.run {
			h.passTo(i, w)
		}
		return r
	}
	return nil
}

// passTo passes everything before a run.
func (h *hand) passTo(i int, w want) {
	s := &h.s
	for s.run < i {
		r := &s.runs[s.run]
		n := r.n - s.off
		weight := h.weight(r)
		s.passed[r.made.Kind] += int32(n)
		stitches := weight * n
		if s.sub > 0 {
			s.passed[r.made.Kind]--
			s.used[r.made.Kind]++
			stitches -= s.sub
		}
		s.left -= stitches
		switch {
		case stitches == 0 || s.soft || w.what == space || w.what == anyLoop || w.what == corner || w.what == group || s.ofUnit && sameUnit(s.last.made, r.made):
		case w.what == named || w.what == chain:
			s.passing += stitches
			h.named = true
		default:
			s.holes += stitches
		}
		s.run, s.off, s.sub = s.run+1, 0, 0
	}
}

// passOne passes the place the hook is before.
func (h *hand) passOne() {
	s := &h.s
	r := &s.runs[s.run]
	s.passed[r.made.Kind]++
	s.left -= h.weight(r)
	s.off++
}

// use takes n places of the run the hook is at, fewer where it has fewer, and returns them. A space that is worked chain by chain
// gives one chain at a time.
func (h *hand) use(n int, byChains bool) (Span, int) {
	s := &h.s
	r := &s.runs[s.run]
	h.s.begun = true
	if byChains && r.made.Kind == Spaces {
		span := r.span(s.off, 1)
		span.Face = InSpace
		n = min(n, r.made.Chains-s.sub)
		s.sub += n
		if h.chainsAre() {
			s.left -= n
		}
		if s.sub >= r.made.Chains {
			s.used[Spaces]++
			s.off, s.sub = s.off+1, 0
		}
		s.last = place{r.made, span}
		s.soft = false
		return span, n
	}
	if s.sub > 0 { // the rest of an opened space is passed
		s.used[Spaces]++
		s.left -= h.weight(r) - s.sub
		s.off, s.sub = s.off+1, 0
	}
	n = min(n, r.n-s.off)
	span := r.span(s.off, n)
	s.used[r.made.Kind] += int32(n)
	s.left -= h.weight(r) * n
	s.off += n
	s.soft, s.entered, s.ofUnit = false, false, false
	s.last.made, s.last.span = r.made, r.span(s.off-1, 1)
	if r.made.Kind == Spaces {
		span.Face, s.last.span.Face = InSpace, InSpace
		s.soft = true
	}
	return span, n
}

// ahead counts the places that are looked for among those ahead, but for the last keep stitches.
func (h *hand) ahead(w want, keep int) int {
	s := &h.s
	if w.what == anyStitch && !h.chainsAre() {
		return max(s.left-keep, 0)
	}
	n, left := 0, s.left-keep
	for i, off, sub := s.run, s.off, s.sub; i < len(s.runs) && left > 0; i, off, sub = i+1, 0, 0 {
		r := &s.runs[i]
		here := r.n - off
		weight := h.weight(r)
		if weight > 0 {
			here = min(here, (left+weight-1)/weight)
			left -= here*weight - sub
		}
		if here > 0 && h.accepts(r, w) {
			if byChains(w) && r.made.Kind == Spaces || weight > 1 {
				n += here*r.made.Chains - sub
			} else {
				n += here
			}
		}
	}
	return n
}

// isAhead reports whether a place that is looked for lies ahead. What is missing once stays missing.
func (h *hand) isAhead(w want) bool {
	s := &h.s
	if s.missing != "" && s.missing == w.name {
		return false
	}
	for i, off := s.run, s.off; i < len(s.runs); i, off = i+1, 0 {
		if r := &s.runs[i]; off < r.n && h.accepts(r, w) {
			return true
		}
	}
	s.missing = w.name
	return false
}

// nextIs reports whether the next stitch is what is looked for.
func (h *hand) nextIs(w want) bool {
	for i, off := h.s.run, h.s.off; i < len(h.s.runs); i, off = i+1, 0 {
		if r := &h.s.runs[i]; off < r.n && h.weight(r) > 0 {
			return h.accepts(r, w)
		}
	}
	return false
}

// hasSpace reports whether a space of just so many chains lies ahead.
func (h *hand) hasSpace(chains int) bool {
	for i, off := h.s.run, h.s.off; i < len(h.s.runs); i, off = i+1, 0 {
		if r := &h.s.runs[i]; r.made.Kind == Spaces && (r.made.Chains == chains || chains == 0) && off < r.n {
			return true
		}
	}
	return false
}

// until counts the places that are looked for before the next one of another kind; ok is false when there is none ahead.
func (h *hand) until(w, stop want) (n int, ok bool) {
	s := &h.s
	for i, off := s.run, s.off; i < len(s.runs); i, off = i+1, 0 {
		r := &s.runs[i]
		if off >= r.n {
			continue
		}
		if h.accepts(r, stop) {
			return n, true
		}
		if h.accepts(r, w) {
			n += r.n - off
		}
	}
	return n, false
}

// loopsAhead counts places ahead of any weight.
func (h *hand) loopsAhead(w want) int {
	n := 0
	for i, off := h.s.run, h.s.off; i < len(h.s.runs); i, off = i+1, 0 {
		if r := &h.s.runs[i]; h.accepts(r, w) {
			n += r.n - off
		}
	}
	return n
}
