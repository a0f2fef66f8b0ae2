package shaping

// doubled works every stitch: there are more events than places, so some places take more of them than others.
func (w SpreadWant) doubled(s *Spread, places int) (ok bool) {
	heights := split(w.Events, places, w.Order.exact())
	if w.Symmetric {
		if heights, ok = mirrored(w.Events, places); !ok {
			return false
		}
	}
	for _, h := range heights {
		s.put(Group{Events: h.size, Times: h.times})
	}
	return true
}

// exact is an order that leaves nothing over.
func (o Order) exact() Order {
	if o >= OneRate {
		return ShortFirst
	}
	return o
}

// gaps places one event in each place, with the plain stitches between them.
func (w SpreadWant) gaps(s *Spread, plain int) (ok bool) {
	n := w.Events
	if w.Layout == Sections {
		n++
	}
	gaps := split(plain, n, w.orderFor(plain, n))
	if w.Symmetric {
		if gaps, ok = mirrored(plain, n); !ok {
			return false
		}
	}
	s.between(gaps, w.Events)
	s.Plain = plain - s.plain()
	return true
}

// orderFor is the order asked for, or one rate where gaps strictly by turn have no room.
func (w SpreadWant) orderFor(plain, n int) Order {
	least := 0
	if w.Event == Between {
		least = 1
	}
	if w.Order == Alternate && plain-n/2 < least*n {
		return OneRate
	}
	return w.Order
}

// flat places events with half an interval at each end.
func (w SpreadWant) flat(s *Spread, plain int) (ok bool) {
	n := w.Events
	start, gaps := w.halved(plain)
	if w.Symmetric {
		if n%2 == 1 && plain%2 == 1 { // the gaps pair off, and the middle is a stitch that is worked
			return false
		}
		start = min((plain+n)/(2*n), plain/2) // half of what falls to one event, to the nearest
		switch {
		case n == 1:
			start = plain / 2
		case w.Event == Between:
			start = max(w.edge(), min(start, (plain-n+1)/2))
		}
		if gaps, ok = mirrored(plain-2*start, n-1); !ok {
			return false
		}
	}
	s.put(Group{Plain: start, Events: 1, Times: 1})
	s.between(gaps, n-1)
	s.Plain = plain - s.plain()
	return true
}

// halved parts the plain stitches into intervals, one of them between the ends of the row: one that can be halved if there is one,
// else the end has the odd stitch.
func (w SpreadWant) halved(plain int) (start int, gaps []stretch) {
	n := w.Events
	interval := plain / n
	if interval%2 == 1 && plain%n > 0 {
		interval++
	}
	gaps = split(plain-interval, n-1, w.orderFor(plain-interval, max(1, n-1)))
	ends := plain // and what some orders leave over
	for _, g := range gaps {
		ends -= g.size * g.times
	}
	return ends / 2, gaps
}

// between puts the first n of the gaps, each with an event behind it.
func (s *Spread) between(gaps []stretch, n int) {
	for _, g := range gaps {
		s.put(Group{Plain: g.size, Events: 1, Times: min(g.times, n)})
		n -= min(g.times, n)
	}
}

// put adds a group, joined to the last where they agree.
func (s *Spread) put(g Group) {
	if g.Times <= 0 {
		return
	}
	if n := len(s.Groups); n > 0 && s.Groups[n-1].Plain == g.Plain && s.Groups[n-1].Events == g.Events {
		s.Groups[n-1].Times += g.Times
		return
	}
	s.Groups = append(s.Groups, g)
}

// plain is how many plain stitches the groups have.
func (s *Spread) plain() int {
	n := 0
	for _, g := range s.Groups {
		n += g.Plain * g.Times
	}
	return n
}

// keepEnds adds the stitches kept plain at each end.
func (w SpreadWant) keepEnds(s *Spread) {
	if w.PlainEnds == 0 {
		return
	}
	s.Plain += w.PlainEnds
	groups := s.Groups
	s.Groups = nil
	first := groups[0]
	s.put(Group{Plain: first.Plain + w.PlainEnds, Events: first.Events, Times: 1})
	first.Times--
	s.put(first)
	for _, g := range groups[1:] {
		s.put(g)
	}
}
