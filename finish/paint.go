package finish

import (
	"math/big"

	"example.com/groovewright/fraction"
)

// covers returns a coverage in square inches per cubic inch, and where that comes from.
func (s settings) covers(c, usual Coating) (*big.Rat, Source) {
	switch {
	case c.Solids != "":
		return theoretical(ratio(c.Solids), s.in(c.DryFilm)), FromSolids
	case c.Coverage == usual.Coverage:
		return measured(string(c.Coverage), coverages), PlanningLabel
	}
	return measured(string(c.Coverage), coverages), Given
}

// theoretical returns the square inches that a cubic inch of wet paint covers: its solids, as thick
// as the dry film. A US gallon at one mil makes 1604 ft2 (231 in3 / 0.001 in / 144 = 9625/6), as a
// coatings bulletin and a paint consultant's column print it, a litre at a micrometre 1000 m2.
func theoretical(solids, film *big.Rat) *big.Rat { return quo(solids, film) }

// practical returns theoretical × (1 - loss), a share staying in the tools; a corrosion glossary. A
// coverage that is printed on a can is practical already and is not reduced again.
func practical(coverage, loss *big.Rat) *big.Rat { return mul(coverage, sub(whole(1), loss)) }

// paint lists primer and top coat. Edges are coated before fitting, with the first paint that goes
// on then; backs where it is damp, but of plastic, with each coat that the face gets then: common
// practice, no source. The coats after sealing cover the panels that are up already too.
func (b *builder) paint() {
	edges, loss := true, ratio(b.Paint.Loss)
	for _, c := range []struct {
		item Item
		Coating
		usual Coating
	}{{ItemPrimer, b.Paint.Primer, b.usual.Paint.Primer}, {ItemTopCoat, b.Paint.Top, b.usual.Paint.Top}} {
		coverage, source := b.covers(c.Coating, c.usual)
		row, total := Row{Item: c.item, How: ByArea, Source: source}, new(big.Rat)
		before, after := times(c.Before), times(c.After)
		if before > 0 {
			total = add(total, b.pass(&row, TermFaceBefore, b.Face, before, edges))
			edges = false
		}
		if after > 0 {
			total = add(total, b.pass(&row, TermFaceAfter, b.Face.Add(b.Up), after, false))
		}
		spread := b.unit(UnitFootPerGallon, UnitMetrePerLitre)
		covered := near(quo(coverage, scales[spread.String()].size), of[int32](spread == UnitMetrePerLitre, 1, 2), spread)
		row.Terms = append(row.Terms, Term{Kind: TermCoverage, Value: covered})
		if source == FromSolids {
			coverage = practical(coverage, loss)
			row.Terms = append(row.Terms, Term{Kind: TermLoss, Value: near(loss, 3, NoUnit)})
		}
		b.buy(row, quo(total, coverage), b.can(), offers(b.settings, c.Containers))
	}
}

// pass returns the surface in square inches of so many coats of the developed face, with sawn edges
// where it is the first, and adds to the row how it comes about.
func (b *builder) pass(row *Row, kind TermKind, face fraction.Area, coats int64, edged bool) *big.Rat {
	area, flat, factor := mul(face.Rat(), b.factor, whole(coats)), up(face.Rat(), b.area()), roundUp(b.factor, tenThousandths)
	surface := flat.times(factor).times(whole(coats)) // of the figures that are written
	terms := []Term{{Kind: kind, Value: flat}, {Kind: TermDeveloped, Value: near(factor, 4, NoUnit)}, number(TermTimes, coats, UnitCoat)}
	if n := times(b.Paint.EdgeCoats); edged && n > 0 {
		edges := mul(b.Edges.Rat(), b.thickness())
		area = add(area, mul(edges, whole(n)))
		surface = surface.plus(up(edges, b.area()).times(whole(n)))
		terms = append(terms, Term{Kind: TermEdges, Value: up(edges, b.area())}, number(TermTimes, n, NoUnit))
	}
	if kind == TermFaceBefore && b.House.backs() {
		area, surface = add(area, mul(face.Rat(), whole(coats))), surface.plus(flat.times(whole(coats)))
		terms = append(terms, Term{Kind: TermBacks, Value: flat}, number(TermTimes, coats, NoUnit))
	}
	if area.Sign() > 0 {
		row.Terms = append(append(row.Terms, terms...), Term{Kind: TermSurface, Value: Figure{Decimal{surface.Value.RoundUp(2)}, surface.Unit}})
	}
	return area
}
