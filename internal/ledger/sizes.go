package ledger

import (
	"strings"

	"foundrow/internal/notation"
	"foundrow/internal/source"
)

// sizes is a set of sizes, by their index.
type sizes []bool

func (s sizes) has(i int) bool { return i < len(s) && s[i] }

// only follows which sizes the lines before have named, for "All other sizes".
func (h *hand) only(i int) {
	o := h.p.Block.Lines[i].For()
	switch {
	case len(o.Names) > 0:
		if h.others == nil {
			h.others = make(sizes, max(len(h.p.Sizes), 1))
		}
		for k := range h.others {
			h.others[k] = h.others[k] || h.means(o.Names, k)
		}
	case !o.Rest:
		clear(h.others)
	}
}

// holds reports whether something that may be for some sizes only is for this one.
func (h *hand) holds(o notation.Only) bool {
	switch {
	case o.Rest:
		return !h.others.has(h.p.Size)
	case len(o.Names) == 0:
		return true
	}
	return h.means(o.Names, h.p.Size)
}

// means reports whether names as written, "M" or "3X to 5X", mean a size.
func (h *hand) means(names []string, size int) bool {
	for _, name := range names {
		from, to, ranged := strings.Cut(name, " to ")
		a := h.sizeOf(from)
		b := a
		if ranged {
			b = h.sizeOf(to)
		}
		if a >= 0 && b >= 0 && a <= size && size <= b {
			return true
		}
	}
	return false
}

func (h *hand) sizeOf(name string) int {
	name = strings.TrimSpace(name)
	for i, s := range h.p.Sizes {
		if strings.EqualFold(s, name) {
			return i
		}
	}
	return -1
}

// number is a count in this size, or other where it is not said or has no value; ok is false for one that is absent or unknown.
func (h *hand) number(c *notation.Count, other int) (int, bool) {
	if !c.Said {
		return other, true
	}
	n, absent, ok := h.count(c)
	if absent {
		return 0, false
	}
	if !ok {
		h.s.open = true
		return other, false
	}
	if n > most {
		h.report(TooLarge, source.Error, c.Span, 0, [2]string{}, n)
		h.s.open = true
		return other, false
	}
	return n, true
}

func (h *hand) count(c *notation.Count) (n int, absent, ok bool) {
	if c.Slot == 0 {
		if c.List == nil {
			return c.Plain, false, true
		}
		if h.p.Size < len(c.List) {
			e := c.List[h.p.Size]
			return e.N, e.Absent, true
		}
	}
	if h.p.Count != nil {
		return h.p.Count(*c)
	}
	return 0, false, false
}
