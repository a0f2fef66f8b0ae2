package notation

import "strings"

// edgeName writes an edge of a piece: as a formula names it where it is to be read in again, and in words for a reader.
func (w *writer) edgeName(e *Edge) {
	if w.again {
		w.text(e.Piece, ".", e.Which)
		return
	}
	which := e.Which
	switch which {
	case "last":
		which = "last row"
	case "left", "right":
		which += " edge"
	}
	w.text("the ", which, " of the ", strings.ReplaceAll(e.Piece, "_", " "))
}
