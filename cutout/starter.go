package cutout

import (
	"cmp"
	"iter"
	"math/big"
	"slices"

	"example.com/groovewright/fraction"
)

// Starter is a hole to drill inside the corner of a cutout, so that the jigsaw can start and turn
// there. It lies wholly in the waste and at most touches the line.
//
// There is one in every sharp inside corner, that is where the saw has to turn by more than about
// 27 degrees, 1 in 2; corners of a polyline that stands for a curve are not sharp. A hole without a
// sharp corner gets one starter, at its lowest corner.
//
// A centre is as near to its corner as the diameter allows, or at a mark close by; where the exact
// one does not fit, at one of 1/1024 in. It is at least half the diameter, checked on squares, from
// every edge of the shape and of the bounding rectangle, beyond which another piece may lie.
type Starter struct {
	Hole     int   // index of the hole in whose corner it lies, -1 for a notch
	Corner   Point // the corner on the face
	At, Back Point // its centre on the face and on the back
	Diameter fraction.Length
}

// startsAt reports whether corner i of a ring needs a starter hole.
func startsAt(number int, ring []Point, i int) bool {
	return sharpInside(ring, i) ||
		number >= 0 && i == 0 && orientAt(ring, i) < 0 && firstCorner(ring, sharpInside) < 0
}

// drill returns the starter hole in corner i of a ring of a shape at the origin, if one fits.
func (s Shape) drill(number int, ring []Point, i int, diameter, mark fraction.Length) (Starter, bool) {
	if diameter.Sign() <= 0 {
		return Starter{}, false
	}
	radius := diameter.Div(2)
	_, hi := s.Bounds()
	for at := range centres(ring, i, radius, mark) {
		// The denominator of an exact centre may be too long for its distances to fit a Length.
		if _, fits := hi.rational().minus(at.rational()).point(); fits && s.drillable(number, at, radius) {
			return Starter{number, ring[i], at, behind(at, hi.X), diameter}, true
		}
	}
	return Starter{}, false
}

// sharpInside reports whether the material has a sharp inside corner there.
func sharpInside(ring []Point, i int) bool { return orientAt(ring, i) < 0 && sharp(ring, i) }

// bend is the tangent of the greatest turn that a jigsaw makes without a starter hole: 1 in 2,
// about 27 degrees. Common practice, no source.
var bend = big.NewRat(1, 2)

// sharp reports whether the way along the ring turns at corner i by more than bend, to either side.
func sharp(ring []Point, i int) bool {
	u, v, w := ring[before(i, len(ring))].rational(), ring[i].rational(), ring[after(i, len(ring))].rational()
	in, out := v.minus(u), w.minus(v)
	dot, cross := in.dot(out), in.cross(out)
	return dot.Sign() <= 0 || cross.Abs(cross).Cmp(dot.Mul(dot, bend)) > 0
}

// centres yields where a starter hole for corner i may go: the place that just clears both edges,
// if no mark is given or it lies on one, then the marks round it, the nearest first.
func centres(ring []Point, i int, radius, mark fraction.Length) iter.Seq[Point] {
	return func(yield func(Point) bool) {
		u, v, w := ring[before(i, len(ring))], ring[i], ring[after(i, len(ring))]
		best := besideBoth(u.rational(), v.rational(), w.rational(), radius.Rat())
		if mark.Sign() <= 0 {
			if exact, ok := best.point(); ok && !yield(exact) {
				return
			}
			mark = fraction.Of(1, 1024)
		}
		near := rational{nearestMultiple(best.x, mark.Rat()), nearestMultiple(best.y, mark.Rat())}
		base, ok := near.point()
		if !ok {
			return
		}
		if squaredDistance(near, best).Sign() == 0 && !yield(base) {
			return // mostly it will do, and the distances of the others take time
		}
		marks := marksRound(base, mark, -2, 2)
		away := map[Point]*big.Rat{}
		for _, m := range marks {
			away[m] = squaredDistance(m.rational(), best)
		}
		slices.SortStableFunc(marks, func(p, q Point) int { return cmp.Or(away[p].Cmp(away[q]), lower(p, q)) })
		for _, m := range marks {
			if !yield(m) {
				return
			}
		}
	}
}

// rootGrain is the part of the distance to which besideBoth rounds a root up: finer than a drill.
var rootGrain = big.NewRat(1, 1<<20)

// besideBoth returns the point in the corner u-v-w, to the right of both edges, at the given
// distance from either line: v - α(v-u) + β(w-v). Where the length of an edge is irrational, the
// distance comes out a trifle too long, never too short.
func besideBoth(u, v, w rational, distance *big.Rat) rational {
	in, out := v.minus(u), w.minus(v)
	cross := in.cross(out)
	part := func(edge rational) *big.Rat { // distance times the length of the edge, over the cross product
		square := edge.dot(edge)
		square.Mul(square, squared(distance))
		root, ok := exactRoot(square)
		if !ok {
			root = rootAbove(square, new(big.Rat).Mul(distance, rootGrain))
		}
		return root.Quo(root, cross).Abs(root)
	}
	return v.minus(in.times(part(out))).plus(out.times(part(in)))
}

// drillable reports whether a hole of that radius lies in the waste: within the bounding rectangle,
// in the right hole of s or outside its outline, and nowhere past an edge.
func (s Shape) drillable(number int, at Point, radius fraction.Length) bool {
	_, hi := s.Bounds()
	if at.X.Less(radius) || at.Y.Less(radius) || hi.X.Sub(at.X).Less(radius) || hi.Y.Sub(at.Y).Less(radius) {
		return false
	}
	if number < 0 && locate(s.outline, at) >= 0 || number >= 0 && locate(s.holes[number], at) <= 0 {
		return false
	}
	limit := squared(radius.Rat())
	for a, b := range s.Edges() {
		if farApart(a, b, at, radius) {
			continue
		}
		if _, d := nearestOnEdge(a.rational(), b.rational(), at.rational()); d.Cmp(limit) < 0 {
			return false
		}
	}
	return true
}

// farApart quickly reports that a square of half width reach round p misses the bounds of ab.
func farApart(a, b, p Point, reach fraction.Length) bool {
	out := func(a, b, p fraction.Length) bool {
		return p.Add(reach).Less(fraction.Min(a, b)) || fraction.Max(a, b).Less(p.Sub(reach))
	}
	return out(a.X, b.X, p.X) || out(a.Y, b.Y, p.Y)
}
