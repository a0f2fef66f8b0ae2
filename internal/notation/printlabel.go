package notation

import (
	"strings"

	"foundrow/internal/source"
)

// only writes "Sizes M and 3X to 5X only: ".
func (w *writer) only(o Only) {
	switch {
	case o.Rest:
		w.text("All other sizes: ")
	case len(o.Names) == 1 && !strings.Contains(o.Names[0], " to "):
		w.text("Size ", o.Names[0], " only: ")
	case len(o.Names) > 0:
		w.text("Sizes ", source.List(o.Names, "and"), " only: ")
	}
}

// label writes "Row 3 (RS)", "Rnds 9 to 16", "Next 5 (6, 7, 9) rows", "Row 8 and alt rows".
func (w *writer) label(l *Label) {
	if l.Words == "" && len(l.Numbers) == 0 && !l.Times.Said {
		return
	}
	if l.Bare {
		w.rangeList(l.Numbers, ", ")
		w.text(".")
		return
	}
	unit := rowWord(l.Round)
	if l.Short {
		w.text("R")
		w.rangeList(l.Numbers, " and ")
		w.labelSays(l)
		return
	}
	several := l.Times.Said && !(l.Times.plain() && l.Times.Plain == 1) || len(l.Numbers) > 1 || len(l.Numbers) == 1 && l.Numbers[0].To.Said
	if l.Words != "" {
		w.text(capital(w.prose(l.Words)), " ")
	} else {
		unit = capital(unit)
	}
	if l.Times.Said {
		w.count(&l.Times)
		w.text(" ")
	}
	w.text(unit)
	if several {
		w.text("s")
	}
	if len(l.Numbers) > 0 {
		w.text(" ")
		w.rangeList(l.Numbers, " and ")
	}
	if l.Every == AndAlternate {
		w.text(" and alt ", rowWord(l.Round), "s")
	}
	w.labelSays(l)
}

func rowWord(round bool) string {
	if round {
		return "rnd"
	}
	return "row"
}

// labelSays writes what a label says in brackets.
func (w *writer) labelSays(l *Label) {
	if l.Side != NoSide {
		w.text([...]string{RightSide: " (RS)", WrongSide: " (WS)"}[l.Side])
	}
	if l.Yarn != "" {
		w.text(" (", l.Yarn, ")")
	}
	if l.Remark != "" {
		w.text(" (", w.prose(l.Remark), ")")
	}
}

// rangeList writes "3", "3 to 8", "4, 6 and 8".
func (w *writer) rangeList(rs []Range, last string) {
	for i := range rs {
		switch {
		case i > 0 && i == len(rs)-1:
			w.text(last)
		case i > 0:
			w.text(", ")
		}
		w.count(&rs[i].From)
		if rs[i].To.Said {
			w.text(" to ")
			w.count(&rs[i].To)
		}
	}
}

// rows writes "row 2", "rows 2 and 3".
func (w *writer) rows(rs []Range, round bool) {
	if round {
		w.text("rnd")
	} else {
		w.text("row")
	}
	if len(rs) > 1 || rs[0].To.Said {
		w.text("s")
	}
	w.text(" ")
	w.rangeList(rs, " and ")
}

func sameOnly(a, b Only) bool {
	if a.Rest != b.Rest || len(a.Names) != len(b.Names) {
		return false
	}
	for i := range a.Names {
		if a.Names[i] != b.Names[i] {
			return false
		}
	}
	return true
}
