package finish

import "math/big"

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
	return count(quo(p.Height.Rat(), b.in(b.House.Studs))) + 1
}

// crossed returns how often boards cross level supports, and how far they lie on them, all together.
func (b *builder) crossed() (crossings int64, length *big.Rat) {
	length = new(big.Rat)
	for _, p := range b.Pieces {
		n := b.crossings(p)
		crossings += n
		length = add(length, mul(whole(n), p.Width.Rat()))
	}
	return crossings, length
}

// slanted returns the length of a nail at 45 degrees that starts in the middle of the board's edge, where the tongue is, and ends
// so deep in the support: √2 times half the board and the depth, rounded up.
func slanted(thickness, depth *big.Rat) *big.Rat {
	square := add(quo(thickness, whole(2)), depth)
	return rootAbove(mul(whole(2), square, square))
}

// nailBoards lists the nails of boards: one a crossing, and one at least every support spacing along the edges of openings
// within a board.
func (b *builder) nailBoards() {
	n, studs, deep := b.Nails, b.in(b.House.Studs), b.in(b.Nails.Penetration)
	total := int64(0)
	for _, p := range b.Pieces {
		if crossings := b.crossings(p); crossings > 0 {
			total += crossings + count(quo(p.OpeningEdges.Rat(), studs))
		}
	}
	if n.None || total == 0 {
		return
	}
	wanted := slanted(b.thickness(), deep)
	length := b.sold(n.Lengths, wanted)
	if length == nil {
		b.warn(BoardNailShort, "Finish.Nails", nil, deep)
		length = roundUp(wanted, 2)
	}
	b.buyMore(Row{Item: ItemBoardNails, Size: []Figure{b.small(length)}, How: ByCrossings, Terms: []Term{
		{Kind: TermCount, Value: counted(total, UnitNail)},
		{Kind: TermSupports, Value: b.small(studs)},
		{Kind: TermThickness, Value: b.small(b.thickness())},
		{Kind: TermPenetration, Value: b.small(deep)},
		{Kind: TermSize, Value: b.small(length)},
	}}, whole(total), number(n.Waste), UnitNail, b.packs(n.Packs))
}

// glueBoards lists the adhesive of boards: a dot where a board crosses a support, or a bead across the board there.
func (b *builder) glueBoards() {
	g, diameter := b.Adhesive, b.in(b.Adhesive.Size)
	crossings, length := b.crossed()
	size, supports := Term{Kind: TermSize, Value: b.small(diameter)}, Term{Kind: TermSupports, Value: b.small(b.in(b.House.Studs))}
	row := Row{Item: ItemAdhesive}
	var volume *big.Rat
	switch g.Form {
	case GlueBeads:
		volume = mul(roundBead(diameter), length)
		row.How = ByBeadsAtCrossings
		total := Term{Kind: TermLength, Value: up(length, b.run())}
		row.Terms = []Term{size, {Kind: TermCount, Value: counted(crossings, UnitCrossing)}, total, supports}
	case GlueDots:
		volume = mul(halfBall(diameter), whole(crossings))
		row.How, row.Terms = ByDotsAtCrossings, []Term{{Kind: TermCount, Value: counted(crossings, UnitDot)}, size, supports}
	default:
		return
	}
	b.buyMore(row, volume, number(g.Waste), b.tube(), b.cans(g.Cartridges))
}

// forward is how far the backs of the panels stand before the wall.
func (b *builder) forward() *big.Rat {
	if b.Profile.Boards {
		return b.in(b.Furring.Thickness)
	}
	return new(big.Rat)
}

// strips lists the level strips that boards are nailed to, where the job gives their thickness. Behind each board they run at its foot,
// at its top and between ([builder.crossings]), and one stands along each side of an opening. Each is held where it crosses a stud, and
// once more for its other end.
func (b *builder) strips() {
	f, thickness, waste := b.Furring, b.in(b.Furring.Thickness), number(b.Furring.Waste)
	if f.Thickness == "" {
		return
	}
	if !b.Profile.Boards {
		b.warn(StripsBehindSheets, "Finish.Furring", nil)
		return
	}
	_, length := b.crossed()
	sides := b.Sides.Rat()
	need := more(add(length, sides), waste)
	if need.Sign() == 0 {
		return
	}
	studs, strips := b.in(b.House.Studs), b.rolls(f.Strips)
	supports := Term{Kind: TermSupports, Value: b.small(studs)}
	b.buyMore(Row{Item: ItemFurringStrips, Size: []Figure{b.small(thickness)}, How: ByStripLength, Terms: []Term{
		{Kind: TermLength, Value: up(length, b.run())}, supports, {Kind: TermSides, Value: up(sides, b.run())},
	}}, add(length, sides), waste, b.run(), strips)
	shortest := strips[0].size
	for _, o := range strips {
		shortest = least(shortest, o.size)
	}
	crossings, ends := count(quo(need, studs)), count(quo(need, shortest))
	long, terms := b.intoStud(StripNailShort, thickness)
	b.buy(Row{Item: ItemStripNails, Size: []Figure{b.small(long)}, How: ByStripCrossings, Terms: append([]Term{supports}, terms...)},
		whole(crossings+ends), UnitPiece, b.packs(f.Packs))
}
