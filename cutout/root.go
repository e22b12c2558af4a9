package cutout

import (
	"math/big"
	"slices"

	"example.com/groovewright/fraction"
)

// Distances between points are square roots. Nothing here takes a float: a root
// is exact where it is rational, and else enclosed between neighbouring multiples
// of a unit by the integer square root.

var (
	one = big.NewRat(1, 1)
	two = big.NewRat(2, 1)
)

// exactRoot returns the square root of r >= 0 if it is rational.
func exactRoot(r *big.Rat) (*big.Rat, bool) {
	num, den := new(big.Int).Sqrt(r.Num()), new(big.Int).Sqrt(r.Denom())
	square := func(root, of *big.Int) bool { return new(big.Int).Mul(root, root).Cmp(of) == 0 }
	if !square(num, r.Num()) || !square(den, r.Denom()) {
		return nil, false
	}
	return new(big.Rat).SetFrac(num, den), true
}

// rootBelow returns the greatest multiple of unit whose square does not exceed
// r >= 0. For whole k, k*k <= r/unit/unit holds just when k*k <= floor of it.
func rootBelow(r, unit *big.Rat) *big.Rat {
	q := new(big.Rat).Quo(r, new(big.Rat).Mul(unit, unit))
	k := new(big.Int).Sqrt(new(big.Int).Quo(q.Num(), q.Denom()))
	return new(big.Rat).Mul(new(big.Rat).SetInt(k), unit)
}

// rootAbove returns the least multiple of unit whose square is at least r >= 0.
func rootAbove(r, unit *big.Rat) *big.Rat {
	root := rootBelow(r, unit)
	if new(big.Rat).Mul(root, root).Cmp(r) < 0 {
		root.Add(root, unit)
	}
	return root
}

// rootNearest returns the multiple of unit nearest to the root of r >= 0, or the
// root itself where it is rational.
func rootNearest(r, unit *big.Rat) *big.Rat {
	if root, ok := exactRoot(r); ok {
		return root
	}
	root := rootBelow(r, unit)
	middle := new(big.Rat).Add(root, new(big.Rat).Quo(unit, two))
	if new(big.Rat).Mul(middle, middle).Cmp(r) < 0 {
		root.Add(root, unit)
	}
	return root
}

// nearestMultiple returns the multiple of unit nearest to r, the upper of two.
func nearestMultiple(r, unit *big.Rat) *big.Rat {
	q := new(big.Rat).Quo(r, unit)
	q.Add(q, big.NewRat(1, 2))
	k := new(big.Int).Div(q.Num(), q.Denom()) // Euclidean: towards minus infinity
	return new(big.Rat).Mul(new(big.Rat).SetInt(k), unit)
}

func squared(r *big.Rat) *big.Rat { return new(big.Rat).Mul(r, r) }

// rational is a point whose coordinates need not fit a Length.
type rational struct{ x, y *big.Rat }

func (p Point) rational() rational { return rational{p.X.Rat(), p.Y.Rat()} }

// point turns r back into a point, if its coordinates fit.
func (r rational) point() (Point, bool) {
	x, okX := fit(r.x)
	y, okY := fit(r.y)
	return Point{x, y}, okX && okY
}

// sortByDistance sorts points by their distance from r; of equal ones the lower,
// then the left one comes first.
func sortByDistance(points []Point, r rational) {
	slices.SortFunc(points, func(p, q Point) int {
		if c := squaredDistance(p.rational(), r).Cmp(squaredDistance(q.rational(), r)); c != 0 {
			return c
		}
		return lower(p, q)
	})
}

// squaredDistance returns the square of the distance between two points.
func squaredDistance(p, q rational) *big.Rat {
	dx, dy := new(big.Rat).Sub(p.x, q.x), new(big.Rat).Sub(p.y, q.y)
	return dx.Add(squared(dx), squared(dy))
}

// nearestOnEdge returns the place on the edge ab nearest to p and the square of
// its distance.
func nearestOnEdge(a, b, p rational) (at rational, distance *big.Rat) {
	dx, dy := new(big.Rat).Sub(b.x, a.x), new(big.Rat).Sub(b.y, a.y)
	px, py := new(big.Rat).Sub(p.x, a.x), new(big.Rat).Sub(p.y, a.y)
	part := px.Add(px.Mul(px, dx), py.Mul(py, dy))
	if part.Sign() > 0 {
		part.Quo(part, squaredDistance(a, b))
	}
	switch {
	case part.Sign() <= 0:
		at = a
	case part.Cmp(one) >= 0:
		at = b
	default:
		at = rational{dx.Add(dx.Mul(dx, part), a.x), dy.Add(dy.Mul(dy, part), a.y)}
	}
	return at, squaredDistance(at, p)
}

// fitOr turns a big number into a length or raises the overflow that says so.
func fitOr(r *big.Rat) fraction.Length {
	l, ok := fit(r)
	if !ok {
		panic(&fraction.OverflowError{Operation: "as a length", Left: r.RatString()})
	}
	return l
}
