package ledger

import (
	"strings"

	"foundrow/internal/notation"
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
			h.others[k] = h.others[k] || h.named1(o.Names, k)
		}
	case !o.Rest:
		clear(h.others)
	}
}

// named1 reports whether names as written, "M" or "3X to 5X", mean a size.
func (h *hand) named1(names []string, size int) bool {
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

var _ notation.Only
