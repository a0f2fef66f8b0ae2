// Package stitch is the dictionary of the trade: the standard stitches and modifiers, what each uses and makes, how tall it
// is, what its turning chain counts as, and its names in US and UK terms.
//
// It knows words and numbers of stitches, not how a row is said (package notation) nor what a row has left (package ledger).
package stitch

// A Stitch is a stitch as it is worked: a base stitch with what is done to it. It can be compared, and its names are always
// those of the US ladder, whatever terms a pattern is written in; Name of a special stitch is the pattern's own.
type Stitch struct {
	Name     string // "ch", "sl st", "sc", "hdc", "dc", "tr", "dtr", "trtr", "esc", …, "bobble", "shell", "V-st", a pattern's "cl3"
	Together uint8  // how many are worked together: 2 for sc2tog; 0 when not a decrease
	Post     Post
	Loop     Loop
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
