package finish

import (
	"math/big"
	"slices"

	"example.com/groovewright/fraction/fault"
)

// Upright boards run as the studs do, so that they are nailed to level furring strips, at most as
// far apart as studs may stand: a how-to article (at most 16 in). At a strip a board takes one
// nail, at 45 degrees through the root of its tongue, which the next board hides: a how-to article
// for the angle; that one nail is enough, and goes through the face of a board without a tongue, and
// that where a run starts and ends boards are nailed through the face along the edge which no tongue
// holds, is common practice, no source.

// crossings counts where a board crosses supports: as is known of it, else at its foot and top, and
// between by [House].Studs.
func (b *builder) crossings(p Piece) int64 {
	if p.Crossed != nil {
		return int64(p.Crossed.Count)
	}
	if p.Width.Sign() <= 0 || p.Height.Sign() <= 0 {
		return 0
	}
	return count(quo(p.Height.Rat(), b.in(b.House.Studs))) + 1
}

// crossed returns how often boards cross level supports, and how far they lie on them.
func (b *builder) crossed(boards []Piece) (crossings int64, length *big.Rat) {
	length = new(big.Rat)
	for _, p := range boards {
		n := b.crossings(p)
		crossings += n
		if on := mul(whole(n), p.Width.Rat()); p.Crossed == nil {
			length = add(length, on)
		} else {
			length = add(length, p.Crossed.Length.Rat())
		}
	}
	return crossings, length
}

// strips lists the strips behind panels, where the job gives their thickness: level ones at each of
// the [builder.crossings], upright ones along each side of an opening and, behind sheets, under
// each upright edge (NAVEDTRA 14044). Each is held where it crosses a stud, and once more at its
// other end. They bring the face forward, which the runs as taped do not know.
func (b *builder) strips() {
	f, thickness, waste := b.Furring, b.in(b.Furring.Thickness), ratio(b.Furring.Waste)
	if f.Thickness == "" || len(b.Pieces) == 0 {
		return
	}
	masonry := b.House.Backing == Masonry
	if b.lengthOf(func(j Joint) bool { return j.Kind == InsideCorner || j.Kind == OutsideCorner }).Sign() > 0 {
		b.warn(StripsNotTakenOff, fault.Of("Finish", "Furring", "Thickness"), nil, thickness)
	}
	_, length := b.crossed(b.Pieces)
	sides := b.Sides.Rat()
	if !b.Profile.Boards {
		sides = add(sides, b.lengthOf(func(j Joint) bool { return j.Kind == Seam || j.Kind == EndJoint || j.Alone }))
		sides = add(sides, mul(whole(2), b.lengthOf(func(j Joint) bool { return !j.Alone && (j.Kind == InsideCorner || j.Kind == OutsideCorner) })))
	}
	total := add(length, sides)
	need := more(total, waste)
	if need.Sign() == 0 {
		return
	}
	studs, strips := b.in(b.House.Studs), offers(b.settings, f.Strips)
	supports := b.short(TermSupports, studs)
	sum := up(length, b.run()).plus(up(sides, b.run()))
	b.buySum(Row{Item: of(masonry, ItemFurringStrips, ItemTreatedStrips), Size: []Figure{b.small(thickness)}, How: ByStripLength,
		Terms: []Term{b.long(TermLength, length), supports, b.long(TermSides, sides)}}, sum, total, waste, b.run(), strips)
	shortest := slices.MinFunc(strips, func(x, y offer) int { return x.size.Cmp(y.size) }).size
	long, terms := b.intoSupport(StripNailShort, thickness, true)
	row := Row{Item: of(masonry, ItemStripNails, ItemStripAnchors), Size: []Figure{b.small(long)}, How: ByStripCrossings}
	row.Terms = append([]Term{supports}, terms...)
	b.buy(row,
		whole(count(quo(need, studs))+count(quo(need, shortest))), UnitPiece, offers(b.settings, f.Packs))
}
