package cutout

import (
	"errors"
	"fmt"
	"math/big"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/enum"
)

// Fit says on which side of a true arc a polyline lies.
type Fit uint8

const (
	// Outside the arc: never below it, corners up to the tolerance above. For an opening, so that the
	// cutout is nowhere too tight for what stands in it.
	Outside Fit = iota
	// Inside the arc: never above it, edges up to the tolerance below. For a piece with an arched top,
	// so that it is nowhere too big for its space.
	Inside
)

var fits = enum.Of[Fit]("outside", "inside")

// String returns the word of the fit.
func (f Fit) String() string { return fits.String(f) }

// MarshalText writes the word of the fit.
func (f Fit) MarshalText() ([]byte, error) { return fits.Marshal(f) }

// UnmarshalText reads the word of a fit.
func (f *Fit) UnmarshalText(text []byte) error { return fits.Unmarshal(text, f) }

// What may be wrong with an arc.
var (
	ErrNoArc     = errors.New("chord and rise of an arc must be above zero, the rise at most half the chord")
	ErrTolerance = errors.New("the tolerance must be above zero, at least two marks, and reached with some 2000 corners")
)

// Radius returns the radius of the arc with the given chord and rise, chord²/(8 rise) + rise/2. It
// fails with [ErrNoArc] if one is not above zero or the rise is more than half the chord, beyond a
// half circle, and where the radius does not fit a Length.
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
	if c.Sign() <= 0 || h.Sign() <= 0 || c.Cmp(new(big.Rat).Add(h, h)) < 0 {
		return nil, fmt.Errorf("%w: chord %v, rise %v", ErrNoArc, chord, rise)
	}
	r := c.Quo(c.Mul(c, c), h)
	r.Add(r.Quo(r, big.NewRat(4, 1)), h)
	return r.Quo(r, two), nil
}

// Arc returns the arc over a level chord as a polyline, from the chord's left end, its springing,
// over the top to the right end. Both ends are exact; the polyline lies wholly on the side that fit
// says, and nowhere further than tolerance from the true arc, measured towards its centre.
//
// With a mark above zero every corner between lies on a mark, rounded to the same side; the tolerance
// must then be at least two marks. With a mark of zero the corners are exact: rational points of the
// circle for Inside, and the points where the tangents at such points meet for Outside; their
// denominators grow long, so that a mark is better for shapes that are cut further. The polyline has
// about as few corners as even steps allow. It fails with [ErrNoArc] as [Radius] does, with
// [ErrTolerance], and where a corner does not fit a Length.
//
// The point at an angle φ from the top has the coordinates r·2t/(1+t²) and r·(1-t²)/(1+t²) with
// t = tan φ/2, rational if t is. At the springing t is the rise divided by half the chord.
func Arc(springing Point, chord, rise, tolerance, mark fraction.Length, fit Fit) (line []Point, err error) {
	defer fraction.Catch(&err)
	r, err := radius(chord, rise)
	if err != nil {
		return nil, err
	}
	bad := fmt.Errorf("%w: tolerance %v, mark %v", ErrTolerance, tolerance, mark)
	if tolerance.Sign() <= 0 || mark.Sign() < 0 || tolerance.Less(mark.Mul(2)) {
		return nil, bad
	}
	end := springing.plus(chord, fraction.Length{})
	a := arc{outside: fit == Outside, mark: mark.Rat(), tolerance: tolerance.Rat(), radius: r,
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

// fewest returns the corners for the fewest steps that keep to the tolerance: steps are doubled until
// they do, and the last doubling is halved back.
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
	outside         bool
	centre          rational
	radius          *big.Rat
	left, right     rational // the springings
	steepest        *big.Rat // tan φ/2 at the springing
	tolerance, mark *big.Rat
}

// onCircle returns the point of the circle where tan φ/2 is t, from its centre.
func (a *arc) onCircle(t *big.Rat) rational {
	square := squared(t)
	p := rational{new(big.Rat).Add(t, t), new(big.Rat).Sub(one, square)}
	return p.times(square.Quo(a.radius, square.Add(square, one)))
}

// corners returns the corners between the springings for the number of steps on either side of the
// top, moved to the mark.
//
// Rounding keeps the side. A corner inside moves towards the centre in both coordinates, which leaves
// it inside. A corner outside moves away from the centre in both; the tangent that it lies on has a
// normal that points away in both, as the top is always a point of contact, so that it stays beyond
// it. No corner goes below the springing or past it, as none was there before.
func (a *arc) corners(steps int64) []rational {
	contact := make([]rational, 0, 2*steps+1)
	for j := -steps; j <= steps; j++ {
		contact = append(contact, a.onCircle(new(big.Rat).Mul(a.steepest, big.NewRat(j, steps))))
	}
	corners := contact[1 : len(contact)-1]
	if a.outside {
		corners = nil
		for i := 1; i < len(contact); i++ {
			corners = append(corners, a.pole(contact[i-1], contact[i]))
		}
	}
	for i, c := range corners {
		side := c.x.Sign()
		c = c.plus(a.centre)
		if side != 0 {
			c.x = clamp(a.left.x, a.toMark(c.x, (side > 0) == a.outside), a.right.x)
		}
		if c.y = a.toMark(c.y, a.outside); c.y.Cmp(a.left.y) < 0 {
			c.y = a.left.y
		}
		corners[i] = c
	}
	return corners
}

// clamp returns x, or the bound that it lies beyond.
func clamp(low, x, high *big.Rat) *big.Rat {
	switch {
	case x.Cmp(low) < 0:
		return low
	case x.Cmp(high) > 0:
		return high
	}
	return x
}

// pole returns the point where the tangents at two points of the circle meet: their sum, drawn out by
// r²/(r² + p·q).
func (a *arc) pole(p, q rational) rational {
	square := squared(a.radius)
	return p.plus(q).times(new(big.Rat).Quo(square, new(big.Rat).Add(square, p.dot(q))))
}

// toMark rounds up or down to a multiple of the mark, if there is one.
func (a *arc) toMark(r *big.Rat, up bool) *big.Rat {
	if a.mark.Sign() == 0 {
		return r
	}
	return multiple(r, a.mark, up)
}

// close reports whether the polyline through the corners keeps to its side of the arc and to the
// tolerance. Outside, every edge passes the centre no nearer than the circle and every corner lies no
// further than the tolerance beyond it; inside, every corner lies within the circle and every edge
// passes the centre no nearer than the tolerance allows.
func (a *arc) close(corners []rational) bool {
	least, greatest := a.radius, new(big.Rat).Add(a.radius, a.tolerance)
	if !a.outside {
		least, greatest = new(big.Rat).Sub(a.radius, a.tolerance), a.radius
	}
	limit := squared(greatest)
	last := a.left
	for _, c := range append(corners, a.right) {
		if squaredDistance(c, a.centre).Cmp(limit) > 0 || c.x.Cmp(last.x) < 0 || !a.passes(last, c, least) {
			return false
		}
		last = c
	}
	return true
}

// passes reports whether the edge pq is nowhere nearer to the centre than least.
func (a *arc) passes(p, q rational, least *big.Rat) bool {
	if least.Sign() <= 0 {
		return true
	}
	_, distance := nearestOnEdge(p, q, a.centre)
	return distance.Cmp(squared(least)) >= 0
}
