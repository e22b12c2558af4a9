package cutout

import (
	"math/big"
	"slices"

	"example.com/groovewright/fraction"
)

// The few sums below are done on lengths first. Their steps multiply denominators and may leave the
// range of a Length although the result lies well inside it; then big numbers do the sum again. So
// answers of yes or no never overflow, and a new point does only if its coordinate fits no Length.

// widen is deferred round a sum on lengths. After an overflow it calls again, which does the sum in
// big numbers and reports whether the result fits; else the overflow goes on to the caller.
func widen(again func() bool) {
	fault := recover()
	if fault == nil {
		return
	}
	if _, ok := fault.(*fraction.OverflowError); !ok || !again() {
		panic(fault)
	}
}

// fit turns a big number back into a length, if it is one.
func fit(r *big.Rat) (fraction.Length, bool) {
	// The least int64 is none of a Length's numerators.
	if !r.Num().IsInt64() || !r.Denom().IsInt64() || r.Num().Int64() == -1<<63 {
		return fraction.Length{}, false
	}
	return fraction.Of(r.Num().Int64(), r.Denom().Int64()), true
}

// mustFit turns a big number into a length or raises the overflow that says so.
func mustFit(r *big.Rat) fraction.Length {
	l, ok := fit(r)
	if !ok {
		panic(&fraction.OverflowError{Operation: "as a length", Left: r.RatString()})
	}
	return l
}

func difference(a, b fraction.Length) *big.Rat { return new(big.Rat).Sub(a.Rat(), b.Rat()) }

// flip swaps the axes.
func flip(p Point) Point { return Point{p.Y, p.X} }

// Rectangle returns the outline of an upright rectangle, counterclockwise from its lower left
// corner. It is nil, and no outline, where a corner does not fit a Length.
func Rectangle(left, bottom, width, height fraction.Length) (outline []Point) {
	var err error
	defer fraction.Catch(&err)
	right, top := left.Add(width), bottom.Add(height)
	return []Point{{left, bottom}, {right, bottom}, {right, top}, {left, top}}
}

// Bounds returns the lower left and the upper right corner of the smallest upright rectangle round
// the points; both are the origin where there are none.
func Bounds(points []Point) (lo, hi Point) {
	for i, p := range points {
		if i == 0 {
			lo, hi = p, p
		}
		lo = Point{fraction.Min(lo.X, p.X), fraction.Min(lo.Y, p.Y)}
		hi = Point{fraction.Max(hi.X, p.X), fraction.Max(hi.Y, p.Y)}
	}
	return lo, hi
}

// BoundsOverlap reports whether the bounds of two outlines share more than an edge.
func BoundsOverlap(a, b []Point) bool {
	lo, hi := Bounds(a)
	from, to := Bounds(b)
	return from.X.Less(hi.X) && lo.X.Less(to.X) && from.Y.Less(hi.Y) && lo.Y.Less(to.Y)
}

// HeightAt returns the height at x of the line through a and b; where that is upright, the height
// of a. It fails where the height does not fit a Length.
func HeightAt(a, b Point, x fraction.Length) (y fraction.Length, err error) {
	defer fraction.Catch(&err)
	return heightAt(a, b, x), nil
}

func heightAt(a, b Point, x fraction.Length) (y fraction.Length) {
	switch {
	case a.Y == b.Y, x == a.X, a.X == b.X:
		return a.Y
	case x == b.X:
		return b.Y
	}
	defer widen(func() (ok bool) {
		r := new(big.Rat).Mul(difference(b.Y, a.Y), difference(x, a.X))
		r.Quo(r, difference(b.X, a.X))
		y, ok = fit(r.Add(r, a.Y.Rat()))
		return ok
	})
	return a.Y.Add(b.Y.Sub(a.Y).Times(x.Sub(a.X)).Over(b.X.Sub(a.X)))
}

// Orient returns +1 if c lies to the left of the directed line a->b, -1 to the right and 0 on it.
func Orient(a, b, c Point) (side int) {
	// Upright and level lines, where one product is zero, are most of the work: signs are enough.
	dx, dy := b.X.Compare(a.X), b.Y.Compare(a.Y)
	ex, ey := c.X.Compare(a.X), c.Y.Compare(a.Y)
	if l, r := dx*ey, dy*ex; l > r {
		return 1
	} else if l < r {
		return -1
	} else if l == 0 { // both are zero: c is a or on such a line
		return 0
	}
	defer widen(func() bool {
		l := new(big.Rat).Mul(difference(b.X, a.X), difference(c.Y, a.Y))
		r := new(big.Rat).Mul(difference(b.Y, a.Y), difference(c.X, a.X))
		side = l.Cmp(r)
		return true
	})
	l := b.X.Sub(a.X).Times(c.Y.Sub(a.Y))
	r := b.Y.Sub(a.Y).Times(c.X.Sub(a.X))
	return l.Compare(r)
}

// orientAt is the orientation of the vertices before, at and after i of a ring.
func orientAt(ring []Point, i int) int {
	return Orient(ring[before(i, len(ring))], ring[i], ring[after(i, len(ring))])
}

// crossingX returns the x at which the lines ab and cd, neither upright nor parallel, meet.
func crossingX(a, b, c, d Point) fraction.Length {
	switch { // a level line is met by the other's own slope
	case a.Y == b.Y:
		return heightAt(flip(c), flip(d), a.Y)
	case c.Y == d.Y:
		return heightAt(flip(a), flip(b), c.Y)
	}
	from, along, other := a.rational(), b.rational().minus(a.rational()), d.rational().minus(c.rational())
	part := c.rational().minus(from).cross(other)
	return mustFit(from.plus(along.times(part.Quo(part, along.cross(other)))).x)
}

// signedArea is the area of a ring, above zero for a counterclockwise one: the sum of the triangles
// between its first vertex and each edge.
func signedArea(ring []Point) *big.Rat {
	sum := new(big.Rat)
	for a, b := range edges(ring) {
		o := ring[0].rational()
		sum.Add(sum, a.rational().minus(o).cross(b.rational().minus(o)))
	}
	return sum.Quo(sum, two)
}

// Grow returns polygons that together cover the outline and all that is within gap of it, measured
// across and up, so a little more at a sloped side. A convex outline grows to one polygon. It fails
// where a corner does not fit a Length; a gap of zero or below adds nothing.
func Grow(outline []Point, gap fraction.Length) (grown [][]Point, err error) {
	defer fraction.Catch(&err)
	if gap.Sign() <= 0 {
		return [][]Point{outline}, nil
	}
	corners := func(points ...Point) []Point {
		var out []Point
		for _, p := range points {
			out = append(out, p.plus(gap.Neg(), gap.Neg()), p.plus(gap.Neg(), gap), p.plus(gap, gap.Neg()), p.plus(gap, gap))
		}
		return hull(out)
	}
	if convex(outline) {
		return [][]Point{corners(outline...)}, nil
	}
	grown = [][]Point{outline}
	for a, b := range edges(outline) {
		grown = append(grown, corners(a, b))
	}
	return grown, nil
}

// convex reports whether all turns of the outline go the same way.
func convex(outline []Point) bool {
	left, right := false, false
	for i := range outline {
		side := orientAt(outline, i)
		left, right = left || side > 0, right || side < 0
	}
	return left != right
}

// hull returns the convex hull of at least two different points, counterclockwise, by the monotone
// chain of A. M. Andrew, Information Processing Letters 9 (1979) 216-219.
func hull(points []Point) []Point {
	slices.SortStableFunc(points, func(a, b Point) int { return lower(flip(a), flip(b)) })
	half := func() []Point {
		var chain []Point
		for _, p := range points {
			for len(chain) > 1 && Orient(chain[len(chain)-2], chain[len(chain)-1], p) <= 0 {
				chain = chain[:len(chain)-1]
			}
			chain = append(chain, p)
		}
		return chain[:len(chain)-1]
	}
	lowerHalf := half()
	slices.Reverse(points)
	return append(lowerHalf, half()...)
}
