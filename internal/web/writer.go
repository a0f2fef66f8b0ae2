package web

import (
	"html/template"
	"slices"
	"strconv"
	"strings"

	"foundrow/internal/page"
)

// A writer writes the blocks of a page one after the other. What comes from outside goes through text, attr or link, which escape it; put writes markup as it
// stands, and is given constants only.
type writer struct {
	b    []byte
	cuts []cut
	page *page.Page // whose slots and pieces are set; nil where there are none
	from string     // the address of the page being written

	level   int    // of the last heading
	deeper  int    // how many levels the headings of the text are moved down
	heading string // the words of the last heading
}

// A cut is where a block begins, and where it is to go; the next cut ends it.
type cut struct {
	into *template.HTML
	at   int
}

// cut begins a block.
func (w *writer) cut(into *template.HTML) *writer {
	w.cuts = append(w.cuts, cut{into, len(w.b)})
	return w
}

// finish gives out the blocks. All of them are parts of one string.
func (w *writer) finish() {
	all, end := template.HTML(w.b), len(w.b)
	for _, c := range slices.Backward(w.cuts) {
		*c.into, end = all[c.at:end], c.at
	}
}

func (w *writer) put(markup string) *writer {
	w.b = append(w.b, markup...)
	return w
}

func (w *writer) number(n int) *writer {
	w.b = strconv.AppendInt(w.b, int64(n), 10)
	return w
}

// text writes words between tags.
func (w *writer) text(words string) *writer {
	from := 0
	for i := range len(words) {
		var escape string
		switch words[i] {
		case '&':
			escape = "&amp;"
		case '<':
			escape = "&lt;"
		case '>':
			escape = "&gt;"
		default:
			continue
		}
		w.b = append(append(w.b, words[from:i]...), escape...)
		from = i + 1
	}
	w.b = append(w.b, words[from:]...)
	return w
}

// attr writes the value of an attribute, between double quotes.
func (w *writer) attr(value string) *writer {
	if !strings.ContainsAny(value, `"&<>`) {
		return w.put(value)
	}
	for i := range len(value) {
		switch c := value[i]; c {
		case '"':
			w.b = append(w.b, "&quot;"...)
		case '&':
			w.b = append(w.b, "&amp;"...)
		case '<':
			w.b = append(w.b, "&lt;"...)
		case '>':
			w.b = append(w.b, "&gt;"...)
		default:
			w.b = append(w.b, c)
		}
	}
	return w
}

// link writes an address that a text gives. One that would run a program instead of leading somewhere leads nowhere.
func (w *writer) link(to string) *writer {
	target, ours := page.Target(w.home(), to)
	if ours {
		if w.page != nil {
			target = w.page.InEdition(target)
		}
		return w.attr(spaced(page.Relative(w.from, target)))
	}
	if scheme, _, has := strings.Cut(target, ":"); has && !strings.ContainsAny(scheme, "/?#") {
		switch strings.ToLower(scheme) {
		case "http", "https", "mailto", "tel":
		default:
			target = "#"
		}
	}
	return w.attr(spaced(target))
}

// beside writes the address of a file that lies beside the page of the pattern, whichever of its pages this is. A picture may
// also lie elsewhere.
func (w *writer) beside(name string) *writer {
	if _, ours := page.Target(w.home(), name); !ours {
		return w.link(name)
	}
	return w.attr(spaced(page.Relative(w.from, w.home()+name)))
}

// home is the address files lie beside: that of the pattern's first page, whichever of its pages this is.
func (w *writer) home() string {
	if w.page != nil {
		return w.page.Beside
	}
	return w.from
}

// spaced writes the spaces of a file's name as addresses have them.
func spaced(address string) string { return strings.ReplaceAll(address, " ", "%20") }
