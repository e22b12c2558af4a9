package drawing

import (
	"iter"

	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall/plan"
)

// view turns exact coordinates, y up, into ink, y down. Only here do lengths
// become floats.
type view struct {
	scale     float64 // ink to the inch
	left, top float64 // where the upper left of what is shown lies
	x0, y1    float64 // what lies there, in inches
	flip      float64 // if above zero: show x mirrored about this width
	stretch   float64 // if above zero: how many times wider than along the grooves
}

func (v view) x(l fraction.Length) float64 {
	x := l.Float64()
	if v.flip > 0 {
		x = v.flip - x
	}
	return v.left + (x-v.x0)*v.across()
}

// across is the ink to the inch across the grooves.
func (v view) across() float64 {
	if v.stretch > 0 {
		return v.scale * v.stretch
	}
	return v.scale
}

func (v view) y(l fraction.Length) float64 { return v.top + (v.y1-l.Float64())*v.scale }

// move returns the view of things whose own origin stands at p.
func (v view) move(p plan.Point) view {
	v.left = v.x(p[0]) + v.x0*v.across()
	v.top = v.y(p[1]) - v.y1*v.scale
	return v
}

// area returns the box between two corners.
func (v view) area(x0, y0, x1, y1 fraction.Length) box {
	left, right := v.x(x0), v.x(x1)
	if left > right {
		left, right = right, left
	}
	return box{left, v.y(y1), right - left, v.y(y0) - v.y(y1)}
}

// ring adds a closed outline to a path.
func (v view) ring(p *path, outline []plan.Point) {
	for i, at := range outline {
		if i == 0 {
			p.move(v.x(at[0]), v.y(at[1]))
		} else {
			p.line(v.x(at[0]), v.y(at[1]))
		}
	}
	if len(outline) > 0 {
		p.shut()
	}
}

// outline is the path of one or more rings.
func (v view) outline(rings ...[]plan.Point) string {
	var p path
	for _, ring := range rings {
		v.ring(&p, ring)
	}
	return p.String()
}

// rings are the outline of a piece and its holes.
func rings(piece plan.Piece) [][]plan.Point {
	all := [][]plan.Point{piece.Outline}
	for _, hole := range piece.Holes {
		all = append(all, hole.Outline)
	}
	return all
}

// stripe is one bead or groove, from left to right.
type stripe struct {
	left, right fraction.Length
	kind        string
}

// stripes returns the beads and grooves within a width whose left edge shows
// leftPhase, each cut off where the width ends. Flats leave no ink.
func stripes(profile plan.Profile, leftPhase, width fraction.Length) []stripe {
	var found []stripe
	if profile.Pitch.Sign() <= 0 {
		return nil
	}
	var zero fraction.Length
	for at := leftPhase.Neg(); at.Less(width); {
		start := at
		for _, feature := range profile.Features {
			end := at.Add(feature.Width)
			if feature.Kind != groove.Flat && zero.Less(end) && at.Less(width) {
				found = append(found, stripe{fraction.Max(at, zero), fraction.Min(end, width), feature.Kind.String()})
			}
			at = end
		}
		if !start.Less(at) {
			return found // features without width: nothing more to come
		}
	}
	return found
}

// drawPattern draws beads and grooves over a height, in the view's coordinates.
func drawPattern(on *node, v view, all []stripe, bottom, top fraction.Length) {
	for _, kind := range []string{"bead", "groove"} {
		var p path
		for _, s := range all {
			if s.kind == kind {
				p.rect(v.area(s.left, bottom, s.right, top))
			}
		}
		if p.b.Len() > 0 {
			on.add("path", "class", kind, "d", p.String())
		}
	}
}

// drawPiece draws a piece with its pattern, seen in v, which has the piece's
// own coordinates.
func (pic *Picture) drawPiece(on *node, v view, profile plan.Profile, piece plan.Piece, what string) {
	shape := v.outline(rings(piece)...)
	clip := pic.defs.add("clipPath", "id", pic.id(what))
	clip.add("path", "d", shape, "clip-rule", "evenodd")
	on.add("path", "class", "board", "d", shape, "fill-rule", "evenodd")
	pattern := on.add("g", "clip-path", "url(#"+pic.id(what)+")")
	var zero fraction.Length
	drawPattern(pattern, v, stripes(profile, piece.LeftPhase, piece.Width), zero, piece.Height)
	on.add("path", "class", "edge", "d", shape, "fill-rule", "evenodd")
}

// bounds returns the least and greatest coordinates of some points.
func bounds(points []plan.Point) (lo, hi plan.Point) {
	for i, p := range points {
		if i == 0 {
			lo, hi = p, p
			continue
		}
		for axis := range p {
			lo[axis] = fraction.Min(lo[axis], p[axis])
			hi[axis] = fraction.Max(hi[axis], p[axis])
		}
	}
	return lo, hi
}

// holds reports whether a place lies inside the rings, counting crossings of a
// ray to the right. It only serves to put labels where there is board.
func holds(x, y float64, all ...[]plan.Point) bool {
	in := false
	for _, ring := range all {
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			px, py, qx, qy := p[0].Float64(), p[1].Float64(), q[0].Float64(), q[1].Float64()
			if (py > y) != (qy > y) && x < px+(y-py)/(qy-py)*(qx-px) {
				in = !in
			}
		}
	}
	return in
}

// seats returns places for a label of a size on a shape of one outline and
// its holes, the middle first and then outwards, wholly on the shape.
func seats(v view, all [][]plan.Point, w, h float64) iter.Seq[box] {
	const steps = 40
	lo, hi := bounds(all[0])
	area := v.area(lo[0], lo[1], hi[0], hi[1])
	on := func(c box) bool {
		for _, x := range []float64{c.x, c.x + c.w/2, c.x + c.w} {
			for _, y := range []float64{c.y, c.y + c.h/2, c.y + c.h} {
				if !holds((x-v.left)/v.across()+v.x0, v.y1-(y-v.top)/v.scale, all...) {
					return false
				}
			}
		}
		return true
	}
	return func(yield func(box) bool) {
		for _, i := range outward(steps) {
			for _, j := range outward(steps) {
				c := around(area.x+area.w*float64(j)/steps, area.y+area.h*float64(i)/steps, w, h)
				if on(c) && !yield(c) {
					return
				}
			}
		}
	}
}

// outward returns 1 … n-1 from the middle outwards.
func outward(n int) []int {
	order := []int{n / 2}
	for d := 1; d < n/2; d++ {
		order = append(order, n/2+d, n/2-d)
	}
	return order
}
