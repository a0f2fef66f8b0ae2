package manuscript

import (
	"strconv"
	"strings"

	"foundrow/internal/source"
)

// A fence is the line that opens or closes a fenced block, as CommonMark has it.
type fence struct {
	mark byte
	run  int
	info string
}

// fenceOf reads a line as a fence.
func fenceOf(line string) (fence, bool) {
	rest := strings.TrimLeft(line, " ")
	if len(line)-len(rest) > 3 || rest == "" || rest[0] != '`' && rest[0] != '~' {
		return fence{}, false
	}
	mark := rest[0]
	info := strings.TrimLeft(rest, string(mark))
	run := len(rest) - len(info)
	if run < 3 || mark == '`' && strings.ContainsRune(info, '`') {
		return fence{}, false
	}
	return fence{mark, run, strings.TrimSpace(info)}, true
}

// closes reports whether f ends the block that open began.
func (f fence) closes(open fence) bool {
	return f.mark == open.mark && f.run >= open.run && f.info == ""
}

func (f fence) isTOML() bool {
	word, _, _ := strings.Cut(f.info, " ")
	return word == "toml"
}

// A front is where the front matter of a file stands and where its text begins.
type front struct {
	open source.Span // the opening fence
	toml source.Span
	rest int
	has  bool
}

// cutFront finds the front matter: the first block of a file, if that is a fenced one of TOML. Where it has to be there and is
// not, or is not closed, that is reported, and what can be found of it is cut off all the same.
func cutFront(f *source.File, required bool, fs *source.Findings) front {
	at := 0
	for at < len(f.Text) && strings.TrimSpace(f.Text[at:lineEnd(f.Text, at)]) == "" {
		at = lineEnd(f.Text, at)
	}
	line := lineAt(f.Text, at)
	if open, ok := fenceOf(line); ok && open.isTOML() {
		return frontFrom(f, at, open, fs)
	}
	if !required {
		return front{}
	}
	const fix = "begin the file with ```toml, the front matter, and ``` on a line of its own"
	for from := at; from < len(f.Text); from = lineEnd(f.Text, from) {
		if open, ok := fenceOf(lineAt(f.Text, from)); ok && open.isTOML() {
			cut := frontFrom(f, from, open, fs)
			fs.Report(f, cut.open, "no-front-matter", "the front matter stands on line "+strconv.Itoa(f.Place(cut.open).Line)+", below other text", "move it to the top of the file")
			return cut
		}
	}
	first := source.Span{From: at, To: at + len(line)}
	switch open, fenced := fenceOf(line); {
	case strings.TrimSpace(f.Text) == "":
		fs.Report(f, source.Span{}, "no-front-matter", "the file is empty", fix)
	case fenced && open.info != "":
		fs.Report(f, first, "no-front-matter", "the first block of the file is `"+open.info+"` and not the front matter", "write toml after the opening ```")
	case strings.TrimSpace(line) == "---" || strings.TrimSpace(line) == "+++":
		fs.Report(f, first, "no-front-matter", "the front matter stands between lines of "+strings.TrimSpace(line), "write ```toml above it and ``` below it, so that every editor shows it as it is")
	default:
		fs.Report(f, first, "no-front-matter", "the file does not begin with its front matter", fix)
	}
	return front{}
}

// frontFrom cuts the front matter whose opening fence is at an offset.
func frontFrom(f *source.File, at int, open fence, fs *source.Findings) front {
	cut := front{open: source.Span{From: at, To: at + len(lineAt(f.Text, at))}, has: true}
	cut.toml.From = lineEnd(f.Text, at)
	for from := cut.toml.From; from < len(f.Text); from = lineEnd(f.Text, from) {
		other, ok := fenceOf(lineAt(f.Text, from))
		if ok && other.closes(open) {
			cut.toml.To, cut.rest = from, lineEnd(f.Text, from)
			return cut
		}
		if ok && other.info != "" {
			break // another block opens: this one was never closed
		}
	}
	cut.toml.To = lastTOML(f.Text, cut.toml.From)
	cut.rest = cut.toml.To
	fs.Report(f, cut.open, "front-matter-open", "the front matter that opens here is never closed", "write ``` on a line of its own below its last line, line "+
		strconv.Itoa(f.Place(source.At(max(cut.toml.To-1, cut.toml.From))).Line))
	return cut
}

// lastTOML returns where the lines end that can be TOML, for a front matter that is not closed: before the first one that looks
// like text, and before the blank lines and headings above it.
func lastTOML(text string, from int) int {
	end := from
	for at := from; at < len(text); at = lineEnd(text, at) {
		line := strings.TrimSpace(lineAt(text, at))
		switch {
		case line == "" || line[0] == '#':
		case beginsStatement(line) || strings.IndexByte("]}\"'", line[0]) >= 0:
			end = lineEnd(text, at)
		default:
			return end
		}
	}
	return end
}

// lineAt returns the line that begins at an offset, without its end.
func lineAt(text string, at int) string {
	return strings.TrimRight(text[at:lineEnd(text, at)], "\r\n")
}
