package ledger

import (
	"foundrow/internal/stitch"
)

// height is the height of a stitch in halves of an sc row.
func height(s stitch.Stitch) int {
	switch s.Name { // most of all rows
	case "sc":
		return 2
	case "hdc":
		return 3
	case "dc":
		return 4
	}
	if e := s.Tall().Find(); e != nil && e.Halves > 0 {
		return e.Halves
	}
	if e := s.Base().Find(); e != nil {
		return e.Halves
	}
	return 2
}

// chainsOf is how tall a stitch is in chains.
func chainsOf(s stitch.Stitch) int {
	if e := s.Tall().Find(); e != nil {
		return e.Chains
	}
	return 1
}

// rowHeight is the height of a row at its end, in halves of an sc row.
func (h *hand) rowHeight(made []Made) int {
	for i := len(made) - 1; i >= 0; i-- {
		if m := &made[i]; m.Kind == Stitches || m.Kind == Turnings && m.Stands {
			return height(*h.of(m))
		}
	}
	return 2
}

// heightOf is the stitch that a chain of n is as tall as.
func heightOf(n int) stitch.Stitch {
	switch n {
	case 1:
		return stitch.Stitch{Name: "sc"}
	case 2:
		return stitch.Stitch{Name: "hdc"}
	case 3:
		return stitch.Stitch{Name: "dc"}
	case 4:
		return stitch.Stitch{Name: "tr"}
	}
	return stitch.Stitch{Name: "dtr"}
}
