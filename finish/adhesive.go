package finish

import "math/big"

// glue lists the adhesive on the backs: of sheets in upright beads or a grid of dots, of boards a
// bead across the board or a dot where it crosses a support.
func (b *builder) glue() {
	g, usual, diameter := b.Adhesive, b.usual.Adhesive, b.in(b.Adhesive.Size)
	if g.Form == NoGlue {
		return
	}
	row, beads := Row{Item: ItemAdhesive}, g.Form == GlueBeads
	length, dots := b.glued()
	size := b.short(TermSize, diameter)
	if b.Profile.Boards {
		crossings, across := b.crossed()
		length, dots = across, whole(crossings)
		supports := b.short(TermSupports, b.in(b.House.Studs))
		row.How, row.Terms = ByDotsAtCrossings, []Term{number(TermCount, crossings, UnitDot), size, supports}
		if beads {
			row.How = ByBeadsAtCrossings
			row.Terms = []Term{size, number(TermCount, crossings, UnitCrossing), b.long(TermLength, length), supports}
		}
	} else {
		row.Source = Given
		if g.Size == usual.Size && g.Spacing == usual.Spacing {
			row.Source = of(beads && g.Hold == LightHold, Planning, NavyManual)
		}
		spacing, hold := b.short(TermSpacing, b.in(g.Spacing)), Term{Kind: TermHold, Name: g.Hold.String()}
		row.How, row.Terms = ByDots, []Term{{Kind: TermCount, Value: up(dots, UnitDot)}, size, spacing, hold}
		if beads {
			row.How, row.Terms = ByBeads, []Term{size, spacing, b.long(TermLength, length), hold}
		}
	}
	volume := mul(piAbove, diameter, diameter, diameter, part(1, 12), dots) // half balls, each π D³/12
	if beads {
		volume = mul(roundBead(diameter), length)
	}
	b.buyMore(row, volume, ratio(g.Waste), b.tube(), offers(b.settings, g.Cartridges))
}

// roundBead is the section of a bead as the nozzle lays it: π D²/4, with π rounded up.
func roundBead(diameter *big.Rat) *big.Rat { return mul(piAbove, diameter, diameter, part(1, 4)) }

// glued returns the length of all upright beads, in each piece along both edges and between, and
// the number of dots, one in each cell of a grid: no beads are further apart, no cell is wider than
// the spacing.
func (b *builder) glued() (length, dots *big.Rat) {
	length, dots = new(big.Rat), new(big.Rat)
	spacing := b.in(b.Adhesive.Spacing)
	for _, p := range b.Pieces {
		across, up := count(quo(p.Width.Rat(), spacing)), count(quo(p.Height.Rat(), spacing))
		length = add(length, mul(whole(across+1), p.Height.Rat()))
		dots = add(dots, mul(whole(across), whole(up)))
	}
	return length, dots
}
