// Package notation reads and prints crochet row instructions. It knows what a row says, not whether it can be worked; that is
// package ledger's job.
//
// A block of rows is read into a tree. Nothing is settled while it is read that another row, a note or the counts may decide:
// whether "3 sc" is a run or three in one place, whether a chain counts as a stitch, what "rep n times" means. The tree keeps
// what was written, and ledger's Habits say how it is taken.
package notation

import (
	"foundrow/internal/measure"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// A Block is a piece's lines in order.
type Block struct {
	Lines []Line
	Edges []Edge // of other pieces that the lines name, so that those are worked first
}

// A Line is one line of a block: *Foundation, *Start, *Row, *Again, *Rule, *Note, *Film, *Mark, *Seam, *Chart, *Lengthen,
// *Work or *Unread. Every line may hold for some sizes only.
type Line interface {
	At() source.Span
	For() Only
}

// An Only says for which sizes something stands: Names as written ("M", "3X to 5X"); All is "All other sizes".
// The zero Only is every size.
type Only struct {
	Names []string
	Rest  bool // all other sizes
	Span  source.Span
}

// placed is embedded by every line and clause.
type placed struct {
	Span source.Span
	Only *Only // nil is every size
}

func (p *placed) At() source.Span { return p.Span }

func (p *placed) For() Only {
	if p.Only == nil {
		return Only{}
	}
	return *p.Only
}

// A Count is a number as written: plain ("5"), the trade's list ("24 (26, 28)"), or a value in braces, found by its slot.
// The zero Count is "not said".
type Count struct {
	Plain int
	List  []Entry // one for each size, smallest first; nil when plain
	Span  source.Span
	Slot  int // one more than the index of the pattern's slot; 0 when none
	Said  bool
}

// An Entry of a list; Absent is the dash of a size that has none.
type Entry struct {
	N      int
	Absent bool
}

// Lines

// A Foundation is what the first row is worked into: a chain, a ring, foundation stitches.
type Foundation struct {
	placed
	Body   []Clause // "Ch 43", "Fsc 61", "Ch 4, sl st in first ch to form a ring", "magic ring"
	Claims []Claim
}

// A Start says what a piece begins on when that is not a chain: stitches, row-ends, edges of pieces, a row over nothing.
type Start struct {
	placed
	Count  Count    // "N sts", "N row-ends"
	Noun   Noun     // sts, row-ends, sps, blocks, clusters
	Edges  []Edge   // of other pieces, in the order met
	Around bool     // they close into a round
	Pickup []Clause // "1 sc in each row-end", worked along the edges
	Body   []Clause // a row worked over nothing: "(3 dc, ch 2) 4 times"
	Claims []Claim
}

// An Edge names live stitches: "hem.left", "first 55 sts of yoke.last", "body.last from marker a to marker b", "sts of row 5".
type Edge struct {
	Piece string // empty for the piece itself
	Which string // last, foundation, left, right, or row with its number in Row
	Row   Count  // of sts left unworked: "sts of row 5"
	First Count  // "first 55 sts of"
	Last  Count
	From  string // marker
	To    string
	Span  source.Span
}

// A Row is a row or round, or several worked alike.
type Row struct {
	placed
	Label  Label
	Body   []Clause
	Claims []Claim
}

// A Label is what stands before the colon.
type Label struct {
	Words   string  // before the number: "Armhole", "Left panel", "Inc", "Next"; empty for plain rows
	Round   bool    // rnd, not row
	Numbers []Range // "3", "3 to 8", "4, 6 and 8"; empty when it has no number
	Every   Every   // "8th and alt rnds": all of that parity until a row that is told
	Times   Count   // "Next 5 (6, 7, 9) rows"
	Side    Side
	Yarn    string // "(B)"
	Bare    bool   // only numbers, as old books write: "4."
	Short   bool   // "R5": row or round is not said
	Remark  string // "(right cup only)"
	Span    source.Span
}

// A Range of row numbers; To is not said for a single one.
type Range struct{ From, To Count }

// Every says that a label stands for alternate rows as well.
type Every uint8

const (
	JustThese Every = iota
	AndAlternate
)

// A Side is the side of the work that faces.
type Side uint8

const (
	NoSide Side = iota
	RightSide
	WrongSide
)

// Again repeats whole rows: "Repeat rows 2 and 3 four times", "Repeat rows 2 and 3 until 5 sts remain", "Rows 4-9: rep row 3".
type Again struct {
	placed
	Label    Label    // empty for a line that is only the repetition
	Rows     []Range  // which rows; empty for "last row" with LastRows
	Last     Count    // "repeat last 2 rows"
	Round    bool     // they are rounds
	Extent   Extent   // how often; zero means once for each row of the label
	Ending   []Range  // "ending with row 2"
	EndSide  Side     // "ending with a WS row"
	Reversed bool     // "reversing all shaping"
	Then     []Clause // after the last of them: "… Fasten off."
	Claims   []Claim
}

// A Rule is a "Throughout:" line, one of a closed list of sentences.
type Rule struct {
	placed
	Kind    RuleKind
	Chain   Count         // of "ch 2 …"
	Noun    Noun          // what it counts as, or what a count counts
	Stitch  stitch.Stitch // "ch 2 counts as hdc"; the special stitch a unit is
	How     []Clause      // "V-st = (dc, ch 1, dc)", "join = sl st in first st", "inc = 2 sc in next st"
	Name    string        // the name being defined
	Plus    Count         // "ch 4 counts as dc, ch 1": chains beyond the stitch
	Sts     Count         // "each ch-2 sp counts as 2 sts"
	Skipped bool          // the chains passed over at the start of a foundation
	Uses    Count         // of a name: "bs makes 1 st in 1 st"
	Makes   Count
	First   bool // of a name: what it makes last is the first stitch of the round it begins
}

// RuleKind is one of the sentences that a "Throughout:" line may say.
type RuleKind uint8

const (
	ChainCounts           RuleKind = iota // "ch 3 counts as dc", "beg ch counts as first st"
	ChainDoesNotCount                     // "ch 2 does not count as a st"
	ChainStands                           // "ch 3 stands but is not in the count"
	RepeatIsTotal                         // "rep from * n times means n in all"
	RepeatIsMore                          // "rep from * n times means n more"
	NumberFirstIsRun                      // "3 sc means sc in each of next 3 sts"
	NumberFirstIsOnePlace                 // "3 sc means 3 sc in one st"
	ChainsAreStitches                     // "each ch counts as a st", "each ch-2 sp counts as 2 sts"
	Defines                               // "shell = 5 dc in one st"
	CountOf                               // "counts are of dc only"
	SlipsAreStitches                      // "each sl st counts as a st"
	SlipsDoNotCount                       // "sl sts do not count"
)

// A Note is printed and never worked.
type Note struct {
	placed
	Text string // in US terms
}

// A Film stamps the row below with its moment, in seconds.
type Film struct {
	placed
	Seconds int
}

// A Mark is a line that places a marker: "Place marker a in the 12th st."
type Mark struct {
	placed
	Name string
	In   Count // which stitch of the last row
	Last bool  // the last stitch of it
}

// A Seam joins two edges: "Seam: hem.last to hem.foundation."
type Seam struct {
	placed
	Edges [2]Edge
}

// A Chart is a line that stands for rows of a chart.
type Chart struct {
	placed
	Rows []Range
}

// Lengthen is "Lengthen or shorten here, in steps of 2 rows."
type Lengthen struct {
	placed
	Step Count
}

// Work lays named rows over a schedule: "Work: shaping body and sleeve", "Shape NAME".
type Work struct {
	placed
	Names []string
}

// Unread is a line that could not be read at all.
type Unread struct {
	placed
	Text string
}

// Clauses

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
	AGap               // space between stitches
	AUnit              // shell, V-st, cluster group, block, corner, mesh: something defined
	ARepeat            // repeat, pattern repeat, group
	APost              // post
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
