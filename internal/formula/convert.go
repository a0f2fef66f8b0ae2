package formula

import "foundrow/internal/source"

// convert settles "in": between lengths and counts by a gauge, or to a unit of the same kind.
func (c *checker) convert(n *node, st *step) Kind {
	from, to := c.kinds[n.a], n.kind
	switch {
	case from == Unknown:
		c.gauge(n) // an unknown gauge is worth its finding even so
		return to
	case to == Number:
		fix := "write " + c.operand(n.a) + " / 1 " + c.unit(from)
		if from.IsCount() || from == Number {
			fix = "write " + c.operand(n.a) + " as number"
		}
		c.report(c.tail(n), "kinds", "nothing converts to a plain number", fix)
		return Unknown
	case from == Number:
		c.report(c.f.nodes[n.a].span, "kinds", c.said(n.a)+" what? a plain number cannot be converted", "write "+c.quantity(n.a, c.unitOf(from, to)))
		return Unknown
	case from == to && n.gauge == "" && !to.IsCount():
		st.num = one
		return to
	case from == to:
		fix := "leave out " + c.f.words(c.tail(n))
		if to.IsCount() && n.gauge != "" {
			fix = "go through a length: " + c.operand(n.a) + " in " + c.unit(Length) + " at … in " + to.String() + " at " + n.gauge
		}
		c.report(c.tail(n), "kinds", c.said(n.a)+" is "+c.a(n.a)+" already", fix)
		return Unknown
	case from == Mass || to == Mass:
		c.report(c.tail(n), "kinds", c.said(n.a)+" is "+c.a(n.a)+", which does not convert to "+to.String(), "")
		return Unknown
	case from.IsCount() && to.IsCount():
		c.report(c.tail(n), "kinds", c.said(n.a)+" is "+c.a(n.a)+": between stitches and rows there is a length", "write "+c.operand(n.a)+" in "+c.unit(Length)+" at … in "+to.String()+" at …, or as "+to.String()+" to count them anew")
		return Unknown
	}
	g, ok := c.gauge(n)
	if !ok {
		return to
	}
	count := to
	if from.IsCount() {
		count = from
	}
	per, counted := g.perLength(count)
	if !counted {
		c.report(c.tail(n), "gauge", "the gauge "+g.Name+" does not say how many "+count.String()+" there are", "write "+count.String()+" = … under [gauge."+g.Name+"]")
		return to
	}
	st.num = per
	if from.IsCount() {
		st.num = one.Div(per)
	}
	return to
}

// gauge finds the gauge of a conversion: the one that is named, or the only one there is.
func (c *checker) gauge(n *node) (Gauge, bool) {
	names := make([]string, 0, 4)
	for _, g := range c.s.Gauges {
		if g.Name == n.gauge || n.gauge == "" && len(c.s.Gauges) == 1 {
			return g, true
		}
		names = append(names, g.Name)
	}
	switch {
	case len(names) == 0:
		c.report(c.tail(n), "gauge", "the pattern has no gauge to convert with", "write a table such as [gauge.body] with stitches, rows or both")
	case n.gauge == "":
		c.report(c.tail(n), "gauge", "at which gauge? there are "+source.List(names, "and"), "write "+c.f.words(c.tail(n))+" at "+names[0])
	default:
		fix := "the gauges are " + source.List(names, "and")
		if near := source.Nearest(n.gauge, names); near != "" {
			fix = "write at " + near
		}
		at := span{n.to - int32(len(n.gauge)), n.to}
		c.report(at, "unknown-name", "there is no gauge named "+n.gauge, fix)
	}
	return Gauge{}, false
}

// tail is the span of what stands behind the operand: from "in", "as" or "rounded" on.
func (c *checker) tail(n *node) span { return span{n.at, n.to} }

// recast settles "as": a count taken for another, or for a number.
func (c *checker) recast(n *node) Kind {
	from, to := c.kinds[n.a], n.kind
	switch {
	case from == Unknown || from == to:
		return to
	case from == Length || from == Mass:
		c.report(c.tail(n), "kinds", c.said(n.a)+" is "+c.a(n.a)+", and `as` is for counts and numbers", "write in "+to.String()+" at a gauge, or divide by 1 "+c.unit(from)+" for a plain number")
		return Unknown
	case to == Length || to == Mass:
		fix := "write * 1 " + c.unit(to)
		if from.IsCount() && to == Length {
			fix = "write in " + c.unit(to) + " at a gauge"
		}
		c.report(c.tail(n), "kinds", "`as` is for counts and numbers, and "+to.String()+" is neither", fix)
		return Unknown
	}
	return to
}
