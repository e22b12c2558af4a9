package finish

import (
	"math/big"

	"example.com/groovewright/fraction"
)

// gluing is Adhesive, read.
type gluing struct {
	form    GlueForm
	hold    Hold
	size    *big.Rat
	spacing *big.Rat
	source  Source // of size and spacing
	waste   *big.Rat
	offers  []offer
}

func (r *reader) gluing(a, d Adhesive) gluing {
	g := gluing{form: known(r, "Adhesive.Form", a.Form), hold: known(r, "Adhesive.Hold", a.Hold), source: Given}
	boards := known(r, "Adhesive.Boards", a.Boards)
	if r.boards && (boards != UsualGlue || g.form == UsualGlue) {
		g.form = of(boards == UsualGlue, boards, d.Boards)
	}
	if g.form == UsualGlue {
		g.form = d.Form
	}
	size, spacing := usualGlue(g.form, g.hold, r.units != fraction.Inch)
	g.size = r.length("Adhesive.Size", a.Size, size, positive)
	g.spacing = r.length("Adhesive.Spacing", a.Spacing, spacing, fraction.Inches(1))
	if (a.Size == "" || a.Size == size) && (a.Spacing == "" || a.Spacing == spacing) {
		g.source = of(g.form == GlueBeads && g.hold == LightHold, Planning, NavyManual)
	}
	g.waste = r.share("Adhesive.Waste", a.Waste, d.Waste)
	g.offers = r.containers("Adhesive.Cartridges", a.Cartridges, d.Cartridges)
	return g
}

// glue lists the adhesive on the backs.
func (b *builder) glue() {
	g := b.settings.adhesive
	size, spacing := Term{Kind: TermSize, Value: b.small(g.size)}, Term{Kind: TermSpacing, Value: b.small(g.spacing)}
	hold := Term{Kind: TermHold, Name: g.hold.String()}
	row := Row{Item: ItemAdhesive, Source: g.source}
	var volume *big.Rat
	switch {
	case b.work.Profile.Boards:
		b.glueBoards()
		return
	case g.form == GlueBeads:
		length := b.glueLines()
		volume = mul(roundBead(g.size), length)
		row.How, row.Terms = ByBeads, []Term{size, spacing, {Kind: TermLength, Value: up(length, b.run())}, hold}
	case g.form == GlueDots:
		n := b.glueDots()
		volume = mul(halfBall(g.size), n)
		row.How, row.Terms = ByDots, []Term{{Kind: TermCount, Value: up(n, UnitDot)}, size, spacing, hold}
	default:
		return
	}
	b.buyMore(row, volume, g.waste, b.tube(), g.offers)
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
	length := new(big.Rat)
	for _, p := range b.work.Pieces {
		lines := count(quo(p.Width.Rat(), b.settings.adhesive.spacing)) + 1
		length = add(length, mul(whole(lines), p.Height.Rat()))
	}
	return length
}

// glueDots is the number of dots: one in the middle of each cell of a grid that is no wider than the spacing.
func (b *builder) glueDots() *big.Rat {
	n := new(big.Rat)
	for _, p := range b.work.Pieces {
		across := count(quo(p.Width.Rat(), b.settings.adhesive.spacing))
		along := count(quo(p.Height.Rat(), b.settings.adhesive.spacing))
		n = add(n, mul(whole(across), whole(along)))
	}
	return n
}
