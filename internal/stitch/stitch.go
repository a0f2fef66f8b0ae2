// Package stitch is the dictionary of the trade: the standard stitches and modifiers, what each uses and makes, how tall it
// is, what its turning chain counts as, and its names in US and UK terms.
//
// It knows words and numbers of stitches, not how a row is said (package notation) nor what a row has left (package ledger).
package stitch

// A Stitch is a stitch as it is worked: a base stitch with what is done to it. It can be compared, and its names are always
// those of the US ladder, whatever terms a pattern is written in; Name of a special stitch is the pattern's own.
type Stitch struct {
	Name     string // "ch", "sl st", "sc", "hdc", "dc", "tr", "dtr", "trtr", "esc", …, "bobble", "shell", "V-st", a pattern's "cl3"
	Of       string // what a unit is made of, as "dc" in "3-dc cluster" and in "dc inc"; empty when not said
	Members  uint8  // how many of them, as 3 in "3-dc cluster"; 0 when not said
	Together uint8  // how many are worked together: 2 for sc2tog; 0 when not a decrease
	Post     Post
	Loop     Loop
	Manner   Manner
}

// A Post says round which side of the post a stitch goes.
type Post uint8

const (
	NoPost Post = iota
	FrontPost
	BackPost
)

// A Loop says which loops of a stitch the hook takes.
type Loop uint8

const (
	BothLoops Loop = iota
	BackLoop
	FrontLoop
	ThirdLoop // the bar behind a half double crochet
	BackBump  // of a chain
)

// A Manner is how a stitch begins a row or is cut short.
type Manner uint8

const (
	Usual     Manner = iota
	Beginning        // "beg shell": the beginning chain is a part of it
	Standing         // "standing dc": made with a new yarn, without a chain
	Half             // "half shell"
)

// Terms is which names of the stitches are used.
type Terms uint8

const (
	US Terms = iota
	UK
)

// String returns the terms as a front matter names them: "us" or "uk".
func (t Terms) String() string {
	if t == UK {
		return "uk"
	}
	return "us"
}

// Other returns the terms that these are not.
func (t Terms) Other() Terms { return UK - t }

// An Entry of the dictionary is one stitch before anything is done to it.
type Entry struct {
	Name    string // the Name of its Stitch
	US, UK  Names
	Class   Class
	Uses    int // places of the row below that it takes up
	Makes   int // places that it leaves for the row above
	Chains  int // its height in chains
	Halves  int // what its row-end measures, in halves of an sc row, for picking up: sc 2, hdc 3, dc 4
	Turning int // chains of its usual turning chain
	Counts  Counts
	Symbol  string // its drawing in a chart; empty where the trade has none
	Source  string
}

// Names are what one stitch is called in one system of terms.
type Names struct {
	Abbr  string
	Words string
	Also  []string // other spellings that are read and never printed
}

// In returns the names of an entry in the terms.
func (e *Entry) In(t Terms) Names {
	if t == UK {
		return e.UK
	}
	return e.US
}

// Class sorts stitches by what may be said of them.
type Class uint8

const (
	Plain      Class = iota // sc, hdc, dc …: may go round a post, be worked together, take one loop
	Chains                  // ch
	Slip                    // sl st
	Foundation              // fsc: makes its own place and uses none
	Unit                    // shell, cluster, bobble: what it is made of is the pattern's to say
	Change                  // inc, dec: of the stitch in hand
	Ring                    // magic ring
	Trim                    // picot: makes no place
)

// Counts is whether a turning chain counts as a stitch by usual convention.
type Counts uint8

const (
	Unsettled  Counts = iota // the pattern must say
	NotCounted               // it does not
	Counted                  // it does, of the usual number of chains
)

// Find returns the entry of a stitch's base, or nil when it is a pattern's own.
func (s Stitch) Find() *Entry {
	if i, ok := byName[s.Name]; ok {
		return &dictionary[i]
	}
	return nil
}

// Base returns the stitch without anything done to it.
func (s Stitch) Base() Stitch { return Stitch{Name: s.Name} }

// Standard reports whether the dictionary has the stitch.
func (s Stitch) Standard() bool { return s.Find() != nil }

// Uses returns how many places the stitch takes up: 2 for sc2tog, 1 for a pattern's own stitch.
func (s Stitch) Uses() int {
	if s.Together > 0 {
		return int(s.Together)
	}
	if e := s.Find(); e != nil {
		return e.Uses
	}
	return 1
}

// Makes returns how many places the stitch leaves; 1 for a pattern's own stitch.
func (s Stitch) Makes() int {
	if e := s.Find(); e != nil {
		return e.Makes
	}
	return 1
}

// Tall returns the stitch that a unit is as tall as: what it is made of, or the stitch itself.
func (s Stitch) Tall() Stitch {
	if s.Of != "" {
		return Stitch{Name: s.Of}
	}
	return s.Base()
}

// Entries returns the dictionary in the order it is printed: the ladder by height, then everything else.
func Entries() []Entry { return dictionary[:] }
