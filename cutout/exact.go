package cutout

import (
	"math/big"

	"example.com/groovewright/fraction"
)

// The few sums below are done on lengths first. Their steps multiply
// denominators and may leave the range of a Length although the result lies
// well inside it; then the sum is done again in big numbers. Answers of yes or
// no therefore never overflow, and a new point does only if its own coordinate
// does not fit a Length.

// widen is deferred round a sum on lengths. After an overflow it calls again,
// which does the sum in big numbers and reports whether the result fits; where
// it does not the overflow goes on to the caller.
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
	if !r.Num().IsInt64() || !r.Denom().IsInt64() {
		return fraction.Length{}, false
	}
	return fraction.Of(r.Num().Int64(), r.Denom().Int64()), true
}

// fitArea turns twice an area into an area, if it is one.
func fitArea(twice *big.Rat) (fraction.Area, bool) {
	l, ok := fit(twice.Mul(twice, big.NewRat(1, 2)))
	return l.Times(fraction.Inches(1)), ok
}

func difference(a, b fraction.Length) *big.Rat {
	return new(big.Rat).Sub(a.Rat(), b.Rat())
}

// turn returns +1 if c lies to the left of the directed line a->b, -1 to the
// right and 0 on it.
func turn(a, b, c Point) (side int) {
	// Upright and level lines are most of the work and need no product.
	dx, dy := b.X.Compare(a.X), b.Y.Compare(a.Y)
	if dx == 0 || dy == 0 {
		return dx*c.Y.Compare(a.Y) - dy*c.X.Compare(a.X)
	}
	ex, ey := c.X.Compare(a.X), c.Y.Compare(a.Y)
	if l, r := dx*ey, dy*ex; l != r {
		if l > r {
			return 1
		}
		return -1
	} else if l == 0 { // both products are zero: c is a
		return 0
	}
	return slopedTurn(a, b, c)
}

func slopedTurn(a, b, c Point) (side int) {
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

// heightAt returns the height at x of the line through a and b, which is not
// upright.
func heightAt(a, b Point, x fraction.Length) (y fraction.Length) {
	switch {
	case a.Y == b.Y, x == a.X:
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

// crossingX returns the x at which the lines ab and cd, neither upright nor
// parallel, meet.
func crossingX(a, b, c, d Point) (x fraction.Length) {
	switch { // a level line is met by the other's own slope
	case a.Y == b.Y:
		return heightAt(flip(c), flip(d), a.Y)
	case c.Y == d.Y:
		return heightAt(flip(a), flip(b), c.Y)
	}
	defer widen(func() (ok bool) {
		mul := func(p, q *big.Rat) *big.Rat { return new(big.Rat).Mul(p, q) }
		abx, aby := difference(b.X, a.X), difference(b.Y, a.Y)
		cdx, cdy := difference(d.X, c.X), difference(d.Y, c.Y)
		over := mul(difference(c.X, a.X), cdy)
		over.Sub(over, mul(difference(c.Y, a.Y), cdx))
		under := mul(abx, cdy)
		under.Sub(under, mul(aby, cdx))
		r := over.Quo(over, under)
		r.Mul(r, abx)
		x, ok = fit(r.Add(r, a.X.Rat()))
		return ok
	})
	abx, aby := b.X.Sub(a.X), b.Y.Sub(a.Y)
	cdx, cdy := d.X.Sub(c.X), d.Y.Sub(c.Y)
	over := c.X.Sub(a.X).Times(cdy).Sub(c.Y.Sub(a.Y).Times(cdx))
	under := abx.Times(cdy).Sub(aby.Times(cdx))
	return a.X.Add(abx.Scale(over.OverArea(under)))
}

// flip swaps the axes.
func flip(p Point) Point { return Point{p.Y, p.X} }

// signedArea is the area of a ring, above zero for a counterclockwise one: the
// sum of the triangles between its first vertex and each edge.
func signedArea(ring []Point) (area fraction.Area) {
	if len(ring) < 3 {
		return area
	}
	defer widen(func() (ok bool) {
		sum := new(big.Rat)
		for i := 1; i+1 < len(ring); i++ {
			o, p, q := ring[0], ring[i], ring[i+1]
			sum.Add(sum, new(big.Rat).Mul(difference(p.X, o.X), difference(q.Y, o.Y)))
			sum.Sub(sum, new(big.Rat).Mul(difference(p.Y, o.Y), difference(q.X, o.X)))
		}
		area, ok = fitArea(sum)
		return ok
	})
	o := ring[0]
	for i := 1; i+1 < len(ring); i++ {
		p, q := ring[i], ring[i+1]
		area = area.Add(p.X.Sub(o.X).Times(q.Y.Sub(o.Y)))
		area = area.Sub(p.Y.Sub(o.Y).Times(q.X.Sub(o.X)))
	}
	return half(area)
}

func half(a fraction.Area) fraction.Area { return a.Over(fraction.Inches(2)).Times(fraction.Inches(1)) }
