package cli

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"foundrow/internal/grade"
)

// wide is how many characters a sheet may take across.
const wide = 100

// section prints one part, in as many bands of sizes as its widest cells need.
func (s sheet) section(b *strings.Builder, part section, sizes []string) {
	head, cell := utf8.RuneCountInString(part.head), 4
	for _, r := range part.rows {
		head = max(head, utf8.RuneCountInString(r.head))
		for _, c := range r.cells {
			cell = max(cell, utf8.RuneCountInString(c))
		}
	}
	for _, name := range sizes {
		cell = max(cell, utf8.RuneCountInString(name))
	}
	bands := 1
	for head+(len(sizes)+bands-1)/bands*(cell+2) > wide && bands < len(sizes) {
		bands++
	}
	each := (len(sizes) + bands - 1) / bands
	for from := 0; from < len(sizes); from += each {
		to := min(from+each, len(sizes))
		b.WriteByte('\n')
		b.WriteString(line(part.head, sizes[from:to], head, cell))
		for _, r := range part.rows {
			switch {
			case r.cells != nil:
				b.WriteString(s.tone(r, line(r.head, r.cells[from:min(to, len(r.cells))], head, cell)))
			case to == len(sizes):
				b.WriteString(s.tone(r, wrap(r.note)))
			}
		}
	}
}

// tone sets what explains another row faintly, where there is colour.
func (s sheet) tone(r row, text string) string {
	if !s.colour || !r.faint {
		return text
	}
	return "\x1b[2m" + strings.TrimSuffix(text, "\n") + "\x1b[0m\n"
}

// line sets a head and its cells, each cell to the right of its column.
func line(head string, cells []string, headWidth, cellWidth int) string {
	text := head + strings.Repeat(" ", headWidth-utf8.RuneCountInString(head))
	for _, c := range cells {
		text += strings.Repeat(" ", cellWidth+2-utf8.RuneCountInString(c)) + c
	}
	return strings.TrimRight(text, " ") + "\n"
}

// wrap sets a note in lines of the sheet's width, those after the first further in.
func wrap(note string) string {
	var lines []string
	text := " "
	for _, word := range strings.Fields(note) {
		if len(lines) == 0 && text == " " || utf8.RuneCountInString(text)+1+utf8.RuneCountInString(word) <= wide {
			text += " " + word
			continue
		}
		lines, text = append(lines, text), "      "+word
	}
	return strings.Join(append(lines, text), "\n") + "\n"
}

// single prints a grade of one size: a value a line, with its story beside it.
func (s sheet) single(b *strings.Builder, g *grade.Grade) {
	for _, part := range s.sections(g) {
		head, cell := 0, 0
		for _, r := range part.rows {
			head = max(head, utf8.RuneCountInString(r.head))
			for _, c := range r.cells {
				cell = max(cell, utf8.RuneCountInString(c))
			}
		}
		fmt.Fprintf(b, "\n%s\n", part.head)
		for _, r := range part.rows {
			if r.cells == nil {
				b.WriteString(s.tone(r, wrap(r.note)))
				continue
			}
			b.WriteString(s.tone(r, "  "+line(r.head, r.cells, head, cell)))
		}
	}
	if pinned(g) {
		b.WriteString("\n* your own choice, pinned\n")
	}
}
