package drawing

import (
	"iter"
	"math"
	"math/cmplx"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/plan"
)

// view turns exact coordinates, y up, into ink, y down. Only here do lengths become floats.
type view struct {
	scale     float64 // ink to the inch
	left, top float64 // where the upper left of what is shown lies
	x0, y1    float64 // what lies there, in inches
	flip      float64 // if above zero: show x mirrored about this width
	stretch   float64 // if above zero: how many times wider than along the grooves
}

// whole is a scale no larger that shows things smaller by a whole number, or at their size.
func whole(scale float64) float64 { return perInch / max(1, math.Ceil(perInch/scale-1e-9)) }

func (v view) x(l fraction.Length) float64 { return real(v.ink(l.Float64(), 0)) }
func (v view) y(l fraction.Length) float64 { return imag(v.ink(0, l.Float64())) }

// at is the place of ink of a point.
func (v view) at(p plan.Point) point { return v.ink(p.X.Float64(), p.Y.Float64()) }

// ink is the place of ink of a place in inches.
func (v view) ink(x, y float64) point {
	x = either(v.flip > 0, v.flip-x, x)
	return complex(v.left+(x-v.x0)*v.across(), v.top+(v.y1-y)*v.scale)
}

// edges are those of some rings, the last of each from its last point to its first.
func (v view) edges(rings ...[]plan.Point) (all []segment) {
	for _, ring := range rings {
		for i, p := range ring {
			all = append(all, segment{v.at(p), v.at(ring[(i+1)%len(ring)])})
		}
	}
	return all
}

// across is the ink to the inch across the grooves.
func (v view) across() float64 { return v.scale * max(1, v.stretch) }

// move returns the view of things whose own origin stands at p.
func (v view) move(p plan.Point) view {
	along := p.X.Float64() * v.across()
	v.left += either(v.flip > 0, -along, along)
	v.top = v.y(p.Y) - v.y1*v.scale
	return v
}

// area returns the box between two corners.
func (v view) area(x0, y0, x1, y1 fraction.Length) box {
	return spanned(v.x(x0), v.y(y1), v.x(x1), v.y(y0))
}

// sized returns the box of a thing of a size at the origin.
func (v view) sized(w, h fraction.Length) box { return v.area(zero, zero, w, h) }

// around returns the box round some points.
func (v view) around(points []plan.Point) box {
	lo, hi := cutout.Bounds(points)
	return v.area(lo.X, lo.Y, hi.X, hi.Y)
}

// curved is the path of one or more rings; corners that lie near an arc are joined by it.
func (v view) curved(arcs []plan.Arc, rings ...[]plan.Point) (path string) {
	for _, ring := range rings {
		if len(ring) > 0 {
			path += v.trace(arcs, ring, true) + "Z"
		}
	}
	return path
}

// trace is the path through some points, along an arc between those that lie near the same one.
func (v view) trace(arcs []plan.Arc, points []plan.Point, closed bool) (path string) {
	n := len(points)
	at := func(i int) (*plan.Arc, point) {
		p := points[i%n]
		a := plan.ArcAt(arcs, p)
		if a == nil {
			return nil, v.at(p)
		}
		edge := p // what the arc ends at
		for _, k := range []int{i%n - 1, i%n + 1} {
			if q := points[(k+n)%n]; (closed || k >= 0 && k < n) && plan.ArcAt(arcs, q) != a {
				edge = q
			}
		}
		return a, v.ink(a.Meet(p, edge))
	}
	before, from := at(0)
	path = pen("M", from)
	for i := 1; i < n || closed && i == n && before != nil; i++ {
		a, to := at(i)
		if a == nil || a != before {
			path += pen("L", to)
		} else {
			turn := (to - v.at(a.Centre)) * cmplx.Conj(from-v.at(a.Centre))
			r := a.Radius.Float64()
			path += pen("A", r*v.across(), r*v.scale, either(imag(turn) > 0, " 0 0 1 ", " 0 0 0 "), to)
		}
		before, from = a, to
	}
	return path
}

// seats returns places for a label wholly on a shape of an outline and holes, from its middle on.
func (v view) seats(rings [][]plan.Point, w, h float64) iter.Seq[box] {
	const steps = 40
	area, edges := v.around(rings[0]), v.edges(rings...)
	on := func(c box) bool {
		for i := range 9 {
			if !inside(complex(c.x+c.w/2*float64(i/3), c.y+c.h/2*float64(i%3)), edges) {
				return false
			}
		}
		return true
	}
	return func(yield func(box) bool) {
		if w > area.w || h > area.h {
			return
		}
		for i := range steps - 1 {
			for j := range steps - 1 {
				c := centered(complex(area.x+area.w*outward(j, steps), area.y+area.h*outward(i, steps)), w, h)
				if on(c) && !yield(c) {
					return
				}
			}
		}
	}
}

// outward is step i from the middle of a side, with every other one to its left, for a side in n parts.
func outward(i, n int) float64 { return float64(n/2+(i+1)/2*(2*(i%2)-1)) / float64(n) }

// inside reports whether a place lies inside some rings, by the crossings of a ray with their edges.
func inside(at point, edges []segment) (in bool) {
	for _, s := range edges {
		if way := s.to - s.from; (imag(s.from) < imag(at)) != (imag(s.to) < imag(at)) && real(at) < real(s.from)+imag(at-s.from)/imag(way)*real(way) {
			in = !in
		}
	}
	return in
}
