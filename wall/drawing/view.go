package drawing

import (
	"iter"

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

func (v view) x(l fraction.Length) float64 {
	x := l.Float64()
	if v.flip > 0 {
		x = v.flip - x
	}
	return v.left + (x-v.x0)*v.across()
}

// across is the ink to the inch across the grooves.
func (v view) across() float64 { return v.scale * max(1, v.stretch) }

func (v view) y(l fraction.Length) float64 { return v.top + (v.y1-l.Float64())*v.scale }

// move returns the view of things whose own origin stands at p.
func (v view) move(p plan.Point) view {
	v.left = v.x(p.X) + v.x0*v.across()
	v.top = v.y(p.Y) - v.y1*v.scale
	return v
}

// area returns the box between two corners.
func (v view) area(x0, y0, x1, y1 fraction.Length) box {
	left, right := v.x(x0), v.x(x1)
	return box{min(left, right), v.y(y1), max(left, right) - min(left, right), v.y(y0) - v.y(y1)}
}

// whole returns the box of a thing of a size at the origin.
func (v view) whole(w, h fraction.Length) box { return v.area(zero, zero, w, h) }

// around returns the box round some points.
func (v view) around(points []plan.Point) box {
	lo, hi := cutout.Bounds(points)
	return v.area(lo.X, lo.Y, hi.X, hi.Y)
}

// line is the path through some points.
func (v view) line(points []plan.Point) string {
	return through(points, func(at plan.Point) (x, y float64) { return v.x(at.X), v.y(at.Y) })
}

// outline is the path of one or more rings.
func (v view) outline(rings ...[]plan.Point) string {
	path := ""
	for _, ring := range rings {
		if len(ring) > 0 {
			path += v.line(ring) + "Z"
		}
	}
	return path
}

// seats returns places for a label wholly on a shape of an outline and holes, from its middle on.
func (v view) seats(rings [][]plan.Point, w, h float64) iter.Seq[box] {
	const steps = 40
	area := v.around(rings[0])
	on := func(c box) bool {
		for i := range 9 {
			if !v.holds(c.x+c.w/2*float64(i/3), c.y+c.h/2*float64(i%3), rings...) {
				return false
			}
		}
		return true
	}
	return func(yield func(box) bool) {
		for _, i := range outward(steps) {
			for _, j := range outward(steps) {
				c := centered(area.x+area.w*float64(j)/steps, area.y+area.h*float64(i)/steps, w, h)
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

// holds reports whether a place of ink lies inside the rings, by counting the crossings of a ray.
func (v view) holds(x, y float64, rings ...[]plan.Point) bool {
	x, y = (x-v.left)/v.across()+v.x0, v.y1-(y-v.top)/v.scale
	in := false
	for _, ring := range rings {
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			px, py, qx, qy := p.X.Float64(), p.Y.Float64(), q.X.Float64(), q.Y.Float64()
			if (py > y) != (qy > y) && x < px+(y-py)/(qy-py)*(qx-px) {
				in = !in
			}
		}
	}
	return in
}
