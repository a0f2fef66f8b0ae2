package ledger

import (
	"foundrow/internal/notation"
	"foundrow/internal/source"
	"foundrow/internal/stitch"
)

// fromHook works a stitch in a chain counted from the hook. The chains before it stand for a stitch when it is tall enough.
func (h *hand) fromHook(k *craft, c *notation.Make, t *notation.Target, count int) {
	n, _ := h.number(&t.Nth, 2)
	if h.so.loose && !h.s.begun && !h.onChain() && h.so.begin == nil && len(h.made) == h.first {
		h.pass(want{}, n-1) // some of what is counted are chains
		h.spread(k, want{}, 1, count)
		return
	}
	if !h.onChain() {
		// after a turning chain she counts its chains too: "ch 3, dc in 4th ch from hook" is the first place
		h.spread(k, want{}, 1, count)
		return
	}
	h.skipChains(n-1, h.sheet.stitches[k.made], c.At())
	h.spread(k, want{what: chain}, 1, count)
}

// groupFromHook works a group in a chain counted from the hook.
func (h *hand) groupFromHook(body []notation.Clause, t *notation.Target, span source.Span) {
	n, _ := h.number(&t.Nth, 2)
	if !h.onChain() {
		h.inPlace(body, want{}, 1, "")
		return
	}
	next := notation.Make{}
	if m := h.firstWorked(body); m != nil {
		next = *m
	}
	h.skipChains(n-1, next.Stitch, span)
	h.inPlace(body, want{what: chain}, 1, "")
}

// skipChains passes the chains next to the hook, as the first stitch and perhaps a space where they count.
func (h *hand) skipChains(n int, next stitch.Stitch, span source.Span) {
	s := &h.s
	r := h.seek(want{what: chain})
	if r == nil || n <= 0 {
		return
	}
	n2 := min(n, r.n-s.off)
	s.skipped[r.made.Kind] += int32(n2)
	s.left -= n2
	s.off += n2
	if n2 < n {
		s.short += n - n2
	}
	s.tchain = n
	v := h.skipVerdict(n, next)
	if !v.stands {
		return
	}
	base := r.span(s.off-1-v.beneath, 1)
	if s.off-1-v.beneath < 0 {
		base = Span{}
	}
	h.emit(&Made{Kind: Turnings, Of: h.sheet.one(v.as), N: 1, Chains: n - v.plus - v.beneath, Into: base, Stands: true, Counted: v.counts})
	if v.plus > 0 {
		h.append(&Made{Kind: Spaces, N: 1, Chains: v.plus, Whole: n, Stands: true})
	}
	s.based = true
}

type skipVerdict struct {
	verdict
	beneath int // chains under the space
}

// skipVerdict decides what n chains skipped at the hook stand for. Three before a dc count, by common practice; two before an hdc may;
// more than the stitch's height are a space too, with as many chains beneath it as it has, but for the odd one.
func (h *hand) skipVerdict(n int, next stitch.Stitch) skipVerdict {
	tall := next.Tall()
	e := tall.Find()
	height := 1
	if e != nil {
		height = e.Chains
	}
	how, as, plus := AsUsual, tall, -1
	if r := h.row.counts; r != nil && r.Skipped {
		how = CountsNot
		if r.Says == notation.SaysCounts {
			how = Counts
			plus, _ = h.number(&r.Plus, 0)
		}
		if r.As.Name != "" {
			as = r.As
		}
		h.said = append(h.said, saying{n, how, as})
	} else {
		var s stitch.Stitch
		if how, s, _ = h.stated(nil, n); s.Name != "" {
			as = s
		}
	}
	v := skipVerdict{}
	v.as = as
	extra := n - height
	usual := CountsNot
	switch {
	case height < 2:
		if n >= 4 { // a loop at the edge
			usual, extra, v.as = Counts, n-3, stitch.Stitch{Name: "dc"}
		} else {
			extra = 0
		}
	case e != nil && e.Counts == stitch.Counted && n >= e.Turning:
		usual = Counts
	case e != nil && e.Counts == stitch.Unsettled && n == e.Turning:
		if how == AsUsual {
			h.unsettled(n, tall)
		}
	}
	if how == AsUsual {
		how = usual
		for i := range h.p.Turning {
			if h.p.Turning[i].Stitch == tall.Name && n == height {
				how = CountsNot
				if h.p.Turning[i].Counts {
					how = Counts
				}
			}
		}
		if n > 1 && height > 1 {
			h.moot.chain = true
			if h.habits.Chain != AsUsual {
				how = h.habits.Chain
			}
		}
	}
	if how == CountsNot {
		return v
	}
	v.stands, v.counts = true, how == Counts
	if extra > 0 {
		v.plus = (extra + 1) / 2
		v.beneath = extra - v.plus
	}
	if plus >= 0 {
		v.plus, v.beneath = plus, max(extra-plus, 0)
	}
	return v
}

// onFoundation reports whether the row is the first on a chain.
func (h *hand) onFoundation() bool { return h.so.chained > 0 && h.onChain() }

// trimFoundation leaves out of the foundation edge the chains that row 1 passed over at the hook.
func (h *hand) trimFoundation() {
	s := &h.s
	if h.so.chained == 0 || s.tchain == 0 || len(h.b.foundation.Spans) != 1 {
		return
	}
	n := h.so.chained - s.tchain
	if s.based {
		n++
	}
	h.b.foundation.Spans = []Span{{Row: h.b.foundation.Spans[0].Row, N: int32(max(n, 0)), Face: FreeLoop}}
}
