package finish

import (
	"math/big"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/warning"
)

// plateDepth is how far from the face of a stud a cable in it may lie without a steel plate: 1-1/4 in (32 mm), NEC 300.4.
// A nail that goes as deep can reach a cable that is lawfully there.
var plateDepth = fraction.Of(5, 4)

// nail lists the nails.
func (b *builder) nail() {
	n := b.Nails
	if b.Profile.Boards {
		b.nailBoards()
		return
	}
	total := new(big.Rat)
	for _, p := range b.Pieces {
		total = add(total, whole(b.nailsIn(p)))
	}
	if n.None || total.Sign() == 0 {
		return
	}
	length, terms := b.intoStud(PanelNailShort, b.thickness())
	source := of(n.Edge == b.usual.Nails.Edge && n.Field == b.usual.Nails.Field, Given, OntarioCode)
	b.buyMore(Row{Item: ItemPanelNails, Size: []Figure{b.small(length)}, How: ByNailSpacing, Source: source, Terms: append([]Term{
		{Kind: TermCount, Value: up(total, UnitNail)},
		{Kind: TermEdgeSpacing, Value: b.small(b.in(n.Edge))},
		{Kind: TermSpacing, Value: b.small(b.in(n.Field))},
		{Kind: TermSupports, Value: b.small(b.in(b.House.Studs))},
	}, terms...)}, total, number(n.Waste), UnitNail, b.packs(n.Packs))
}

// intoStud returns how long the nail is that holds something so thick through the wall in a stud, the shortest that is sold,
// and how long it has to be.
func (b *builder) intoStud(short warning.Kind, thickness *big.Rat) (length *big.Rat, terms []Term) {
	wall, deep := b.in(b.House.Wall), b.in(b.Nails.Penetration)
	build := add(thickness, wall)
	wanted := add(build, deep)
	length = b.sold(b.Nails.Lengths, wanted)
	if length == nil {
		b.warn(short, "Finish.Nails", nil, wanted, deep)
		length = wanted
	}
	if into := sub(length, build); into.Cmp(plateDepth.Rat()) >= 0 {
		b.warn(NailNearCables, "Finish.Nails", nil, length, into, plateDepth.Rat())
	}
	return length, []Term{
		{Kind: TermThickness, Value: b.small(thickness)},
		{Kind: TermWall, Value: b.small(wall)},
		{Kind: TermPenetration, Value: b.small(deep)},
		{Kind: TermNeeded, Value: b.small(wanted)},
	}
}

// nailsIn counts the nails in one piece: along both uprights, along both ends between the corners, along studs between
// the edges, and round openings, never further apart than the spacings.
func (b *builder) nailsIn(p Piece) int64 {
	edge, field, studs := b.in(b.Nails.Edge), b.in(b.Nails.Field), b.in(b.House.Studs)
	w, h := p.Width.Rat(), p.Height.Rat()
	if w.Sign() == 0 || h.Sign() == 0 {
		return 0
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
