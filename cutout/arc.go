package cutout

import (
	"errors"
	"fmt"
	"math/big"

	"example.com/groovewright/fraction"
)

// Fit tells on which side of a true arc a polyline lies.
type Fit int

const (
	// Outside the arc: never below it, corners up to the tolerance above. For an
	// opening, so that the cutout is nowhere too tight for what stands in it.
	Outside Fit = iota
	// Inside the arc: never above it, edges up to the tolerance below. For a
	// piece with an arched top, so that it is nowhere too big for its space.
	Inside
)

// What may be wrong with an arc.
var (
	ErrNoArc     = errors.New("chord and rise of an arc must be above zero, the rise at most half the chord")
	ErrTolerance = errors.New("the tolerance must be above zero, at least two marks, and reached with some 2000 corners")
)

// Radius returns the radius of the arc with the given chord and rise,
// chord²/(8 rise) + rise/2. It fails with [ErrNoArc] if one is not above zero or
// the rise is more than half the chord, beyond a half circle.
func Radius(chord, rise fraction.Length) (r fraction.Length, err error) {
	defer fraction.Catch(&err)
	if chord.Sign() <= 0 || rise.Sign() <= 0 || chord.Less(rise.Mul(2)) {
		return r, fmt.Errorf("%w: chord %v, rise %v", ErrNoArc, chord, rise)
	}
	return fitOr(radius(chord.Rat(), rise.Rat())), nil
}

func radius(chord, rise *big.Rat) *big.Rat {
	r := new(big.Rat).Quo(squared(chord), rise)
	r.Quo(r, big.NewRat(8, 1))
	return r.Add(r, new(big.Rat).Quo(rise, two))
}

// Arc returns the arc over a level chord as a polyline, from the chord's left
// end, its springing, over the top to the right end. Both ends are exact; the
// polyline lies wholly on the side that fit tells, and nowhere further than
// tolerance from the true arc, measured towards its centre.
//
// With a mark above zero every corner between lies on a mark, rounded to the
// same side; the tolerance must then be at least two marks. With a mark of zero
// the corners are exact: rational points of the circle for Inside, and the points
// where the tangents at such points meet for Outside; their denominators grow
// long, so that a mark is better for shapes that are cut further. The polyline has about as
// few corners as even steps allow.
//
// The point at an angle φ from the top has the coordinates r·2t/(1+t²) and
// r·(1-t²)/(1+t²) with t = tan φ/2, rational if t is. At the springing t is the
// rise divided by half the chord.
func Arc(springing Point, chord, rise, tolerance, mark fraction.Length, fit Fit) (line []Point, err error) {
	defer fraction.Catch(&err)
	if _, err := Radius(chord, rise); err != nil && errors.Is(err, ErrNoArc) {
		return nil, err
	}
	if tolerance.Sign() <= 0 || mark.Sign() < 0 || tolerance.Less(mark.Mul(2)) {
		return nil, fmt.Errorf("%w: tolerance %v, mark %v", ErrTolerance, tolerance, mark)
	}
	a := arc{fit: fit, mark: mark.Rat(), tolerance: tolerance.Rat(), radius: radius(chord.Rat(), rise.Rat())}
	a.steepest = new(big.Rat).Quo(new(big.Rat).Mul(two, rise.Rat()), chord.Rat())
	a.x = new(big.Rat).Add(springing.X.Rat(), new(big.Rat).Quo(chord.Rat(), two))
	a.y = new(big.Rat).Add(springing.Y.Rat(), rise.Rat())
	a.y.Sub(a.y, a.radius)
	a.left, a.right, a.floor = springing.X.Rat(), springing.X.Add(chord).Rat(), springing.Y.Rat()
	corners := a.fewest()
	if corners == nil {
		return nil, fmt.Errorf("%w: tolerance %v, mark %v", ErrTolerance, tolerance, mark)
	}
	line = append(line, springing)
	for _, c := range corners {
		if p := (Point{fitOr(c.x), fitOr(c.y)}); p != line[len(line)-1] {
			line = append(line, p)
		}
	}
	return append(line, springing.Plus(chord, fraction.Length{})), nil
}

// fewest returns the corners for the fewest steps that keep to the tolerance:
// steps are doubled until they do, and the last doubling is halved back.
func (a *arc) fewest() []rational {
	const most = 1000 // steps on either side of the top
	good := int64(1)
	for ; !a.close(a.corners(good)); good *= 2 {
		if good > most {
			return nil
		}
	}
	for bad := good / 2; bad+1 < good; {
		if middle := (bad + good) / 2; a.close(a.corners(middle)) {
			good = middle
		} else {
			bad = middle
		}
	}
	return a.corners(good)
}

// arc is the work on one arc, in coordinates of its own centre (x, y).
type arc struct {
	fit                Fit
	x, y, radius       *big.Rat
	left, right, floor *big.Rat // the springings
	steepest           *big.Rat // tan φ/2 at the springing
	tolerance, mark    *big.Rat
}

// onCircle returns the point of the circle where tan φ/2 is t, from its centre.
func (a *arc) onCircle(t *big.Rat) rational {
	square := squared(t)
	under := new(big.Rat).Add(one, square)
	x := new(big.Rat).Mul(two, t)
	y := new(big.Rat).Sub(one, square)
	return rational{x.Mul(x.Quo(x, under), a.radius), y.Mul(y.Quo(y, under), a.radius)}
}

// corners returns the corners between the springings for the number of steps on
// either side of the top, moved to the mark.
//
// Rounding keeps the side. A corner inside moves towards the centre in both
// coordinates, which leaves it inside. A corner outside moves away from the
// centre in both; the tangent that it lies on has a normal that points away in
// both, as the top is always a point of contact, so that it stays beyond it. No
// corner goes below the springing or past it, as none was there before.
func (a *arc) corners(steps int64) []rational {
	contact := make([]rational, 0, 2*steps+1)
	for j := -steps; j <= steps; j++ {
		contact = append(contact, a.onCircle(new(big.Rat).Mul(a.steepest, big.NewRat(j, steps))))
	}
	var corners []rational
	if a.fit == Inside {
		corners = contact[1 : len(contact)-1]
	} else {
		for i := 1; i < len(contact); i++ {
			corners = append(corners, a.pole(contact[i-1], contact[i]))
		}
	}
	for i, c := range corners {
		outward := a.fit == Outside
		right := c.x.Sign() > 0
		c.x, c.y = new(big.Rat).Add(c.x, a.x), new(big.Rat).Add(c.y, a.y)
		if c.x.Cmp(a.x) != 0 {
			c.x = greater(a.left, lesser(a.right, a.toMark(c.x, right == outward)))
		}
		c.y = greater(a.floor, a.toMark(c.y, outward))
		corners[i] = c
	}
	return corners
}

// pole returns the point where the tangents at two points of the circle meet:
// their sum, drawn out by r²/(r² + p·q).
func (a *arc) pole(p, q rational) rational {
	square := squared(a.radius)
	dot := new(big.Rat).Mul(p.x, q.x)
	dot.Add(dot, new(big.Rat).Mul(p.y, q.y))
	factor := square.Quo(square, dot.Add(dot, square))
	x, y := new(big.Rat).Add(p.x, q.x), new(big.Rat).Add(p.y, q.y)
	return rational{x.Mul(x, factor), y.Mul(y, factor)}
}

// toMark rounds up or down to a multiple of the mark, if there is one.
func (a *arc) toMark(r *big.Rat, up bool) *big.Rat {
	if a.mark.Sign() == 0 {
		return r
	}
	near := nearestMultiple(r, a.mark)
	switch c := near.Cmp(r); {
	case up && c < 0:
		near.Add(near, a.mark)
	case !up && c > 0:
		near.Sub(near, a.mark)
	}
	return near
}

func greater(p, q *big.Rat) *big.Rat {
	if p.Cmp(q) > 0 {
		return p
	}
	return q
}

func lesser(p, q *big.Rat) *big.Rat {
	if p.Cmp(q) < 0 {
		return p
	}
	return q
}

// close reports whether the polyline through the corners keeps to its side of
// the arc and to the tolerance. Outside, every edge passes the centre no nearer
// than the circle and every corner lies no further than the tolerance beyond it;
// inside, every corner lies within the circle and every edge passes the centre no
// nearer than the tolerance allows.
func (a *arc) close(corners []rational) bool {
	line := append([]rational{{a.left, a.floor}}, corners...)
	line = append(line, rational{a.right, a.floor})
	least, greatest := a.radius, new(big.Rat).Add(a.radius, a.tolerance)
	if a.fit == Inside {
		least, greatest = new(big.Rat).Sub(a.radius, a.tolerance), a.radius
	}
	for i, c := range line {
		if a.fromCentre(c).Cmp(squared(greatest)) > 0 {
			return false
		}
		if i > 0 && (c.x.Cmp(line[i-1].x) < 0 || !a.passes(line[i-1], c, least)) {
			return false
		}
	}
	return true
}

func (a *arc) fromCentre(p rational) *big.Rat {
	return squaredDistance(p, rational{a.x, a.y})
}

// passes reports whether the edge pq is nowhere nearer to the centre than least.
func (a *arc) passes(p, q rational, least *big.Rat) bool {
	if least.Sign() <= 0 {
		return true
	}
	_, distance := nearestOnEdge(p, q, rational{a.x, a.y})
	return distance.Cmp(squared(least)) >= 0
}
