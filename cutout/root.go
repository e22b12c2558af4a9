package cutout

import (
	"math/big"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
)

// Distances between points are square roots. Nothing here takes a float: a root is exact where it
// is rational, else enclosed between neighbouring multiples of a unit by the integer square root.

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

// rootBelow returns the greatest multiple of unit whose square does not exceed r >= 0. For whole k,
// k*k <= r/unit/unit holds just when k*k <= floor of it.
func rootBelow(r, unit *big.Rat) *big.Rat {
	q := new(big.Rat).Quo(r, squared(unit))
	k := new(big.Int).Sqrt(new(big.Int).Quo(q.Num(), q.Denom()))
	return new(big.Rat).Mul(new(big.Rat).SetInt(k), unit)
}

// rootAbove returns the least multiple of unit whose square is at least r >= 0.
func rootAbove(r, unit *big.Rat) *big.Rat {
	root := rootBelow(r, unit)
	if squared(root).Cmp(r) < 0 {
		root.Add(root, unit)
	}
	return root
}

// Distance returns the distance between two points: exactly where it is rational, else rounded up
// to a multiple of unit, which is above 0. It fails where the result does not fit a Length.
func Distance(p, q Point, unit fraction.Length) (distance fraction.Length, err error) {
	defer fraction.Catch(&err)
	square := squaredDistance(p.rational(), q.rational())
	if root, ok := exactRoot(square); ok {
		return mustFit(root), nil
	}
	if unit.Sign() <= 0 {
		return distance, &fault.Fault{Path: fault.Of("Unit"), Value: unit.String(), Want: "more than 0"}
	}
	return mustFit(rootAbove(square, unit.Rat())), nil
}

// multiple rounds r to a multiple of unit > 0, up or down.
func multiple(r, unit *big.Rat, up bool) *big.Rat {
	q := new(big.Rat).Quo(r, unit)
	k, rest := new(big.Int).DivMod(q.Num(), q.Denom(), new(big.Int)) // Euclidean: towards minus infinity
	if up && rest.Sign() != 0 {
		k.Add(k, big.NewInt(1))
	}
	return q.Mul(q.SetInt(k), unit)
}

// nearestMultiple returns the multiple of unit > 0 nearest to r, the upper of two.
func nearestMultiple(r, unit *big.Rat) *big.Rat {
	half := new(big.Rat).Quo(unit, two)
	return multiple(half.Add(half, r), unit, false)
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

// mustPoint turns r back into a point or raises the overflow that says so.
func (r rational) mustPoint() Point { return Point{mustFit(r.x), mustFit(r.y)} }

func (r rational) plus(o rational) rational {
	return rational{new(big.Rat).Add(r.x, o.x), new(big.Rat).Add(r.y, o.y)}
}

func (r rational) minus(o rational) rational {
	return rational{new(big.Rat).Sub(r.x, o.x), new(big.Rat).Sub(r.y, o.y)}
}

func (r rational) times(by *big.Rat) rational {
	return rational{new(big.Rat).Mul(r.x, by), new(big.Rat).Mul(r.y, by)}
}

// dot and cross are the products of two vectors.
func (r rational) dot(o rational) *big.Rat {
	return new(big.Rat).Add(new(big.Rat).Mul(r.x, o.x), new(big.Rat).Mul(r.y, o.y))
}

func (r rational) cross(o rational) *big.Rat { return r.dot(rational{o.y, new(big.Rat).Neg(o.x)}) }

// reach returns how far a vector goes across and up.
func (r rational) reach() *big.Rat {
	across, up := new(big.Rat).Abs(r.x), new(big.Rat).Abs(r.y)
	return up.Add(up, across)
}

// squaredDistance returns the square of the distance between two points.
func squaredDistance(p, q rational) *big.Rat {
	d := p.minus(q)
	return d.dot(d)
}

// nearestOnEdge returns the place on the edge ab nearest to p and the square of its distance.
func nearestOnEdge(a, b, p rational) (at rational, distance *big.Rat) {
	along := b.minus(a)
	part := along.dot(p.minus(a))
	switch length := along.dot(along); {
	case part.Sign() <= 0:
		at = a
	case part.Cmp(length) >= 0:
		at = b
	default:
		at = a.plus(along.times(part.Quo(part, length)))
	}
	return at, squaredDistance(at, p)
}
