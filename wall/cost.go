package wall

import (
	"cmp"

	"example.com/groovewright/fraction"
)

// rank is what layouts are ordered by, the first difference deciding: hard
// rules broken, what the pieces are worth (where that is asked for), blemish,
// pieces, unbalanced cuts, and last the narrowest panel, of which more is better. Ranks of parts combine into the rank of the whole,
// and a better part never makes a worse whole; that is what lets dynamic
// programming find the least, and best-first search the order.
type rank struct {
	broken  int             // seams too near a box, panels too narrow, only exposed ends cut
	worth   fraction.Length // sum; 0 for Layouts
	blemish fraction.Ratio  // sum over the parts
	pieces  int             // sum
	uneven  fraction.Length // sum of differences between the cuts at both ends of a run
	narrow  fraction.Length // least panel width; far where there is no panel
}

// far is wider than any panel: the narrowest panel of no panels.
var far = fraction.Inches(1 << 30)

var noRank = rank{narrow: far}

func (a rank) plus(b rank) rank {
	return rank{
		broken:  a.broken + b.broken,
		worth:   a.worth.Add(b.worth),
		blemish: a.blemish.Add(b.blemish),
		pieces:  a.pieces + b.pieces,
		uneven:  a.uneven.Add(b.uneven),
		narrow:  fraction.Min(a.narrow, b.narrow),
	}
}

func (a rank) compare(b rank) int {
	if a.broken != b.broken {
		return cmp.Compare(a.broken, b.broken)
	}
	if c := a.worth.Compare(b.worth); c != 0 {
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
