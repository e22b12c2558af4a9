package drawing

import (
	"fmt"
	"maps"
	"math"
	"math/cmplx"
	"slices"
	"sort"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall/plan"
)

// Sizes in units of ink: 96 to the inch in print. Capitals of typeSize are at least 2.5 mm high
// there: ISO 3098-1 has 2.5 mm as the least of its heights for A4.
const (
	typeSize  = 13.4
	laneHigh  = 17.0  // a line of text
	narrowest = .95   // of the estimate, what the widest common face needs for figures and words mixed
	poleGap   = 15.0  // between neighboring upright numbers, and between level ones
	wideInk   = 690.0 // natural width of a drawing across the page
	halfInk   = 340.0 // natural width of one of two side by side, and of a phone
)

// canvas is a drawing in the making.
type canvas struct {
	plan plan.Plan
	tape fraction.Tape // writes the plan's lengths as the job does
	*Picture
	view
	board
	leads *node // lines that run under everything drawn later
}

// newCanvas returns an empty drawing. One that is made in two widths has a name for each.
func newCanvas(p plan.Plan, width float64, name, title string) canvas {
	return canvas{plan: p, tape: p.TapeMeasure(), Picture: &Picture{Name: name, Title: title, Width: width}}
}

// sized is the name of a drawing that is made in two widths.
func sized(name string, width float64) string {
	return name + either(width < wideInk, "-small", "")
}

// draw draws thing i of n in a list of the plan, and if wide a second time narrow; nil is an error.
func draw(width float64, list fault.Path, i, n int, of func(width float64) *Picture) (pic Picture, err error) {
	defer fraction.Catch(&err)
	var drawn *Picture
	want := fmt.Sprintf("one of %d", n)
	if i >= 0 && i < n {
		drawn, want = of(width), "something to draw"
	}
	if drawn == nil {
		return Picture{}, &fault.Fault{Path: append(list, fault.Step{Index: i}), Want: want}
	}
	if drawn.Width > halfInk {
		drawn.narrow = of(halfInk)
	}
	return *drawn, nil
}

// either is one of two values.
func either[T any](holds bool, yes, no T) T {
	if holds {
		return yes
	}
	return no
}

// leadTo draws a line from a label's box to what it names, as from its middle.
func (c *canvas) leadTo(label box, at point) {
	lead := segment{label.middle(), at}
	out := min(1, 1/max(2*lead.span().w/label.w, 2*lead.span().h/label.h))
	lead.from = lead.along(out)
	c.leads.stroke("lead", "M", lead.from, "L", at)
	c.lines = append(c.lines, lead)
}

// pointed claims a place for a text no farther than some ink from a segment, and draws a lead from there to it.
func (c *canvas) pointed(w, h, most float64, s segment) (seat box, ok bool) {
	if seat, ok = c.led(w, h, most, s); ok {
		c.leadTo(seat, seat.nearestOn(s))
	}
	return seat, ok
}

// callout writes a text away from a segment with a lead to it, and reports whether there is room.
func (c *canvas) callout(class string, text line, w, h float64, s segment) bool {
	seat, ok := c.pointed(w, h, farLead, s)
	if ok {
		text.seated(&c.node, class, seat)
	}
	return ok
}

// nameAt names a place of ink close to it, much nearer to it than to any other that has a name, if there is room.
func (c *canvas) nameAt(class string, name line, at point) bool {
	w := name.width(typeSize)*1.2 + 3
	seats := grid([]float64{9, 12, 16}, []float64{-2, -1.5, -1, -.5, 0, .5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5}, func(away, turn float64) box {
		way := cmplx.Rect(away, math.Pi/4*turn)
		return centered(complex(real(at)+real(way)*1.15+math.Copysign((w-letterSize)/2, real(way)), imag(at)+imag(way)), w, letterSize)
	})
	seats = slices.DeleteFunc(seats, func(seat box) bool { return c.mistaken(seat, at, math.Inf(1)) })
	seat, ok := c.place(c.clear(seats, spot(at))...)
	if ok {
		name.seated(&c.node, class, seat)
	}
	return ok
}

// way is one to write a label, in a place of a size.
type way struct {
	w, h  float64
	write func(seat box)
}

// written writes a label in the first place that is found, for each search in the first of some ways that has one, and
// reports whether there is any.
func written(ways []way, searches ...func(w, h float64) (box, bool)) bool {
	for _, search := range searches {
		for _, as := range ways {
			if seat, ok := search(as.w, as.h); ok {
				as.write(seat)
				return true
			}
		}
	}
	return false
}

// level is the way to write a text on a line, with some room before and after it.
func (c *canvas) level(class string, text line, room float64) way {
	return way{text.width(typeSize) + room, laneHigh, func(seat box) { text.seated(&c.node, class, seat) }}
}

// upward is the way to write it reading upwards, on a line so high.
func (c *canvas) upward(class string, text line, room, high float64) way {
	return way{high, text.width(typeSize) + room, func(seat box) { text.upright(&c.node, class, seat.middle(), "middle") }}
}

// tagged is one to write a label in a box of its own.
func (c *canvas) tagged(as way) way {
	return way{as.w, as.h, func(seat box) { c.tag(seat, 3); as.write(seat) }}
}

// fitted writes a label on a shape in the first of some ways that has room, and reports whether there is one.
func (c *canvas) fitted(v view, rings [][]plan.Point, ways ...way) bool {
	return written(ways, func(w, h float64) (box, bool) { return c.first(v.seats(rings, w, h)) })
}

// nameBeside writes a name in one of some ways within an area, where it is nearer to what it names than to any other of some,
// else not far off with a lead to a line of that, and reports whether there is room.
func (c *canvas) nameBeside(spot box, others []box, within box, on segment, ways ...way) bool {
	own := func(seat box) bool { // at both ends of the name too
		start, end := box{seat.x, seat.y, seat.h, seat.h}, box{seat.x + seat.w - seat.h, seat.y, seat.h, seat.h}
		return seat.inside(within) && !slices.ContainsFunc(others, func(o box) bool {
			return o != spot && (seat.away(o) < 1.5*seat.away(spot) || start.away(o) < start.away(spot) || end.away(o) < end.away(spot))
		})
	}
	return written(ways, func(w, h float64) (box, bool) {
		return c.place(slices.DeleteFunc(besides(spot, w, h), func(seat box) bool { return !own(seat) })...)
	}, func(w, h float64) (box, bool) { return c.pointed(w, h, farName, on) })
}

// names are the ways to write a name: on one line or more.
func (c *canvas) names(name figure) (ways []way) {
	whole, long := line{name}, textWidth(name.text, typeSize)
	for _, lines := range [][]line{{whole}, whole.wrap(long*.62, long), whole.wrap(80, long)} {
		high := laneHigh * float64(len(lines))
		ways = append(ways, c.tagged(way{widest(typeSize, lines) + 8, high + 2, func(at box) {
			c.under(0, real(at.middle()), imag(at.middle())+typeSize*.36-(high-laneHigh)/2, "middle", lines...)
		}}))
	}
	return ways
}

// letter writes the letter of a corner of two runs in a circle.
func (c *canvas) letter(letter string, at point) {
	c.dot("tag", at, 10)
	line{counted(letter)}.seated(&c.node, "bold", centered(at, 20, 20))
	c.claim(centered(at, 20, 20))
}

// drills draws the starter holes of a piece, circles of at least a radius with their middles.
func (c *canvas) drills(on *node, piece plan.Piece, circle, lines string, least float64) {
	for _, hole := range piece.Marks.Drill {
		at, r := c.at(hole.At), max(least, hole.Diameter.Float64()/2*c.scale)
		on.dot(circle, at, r)
		on.cross(lines, at, r)
		c.claim(centered(at, 2*r, 2*r))
	}
}

// number writes the number of a cut in a place, with a lead to its line.
func (c *canvas) number(text line, s segment, seat box) {
	if lead := (segment{seat.middle(), seat.nearestOn(s)}); cmplx.Abs(lead.to-lead.from) > numberSize {
		c.stroke("cutlead", "M", lead.from, "L", lead.to)
		c.dot("cutdot", lead.to, 1.5)
		c.lines = append(c.lines, lead)
	}
	c.dot("cutnumber", seat.middle(), numberSize)
	text.seated(&c.node, "cuttext", seat)
}

// once adds a stop to some, if none of them is at its place.
func once(all []stop, s stop) []stop {
	if slices.ContainsFunc(all, func(t stop) bool { return t.at == s.at }) {
		return all
	}
	return append(all, s)
}

// stop is a label and the place along a line of ink of what it belongs to: a measurement, a height.
type stop struct {
	text  line
	at    fraction.Length
	ink   float64 // where it belongs
	spot  float64 // where it stands; see spreadStops
	y     float64 // ink of the place of a sign
	bare  bool    // without a lead
	class string  // of type
}

// spreadStops puts stops into their order along the line and moves them apart, see [spread].
func spreadStops(all []stop, gap, lo, hi float64) []stop {
	sort.SliceStable(all, func(i, j int) bool { return all[i].ink < all[j].ink })
	wanted := make([]float64, len(all))
	for i, s := range all {
		wanted[i] = s.ink
	}
	for i, spot := range spread(wanted, gap, lo, hi) {
		all[i].spot = spot
	}
	return all
}

// below writes stops under a line of ink at y, where out is 1, or over it, where it is -1, reading upwards,
// over leads and what over draws of each; it returns their end.
func (c *canvas) below(all []stop, lo, hi, y, out, straight, long float64, over func(stop)) float64 {
	lo = max(8, min(lo, hi-poleGap*float64(len(all)-1)))
	deepest, text := 0.0, y+out*(long+3)
	for _, s := range spreadStops(all, poleGap, lo, hi) {
		if len(s.text) == 0 { // what no text stands on
			continue
		}
		if over(s); !s.bare {
			c.claimLine(segment{complex(s.ink, y+out), complex(s.ink, y+out*straight)}, segment{complex(s.ink, y+out*straight), complex(s.spot, y+out*long)})
			c.stroke("lead", "M", s.ink, y+out, "v", out*straight, "L", s.spot, y+out*long)
		}
		w := s.text.width(typeSize)
		s.text.upright(&c.node, s.class, complex(s.spot, text), anchors[out])
		c.word(spanned(s.spot-7, text, s.spot+7, text+out*w))
		deepest = max(deepest, w*narrowest)
	}
	return text + out*(deepest+4)
}

// anchors are those of a text that reads upwards over a line, at -1, and under it, at 1, or lies beside one.
var anchors = map[float64]string{-1: "start", 1: "end"}

// beside writes stops beside a line of ink at x, left of it where out is -1 and right where it is 1.
func (c *canvas) beside(all []stop, lo, hi, x, out, straight, long float64, over func(stop)) {
	for _, s := range spreadStops(all, poleGap, lo, hi) {
		over(s)
		c.claimLine(segment{complex(x+out, s.ink), complex(x+out*straight, s.ink)}, segment{complex(x+out*straight, s.ink), complex(x+out*long, s.spot)})
		c.stroke("lead", "M", x+out, s.ink, "h", out*straight, "L", x+out*long, s.spot)
		start, w := x+out*(long+3), s.text.width(typeSize)
		s.text.write(&c.node, s.class, start, s.spot+4, anchors[-out])
		c.word(box{min(start, start+out*w), s.spot - 8, w, 15})
	}
}

var zero fraction.Length

// stripePart is a part of the width of a bead or a groove, from its left, and the class that it is drawn in.
type stripePart struct {
	class    string
	from, to float64
}

// Beads and grooves as they are in drawings, and with the light from the left.
var (
	flatly = map[groove.Kind][]stripePart{groove.Bead: {{"bead", 0, 1}}, groove.Groove: {{"groove", 0, 1}}}
	lit    = map[groove.Kind][]stripePart{groove.Bead: {{"lit", 0, 1. / 3}, {"shade", 2. / 3, 1}}, groove.Groove: {{"shade", 0, 1. / 3}, {"lit", 2. / 3, 1}}}
)

// drawPattern draws the beads and grooves of a board, as far as the picture is wide.
func (pic *Picture) drawPattern(on *node, v view, profile plan.Profile, phase, width, height fraction.Length, look map[groove.Kind][]stripePart) {
	paths := map[string][]byte{} // by class
	for _, s := range profile.Stripes(zero, width, phase) {
		b := v.area(fraction.Max(s.Left, zero), zero, fraction.Min(s.Right, width), height)
		for _, part := range look[s.Kind] {
			if b.x+b.w > 0 && b.x < pic.Width {
				paths[part.class] = append(paths[part.class], box{b.x + part.from*b.w, b.y, (part.to - part.from) * b.w, b.h}.path()...)
			}
		}
	}
	for _, class := range slices.Sorted(maps.Keys(paths)) {
		on.stroke(class, string(paths[class]))
	}
}

// drawPiece draws a piece with its pattern, seen in v, which has the piece's own coordinates.
func (pic *Picture) drawPiece(on *node, v view, profile plan.Profile, piece plan.Piece, what string) {
	shape := v.curved(piece.Marks.Arcs, piece.Rings()...)
	on.stroke("board", shape).set("fill-rule", "evenodd")
	pic.drawPattern(on.add("g", "clip-path", pic.clip(what, shape)), v, profile, piece.LeftPhase, piece.Width, piece.Height, flatly)
	on.stroke("edge", shape).set("fill-rule", "evenodd")
}
