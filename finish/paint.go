package finish

import (
	"math/big"

	"example.com/groovewright/fraction"
)

// painting is Paint, read.
type painting struct {
	primer, top coating
	loss        *big.Rat
	edgeCoats   int64
	groove      GrooveShape
}

// coating is a Coating, read. Coverage is in square inches per cubic inch.
type coating struct {
	before, after int64
	coverage      *big.Rat
	source        Source
	offers        []offer
}

func (c coating) coats() int64 { return c.before + c.after }

func (r *reader) painting(p, d Paint) painting {
	return painting{
		primer:    r.coating("Paint.Primer", p.Primer, d.Primer),
		top:       r.coating("Paint.Top", p.Top, d.Top),
		loss:      r.share("Paint.Loss", p.Loss, d.Loss),
		edgeCoats: r.times("Paint.EdgeCoats", p.EdgeCoats, d.EdgeCoats),
		groove:    known(r, "Paint.Groove", p.Groove),
	}
}

func (r *reader) coating(path string, c, d Coating) coating {
	read := coating{
		before: r.times(path+".Before", c.Before, d.Before),
		after:  r.times(path+".After", c.After, d.After),
		offers: r.containers(path+".Containers", c.Containers, d.Containers),
		source: Given,
	}
	dry := c.Solids != "" || c.DryFilm != ""
	switch {
	case dry && c.Coverage != "":
		r.fault(path+".Coverage", string(c.Coverage), "the coverage, or solids and the dry film, not both")
	case dry && (c.Solids == "" || c.DryFilm == ""):
		r.fault(path, "", "solids and the dry film together")
	case dry:
		film := r.length(path+".DryFilm", c.DryFilm, "", positive)
		read.coverage, read.source = theoretical(r.solids(path+".Solids", c.Solids), film), FromSolids
		return read
	case c.Coverage != "" && c.Coverage != d.Coverage:
		d.Coverage = c.Coverage
	default:
		read.source = PlanningLabel
	}
	read.coverage = r.quantity(path+".Coverage", string(d.Coverage), "a coverage such as 350 ft2/gal or 9 m2/L", coverages)
	return read
}

// solids reads a share above nothing, up to all.
func (r *reader) solids(path string, text Number) *big.Rat {
	n, err := fraction.ParseRatio(string(text))
	if err != nil || n.Sign() <= 0 || n.Rat().Cmp(whole(1)) > 0 {
		r.fault(path, string(text), "a share above 0 and up to 1, such as 0.4 for forty percent")
		return whole(1)
	}
	return n.Rat()
}

// theoretical returns how many square inches a cubic inch of wet paint covers: its solids, spread as thick as the dry film.
// For a US gallon and a film of one mil that is 1604 ft2 (231 in3 / 0.001 in / 144 = 9625/6), as a coatings bulletin and a
// paint consultant's column print it; in metric, 1000 m2 for a litre and a micrometre.
func theoretical(solids, film *big.Rat) *big.Rat { return quo(solids, film) }

// practical returns what is covered when a share stays in the tools: theoretical × (1 - loss), as a corrosion glossary has it.
func practical(coverage, loss *big.Rat) *big.Rat { return mul(coverage, sub(whole(1), loss)) }

// paint lists primer and top coat. Edges are coated before fitting, with the first paint that goes on then; so are
// backs where it is damp, as often as the face is.
func (b *builder) paint() {
	p := b.settings.paint
	edges := true
	for _, c := range []struct {
		item Item
		coating
	}{{ItemPrimer, p.primer}, {ItemTopCoat, p.top}} {
		row := Row{Item: c.item, How: ByArea, Source: c.source}
		total := new(big.Rat)
		for _, pass := range []struct {
			face  TermKind
			coats int64
		}{{TermFaceBefore, c.before}, {TermFaceAfter, c.after}} {
			if pass.coats == 0 {
				continue
			}
			all := edges && pass.face == TermFaceBefore
			edges = edges && !all
			if area, terms := b.pass(pass.face, pass.coats, all); area.Sign() > 0 {
				total = add(total, area)
				row.Terms = append(row.Terms, terms...)
			}
		}
		per, coverage := footPerGallon, UnitFootPerGallon
		places := int32(1)
		if b.units != fraction.Inch {
			per, coverage, places = metrePerLitre, UnitMetrePerLitre, 2
		}
		row.Terms = append(row.Terms, Term{Kind: TermCoverage, Value: near(quo(c.coverage, per), places, coverage)}, Term{Kind: TermLoss, Value: near(p.loss, 3, NoUnit)})
		b.buy(row, quo(total, practical(c.coverage, p.loss)), b.can(), c.offers)
	}
}

// pass returns the surface in square inches of so many coats of the developed face, and how it comes about: with the sawn
// edges, and with the backs where it is damp, if this pass coats all of a piece.
func (b *builder) pass(face TermKind, coats int64, all bool) (*big.Rat, []Term) {
	area := mul(b.work.Face.Rat(), b.factor, whole(coats))
	flat := up(b.work.Face.Rat(), b.area())
	terms := []Term{{Kind: face, Value: flat}, {Kind: TermDeveloped, Value: near(b.factor, 4, NoUnit)}, {Kind: TermTimes, Value: counted(coats, UnitCoat)}}
	if n := b.settings.paint.edgeCoats; all && n > 0 {
		edges := mul(b.work.Edges.Rat(), b.thickness())
		area = add(area, mul(edges, whole(n)))
		terms = append(terms, Term{Kind: TermEdges, Value: up(edges, b.area())}, Term{Kind: TermTimes, Value: counted(n, NoUnit)})
	}
	if all && b.settings.house.damp {
		area = add(area, mul(b.work.Face.Rat(), whole(coats)))
		terms = append(terms, Term{Kind: TermBacks, Value: flat}, Term{Kind: TermTimes, Value: counted(coats, NoUnit)})
	}
	return area, append(terms, Term{Kind: TermSurface, Value: up(area, b.area())})
}
