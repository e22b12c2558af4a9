package finish

import (
	"math/big"

	"example.com/groovewright/fraction/fault"
)

// thinSheet is the thickness up to which sheets are glued by custom and held by brads: 3/8 in;
// judgment. A thickness that is not known counts as thin.
var thinSheet = part(3, 8)

// What is customary: about a cartridge of 10 fl oz for a sheet of 4 by 8 ft, from memory; a full
// hold takes twice as much, as its beads do.
var customVolume, customArea = mul(whole(10), scales["fl oz"].size), mul(whole(32), scales["ft2"].size)

// customEach is how much goes on customArea, and custom the customary volume for the pieces.
func (s settings) customEach() *big.Rat {
	return mul(customVolume, whole(of[int64](s.Adhesive.Hold == FullHold, 1, 2)))
}
func (b *builder) custom() *big.Rat { return mul(b.surface(), quo(b.customEach(), customArea)) }

// surface is that of all that is glued.
func (b *builder) surface() *big.Rat { return areaOf(b.held()) }

// areaOf is that of pieces by their own shapes.
func areaOf(pieces []Piece) *big.Rat {
	area := new(big.Rat)
	for _, p := range pieces {
		area = add(area, p.area())
	}
	return area
}

// glue lists the adhesive on the backs: of sheets as is customary, in upright beads or a grid of
// dots, of boards a bead across the board or a dot where it crosses a support. Custom and beads
// stand beside each other in the row of each.
func (b *builder) glue() {
	g, usual, diameter := b.Adhesive, b.usual.Adhesive, b.in(b.Adhesive.Size)
	if g.Form == NoGlue {
		if len(b.Pieces) > 0 && !b.Nails.None && !b.nailed() {
			b.warn(NothingHolds, fault.Of("Finish", "Adhesive", "Form"), nil)
		}
		return
	}
	row, beads, hold := Row{Item: ItemAdhesive}, g.Form == GlueBeads, Term{Kind: TermHold, Name: g.Hold.String()}
	length, dots := b.glued()
	size := b.short(TermSize, diameter)
	volume := mul(piAbove, diameter, diameter, diameter, part(1, 12), dots) // half balls, each π D³/12
	compared := func(v *big.Rat) Term { return Term{Kind: TermCompared, Value: up(v, b.tube())} }
	switch custom := b.custom(); {
	case b.Profile.Boards:
		crossings, across := b.crossed(b.held())
		supports := b.short(TermSupports, b.in(b.House.Studs))
		row.How, row.Terms = ByDotsAtCrossings, []Term{number(TermCount, crossings, UnitDot), size, supports}
		volume = mul(piAbove, diameter, diameter, diameter, part(1, 12), whole(crossings))
		if beads {
			row.How, volume = ByBeadsAtCrossings, mul(roundBead(diameter), across)
			row.Terms = []Term{size, number(TermCount, crossings, UnitCrossing), b.long(TermLength, across), supports}
		}
	case g.Form == GlueCustom:
		volume, row.How, row.Source = custom, ByCustom, Custom
		row.Terms = []Term{{Kind: TermSurface, Value: up(b.surface(), b.area())}, {Kind: TermEach, Value: up(b.customEach(), b.tube())},
			{Kind: TermPer, Value: up(customArea, b.area())}, hold, compared(mul(roundBead(diameter), length))}
	default:
		row.Source = Given
		if g.Size == usual.Size && g.Spacing == usual.Spacing {
			row.Source = of(beads && g.Hold == LightHold, Planning, NavyManual)
		}
		spacing := b.short(TermSpacing, b.in(g.Spacing))
		row.How, row.Terms = ByDots, []Term{{Kind: TermCount, Value: up(dots, UnitDot)}, size, spacing, hold}
		if beads {
			volume = mul(roundBead(diameter), length)
			row.How, row.Terms = ByBeads, []Term{size, spacing, b.long(TermLength, length), hold, compared(custom)}
		}
	}
	if len(b.Again) > 0 {
		row.Terms = append(row.Terms, Term{Kind: TermAgain, Value: up(areaOf(b.Again), b.area())})
	}
	b.buyMore(row, volume, ratio(g.Waste), b.tube(), offers(b.settings, g.Cartridges))
}

// roundBead is the section of a bead as the nozzle lays it: π D²/4, with π rounded up.
func roundBead(diameter *big.Rat) *big.Rat { return mul(piAbove, diameter, diameter, part(1, 4)) }

// glued returns the length of all upright beads, in each piece along both edges and between, and
// the number of dots, one in each cell of a grid: no beads are further apart, no cell is wider than
// the spacing. Both go by the mean height of a piece, which is exact where its line is straight.
func (b *builder) glued() (length, dots *big.Rat) {
	length, dots = new(big.Rat), new(big.Rat)
	spacing := b.in(b.Adhesive.Spacing)
	for _, p := range b.held() {
		if p.Width.IsZero() {
			continue
		}
		across, up := count(quo(p.Width.Rat(), spacing)), count(quo(p.mean(), spacing))
		length = add(length, mul(whole(across+1), p.mean()))
		dots = add(dots, mul(whole(across), whole(up)))
	}
	return length, dots
}

// miterBead is the bead of wood glue in a miter: 1/8 in; judgment.
var miterBead = part(1, 8)

// miters lists the wood glue of outside corners.
func (b *builder) miters() {
	length := b.lengthOf(func(j Joint) bool { return b.Mitred && j.Kind == OutsideCorner })
	b.buyMore(Row{Item: ItemMiterGlue, How: ByMiters, Terms: []Term{b.long(TermLength, length), b.short(TermSize, miterBead)}},
		mul(roundBead(miterBead), length), ratio(b.Adhesive.Waste), b.tube(), offers(b.settings, b.Adhesive.Miter))
}
