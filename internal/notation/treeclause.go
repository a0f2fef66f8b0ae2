package notation

import (
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// A Clause is one thing a row says: *Make, *Chain, *Group, *Repeat, *Skip, *Leave, *Join, *Travel, *Evenly, *AtEnds, *Within, *Through, *Turn,
// *Fasten, *Rejoin, *Yarn, *Marker, *Along, *Counts, *Continue, *Quoted, *Remark, *Like or *UnreadClause. A clause may hold for some sizes only.
type Clause interface {
	At() source.Span
	For() Only
}

// Make is a stitch, or several, worked somewhere: "sc in next 5 sts", "2 dc in next st", "5 sc", "sc 5", "dc in each st across",
// "fpdc around next dc", "3 dc in ring".
type Make struct {
	placed
	Stitch   stitch.Stitch
	Count    Count // the number that stands by the stitch
	Form     Form  // where it stands
	In       Target
	And      bool    // joined to the Make before by "and", its stitch not repeated: "sc in 2nd ch from hook and in each ch across"
	More     bool    // "3 more dc"
	LastIn   *Target // "…, the last one in top of beg ch-3"
	Yarn     string  // "sc in next 10 sts in A"
	OnTheWay bool    // "…, working 3 sc in each corner": met while the clause before is worked
}

// Form is how the number stands by the stitch, kept because "3 sc" and "sc 3" can mean different things.
type Form uint8

const (
	Bare        Form = iota // "sc"
	NumberFirst             // "3 sc", "3sc", "1 sc"
	NumberAfter             // "sc 3", "sc3"
	TimesAfter              // "dc 5 times in next ch", "sc2tog twice", "inc x 6"
)

// A Chain is chain stitches made: a space, a beginning chain, the start of a ring or of stitches to come.
type Chain struct {
	placed
	Count Count
	Says  ChainSays     // "(counts as dc)", "(does not count as a st)"
	As    stitch.Stitch // what it counts as
	Plus  Count         // "counts as dc, ch 1": chains beyond the stitch
}

// ChainSays is what a row says its chain counts as.
type ChainSays uint8

const (
	ChainUnsaid ChainSays = iota
	SaysCounts
	SaysNot
)

// A Group is clauses in brackets, or joined by "and", worked into one place or several times.
type Group struct {
	placed
	Body     []Clause
	Bracket  byte     // '(', '[', '{' or 0
	In       *Target  // into one place: "(2 dc, ch 2, 2 dc) in next ch-2 sp", "in each ch-1 sp around"
	Extent   Extent   // "6 times", "across"
	OnTheWay bool     // "…, working (2 dc, ch 2, 2 dc) in each corner": met while the clause before is worked
	Ending   []Clause // "…] across, ending with dc in top of tch": instead of the tail of the last time
	Instead  []Clause // "… instead of ch 2": the tail that is replaced
}

// A Repeat is a star repeat: "*…; rep from * 4 more times", "*…* 5 times". The last time may stop at a mark ("ending last rep at **").
type Repeat struct {
	placed
	Body    []Clause
	Stars   int // 1 for *, 2 for **, …
	Extent  Extent
	Until   int      // how many clauses stand before the mark ** within it, 0 when there is none
	Last    bool     // the last time stops at the mark
	Ending  []Clause // "ending last rep with ch 1": instead of the body's tail
	Instead []Clause // "… instead of ch 2": the tail that is replaced
}

// Skip passes places over: "sk 2 sts", "miss next ch-1 sp".
type Skip struct {
	placed
	In Target
}

// Leave leaves what remains, or some of it, unworked.
type Leave struct {
	placed
	In Target
}

// Join closes a round: "join", "sl st in first sc to join", "join with sc in top of ch-3", "join with ch 1 and hdc in …".
type Join struct {
	placed
	With []Clause // what closes the round when not a slip stitch
	In   Target
	Ring bool // "to form a ring"
	Slip bool // said as a slip stitch only: "sl st in first sc"; at the start of a row it moves along
	Not  bool // "do not join"
}

// Travel moves along with slip stitches that are not counted: "sl st in next 2 sts and in next ch-2 sp".
type Travel struct {
	placed
	Stitch stitch.Stitch
	Count  Count // "2 sl st in next sp": how many; not said is one in each place
	In     []Target
}

// Evenly makes a number of stitches, increases or decreases without saying where.
type Evenly struct {
	placed
	Change int // 0: that many made in all; +1: increases; -1: decreases
	Count  Count
	Stitch stitch.Stitch // zero when not said
	Per    [2]Count      // "3 sc over every 2 rows"
	Along  Target
}

// AtEnds increases or decreases at the ends of the row, in the stitch of the rows before: "dec 1 st at each end".
type AtEnds struct {
	placed
	Change     int // +1 or -1
	Count      Count
	Start, End bool
}

// Within says that only some of the stitches are worked, now and in the rows that follow: "work on first 20 sts only".
type Within struct {
	placed
	In Target
}

// Through sets the loops for what follows: "FLO:", "Working in back loops only," until the end of the row or the next.
type Through struct {
	placed
	Loop stitch.Loop
}

// Along says where the clauses behind it are worked, up to the next Along or the end of the row: "along the other side", "along row
// ends", "other side:".
type Along struct {
	placed
	In Target
}

// Counts says what a chain counts as where it is not a Chain of its own: "(skipped ch count as dc)", "turning ch as 1 dc".
type Counts struct {
	placed
	Skipped bool // the chains passed over at the start of a foundation; otherwise the turning chain of the row
	Says    ChainSays
	As      stitch.Stitch
	Sts     Count // "counts as 2 sts"
	Plus    Count // "the skipped ch counting as dc and ch 1"
}

// Continue goes on shaping over rows that are not written out: "inc 6 sts on next and every following alt rnd to 72 (78-84-90) sc".
type Continue struct {
	placed
	Change int // +1 or -1; 0 when the rows go on unchanged
	Count  Count
	Stitch stitch.Stitch
	Each   Noun  // "in each section"; zero for the whole row
	Every  int   // the change comes every so many rows: 1 or 2
	Next   bool  // and on the next row
	Round  bool  // rounds, not rows
	Rows   Count // "work 6 rows": how many rows
	Extent Extent
}

// Turn turns the work; Not is "do not turn".
type Turn struct {
	placed
	Not bool
}

// Fasten ends the yarn; Rejoin begins it again somewhere.
type Fasten struct {
	placed
	Yarn string // "fasten off A"; empty for the yarn in hand
}

// Rejoin joins yarn, perhaps of a colour, in a place: "join B in any ch-2 sp", "rejoin yarn in next free st".
type Rejoin struct {
	placed
	Yarn string
	In   Target
	With stitch.Stitch // "join with sc": the stitch made there; zero for a slip stitch
}

// Yarn changes colour: "with A", "change to B in last yo", "drop A".
type Yarn struct {
	placed
	Name string
	How  string // as written, printed back
}

// Marker places, moves or removes a marker at where the hook is.
type Marker struct {
	placed
	Name string
	Does string // place, move, remove, slip
	In   Target
}

// Quoted is a clause in the designer's own words with a declared effect.
type Quoted struct {
	placed
	Text   string
	Uses   Count
	Makes  Count
	Stitch stitch.Stitch // what it makes, when said
	Bare   bool          // says neither what it uses nor what it makes
}

// A Remark changes nothing: "(RS facing)", "not counting the sl sts", "as set".
type Remark struct {
	placed
	Text     string // in US terms
	Brackets bool   // it stood in brackets
}

// Like works what another row said: "as Row 4", "rep Row 2", within a row's body.
type Like struct {
	placed
	Rows   []Range
	Last   Count // "last 2 rows"
	Round  bool  // they are rounds
	Extent Extent
}

// UnreadClause is words that were not understood; Wanted is what could have stood there, empty where a finding of another rule says so.
type UnreadClause struct {
	placed
	Text   string
	Wanted string
}

// A Claim is the count a designer printed after a row. Several make a mixed count: "(82 dc, 4 ch-2 sps)".
type Claim struct {
	Count  Count
	Noun   Noun      // what it counts; AnyStitch when only "sts", NoNoun when only a number
	Per    string    // "on each side", "per side", "each repeat"; empty for the whole row
	Change int       // "8 sts inc'd" is +1, "dec'd" is -1; 0 is the whole count
	Groups Count     // "4 groups of 7 dc"
	With   string    // "counting turning ch", "not counting the sl sts", as written
	Tch    ChainSays // whether the count has the turning chain in it, where With says so
	Only   Only
	Span   source.Span
}
