package cutout

import (
	"errors"
	"fmt"
	"slices"

	"example.com/groovewright/fraction"
)

// What may be wrong with the rings of a shape.
var (
	ErrTooFew   = errors.New("fewer than three corners that are not in one line")
	ErrCrossing = errors.New("edges cross or touch")
	ErrOutside  = errors.New("hole is not wholly inside the outline")
	ErrOverlap  = errors.New("holes overlap or touch")
)

// RingError says which ring of a shape is wrong, and where. Its cause is one of
// the errors above or an overflow.
type RingError struct {
	Hole   int // index of the hole, -1 for the outline
	Corner int // index of a corner of that ring as it was given, at the fault
	At     Point
	Cause  error
}

// Error begins with the place in the caller's terms, such as "holes[1][3]".
func (e *RingError) Error() string {
	ring := "outline"
	if e.Hole >= 0 {
		ring = fmt.Sprintf("holes[%d]", e.Hole)
	}
	return fmt.Sprintf("%s[%d]: %v at (%v, %v)", ring, e.Corner, e.Cause, e.At.X, e.At.Y)
}

func (e *RingError) Unwrap() error { return e.Cause }

// NewShape checks an outline and holes and returns them as a Shape: directions
// set right, corners within a straight line dropped, each ring from its lowest
// corner on.
//
// Each ring must have three corners and an area, and no two of its edges may
// cross or touch but neighbours at their corner. Holes must lie wholly inside the
// outline and apart; an opening that touches an edge is cut out with
// [Shape.Minus]. The first fault of each ring is reported, all joined, each a
// *[RingError]. It takes time in proportion to the square of the number of corners.
func NewShape(outline []Point, holes ...[]Point) (s Shape, err error) {
	defer fraction.Catch(&err)
	var faults []error
	s.Outline = checkRing(-1, outline, &faults)
	for i, hole := range holes {
		if ring := checkRing(i, hole, &faults); ring != nil {
			checkHole(i, ring, holes, s, &faults)
			slices.Reverse(ring)
			s.Holes = append(s.Holes, rotated(ring))
		}
	}
	if len(faults) > 0 {
		return Shape{}, errors.Join(faults...)
	}
	slices.SortFunc(s.Holes, compareRings)
	return s, nil
}

// checkRing returns a clean counterclockwise copy of a ring, or nil and a fault.
func checkRing(hole int, given []Point, faults *[]error) []Point {
	fault := func(corner int, cause error) []Point {
		e := &RingError{Hole: hole, Corner: corner, Cause: cause}
		if corner < len(given) {
			e.At = given[corner]
		}
		*faults = append(*faults, e)
		return nil
	}
	ring := straightened(slices.Clone(given))
	if ring == nil {
		return fault(0, ErrTooFew)
	}
	// Straightening hides a way that goes back along itself, so the corners as
	// given are checked, less those that stand twice in a row.
	corners, index := distinct(given)
	for i := range corners {
		for j := range i {
			if touchOddly(corners, i, j) {
				return fault(index[atFault(corners, i, j)], ErrCrossing)
			}
		}
	}
	if !counterclockwise(ring) {
		slices.Reverse(ring)
	}
	return rotated(ring)
}

// distinct drops corners that stand twice in a row and tells where the others
// stood.
func distinct(given []Point) (corners []Point, index []int) {
	for i, p := range given {
		if p != given[before(i, len(given))] {
			corners, index = append(corners, p), append(index, i)
		}
	}
	return corners, index
}

// touchOddly reports whether edges i and j of the ring, which start at corners i
// and j, meet elsewhere than at the corner that neighbours share.
func touchOddly(ring []Point, i, j int) bool {
	n := len(ring)
	a, b, c, d := ring[i], ring[after(i, n)], ring[j], ring[after(j, n)]
	switch {
	case after(j, n) == i:
		return foldsBack(c, a, b)
	case after(i, n) == j:
		return foldsBack(a, b, d)
	}
	return edgesMeet(a, b, c, d)
}

// atFault returns the end of edge i that lies on edge j, or else its start.
func atFault(ring []Point, i, j int) int {
	end := after(i, len(ring))
	a, b := ring[j], ring[after(j, len(ring))]
	if end != j && turn(a, b, ring[end]) == 0 && between(a, b, ring[end]) {
		return end
	}
	return i
}

// foldsBack reports whether the way a-b-c turns right round at b.
func foldsBack(a, b, c Point) bool {
	if turn(a, b, c) != 0 {
		return false
	}
	return a.X.Compare(b.X)*c.X.Compare(b.X) > 0 || a.Y.Compare(b.Y)*c.Y.Compare(b.Y) > 0
}

// edgesMeet reports whether the edges ab and cd have a point in common.
func edgesMeet(a, b, c, d Point) bool {
	t1, t2 := turn(a, b, c), turn(a, b, d)
	t3, t4 := turn(c, d, a), turn(c, d, b)
	if t1*t2 < 0 && t3*t4 < 0 {
		return true
	}
	return t1 == 0 && between(a, b, c) || t2 == 0 && between(a, b, d) ||
		t3 == 0 && between(c, d, a) || t4 == 0 && between(c, d, b)
}

// between reports whether p, on the line ab, lies on the edge ab.
func between(a, b, p Point) bool {
	return a.X.Compare(p.X)*p.X.Compare(b.X) >= 0 && a.Y.Compare(p.Y)*p.Y.Compare(b.Y) >= 0
}

// checkHole compares a hole with the outline and with the holes before it.
func checkHole(i int, ring []Point, given [][]Point, s Shape, faults *[]error) {
	fault := func(corner int, cause error) {
		*faults = append(*faults, &RingError{i, corner, given[i][corner], cause})
	}
	if s.Outline != nil {
		if corner, ok := apart(given[i], s.Outline); !ok {
			fault(corner, ErrOutside)
			return
		} else if place(s.Outline, ring[0]) < 0 {
			fault(0, ErrOutside)
			return
		}
	}
	for j := range i {
		other := given[j]
		if len(other) < 3 {
			continue
		}
		if corner, ok := apart(given[i], other); !ok {
			fault(corner, ErrOverlap)
			return
		} else if place(other, ring[0]) > 0 || place(ring, other[0]) > 0 {
			fault(0, ErrOverlap)
			return
		}
	}
}

// apart reports whether no edge of ring a meets an edge of ring b, or else the
// corner of a at which such an edge starts.
func apart(a, b []Point) (corner int, ok bool) {
	for i, p := range a {
		for j, q := range b {
			if edgesMeet(p, a[after(i, len(a))], q, b[after(j, len(b))]) {
				return i, false
			}
		}
	}
	return 0, true
}
