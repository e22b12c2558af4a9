package finish

import (
	"fmt"
	"math/big"
)

// Upright boards run the same way as the studs, so that they are nailed to level furring strips across these, at most
// as far apart as studs may stand: a how-to article (furring at most 16 in apart). Where a board crosses a strip it takes one nail,
// at 45 degrees through the root of its tongue, which the next board hides: a how-to article for the angle; that one nail a
// crossing is enough is common practice, no source.

// crossings counts where a board crosses its supports: at its foot, at its top, and between so that no two are further
// apart than the spacing.
func (b *builder) crossings(p Piece) int64 {
	if p.Width.Sign() <= 0 || p.Height.Sign() <= 0 {
		return 0
	}
	return count(quo(p.Height.Rat(), b.settings.house.studs)) + 1
}

// boardNails is one nail a crossing, and one at least every support spacing along the edges of openings within a board.
func (b *builder) boardNails(p Piece) int64 {
	n := b.crossings(p)
	if n > 0 {
		n += count(quo(p.OpeningEdges.Rat(), b.settings.house.studs))
	}
	return n
}

// slanted returns the length of a nail at 45 degrees that starts in the middle of the board's edge, where the tongue is, and ends
// so deep in the support: √2 times half the board and the depth, rounded up.
func slanted(thickness, depth *big.Rat) *big.Rat {
	square := add(quo(thickness, whole(2)), depth)
	return rootAbove(mul(whole(2), square, square))
}

// nailBoards lists the nails of boards.
func (b *builder) nailBoards() {
	n := b.settings.nails
	total := int64(0)
	for _, p := range b.work.Pieces {
		total += b.boardNails(p)
	}
	if n.none || total == 0 {
		return
	}
	wanted := slanted(b.thickness(), n.penetration)
	length := sold(n.lengths, wanted)
	if length == nil {
		b.warn("nails", "no nail on the list is as long as board and %s in the support need at 45 degrees", b.small(n.penetration))
		length = roundUp(wanted, 2)
	}
	need := more(whole(total), n.waste)
	how := fmt.Sprintf("%d nails: one where a board crosses a level support, these at most %s apart (a how-to article), at 45 degrees through the root of the tongue (a how-to article); one a crossing: common practice, no source; "+
		"length: (half of %s + %s into the support) × √2, at most %s%s",
		total, b.small(b.settings.house.studs), b.small(b.thickness()), b.small(n.penetration), b.small(length), wasted(n.waste))
	b.buy("board nails "+b.small(length), need, counted("nails"), n.offers, how)
}

// glueBoards lists the adhesive of boards: a dot where a board crosses a support, or a bead across the board there.
func (b *builder) glueBoards() {
	g := b.settings.adhesive
	crossings, length := int64(0), new(big.Rat)
	for _, p := range b.work.Pieces {
		n := b.crossings(p)
		crossings += n
		length = add(length, mul(whole(n), p.Width.Rat()))
	}
	var volume *big.Rat
	var how string
	switch g.form {
	case "none":
		return
	case "beads":
		volume = mul(roundBead(g.size), length)
		how = fmt.Sprintf("beads of %s across each board at its %d crossings, %s in all", b.small(g.size), crossings, b.run(length))
	case "dots":
		volume = mul(halfBall(g.size), whole(crossings))
		how = fmt.Sprintf("%d dots of %s, one a crossing", crossings, b.small(g.size))
	}
	how += fmt.Sprintf(" with supports at most %s apart (judgement)", b.small(b.settings.house.studs))
	b.buy("panel adhesive", more(volume, g.waste), b.tube, g.offers, how+wasted(g.waste))
}
