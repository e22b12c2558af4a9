package finish

import "math/big"

// glue lists the adhesive on the backs.
func (b *builder) glue() {
	g, usual, diameter := b.Adhesive, b.usual.Adhesive, b.in(b.Adhesive.Size)
	size, spacing := Term{Kind: TermSize, Value: b.small(diameter)}, Term{Kind: TermSpacing, Value: b.small(b.in(g.Spacing))}
	hold := Term{Kind: TermHold, Name: g.Hold.String()}
	row := Row{Item: ItemAdhesive, Source: Given}
	if g.Size == usual.Size && g.Spacing == usual.Spacing {
		row.Source = of(g.Form == GlueBeads && g.Hold == LightHold, Planning, NavyManual)
	}
	var volume *big.Rat
	switch {
	case b.Profile.Boards:
		b.glueBoards()
		return
	case g.Form == GlueBeads:
		length := b.glueLines()
		volume = mul(roundBead(diameter), length)
		row.How, row.Terms = ByBeads, []Term{size, spacing, {Kind: TermLength, Value: up(length, b.run())}, hold}
	case g.Form == GlueDots:
		n := b.glueDots()
		volume = mul(halfBall(diameter), n)
		row.How, row.Terms = ByDots, []Term{{Kind: TermCount, Value: up(n, UnitDot)}, size, spacing, hold}
	default:
		return
	}
	b.buyMore(row, volume, number(g.Waste), b.tube(), b.cans(g.Cartridges))
}

// roundBead is the section of a bead as the nozzle lays it: π D²/4, with π rounded up.
func roundBead(diameter *big.Rat) *big.Rat {
	return quo(mul(piAbove, diameter, diameter), whole(4))
}

// halfBall is the volume of a dot: π D³/12, with π rounded up.
func halfBall(diameter *big.Rat) *big.Rat {
	return quo(mul(piAbove, diameter, diameter, diameter), whole(12))
}

// glueLines is the length of all upright beads: in each piece one along both edges and others between, so that no two
// are further apart than the spacing. Where two pieces meet there are two beads, side by side.
func (b *builder) glueLines() *big.Rat {
	length, spacing := new(big.Rat), b.in(b.Adhesive.Spacing)
	for _, p := range b.Pieces {
		lines := count(quo(p.Width.Rat(), spacing)) + 1
		length = add(length, mul(whole(lines), p.Height.Rat()))
	}
	return length
}

// glueDots is the number of dots: one in the middle of each cell of a grid that is no wider than the spacing.
func (b *builder) glueDots() *big.Rat {
	n, spacing := new(big.Rat), b.in(b.Adhesive.Spacing)
	for _, p := range b.Pieces {
		across := count(quo(p.Width.Rat(), spacing))
		along := count(quo(p.Height.Rat(), spacing))
		n = add(n, mul(whole(across), whole(along)))
	}
	return n
}
