package stitch

import (
	"strconv"
	"strings"
)

// In returns the stitch's abbreviation in the terms: "sc2tog", "FPdc", "3-dc cluster", "sc BLO".
func (s Stitch) In(t Terms) string {
	name := s.bare(t)
	if l := s.Loop.String(); l != "" {
		return name + " " + l
	}
	return name
}

// bare is the abbreviation without the loop.
func (s Stitch) bare(t Terms) string {
	e := s.Find()
	name := s.Name
	if e != nil {
		name = e.In(t).Abbr
		if e.Class == Ring {
			return e.In(t).Words
		}
		if e.Class == Unit && e.Name != "V-st" && e.Name != "cross" {
			name = strings.ToLower(shortWords(e.In(t).Words)) // "shell", not "sh": units are read more easily in full
		}
	}
	if s.Post != NoPost {
		prefix := [...]string{"", "FP", "BP"}[s.Post]
		if strings.Contains(name, " ") {
			prefix += " "
		}
		name = prefix + name
	}
	if s.Together > 0 {
		name += strconv.Itoa(int(s.Together)) + "tog"
	}
	if s.Of != "" {
		of := Stitch{Name: s.Of}.bare(t)
		if s.Members > 0 {
			name = strconv.Itoa(int(s.Members)) + "-" + of + " " + name
		} else {
			name = of + " " + name
		}
	}
	return mannerWords[s.Manner] + name
}

var mannerWords = [...]string{Usual: "", Beginning: "beg ", Standing: "standing ", Half: "half "}

// shortWords drops the word stitch from a unit's name: "puff stitch" is printed "puff".
func shortWords(words string) string {
	if words == "star stitch" || words == "loop stitch" {
		return strings.TrimSuffix(words, "itch")
	}
	return strings.TrimSuffix(words, " stitch")
}

// Plural returns the abbreviation as it stands after a number other than one: stitches of the ladder do not change ("5 sc"), units
// do ("7 shells").
func (s Stitch) Plural(t Terms) string {
	name := s.In(t)
	e := s.Find()
	if s.Loop != BothLoops || s.Together > 0 || e != nil && e.Class != Unit && e.Class != Trim {
		return name
	}
	if e == nil && !strings.HasSuffix(name, "st") && !strings.HasSuffix(name, "shell") && !strings.HasSuffix(name, "cluster") && !strings.HasSuffix(name, "group") {
		return name // a pattern's own abbreviation stays as she wrote it
	}
	switch {
	case strings.HasSuffix(name, "mesh"), strings.HasSuffix(name, "cross"):
		return name + "es"
	}
	return name + "s"
}

// Words returns the stitch's name in full: "single crochet 2 stitches together".
func (s Stitch) Words(t Terms) string {
	name := s.Name
	if e := s.Find(); e != nil {
		name = e.In(t).Words
	}
	if s.Post != NoPost {
		name = [...]string{"", "front post ", "back post "}[s.Post] + name
	}
	if s.Together > 0 {
		name += " " + strconv.Itoa(int(s.Together)) + " stitches together"
	}
	if s.Of != "" {
		of := Stitch{Name: s.Of}.Words(t)
		if s.Members > 0 {
			of = strconv.Itoa(int(s.Members)) + "-" + of
		}
		name = of + " " + name
	}
	if s.Loop != BothLoops {
		name += " in the " + [...]string{"", "back loop only", "front loop only", "third loop", "back bump"}[s.Loop]
	}
	return mannerWords[s.Manner] + name
}

// String returns the abbreviation of a loop, as it follows a stitch; empty for both loops.
func (l Loop) String() string {
	return [...]string{BothLoops: "", BackLoop: "BLO", FrontLoop: "FLO", ThirdLoop: "3rd loop", BackBump: "back bump"}[l]
}
