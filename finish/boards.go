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
	crossings, length := int64(0), b.crossed()
	for _, p := range b.work.Pieces {
		crossings += b.crossings(p)
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

// stripping is Furring, read; thickness is nil where no strips are counted.
type stripping struct {
	thickness *big.Rat
	waste     *big.Rat
	offers    []offer
	packs     []offer
}

func (r *reader) stripping(f, d Furring) stripping {
	const path = "furring."
	read := stripping{
		waste:  r.share(path+"waste", f.Waste, d.Waste),
		offers: r.rolls(path+"strips", f.Strips, d.Strips),
		packs:  r.packs(path+"packs", f.Packs, d.Packs),
	}
	if f.Thickness != "" {
		read.thickness = r.length(path+"thickness", f.Thickness, "", positive)
	}
	return read
}

// forward is how far the backs of the panels stand before the wall.
func (b *builder) forward() *big.Rat {
	if t := b.settings.furring.thickness; t != nil && b.work.Profile.Boards {
		return t
	}
	return new(big.Rat)
}

// strips lists the level strips that boards are nailed to, where the job gives their thickness. Behind each board they run at its foot,
// at its top and between ([builder.crossings]), and one stands along each side of an opening. Each is held where it crosses a stud, and
// once more for its other end.
func (b *builder) strips() {
	f := b.settings.furring
	if f.thickness == nil {
		return
	}
	if !b.work.Profile.Boards {
		b.warn("furring", "strips are counted behind boards only")
		return
	}
	length := b.crossed()
	sides := b.work.Sides.Rat()
	need := more(add(length, sides), f.waste)
	if need.Sign() == 0 {
		return
	}
	studs, thick := b.settings.house.studs, b.small(f.thickness)
	b.buy("furring strips "+thick, need, b.run, f.offers, fmt.Sprintf("%s level, at the foot and the top of the boards and between at most %s apart (a how-to article; the Navy manual on sheets has 1x3 or 1x4 across the studs) + %s along the sides of openings (common practice, no source)%s",
		b.run(length), b.small(studs), b.run(sides), wasted(f.waste)))
	shortest := f.offers[0].size
	for _, o := range f.offers {
		shortest = least(shortest, o.size)
	}
	crossings, ends := count(quo(need, studs)), count(quo(need, shortest))
	wanted, long := b.intoStud("strip", f.thickness)
	b.buy("nails or screws for the strips "+b.small(long), whole(crossings+ends), counted("pieces"), f.packs, fmt.Sprintf("one for each %s of strip, where it crosses a stud, and one more for each strip (common practice, no source); length: strip %s + wall %s + %s into the stud = %s",
		b.small(studs), thick, b.small(b.settings.house.wall), b.small(b.settings.nails.penetration), b.small(wanted)))
}

// crossed is how far the boards lie on level supports, all together.
func (b *builder) crossed() *big.Rat {
	length := new(big.Rat)
	for _, p := range b.work.Pieces {
		length = add(length, mul(whole(b.crossings(p)), p.Width.Rat()))
	}
	return length
}
