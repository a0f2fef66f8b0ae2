package manuscript

import (
	"strings"

	"foundrow/internal/measure"
	"foundrow/internal/pattern"
	"foundrow/internal/source"
)

// scope is what the keys of a pattern need to know of each other, and of the studio.
type scope struct {
	p      *pattern.Pattern
	tables Tables
	taken  map[string]source.Span // the names of values, and where each was given
}

// patternKeys are the keys of a pattern's front matter. They are read in this order: what others stand on comes first.
var patternKeys = []key[pattern.Pattern]{
	{"title", isText, `"Millrace Pullover"`, true, func(r *reader, p *pattern.Pattern, n *node) { p.Title = wordsOf(n) }},
	{"kind", isText, `"garment"`, true, func(r *reader, p *pattern.Pattern, n *node) { p.Kind, _ = r.oneOf(n, pattern.Kinds) }},
	{"summary", isText, `"A boxy pullover in half-double ridges."`, false, func(r *reader, p *pattern.Pattern, n *node) { p.Summary = wordsOf(n) }},
	{"released", isDate, `2026-04-02`, false, readReleased},
	{"version", isText, `"1.1"`, false, func(r *reader, p *pattern.Pattern, n *node) { p.Version = n.words }},
	{"skill", isText, `"easy"`, false, func(r *reader, p *pattern.Pattern, n *node) { p.Skill, _ = r.oneOf(n, pattern.Skills) }},
	{"terms", isText, `"us"`, true, func(r *reader, p *pattern.Pattern, n *node) { p.Terms = r.terms(n, p.Terms) }},
	{"wearer", isText, `"adult"`, false, readWearer},
	{"units", isText, `"cm"`, false, func(r *reader, p *pattern.Pattern, n *node) { p.Tape.Unit = r.tapeUnit(n, p.Tape.Unit) }},
	{"sizes", isTable, `{ table = "women", offer = "XS to 5X" }`, false, readSizes},
	{"yarn", isTable, ``, false, readYarns},
	{"hook", isTable, ``, false, readHooks},
	{"gauge", isTable, ``, false, readGauges},
	{"body", isTable, ``, false, func(r *reader, p *pattern.Pattern, n *node) { p.Body = r.definitions(n, ownBody) }},
	{"measures", isTable, ``, false, readMeasures},
	{"counts", isTable, ``, false, func(r *reader, p *pattern.Pattern, n *node) { p.Counts = r.definitions(n, counted) }},
	{"pin", isTable, ``, false, readPins},
	{"turning", isTable, ``, false, readTurning},
	{"sample", isTable, ``, false, readSample},
	{"special", isTable, ``, false, func(r *reader, p *pattern.Pattern, n *node) { p.Special = r.specials(n) }},
	{"own", isTable, ``, false, readOwn},
	{"notions", isTable, ``, false, readNotions},
	{"film", isTable, `{ page = "https://…", runs = "24:10" }`, false, readFilm},
	{"photo", isTable, ``, false, readPhotos},
	{"credits", isTable, `{ "technical editing" = "…" }`, false, readCredits},
	{"tested", isTable, `{ "Ana" = "S to L" }`, false, readTested},
	{"shaping", isTable, ``, false, keepUnread},
	{"spread", isTable, ``, false, keepUnread},
}

// plainKeys are the keys of a page that is not a pattern: its own, and those of a pattern that make sense without sizes.
var plainKeys = append([]key[pattern.Plain]{
	{"title", isText, `"About"`, false, func(r *reader, p *pattern.Plain, n *node) { p.Title = wordsOf(n) }},
	{"order", isWhole, `3`, false, readOrder},
}, ofPattern("summary", "terms", "units", "yarn", "hook", "gauge", "body", "measures", "counts", "turning", "special", "notions")...)

// ofPattern picks keys of a pattern for a page.
func ofPattern(names ...string) []key[pattern.Plain] {
	var keys []key[pattern.Plain]
	for _, k := range patternKeys {
		for _, name := range names {
			if k.name == name {
				keys = append(keys, key[pattern.Plain]{k.name, k.wants, k.example, false,
					func(r *reader, p *pattern.Plain, n *node) { k.read(r, &p.Pattern, n) }})
			}
		}
	}
	return keys
}

func readOrder(r *reader, p *pattern.Plain, n *node) {
	p.Order, _ = r.wholeNumber(n, 1, 9999)
}

func readReleased(r *reader, p *pattern.Pattern, n *node) {
	day := r.file.Slice(n.span)
	if len(day) != len("2026-04-02") || strings.Contains(day, ":") {
		r.fs.Report(r.file, n.span, "wrong-type", "`released` is "+day+", and a day is wanted", "write released = 2026-04-02")
		return
	}
	p.Released = day
}

// wearerWords are the wearers in the order they are listed in.
var wearerWords = []string{string(pattern.Adult), string(pattern.Child), string(pattern.Baby), string(pattern.Pet), string(pattern.None)}

func readWearer(r *reader, p *pattern.Pattern, n *node) {
	w, _ := r.oneOf(n, wearerWords)
	p.Wearer = pattern.Wearer(w.Text)
}

// terms reads us or uk.
func (r *reader) terms(n *node, otherwise pattern.Terms) pattern.Terms {
	known := []string{pattern.US.String(), pattern.UK.String()}
	w, ok := r.oneOf(n, known)
	if !ok {
		return otherwise
	}
	if w.Text == known[1] {
		return pattern.UK
	}
	return pattern.US
}

// tapeUnit reads the unit lengths are reckoned in.
func (r *reader) tapeUnit(n *node, otherwise measure.Unit) measure.Unit {
	w, ok := r.oneOf(n, []string{measure.Centimetre.String(), measure.Inch.String()})
	if !ok {
		return otherwise
	}
	unit, _ := measure.ParseUnit(w.Text)
	return unit
}

// keepUnread keeps a table whose contents are not worked, and says so.
func keepUnread(r *reader, p *pattern.Pattern, n *node) {
	for _, t := range n.entries {
		if t.broken {
			continue
		}
		u := pattern.Unread{Name: pattern.Words{Text: n.name + "." + t.name, Span: t.key}}
		u.Entries = r.unread(u.Entries, t, "")
		p.Unread = append(p.Unread, u)
		r.fs.Ask(r.file, t.span, "not-yet", "["+u.Name.Text+"] is kept as it is written and not worked", "write its rows and counts out until it is")
	}
}

// unread lists the keys and values of a table as they are written.
func (r *reader) unread(list []pattern.UnreadEntry, t *node, prefix string) []pattern.UnreadEntry {
	if t.kind != isTable {
		value := pattern.Words{Text: r.file.Slice(t.span), Span: t.span}
		if t.kind == isText {
			value = wordsOf(t)
		}
		return append(list, pattern.UnreadEntry{Key: pattern.Words{Text: prefix, Span: t.key}, Value: value})
	}
	for _, e := range t.entries {
		name := e.name
		if prefix != "" {
			name = prefix + "." + name
		}
		list = r.unread(list, e, name)
	}
	return list
}
