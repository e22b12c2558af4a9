package cutout

import (
	"errors"
	"fmt"
	"math/big"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
)

// What may be wrong with an arc.
var (
	ErrNoArc     = errors.New("chord and rise of an arc must be above zero, the rise at most half the chord")
	ErrTolerance = errors.New("the mark must be above zero, and the tolerance at least two marks and reached with some 2000 corners")
)

// Radius returns the radius of an arc, chord²/(8 rise) + rise/2. It fails with [ErrNoArc] if one is
// not above zero or the rise more than half the chord, and where the radius does not fit a Length.
func Radius(chord, rise fraction.Length) (r fraction.Length, err error) {
	defer fraction.Catch(&err)
	exact, err := radius(chord, rise)
	if err != nil {
		return r, err
	}
	return mustFit(exact), nil
}

func radius(chord, rise fraction.Length) (*big.Rat, error) {
	c, h := chord.Rat(), rise.Rat()
	if h.Sign() <= 0 || c.Cmp(new(big.Rat).Add(h, h)) < 0 {
		return nil, fmt.Errorf("%w: chord %v, rise %v", ErrNoArc, chord, rise)
	}
	r := c.Quo(c.Mul(c, c), h)
	r.Add(r.Quo(r, big.NewRat(4, 1)), h)
	return r.Quo(r, two), nil
}

// HeightOnCircle returns the height at x of the upper half of a circle as the lowest multiple of unit that is
// no more than snap below it. It fails with [ErrNoArc] where x is beyond the circle, with a *fault.Fault where
// unit is not above zero, and where the height does not fit a Length.
func HeightOnCircle(centre Point, radius, x, unit, snap fraction.Length) (y fraction.Length, err error) {
	defer fraction.Catch(&err)
	if unit.Sign() <= 0 {
		return fraction.Length{}, &fault.Fault{Path: fault.Of("Unit"), Value: unit.String(), Want: "more than 0"}
	}
	across := x.Sub(centre.X).Rat()
	square := new(big.Rat).Sub(squared(radius.Rat()), squared(across))
	if square.Sign() < 0 || radius.Sign() < 0 {
		return fraction.Length{}, fmt.Errorf("%w: %v from the centre, radius %v", ErrNoArc, x.Sub(centre.X).Abs(), radius)
	}
	up, c := unit.Rat(), centre.Y.Rat()
	c.Sub(c, snap.Rat())
	low := multiple(new(big.Rat).Add(c, rootBelow(square, up)), up, false) // at most two units too low
	for {
		over := new(big.Rat).Sub(low, c)
		if over.Sign() >= 0 && squared(over).Cmp(square) >= 0 {
			return mustFit(low), nil
		}
		low.Add(low, up)
	}
}

// Arc returns the arc over a level chord as a polyline, from the chord's left end, its springing,
// over the top to the right end. Both ends are exact, and every corner between lies on a mark. The
// polyline is nowhere below the true arc, so that a cutout is nowhere too tight for what stands in
// it, and its corners are no further than tolerance, at least two marks, from it, measured towards
// its centre. It has about as few corners as even steps allow. Arc fails with [ErrNoArc] as
// [Radius] does, with [ErrTolerance], and where a corner does not fit a Length.
//
// The corners are where the tangents at rational points of the circle meet, rounded away from the
// centre. The point at an angle φ from the top has the coordinates r·2t/(1+t²) and r·(1-t²)/(1+t²)
// with t = tan φ/2, rational if t is. At the springing t is the rise divided by half the chord.
func Arc(springing Point, chord, rise, tolerance, mark fraction.Length) (line []Point, err error) {
	defer fraction.Catch(&err)
	r, err := radius(chord, rise)
	if err != nil {
		return nil, err
	}
	bad := fmt.Errorf("%w: tolerance %v, mark %v", ErrTolerance, tolerance, mark)
	if mark.Sign() <= 0 || tolerance.Less(mark.Mul(2)) {
		return nil, bad
	}
	end := springing.plus(chord, fraction.Length{})
	a := arc{mark: mark.Rat(), radius: r, greatest: squared(new(big.Rat).Add(r, tolerance.Rat())),
		left: springing.rational(), right: end.rational()}
	a.steepest = rise.Rat()
	a.steepest.Quo(a.steepest.Mul(a.steepest, two), chord.Rat())
	a.centre = halfWay(a.left, a.right)
	a.centre.y.Sub(a.centre.y.Add(a.centre.y, rise.Rat()), r)
	corners := a.fewest()
	if corners == nil {
		return nil, bad
	}
	line = append(line, springing)
	for _, c := range corners {
		if p := c.mustPoint(); p != line[len(line)-1] {
			line = append(line, p)
		}
	}
	return append(line, end), nil
}

// fewest returns the corners for the fewest steps that keep to the tolerance: steps are doubled
// until they do, and the last doubling is halved back.
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

// arc is the work on one arc.
type arc struct {
	centre      rational
	radius      *big.Rat
	greatest    *big.Rat // square of the greatest distance of a corner from the centre
	left, right rational // the springings
	steepest    *big.Rat // tan φ/2 at the springing
	mark        *big.Rat
}

// onCircle returns the point of the circle where tan φ/2 is t, from its centre.
func (a *arc) onCircle(t *big.Rat) rational {
	square := squared(t)
	p := rational{new(big.Rat).Add(t, t), new(big.Rat).Sub(one, square)}
	return p.times(square.Quo(a.radius, square.Add(square, one)))
}

// corners returns the corners between the springings, moved to the mark, for steps beside the top.
// A corner moves away from the centre in both coordinates, as does the normal of the tangent that
// it lies on, since the top is a point of contact: it stays beyond. None goes past the springing.
func (a *arc) corners(steps int64) []rational {
	var corners []rational
	square := squared(a.radius)
	last := a.onCircle(new(big.Rat).Neg(a.steepest))
	for j := 1 - steps; j <= steps; j++ {
		next := a.onCircle(new(big.Rat).Mul(a.steepest, big.NewRat(j, steps)))
		product := last.dot(next) // the tangents at both meet at their sum by r²/(r² + product)
		c := last.plus(next).times(product.Quo(square, product.Add(product, square)))
		side := c.x.Sign()
		c = c.plus(a.centre)
		if side != 0 {
			c.x = multiple(c.x, a.mark, side > 0)
		}
		if c.x.Cmp(a.left.x) < 0 {
			c.x = a.left.x
		} else if c.x.Cmp(a.right.x) > 0 {
			c.x = a.right.x
		}
		c.y = multiple(c.y, a.mark, true)
		corners, last = append(corners, c), next
	}
	return corners
}

// close reports whether the polyline through the corners keeps to its side of the arc, no edge
// nearer to the centre than the circle, and to the tolerance, no corner farther beyond it.
func (a *arc) close(corners []rational) bool {
	last := a.left
	for _, c := range append(corners, a.right) {
		_, distance := nearestOnEdge(last, c, a.centre)
		if squaredDistance(c, a.centre).Cmp(a.greatest) > 0 || c.x.Cmp(last.x) < 0 || distance.Cmp(squared(a.radius)) < 0 {
			return false
		}
		last = c
	}
	return true
}
