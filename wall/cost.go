package wall

import (
	"cmp"

	"example.com/groovewright/fraction"
)

// cost is what layouts are ordered by, lexicographically: the first difference decides. Costs of
// parts combine into the cost of the whole, and a better part never makes a worse whole; that is
// what lets dynamic programming find the least, and best-first search the order.
type cost struct {
	broken  int             // hard rules: seams too near a box, panels too narrow, only exposed ends cut
	price   fraction.Length // of the pieces by an objective; 0 for Layouts
	blemish fraction.Ratio
	pieces  int
	uneven  fraction.Length // sum of differences between the cuts at both ends of a run
	narrow  fraction.Length // least panel width, more is better; far where there is no panel
}

// far is wider than any panel: the narrowest panel of no panels.
var far = fraction.Inches(1 << 30)

var (
	zeroCost = cost{narrow: far}
	infinite = cost{broken: 1 << 24, narrow: far} // of what cannot be
)

func (a *cost) feasible() bool { return a.broken < infinite.broken }

func (a cost) plus(b cost) cost {
	return cost{
		broken:  a.broken + b.broken,
		price:   a.price.Add(b.price),
		blemish: a.blemish.Add(b.blemish),
		pieces:  a.pieces + b.pieces,
		uneven:  a.uneven.Add(b.uneven),
		narrow:  fraction.Min(a.narrow, b.narrow),
	}
}

func (a *cost) compare(b *cost) int {
	if a.broken != b.broken {
		return cmp.Compare(a.broken, b.broken)
	}
	if c := a.price.Compare(b.price); c != 0 {
		return c
	}
	if c := a.blemish.Compare(b.blemish); c != 0 {
		return c
	}
	if a.pieces != b.pieces {
		return cmp.Compare(a.pieces, b.pieces)
	}
	if c := a.uneven.Compare(b.uneven); c != 0 {
		return c
	}
	return b.narrow.Compare(a.narrow)
}
