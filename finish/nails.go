package finish

import (
	"math/big"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/warning"
	"example.com/groovewright/groove"
)

// plateDepth is how far from the face of a stud a cable in it may lie without a steel plate: 1-1/4
// in (32 mm), NEC 300.4. A nail that goes as deep can reach a cable that is lawfully there.
var plateDepth = fraction.Of(5, 4)

// nail lists the nails.
func (b *builder) nail() {
	total, again, round := new(big.Rat), new(big.Rat), new(big.Rat)
	for i, p := range b.held() {
		round = add(round, p.OpeningEdges.Rat())
		n := whole(b.nailsIn(p))
		if total = add(total, n); i >= len(b.Pieces) {
			again = add(again, n)
		}
	}
	n, usual := b.Nails, b.usual.Nails
	if !b.nailed() || total.Sign() == 0 {
		return
	}
	unit := of(b.screwed(), UnitNail, UnitScrew)
	deep, supports := b.in(n.Penetration), b.short(TermSupports, b.in(b.House.Studs))
	row := Row{Item: ItemPanelNails, Nail: n.Kind, How: ByNailSpacing, Terms: []Term{{Kind: TermCount, Value: up(total, unit)}}}
	var length *big.Rat
	switch {
	case b.Profile.Boards && b.slanted():
		row.Item, row.How = ItemBoardNails, ByCrossings
		// At 45 degrees, from the middle of the edge, where the tongue is, into the support.
		square := add(quo(b.thickness(), whole(2)), deep)
		wanted := rootAbove(mul(whole(2), square, square))
		if length = b.sold(n.Lengths, wanted); length == nil {
			b.warn(BoardNailShort, fault.Of("Finish", "Nails"), nil, deep)
			length = roundUp(wanted, hundredths)
		}
		// A slant of 45 degrees goes as deep behind the board as its length is over √2, less half the
		// board; strips on the list and the wall behind them come first.
		into := sub(quo(length, rootAbove(whole(2))), quo(b.thickness(), whole(2)))
		if b.Furring.Thickness != "" {
			into = sub(into, add(b.in(b.Furring.Thickness), b.in(b.House.Wall)))
		}
		b.nearCables(length, roundUp(into, 64))
		row.Terms = append(row.Terms, supports, b.short(TermThickness, b.thickness()), b.short(TermPenetration, deep),
			b.short(TermSize, length))
	case b.Profile.Boards:
		row.Item, row.How = ItemBoardNails, ByFaceCrossings
		long, terms := b.intoSupport(PanelNailShort, b.thickness(), false)
		length, row.Terms = long, append(append(row.Terms, supports), terms...)
	default:
		row.Source = Given
		if n.Edge == usual.Edge && n.Field == usual.Field {
			row.Source = of(b.House.Material == Hardboard, MakerDecides, Hardboard612)
		}
		long, terms := b.intoSupport(PanelNailShort, b.thickness(), b.Furring.Thickness == "")
		length = long
		row.Terms = append(row.Terms, b.short(TermEdgeSpacing, b.in(n.Edge)), b.short(TermSpacing, b.in(n.Field)), supports)
		row.Terms = append(row.Terms, terms...)
		if round.Sign() > 0 {
			row.Terms = append(row.Terms, Term{Kind: TermSides, Value: up(round, b.run())})
		}
	}
	if again.Sign() > 0 {
		row.Terms = append(row.Terms, Term{Kind: TermAgain, Value: up(again, unit)})
	}
	row.Terms = append(row.Terms, b.short(TermInset, b.in(n.Inset)))
	if b.Work.InWall || len(b.Work.Boxes) > 0 {
		row.Terms = append(row.Terms, b.short(TermClear, b.in(n.Clear)))
	}
	row.Size = []Figure{b.small(length)}
	b.buyMore(row, total, ratio(n.Waste), unit, offers(b.settings, n.Packs))
}

// intoSupport returns the shortest nail sold that holds something so thick in a stud, through the
// wall, or in a strip before it, and how long it has to be.
func (b *builder) intoSupport(short warning.Kind, thickness *big.Rat, through bool) (length *big.Rat, terms []Term) {
	wall, deep := new(big.Rat), b.in(b.Nails.Penetration)
	if through {
		wall = b.in(b.House.Wall)
	}
	build := add(thickness, wall)
	wanted := add(build, deep)
	length = b.sold(b.Nails.Lengths, wanted)
	if length == nil {
		b.warn(short, fault.Of("Finish", "Nails"), nil, wanted, deep)
		length = wanted
	}
	b.nearCables(length, sub(length, build))
	return length, []Term{b.short(TermThickness, thickness), b.short(TermWall, wall), b.short(TermPenetration, deep),
		b.short(TermNeeded, wanted)}
}

// nearCables warns of a nail that goes so deep that it can reach a cable.
func (b *builder) nearCables(length, into *big.Rat) {
	if into.Cmp(plateDepth.Rat()) >= 0 {
		b.warn(NailNearCables, fault.Of("Finish", "Nails"), nil, length, into, plateDepth.Rat())
	}
}

// slanted reports whether boards are nailed through a tongue, aslant: else through the face, as screws are.
func (s settings) slanted() bool {
	return s.Profile.Edges == groove.Tongued && s.Nails.Kind != PanelScrews
}

// nailsIn counts the nails in a piece: those that it is known to take, else as many as are never
// further apart than the spacings. A sheet has them on supports behind both its upright edges and between, and
// nowhere else, since gypsum board holds no nail (a maker's guide): at the edges at the spacing of
// edges; along windows too, which have a frame. A board has one
// a crossing, and along the edges of openings one a support spacing at least.
func (b *builder) nailsIn(p Piece) int64 {
	edge, field, studs := b.in(b.Nails.Edge), b.in(b.Nails.Field), b.in(b.House.Studs)
	w, h := p.Width.Rat(), p.Height.Rat()
	switch {
	case p.Nails != nil:
		return int64(*p.Nails)
	case w.Sign() == 0 || h.Sign() == 0:
		return 0
	case b.Profile.Boards:
		return b.crossings(p) + count(quo(p.OpeningEdges.Rat(), studs))
	}
	along := func(spacing *big.Rat) int64 { return count(quo(p.mean(), spacing)) + 1 }
	return 2*along(edge) + max(0, count(quo(w, studs))-1)*along(field) + count(quo(p.OpeningEdges.Rat(), edge))
}

// sold returns the shortest length that is enough, nil if none is.
func (s settings) sold(lengths []Taped, wanted *big.Rat) *big.Rat {
	for _, text := range lengths {
		if l := s.in(text); l.Cmp(wanted) >= 0 {
			return l
		}
	}
	return nil
}
