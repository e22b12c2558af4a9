package finish

import (
	"math/big"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/warning"
)

// nailing is Nails, read.
type nailing struct {
	none        bool
	edge, field *big.Rat
	penetration *big.Rat
	source      Source // of the spacings
	lengths     []*big.Rat
	waste       *big.Rat
	offers      []offer
}

func (r *reader) nailing(n, d Nails) nailing {
	read := nailing{
		none:        n.None,
		edge:        r.length("Nails.Edge", n.Edge, d.Edge, fraction.Of(1, 2)),
		field:       r.length("Nails.Field", n.Field, d.Field, fraction.Of(1, 2)),
		penetration: r.length("Nails.Penetration", n.Penetration, d.Penetration, fraction.Length{}),
		source:      Given,
		lengths:     r.lengths("Nails.Lengths", n.Lengths, d.Lengths),
		waste:       r.share("Nails.Waste", n.Waste, d.Waste),
		offers:      r.packs("Nails.Packs", n.Packs, d.Packs),
	}
	if n.Edge == "" && n.Field == "" || n.Edge == d.Edge && n.Field == d.Field {
		read.source = OntarioCode
	}
	return read
}

// plateDepth is how far from the face of a stud a cable in it may lie without a steel plate: 1-1/4 in (32 mm), NEC 300.4.
// A nail that goes as deep can reach a cable that is lawfully there.
var plateDepth = fraction.Of(5, 4)

// nail lists the nails.
func (b *builder) nail() {
	n := b.settings.nails
	if b.work.Profile.Boards {
		b.nailBoards()
		return
	}
	total := int64(0)
	for _, p := range b.work.Pieces {
		total += b.nailsIn(p)
	}
	if n.none || total == 0 {
		return
	}
	length, terms := b.intoStud(PanelNailShort, b.thickness())
	b.buyMore(Row{Item: ItemPanelNails, Size: []Figure{b.small(length)}, How: ByNailSpacing, Source: n.source, Terms: append([]Term{
		{Kind: TermCount, Value: counted(total, UnitNail)},
		{Kind: TermEdgeSpacing, Value: b.small(n.edge)},
		{Kind: TermSpacing, Value: b.small(n.field)},
		{Kind: TermSupports, Value: b.small(b.settings.house.studs)},
	}, terms...)}, whole(total), n.waste, UnitNail, n.offers)
}

// intoStud returns how long the nail is that holds something so thick through the wall in a stud, the shortest that is sold,
// and how long it has to be.
func (b *builder) intoStud(short warning.Kind, thickness *big.Rat) (length *big.Rat, terms []Term) {
	n, wall := b.settings.nails, b.settings.house.wall
	build := add(thickness, wall)
	wanted := add(build, n.penetration)
	length = sold(n.lengths, wanted)
	if length == nil {
		b.warn(short, "Finish.Nails", nil, wanted, n.penetration)
		length = wanted
	}
	if into := sub(length, build); into.Cmp(plateDepth.Rat()) >= 0 {
		b.warn(NailNearCables, "Finish.Nails", nil, length, into, plateDepth.Rat())
	}
	return length, []Term{
		{Kind: TermThickness, Value: b.small(thickness)},
		{Kind: TermWall, Value: b.small(wall)},
		{Kind: TermPenetration, Value: b.small(n.penetration)},
		{Kind: TermNeeded, Value: b.small(wanted)},
	}
}

// nailsIn counts the nails in one piece: along both uprights, along both ends between the corners, along studs between
// the edges, and round openings, never further apart than the spacings.
func (b *builder) nailsIn(p Piece) int64 {
	n := b.settings.nails
	w, h := p.Width.Rat(), p.Height.Rat()
	if w.Sign() == 0 || h.Sign() == 0 {
		return 0
	}
	uprights := 2 * (count(quo(h, n.edge)) + 1)
	ends := 2 * (count(quo(w, n.edge)) - 1)
	studs := count(quo(w, b.settings.house.studs)) - 1
	field := studs * (count(quo(h, n.field)) - 1)
	return uprights + ends + field + count(quo(p.OpeningEdges.Rat(), n.edge))
}

// sold returns the shortest length that is enough, nil if none is.
func sold(lengths []*big.Rat, wanted *big.Rat) *big.Rat {
	for _, l := range lengths {
		if l.Cmp(wanted) >= 0 {
			return l
		}
	}
	return nil
}
