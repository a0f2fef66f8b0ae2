package ledger

import (
	"foundrow/internal/notation"
)

// unit works a shell or another stitch that is made of several in the next place.
func (h *hand) unit(k *craft, w want) {
	if h.deep++; h.deep > deepest { // a name that is defined by itself
		h.s.open = true
		h.deep--
		return
	}
	defer func() { h.deep-- }()
	if len(k.how) > 0 {
		if body, ok := onePlace(k.how); ok {
			h.inPlace(body, w, 1, k.unit)
			return
		}
		s := &h.s
		s.units++
		h.nameUnit(k.unit)
		outer := s.unit
		s.unit = s.units
		h.seq(k.how, false)
		s.unit = outer
		return
	}
	if k.uses > 1 {
		s := &h.s
		s.units++
		h.nameUnit(k.unit)
		m := h.madeOf(k.made, k.makes)
		m.Unit = s.units
		h.put(m, w, 1, k.uses)
		return
	}
	p, ok := h.nextPlace(w)
	if !ok {
		if !h.so.open {
			h.s.short++
		}
		p = place{&nowhere, Span{}}
	}
	h.unitIn(k, p)
}

func (h *hand) nameUnit(name string) {
	s := &h.s
	for len(s.names) < s.units {
		s.names = append(s.names, "")
	}
	s.names[s.units-1] = name
}

// unitIn works a unit in a place the hook has been in.
func (h *hand) unitIn(k *craft, p place) {
	if h.deep++; h.deep > deepest {
		h.s.open = true
		h.deep--
		return
	}
	defer func() { h.deep-- }()
	if len(k.how) > 0 {
		body, _ := onePlace(k.how)
		h.putIn(body, p, k.unit)
		return
	}
	s := &h.s
	outer := s.unit
	if !s.inside {
		s.units++
		h.nameUnit(k.unit)
		s.unit = s.units
	}
	m := h.madeOf(k.made, k.makes)
	m.Unit = s.unit
	if p.made == &nowhere {
		p.span = Span{}
	}
	h.into(m, p)
	s.unit = outer
	s.last = p
	s.soft = p.made == nil || p.made.Kind == Spaces
}

// onePlace is what a stitch is worked as when all of it goes into one place; ok is false when it goes over several.
func onePlace(how []notation.Clause) ([]notation.Clause, bool) {
	if len(how) == 1 {
		switch c := how[0].(type) {
		case *notation.Group:
			if c.Extent.Kind == notation.NotSaid && (c.In == nil || !c.In.Count.Said && (c.In.Where == notation.Next || c.In.Where == notation.Same || c.In.Where == notation.Unsaid || c.In.Where == notation.InSpace)) {
				return c.Body, true
			}
		case *notation.Make:
			if (!c.In.Count.Said || c.In.Count.Plain == 1 && c.In.Count.Slot == 0) && (c.Stitch.Uses() <= 1 || inOnePlace(&c.In)) {
				m := *c
				m.In = notation.Target{}
				return []notation.Clause{&m}, true
			}
		}
		return how, false
	}
	for _, c := range how {
		switch c := c.(type) {
		case *notation.Make:
			if c.In.Said() && c.In.Where != notation.Same && (c != how[0] || c.In.Count.Said) {
				return how, false
			}
			if c.Stitch.Name == "sl st" {
				return how, false
			}
		case *notation.Chain, *notation.Remark:
		default:
			return how, false
		}
	}
	inner := make([]notation.Clause, 0, len(how))
	for _, c := range how {
		if m, ok := c.(*notation.Make); ok {
			bare := *m
			bare.In = notation.Target{}
			inner = append(inner, &bare)
			continue
		}
		inner = append(inner, c)
	}
	return inner, true
}

// middle takes a shell or other unit: its space where it has one, else the stitch in its middle. The rest of it is passed.
func (h *hand) middle(r *run) (place, bool) {
	s := &h.s
	unit := r.made
	if unit.Unit == 0 {
		n := min(unit.Each, r.n-s.off)
		for range (n - 1) / 2 {
			h.passOne()
		}
		h.use(1, false)
		p := s.last
		for range n - 1 - (n-1)/2 {
			h.passOne()
		}
		s.soft = true
		return p, true
	}
	total, at, space := 0, 0, -1
	for i, off := s.run, s.off; i < len(s.runs) && sameUnit(unit, s.runs[i].made); i, off = i+1, 0 {
		if s.runs[i].made.Kind == Spaces {
			space = total
		}
		total += s.runs[i].n - off
	}
	at = (total - 1) / 2
	if space >= 0 {
		at = space
	}
	var p place
	for i := range total {
		for s.run < len(s.runs) && s.off >= s.runs[s.run].n {
			s.run, s.off = s.run+1, 0
		}
		if i == at {
			h.use(1, false)
			p = s.last
		} else {
			h.passOne()
		}
	}
	s.soft = true
	return p, true
}
