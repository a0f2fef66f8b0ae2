package notation

import "slices"

// Over returns the lines of another block with those of this one in their place: a foundation or a start of its own instead of the
// other's, a row of its own instead of the other's of that label. Other lines of its own come last.
func (b *Block) Over(other *Block) *Block {
	out := &Block{Lines: slices.Clone(other.Lines), Edges: slices.Concat(other.Edges, b.Edges)}
	for _, own := range b.Lines {
		i := slices.IndexFunc(out.Lines, func(l Line) bool { return replaces(own, l) })
		if i >= 0 {
			out.Lines[i] = own
		} else {
			out.Lines = append(out.Lines, own)
		}
	}
	return out
}

// replaces reports whether a line of one's own stands for a line of the other block.
func replaces(own, other Line) bool {
	switch own := own.(type) {
	case *Foundation, *Start:
		return begins(other)
	case *Row:
		if other, ok := other.(*Row); ok {
			return sameLabel(&own.Label, &other.Label)
		}
	}
	return false
}

func begins(l Line) bool {
	switch l.(type) {
	case *Foundation, *Start:
		return true
	}
	return false
}

func sameLabel(a, b *Label) bool {
	return a.Words == b.Words && a.Round == b.Round && slices.EqualFunc(a.Numbers, b.Numbers, func(a, b Range) bool {
		return a.From.Plain == b.From.Plain && a.To.Plain == b.To.Plain && a.From.Slot == b.From.Slot && a.To.Slot == b.To.Slot
	}) && len(a.Numbers) > 0
}
