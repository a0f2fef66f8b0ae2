// Package notation reads and prints crochet row instructions. It knows what a row says, not whether it can be worked; that is
// package ledger's job.
//
// A block of rows is read into a tree. Nothing is settled while it is read that another row, a note or the counts may decide:
// whether "3 sc" is a run or three in one place, whether a chain counts as a stitch, what "rep n times" means. The tree keeps
// what was written, and ledger's Habits say how it is taken.
package notation

import (
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
