package finish

import (
	"math/big"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/warning"
)

// plateDepth is how far from the face of a stud a cable in it may lie without a steel plate: 1-1/4
// in (32 mm), NEC 300.4. A nail that goes as deep can reach a cable that is lawfully there.
var plateDepth = fraction.Of(5, 4)

// nail lists the nails.
func (b *builder) nail() {
	total := new(big.Rat)
	for _, p := range b.Pieces {
		total = add(total, whole(b.nailsIn(p)))
	}
	n, usual := b.Nails, b.usual.Nails
	if !b.nailed() || total.Sign() == 0 {
		return
	}
	deep, supports := b.in(n.Penetration), b.short(TermSupports, b.in(b.House.Studs))
	row := Row{Item: ItemPanelNails, How: ByNailSpacing, Terms: []Term{{Kind: TermCount, Value: up(total, UnitNail)}}}
	var length *big.Rat
	if b.Profile.Boards {
		row.Item, row.How = ItemBoardNails, ByCrossings
		// At 45 degrees, from the middle of the edge, where the tongue is, into the support.
		square := add(quo(b.thickness(), whole(2)), deep)
		wanted := rootAbove(mul(whole(2), square, square))
		if length = b.sold(n.Lengths, wanted); length == nil {
			b.warn(BoardNailShort, fault.Of("Finish", "Nails"), nil, deep)
			length = roundUp(wanted, hundredths)
		}
		row.Terms = append(row.Terms, supports, b.short(TermThickness, b.thickness()), b.short(TermPenetration, deep),
			b.short(TermSize, length))
	} else {
		row.Source = of(n.Edge == usual.Edge && n.Field == usual.Field, Given, OntarioCode)
		long, terms := b.intoStud(PanelNailShort, b.thickness())
		length = long
		row.Terms = append(row.Terms, b.short(TermEdgeSpacing, b.in(n.Edge)), b.short(TermSpacing, b.in(n.Field)), supports)
		row.Terms = append(row.Terms, terms...)
	}
	row.Size = []Figure{b.small(length)}
	b.buyMore(row, total, ratio(n.Waste), UnitNail, offers(b.settings, n.Packs))
}

// intoStud returns the shortest nail sold that holds something so thick through the wall in a stud,
// and how long it has to be.
func (b *builder) intoStud(short warning.Kind, thickness *big.Rat) (length *big.Rat, terms []Term) {
	wall, deep := b.in(b.House.Wall), b.in(b.Nails.Penetration)
	build := add(thickness, wall)
	wanted := add(build, deep)
	length = b.sold(b.Nails.Lengths, wanted)
	if length == nil {
		b.warn(short, fault.Of("Finish", "Nails"), nil, wanted, deep)
		length = wanted
	}
	if into := sub(length, build); into.Cmp(plateDepth.Rat()) >= 0 {
		b.warn(NailNearCables, fault.Of("Finish", "Nails"), nil, length, into, plateDepth.Rat())
	}
	return length, []Term{b.short(TermThickness, thickness), b.short(TermWall, wall), b.short(TermPenetration, deep),
		b.short(TermNeeded, wanted)}
}

// nailsIn counts the nails in a piece, never further apart than the spacings. A sheet has them
// along its uprights, its ends between the corners, studs between the edges, and openings; a board
// one a crossing, and along the edges of openings one a support spacing at least.
func (b *builder) nailsIn(p Piece) int64 {
	edge, field, studs := b.in(b.Nails.Edge), b.in(b.Nails.Field), b.in(b.House.Studs)
	w, h := p.Width.Rat(), p.Height.Rat()
	switch {
	case w.Sign() == 0 || h.Sign() == 0:
		return 0
	case b.Profile.Boards:
		return b.crossings(p) + count(quo(p.OpeningEdges.Rat(), studs))
	}
	uprights := 2 * (count(quo(h, edge)) + 1)
	ends := 2 * (count(quo(w, edge)) - 1)
	within := (count(quo(w, studs)) - 1) * (count(quo(h, field)) - 1)
	return uprights + ends + within + count(quo(p.OpeningEdges.Rat(), edge))
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
