package notation

import (
	"foundrow/internal/measure"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// A Target is where the hook goes. The zero Target is not said: the next place.
type Target struct {
	Where Where
	Each  bool   // "in each of next 3", "in each st"
	Count Count  // how many places: "next 5 sts"; not said is one, or all with an extent
	Noun  Noun   // what the places are called: st, sc, ch, ch-2 sp, row-end, shell, ring; zero when left out ("in next")
	Also  []Noun // "in each st and ch across"
	Nth   Count  // "3rd ch of ch-5", "2nd ch from hook", "3rd dc of next shell", "the 4th st"
	Of    Noun   // "… of next shell", "of ch-5", "of tch"; zero when not said
	Till  Extent // "across", "to last 3 sts", "to next ch-2 sp"
	Below int    // rows below the last: "2 rows below" is 2
	Row   Count  // "in skipped st of Rnd 2"
	Edge  *Edge  // of another piece: "in next st of body.left"
	Name  string // of a marker, or of the edge gone along: "long side"
	Any   bool   // of Next: "in any ch-2 sp"
	Every int    // "in every other st" is 2, "in every 3rd row" is 3; 0 otherwise
	Over  bool   // "over next 4 sts": the stitches are made over all of these places together
	Base  bool   // of Same: "in base of ch 1"; Of is the chain
	That  bool   // of Same: "that sp", the one just reached rather than worked
	Prev  bool   // "of each of previous 11 rows"
	Round bool   // Row is a round
	// OfWhere is which of the things is meant where the place has a Where of its own: "center dc of next shell", "between next 2 sts"
	OfWhere Where
	Around  bool // "around the post of each dc", of a stitch that is no post stitch
	Span    source.Span
}

// Said reports whether a target is said at all.
func (t *Target) Said() bool { return t.Span != (source.Span{}) }

// Where is the kind of place, or how it is found.
type Where uint8

const (
	Unsaid      Where = iota
	Next              // next n places
	Same              // in the place just worked, or the base of the beginning chain: "in same st", "in base of ch 1", "where joined"
	First             // first n places of the row
	Last              // last n places
	FromHook          // "in 2nd ch from hook"
	InRing            // ring, circle
	InSpace           // chain space or loop, "in same sp" is Same with that noun
	TopOf             // "in top of ch-3", "in top of tch", "in beg ch-3"
	Between           // "between next 2 sts"
	Skipped           // a stitch passed over before
	Marked            // the marked stitch
	RowEnds           // along row-ends
	OtherSide         // along the other side of the chain
	CentreOf          // "in center dc of group"
	Remaining         // "in each rem st", "in each sc left"
	Joining           // "in joining st"
	Both              // "through both thicknesses"
	Everywhere        // "in each st", with an extent or to the end
	RestUnnamed       // "sc to end", "sc to last 3 sts": no place named
)

// A Noun is what a place, or what is counted, is called.
type Noun struct {
	Kind   NounKind
	Stitch stitch.Stitch // of AStitch and Unit
	Chains Count         // of "ch-2 sp", "ch-5"
	Name   string        // a unit that is no stitch ("box", "corner", "group"), or a word that describes the noun ("raglan st", "thumb ch")
	Loop   bool          // a space called a loop
	Round  bool          // of ARow: rounds
	Loose  bool          // a space called "ch sp", its chains not said
}

// NounKind sorts nouns.
type NounKind uint8

const (
	NoNoun    NounKind = iota
	AnyStitch          // st, sts
	AStitch            // sc, dc, FPdc …
	AChain             // ch
	ASpace             // ch-2 sp, sp, loop, mesh hole
	TurningCh          // tch, beg ch-3
	ARing              // ring, circle
	ARowEnd            // row-end, end of row
	AUnit              // shell, V-st, cluster group, block, corner, mesh: something defined
	ARepeat            // repeat, pattern repeat, group
	ARow               // row or round, counted as a whole: "20 rows in all"
)

// An Extent says how far or how often.
type Extent struct {
	Kind    ExtentKind
	Count   Count       // of times, of places left
	Noun    Noun        // "last 3 sts", "next ch-2 sp", "5 ch-1 sps remain"
	Name    string      // of a marker
	Length  Count       // of UntilMeasures: the value, the list or the whole part of a plain number; not said is the desired length
	Measure measure.Num // the plain number itself: 30.5
	Unit    string      // of it: "cm", "mm", "inch"; empty when a value has its own
	Around  bool        // of AcrossRow: said of a round
	Span    source.Span
}

// ExtentKind sorts extents.
type ExtentKind uint8

const (
	NotSaid       ExtentKind = iota
	AcrossRow                // across, around, to end, to end of row
	Times                    // n times, x 6, twice
	MoreTimes                // n more times, n times more, once more
	InAll                    // a total of n times, n times in all
	ToLast                   // to last n sts, to within last n sts
	UntilLeft                // until n sts remain, until n sts left
	ToNext                   // to next ch-2 sp, to next corner
	ToMarker                 // to marker a, to next m
	ToCentre                 // to the centre n sts
	UntilMade                // until there are n sts, to 72 (78-84-90) sc
	UntilMeasures            // until piece measures 20 cm
	RepeatN                  // "rep from * 4 times": total or more, as the habit says
)
