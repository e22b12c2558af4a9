package finish

import (
	"fmt"
	"math/big"
	"strings"

	"example.com/groovewright/fraction"
)

// painting is Paint, read.
type painting struct {
	primer, top coating
	loss        *big.Rat
	edgeCoats   int64
	groove      string
}

// coating is a Coating, read. Coverage is in square inches per cubic inch.
type coating struct {
	name          string
	before, after int64
	coverage      *big.Rat
	source        string
	offers        []offer
}

func (r *reader) painting(p, d Paint) painting {
	return painting{
		primer:    r.coating("paint.primer", "primer", p.Primer, d.Primer),
		top:       r.coating("paint.top", "top coat", p.Top, d.Top),
		loss:      r.share("paint.loss", p.Loss, d.Loss),
		edgeCoats: r.times("paint.edge_coats", p.EdgeCoats, d.EdgeCoats),
		groove:    r.word("paint.groove", p.Groove, SquareGroove, VGroove),
	}
}

func (r *reader) coating(path, name string, c, d Coating) coating {
	read := coating{
		name:   name,
		before: r.times(path+".before", c.Before, d.Before),
		after:  r.times(path+".after", c.After, d.After),
		offers: r.containers(path+".containers", c.Containers, d.Containers),
	}
	switch {
	case c.Solids == "" && c.DryFilm == "" && (c.Coverage == "" || c.Coverage == d.Coverage):
		read.coverage, read.source = r.coverage(path+".coverage", d.Coverage), "planning figure, trust the tin"
	case c.Solids == "" && c.DryFilm == "":
		read.coverage, read.source = r.coverage(path+".coverage", c.Coverage), asGiven
	case c.Coverage != "":
		r.fault(path+".coverage", string(c.Coverage), "the coverage, or solids and the dry film, not both")
	case c.Solids == "" || c.DryFilm == "":
		r.fault(path, "", "solids and the dry film together")
	default:
		film := r.length(path+".dry_film", c.DryFilm, "", positive)
		read.coverage, read.source = theoretical(r.solids(path+".solids", c.Solids), film), "solids by volume over dry film"
	}
	return read
}

// solids reads a share above nothing, up to all.
func (r *reader) solids(path string, text Number) *big.Rat {
	n, err := fraction.ParseRatio(string(text))
	if err != nil || n.Sign() <= 0 || n.Rat().Cmp(whole(1)) > 0 {
		r.fault(path, string(text), "want a share above 0 and up to 1, such as 0.4 for forty percent")
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

// containers reads packs of a volume.
func (r *reader) containers(path string, given, otherwise []Container) []offer {
	return offers(r, path, given, otherwise, func(path string, c Container) offer {
		return offer{c.Name, r.volume(path+".size", c.Size), r.price(path+".price", c.Price)}
	})
}

// brushed is what is painted in one pass: the surface of all its coats in square inches, and how it came about.
type brushed struct {
	area *big.Rat
	how  string
}

// paint lists primer and top coat. Edges are coated before fitting, with the first paint that goes on then; so are
// backs where it is damp, as often as the face is.
func (b *builder) paint() {
	p := b.settings.paint
	edges := true
	for _, c := range []coating{p.primer, p.top} {
		var parts []string
		need := new(big.Rat)
		for _, pass := range []struct {
			when  string
			coats int64
		}{{"before fitting", c.before}, {"after sealing", c.after}} {
			if pass.coats == 0 {
				continue
			}
			all := b.faces(pass.coats)
			if edges && pass.when == "before fitting" {
				all, edges = b.withEdges(all, pass.coats), false
			}
			if all.area.Sign() == 0 {
				continue
			}
			volume := quo(all.area, practical(c.coverage, p.loss))
			need = add(need, volume)
			b.list.Passes = append(b.list.Passes, Pass{c.name, pass.when, int(pass.coats), b.area(all.area), b.can(volume)})
			parts = append(parts, fmt.Sprintf("%s: %s = %s", pass.when, all.how, b.area(all.area)))
		}
		how := fmt.Sprintf("%s; ÷ %s (%s) ÷ (1 - %s loss)", strings.Join(parts, "; "), b.coverage(c.coverage), c.source, near(p.loss, 3))
		b.buy(c.name, need, b.can, c.offers, how)
	}
}

// faces is the developed surface of all faces, so many times.
func (b *builder) faces(coats int64) brushed {
	area := mul(b.work.Face.Rat(), b.factor, whole(coats))
	return brushed{area, fmt.Sprintf("face %s × %s developed × %d %s", b.area(b.work.Face.Rat()), near(b.factor, 4), coats, plural(int(coats), "coat"))}
}

// withEdges adds the sawn edges, and the backs where it is damp.
func (b *builder) withEdges(face brushed, coats int64) brushed {
	if n := b.settings.paint.edgeCoats; n > 0 {
		edges := mul(b.work.Edges.Rat(), b.thickness())
		face.area = add(face.area, mul(edges, whole(n)))
		face.how += fmt.Sprintf(" + edges %s × %d", b.area(edges), n)
	}
	if b.settings.house.damp {
		face.area = add(face.area, mul(b.work.Face.Rat(), whole(coats)))
		face.how += fmt.Sprintf(" + backs %s × %d (damp)", b.area(b.work.Face.Rat()), coats)
	}
	return face
}
