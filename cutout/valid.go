package cutout

import (
	"errors"
	"fmt"
	"slices"

	"example.com/groovewright/fraction/fault"
)

// What may be wrong with the rings of a shape, and with the outline of a cut.
var (
	ErrTooFew   = errors.New("fewer than three corners that are not in one line")
	ErrCrossing = errors.New("edges cross or touch")
	ErrOutside  = errors.New("hole is not wholly inside the outline")
	ErrOverlap  = errors.New("holes overlap or touch")
)

// NewShape checks an outline and holes and returns them as a Shape: directions set right, corners
// within a straight line dropped, each ring from its lowest corner on.
//
// Each ring must have three corners and an area, and no two of its edges may cross or touch but
// neighbours at their corner. Holes must lie wholly inside the outline and apart; for an opening at
// an edge there is [Shape.Minus]. The first fault of each ring is reported, all joined, each a
// *fault.Fault with the path of the corner as given, such as Outline[3] or Holes[1][0], and one of
// the errors above as its cause. The time grows as the square of the number of corners.
func NewShape(outline []Point, holes ...[]Point) (Shape, error) {
	var s Shape
	var faults fault.List
	var err error
	s.outline, err = checkRing(-1, outline)
	faults.Join(err)
	for i := range holes {
		ring, err := checkRing(i, holes[i])
		if err == nil {
			err = checkHole(i, ring, holes, s.outline)
			slices.Reverse(ring)
			s.holes = append(s.holes, rotated(ring))
		}
		faults.Join(err)
	}
	if err := faults.Err(); err != nil {
		return Shape{}, err
	}
	slices.SortStableFunc(s.holes, compareRings)
	return s, nil
}

// ringFault is a fault at a corner of the hole of that number, or of the outline for -1.
func ringFault(hole, corner int, given []Point, cause error) error {
	f := &fault.Fault{Path: fault.Of("Outline", corner), Cause: cause}
	if hole >= 0 {
		f.Path = fault.Of("Holes", hole, corner)
	}
	if corner < len(given) {
		f.Value = fmt.Sprintf("(%v, %v)", given[corner].X, given[corner].Y)
	}
	return f
}

// checkRing returns a clean counterclockwise copy of a ring, or its first fault.
func checkRing(hole int, given []Point) ([]Point, error) {
	ring := simplify(slices.Clone(given))
	if ring == nil {
		return nil, ringFault(hole, 0, given, ErrTooFew)
	}
	// Simplifying hides a way back along itself: check corners as given, but none twice in a row.
	var corners []Point
	var index []int
	for i, p := range given {
		if p != given[before(i, len(given))] {
			corners, index = append(corners, p), append(index, i)
		}
	}
	for i := range corners {
		for j := range i {
			if touchOddly(corners, i, j) {
				return nil, ringFault(hole, index[atFault(corners, i, j)], given, ErrCrossing)
			}
		}
	}
	if !counterclockwise(ring) {
		slices.Reverse(ring)
	}
	return rotated(ring), nil
}

// touchOddly reports whether edges i and j of the ring, which start at corners i and j, meet
// elsewhere than at the corner that neighbours share.
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
	if end != j && Orient(a, b, ring[end]) == 0 && between(a, b, ring[end]) {
		return end
	}
	return i
}

// foldsBack reports whether the way a-b-c turns right round at b.
func foldsBack(a, b, c Point) bool {
	if Orient(a, b, c) != 0 {
		return false
	}
	return a.X.Compare(b.X)*c.X.Compare(b.X) > 0 || a.Y.Compare(b.Y)*c.Y.Compare(b.Y) > 0
}

// edgesMeet reports whether the edges ab and cd have a point in common.
func edgesMeet(a, b, c, d Point) bool {
	t1, t2 := Orient(a, b, c), Orient(a, b, d)
	t3, t4 := Orient(c, d, a), Orient(c, d, b)
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

// checkHole compares a hole with the outline, nil where that is faulty, and the holes before it.
func checkHole(i int, ring []Point, given [][]Point, outline []Point) error {
	if outline != nil {
		if corner, ok := apart(given[i], outline); !ok || locate(outline, ring[0]) < 0 {
			return ringFault(i, corner, given[i], ErrOutside)
		}
	}
	for _, other := range given[:i] {
		if len(other) < 3 {
			continue
		}
		if corner, ok := apart(given[i], other); !ok || locate(other, ring[0]) > 0 || locate(ring, other[0]) > 0 {
			return ringFault(i, corner, given[i], ErrOverlap)
		}
	}
	return nil
}

// apart reports whether no edge of ring a meets one of ring b, or which corner of a starts one.
func apart(a, b []Point) (corner int, ok bool) {
	for i, p := range a {
		for c, d := range edges(b) {
			if edgesMeet(p, a[after(i, len(a))], c, d) {
				return i, false
			}
		}
	}
	return 0, true
}
