package cutout

import (
	"iter"
	"math/big"

	"example.com/groovewright/fraction"
)

// Starter is a hole to drill inside the corner of a cutout, so that the jigsaw
// can start and turn there. It lies wholly in the waste and at most touches the
// line.
type Starter struct {
	Hole     int   // index of the hole in whose corner it lies, -1 for a notch
	Corner   Point // the corner on the face
	At, Back Point // its centre on the face and on the back
	Diameter fraction.Length
}

// Starters returns a starter hole for every sharp inside corner of s, measured
// like [Shape.Marks], and the corners in which none of that diameter fits. A
// corner is sharp where the saw has to turn by more than about 27 degrees, 1 in
// 2; corners of a polyline that stands for a curve are not. A hole of s without a
// sharp corner gets one starter, at its lowest corner.
//
// A centre is as near to its corner as the diameter allows, or at a mark close by
// if mark is above zero; where the exact centre does not fit, at one of 1/1024 in.
// It is at least half the diameter from every edge of s, checked on squares, and
// from the edge of the bounding rectangle, beyond which another piece may lie on
// the sheet.
func (s Shape) Starters(diameter, mark fraction.Length) (starters []Starter, tight []Point) {
	s = s.atOrigin()
	for number, ring := range s.rings {
		for i := range ring {
			if s.turnsAt(number, ring, i) {
				s.drill(number, ring, i, diameter, mark, &starters, &tight)
			}
		}
	}
	return starters, tight
}

// turnsAt reports whether corner i of a ring needs a starter hole.
func (s Shape) turnsAt(number int, ring []Point, i int) bool {
	if sharpInside(ring, i) {
		return true
	}
	if number < 0 || i != 0 {
		return false
	}
	for j := range ring {
		if sharpInside(ring, j) {
			return false
		}
	}
	return turnOf(ring, i) < 0
}

func (s Shape) drill(number int, ring []Point, i int, diameter, mark fraction.Length, starters *[]Starter, tight *[]Point) {
	if diameter.Sign() > 0 {
		radius := diameter.Div(2)
		_, hi := s.Bounds()
		for at := range centres(ring, i, radius, mark) {
			if hasRoom(at, hi) && s.drillable(number, at, radius) {
				*starters = append(*starters, Starter{number, ring[i], at, behind(at, hi.X), diameter})
				return
			}
		}
	}
	*tight = append(*tight, ring[i])
}

// hasRoom reports whether the distances of a centre from the upper right of the
// rectangle fit a Length: an exact centre may have a denominator too long for that.
func hasRoom(at, hi Point) bool {
	to, from := hi.rational(), at.rational()
	_, ok := rational{to.x.Sub(to.x, from.x), to.y.Sub(to.y, from.y)}.point()
	return ok
}

func turnOf(ring []Point, i int) int {
	return turn(ring[before(i, len(ring))], ring[i], ring[after(i, len(ring))])
}

// sharpInside reports whether the material has a sharp inside corner there.
func sharpInside(ring []Point, i int) bool { return turnOf(ring, i) < 0 && sharp(ring, i) }

// bend is the tangent of the greatest turn that a jigsaw makes without a starter
// hole: 1 in 2, about 27 degrees. Common practice, no source.
var bend = big.NewRat(1, 2)

// sharp reports whether the way along the ring turns at corner i by more than
// bend, to either side.
func sharp(ring []Point, i int) bool {
	u, v, w := ring[before(i, len(ring))].rational(), ring[i].rational(), ring[after(i, len(ring))].rational()
	cross, dot := products(u, v, w)
	return dot.Sign() <= 0 || cross.Abs(cross).Cmp(dot.Mul(dot, bend)) > 0
}

// products returns the cross and the dot product of u->v and v->w.
func products(u, v, w rational) (cross, dot *big.Rat) {
	px, py := new(big.Rat).Sub(v.x, u.x), new(big.Rat).Sub(v.y, u.y)
	qx, qy := new(big.Rat).Sub(w.x, v.x), new(big.Rat).Sub(w.y, v.y)
	cross = new(big.Rat).Mul(px, qy)
	cross.Sub(cross, new(big.Rat).Mul(py, qx))
	dot = px.Mul(px, qx)
	return cross, dot.Add(dot, py.Mul(py, qy))
}

// fineMark, in inches, takes the place of no mark where the exact centre cannot be
// used.
var fineMark = fraction.Of(1, 1024)

// centres yields where a starter hole for corner i may go, the best first: the
// place that just clears both edges if no mark is given or it lies on one, then
// the marks round it, the nearest first.
func centres(ring []Point, i int, radius, mark fraction.Length) iter.Seq[Point] {
	return func(yield func(Point) bool) {
		u, v, w := ring[before(i, len(ring))], ring[i], ring[after(i, len(ring))]
		best := besideBoth(u.rational(), v.rational(), w.rational(), radius.Rat())
		if mark.Sign() <= 0 {
			if exact, ok := best.point(); ok && !yield(exact) {
				return
			}
			mark = fineMark
		}
		near := rational{nearestMultiple(best.x, mark.Rat()), nearestMultiple(best.y, mark.Rat())}
		base, ok := near.point()
		if !ok || squaredDistance(near, best).Sign() == 0 && !yield(base) {
			return
		}
		const reach = 2 // marks to either side
		var marks []Point
		for dx := int64(-reach); dx <= reach; dx++ {
			for dy := int64(-reach); dy <= reach; dy++ {
				marks = append(marks, base.Plus(mark.Mul(dx), mark.Mul(dy)))
			}
		}
		sortByDistance(marks, best)
		for _, m := range marks {
			if !yield(m) {
				return
			}
		}
	}
}

// rootGrain is the part of the distance up to which an irrational root in
// besideBoth is rounded up: far finer than a drill.
var rootGrain = big.NewRat(1, 1<<20)

// besideBoth returns the point in the corner u-v-w, to the right of both edges,
// at the given distance from either line: v - α(v-u) + β(w-v). Where the length
// of an edge is irrational, the distance comes out a trifle too long, never too
// short.
func besideBoth(u, v, w rational, distance *big.Rat) rational {
	cross, _ := products(u, v, w)
	cross.Abs(cross)
	along := func(p, q rational) *big.Rat { // distance times the length of pq
		square := squaredDistance(p, q)
		square.Mul(square, squared(distance))
		if root, ok := exactRoot(square); ok {
			return root
		}
		return rootAbove(square, new(big.Rat).Mul(distance, rootGrain))
	}
	alpha, beta := along(v, w), along(u, v)
	alpha.Quo(alpha, cross)
	beta.Quo(beta, cross)
	move := func(u, v, w *big.Rat) *big.Rat {
		back := new(big.Rat).Sub(v, u)
		on := new(big.Rat).Sub(w, v)
		at := new(big.Rat).Sub(v, back.Mul(back, alpha))
		return at.Add(at, on.Mul(on, beta))
	}
	return rational{move(u.x, v.x, w.x), move(u.y, v.y, w.y)}
}

// drillable reports whether a hole of that radius lies in the waste: within the
// bounding rectangle, in the right hole of s or outside its outline, and nowhere
// past an edge.
func (s Shape) drillable(number int, at Point, radius fraction.Length) bool {
	_, hi := s.Bounds()
	if at.X.Less(radius) || at.Y.Less(radius) || hi.X.Sub(at.X).Less(radius) || hi.Y.Sub(at.Y).Less(radius) {
		return false
	}
	if number < 0 && place(s.Outline, at) >= 0 || number >= 0 && place(s.Holes[number], at) <= 0 {
		return false
	}
	limit := squared(radius.Rat())
	for _, ring := range s.rings {
		for i, b := range ring {
			a := ring[before(i, len(ring))]
			if farApart(a, b, at, radius) {
				continue
			}
			if _, d := nearestOnEdge(a.rational(), b.rational(), at.rational()); d.Cmp(limit) < 0 {
				return false
			}
		}
	}
	return true
}

// farApart reports whether an upright square of that half width round p misses
// the bounds of the edge ab: a quick no.
func farApart(a, b, p Point, reach fraction.Length) bool {
	out := func(a, b, p fraction.Length) bool {
		return p.Add(reach).Less(fraction.Min(a, b)) || fraction.Max(a, b).Less(p.Sub(reach))
	}
	return out(a.X, b.X, p.X) || out(a.Y, b.Y, p.Y)
}
