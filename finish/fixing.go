package finish

import (
	"fmt"
	"math/big"

	"example.com/groovewright/fraction"
)

// more adds a share for waste.
func more(x, waste *big.Rat) *big.Rat { return mul(x, add(whole(1), waste)) }

func wasted(waste *big.Rat) string {
	if waste.Sign() == 0 {
		return ""
	}
	return fmt.Sprintf("; + %s waste", near(waste, 3))
}

// asGiven is the source of a figure that the job states.
const asGiven = "as given"

// source names where a figure comes from.
func source(byDefault bool, otherwise string) string {
	if byDefault {
		return otherwise
	}
	return asGiven
}

// gluing is Adhesive, read.
type gluing struct {
	form    string
	hold    string
	size    *big.Rat
	spacing *big.Rat
	source  string // of size and spacing
	waste   *big.Rat
	offers  []offer
}

// The spacings that [Adhesive.Spacing] defaults to, by form and hold, in inches and in metric.
var spacings = map[[2]string][2]Taped{
	{"beads", "light"}: {DefaultLightBeads, DefaultLightBeadsMetric},
	{"beads", "full"}:  {DefaultFullBeads, DefaultFullBeadsMetric},
	{"dots", "light"}:  {DefaultLightDots, DefaultLightDotsMetric},
	{"dots", "full"}:   {DefaultFullDots, DefaultFullDotsMetric},
}

func (r *reader) gluing(a Adhesive, units fraction.Unit) gluing {
	const path = "adhesive."
	d := Defaults(units).Adhesive
	g := gluing{form: r.word(path+"form", a.Form, "beads", "dots", "none"), hold: r.word(path+"hold", a.Hold, "light", "full")}
	if boards := r.word(path+"boards", a.Boards, "none", "dots", "beads"); r.boards && (a.Boards != "" || a.Form == "") {
		g.form = boards
	}
	size, pair := d.Size, spacings[[2]string{g.form, g.hold}]
	if g.form == "dots" {
		size = DefaultDot
	}
	spacing := pair[0]
	if units != fraction.Inch {
		spacing = pair[1]
		if g.form == "dots" {
			size = DefaultDotMetric
		}
	}
	if g.form == "none" {
		spacing = d.Spacing
	}
	g.size = r.length(path+"size", a.Size, size, positive)
	g.spacing = r.length(path+"spacing", a.Spacing, spacing, fraction.Inches(1))
	usual := (a.Size == "" || a.Size == size) && (a.Spacing == "" || a.Spacing == spacing)
	g.source = source(usual && g.form == "beads" && g.hold == "light", "a Navy building manual")
	if usual && g.source == asGiven {
		g.source = "planning figure"
	}
	g.waste = r.share(path+"waste", a.Waste, d.Waste)
	g.offers = r.containers(path+"cartridges", a.Cartridges, d.Cartridges)
	return g
}

// glue lists the adhesive on the backs.
func (b *builder) glue() {
	g := b.settings.adhesive
	var volume *big.Rat
	var how string
	if b.work.Profile.Boards {
		b.glueBoards()
		return
	}
	switch g.form {
	case "none":
		return
	case "beads":
		length := b.glueLines()
		volume = mul(roundBead(g.size), length)
		how = fmt.Sprintf("upright beads of %s, two edges and at most %s apart, %s in all", b.small(g.size), b.small(g.spacing), b.run(length))
	case "dots":
		n := b.glueDots()
		volume = mul(halfBall(g.size), n)
		how = fmt.Sprintf("%s dots of %s on a grid of at most %s", text(n, 0), b.small(g.size), b.small(g.spacing))
	}
	need := more(volume, g.waste)
	b.buy("panel adhesive", need, b.tube, g.offers, how+" ("+g.hold+" hold, "+g.source+")"+wasted(g.waste))
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

// nailing is Nails, read.
type nailing struct {
	none        bool
	edge, field *big.Rat
	penetration *big.Rat
	source      string // of the spacings
	lengths     []*big.Rat
	waste       *big.Rat
	offers      []offer
}

func (r *reader) nailing(n, d Nails) nailing {
	const path = "nails."
	return nailing{
		none:        n.None,
		edge:        r.length(path+"edge", n.Edge, d.Edge, fraction.Of(1, 2)),
		field:       r.length(path+"field", n.Field, d.Field, fraction.Of(1, 2)),
		penetration: r.length(path+"penetration", n.Penetration, d.Penetration, fraction.Length{}),
		source:      source(n.Edge == "" && n.Field == "" || n.Edge == d.Edge && n.Field == d.Field, "spacing of the Ontario code for fibreboard sheets"),
		lengths:     r.lengths(path+"lengths", n.Lengths, d.Lengths),
		waste:       r.share(path+"waste", n.Waste, d.Waste),
		offers:      r.packs(path+"packs", n.Packs, d.Packs),
	}
}

// lengths reads the lengths in which nails or screws are sold.
func (r *reader) lengths(path string, given, otherwise []Taped) []*big.Rat {
	if len(given) == 0 {
		given = otherwise
	}
	var all []*big.Rat
	for i, text := range given {
		path := fmt.Sprintf("%s[%d]", path, i)
		before := len(r.faults)
		l := r.length(path, text, text, positive)
		if len(r.faults) == before && i > 0 && l.Cmp(all[i-1]) <= 0 {
			r.fault(path, string(text), "want the lengths rising")
		}
		all = append(all, l)
	}
	return all
}

// packs reads packs of pieces.
func (r *reader) packs(path string, given, otherwise []Pack) []offer {
	return offers(r, path, given, otherwise, func(path string, p Pack) offer {
		size := p.Count
		if size < 1 || size > MaxCount {
			r.fault(path+".count", fmt.Sprint(size), fmt.Sprintf("want 1 to %d", MaxCount))
			size = 1
		}
		return offer{p.Name, whole(int64(size)), r.price(path+".price", p.Price)}
	})
}

// PlateDepth is how far from the face of a stud a cable in it may lie without a steel plate: 1-1/4 in (32 mm), NEC 300.4.
// A nail that goes as deep can reach a cable that is lawfully there.
var PlateDepth = fraction.Of(5, 4)

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
	wanted, length := b.intoStud("panel", b.thickness())
	need := more(whole(total), n.waste)
	how := fmt.Sprintf("%d nails: every %s along edges, every %s on studs %s apart (%s); length: panel %s + wall %s + %s into the stud = %s%s",
		total, b.small(n.edge), b.small(n.field), b.small(b.settings.house.studs), n.source, b.small(b.thickness()), b.small(b.settings.house.wall), b.small(n.penetration), b.small(wanted), wasted(n.waste))
	b.buy("panel nails "+b.small(length), need, counted("nails"), n.offers, how)
}

// intoStud returns how long a nail has to be that holds something so thick through the wall in a stud, and the shortest that is sold.
func (b *builder) intoStud(what string, thickness *big.Rat) (wanted, length *big.Rat) {
	n := b.settings.nails
	build := add(thickness, b.settings.house.wall)
	wanted = add(build, n.penetration)
	length = sold(n.lengths, wanted)
	if length == nil {
		b.warn("nails", "no nail on the list is %s long, which %s, wall and %s in the stud need", b.small(wanted), what, b.small(n.penetration))
		length = wanted
	}
	if into := sub(length, build); into.Cmp(PlateDepth.Rat()) >= 0 {
		b.warn("nails", "a nail of %s goes %s into the stud, where cables may lie from %s on: take a shorter one, and find cables and pipes first", b.small(length), b.small(into), b.small(PlateDepth.Rat()))
	}
	return wanted, length
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
