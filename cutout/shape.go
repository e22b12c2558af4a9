package cutout

import (
	"slices"

	"example.com/groovewright/fraction"
)

// Point is a place on a flat face: X to the right, Y up, both in inches.
type Point struct {
	X, Y fraction.Length
}

// Plus returns p moved by dx to the right and dy up.
func (p Point) Plus(dx, dy fraction.Length) Point {
	return Point{p.X.Add(dx), p.Y.Add(dy)}
}

// lower orders points from the lowest up and, at one height, from the left.
func lower(p, q Point) int {
	if c := p.Y.Compare(q.Y); c != 0 {
		return c
	}
	return p.X.Compare(q.X)
}

// Shape is one connected part of a flat face: an outline with holes, whose
// edges are straight.
//
// The outline runs counterclockwise and each hole clockwise, so that the
// material always lies to the left of an edge; every ring starts at its lowest
// vertex, the leftmost of these, and holds no vertex in the middle of a straight
// line. Shapes made by this package keep that form. The edge belongs to the
// shape, but two shapes that share only an edge or a point do not overlap.
//
// The zero Shape is empty, and every method works on it. A Shape is a value that
// nobody changes: results may share the rings of the shape they came from.
type Shape struct {
	Outline []Point
	Holes   [][]Point
}

// Rectangle returns the outline of an upright rectangle, counterclockwise from
// its lower left corner. Width and height are expected above zero.
func Rectangle(left, bottom, width, height fraction.Length) []Point {
	right, top := left.Add(width), bottom.Add(height)
	return []Point{{left, bottom}, {right, bottom}, {right, top}, {left, top}}
}

// IsEmpty reports whether s has no outline.
func (s Shape) IsEmpty() bool { return len(s.Outline) == 0 }

// rings yields the outline as number -1, then the holes from 0 up.
func (s Shape) rings(yield func(int, []Point) bool) {
	if len(s.Outline) == 0 || !yield(-1, s.Outline) {
		return
	}
	for i, hole := range s.Holes {
		if !yield(i, hole) {
			return
		}
	}
}

// vertices returns the number of corners of all rings together.
func (s Shape) vertices() int {
	n := len(s.Outline)
	for _, hole := range s.Holes {
		n += len(hole)
	}
	return n
}

// Area returns the exact area of the outline less that of the holes.
func (s Shape) Area() fraction.Area {
	var sum fraction.Area
	for _, ring := range s.rings {
		sum = sum.Add(signedArea(ring))
	}
	return sum
}

// Bounds returns the lower left and the upper right corner of the smallest
// upright rectangle round s; both are the origin when s is empty.
func (s Shape) Bounds() (lo, hi Point) { return bounds(s.Outline) }

func bounds(ring []Point) (lo, hi Point) {
	if len(ring) == 0 {
		return Point{}, Point{}
	}
	lo, hi = ring[0], ring[0]
	for _, p := range ring[1:] {
		switch {
		case p.X.Less(lo.X):
			lo.X = p.X
		case hi.X.Less(p.X):
			hi.X = p.X
		}
		switch {
		case p.Y.Less(lo.Y):
			lo.Y = p.Y
		case hi.Y.Less(p.Y):
			hi.Y = p.Y
		}
	}
	return lo, hi
}

// Move returns s moved by dx to the right and dy up.
func (s Shape) Move(dx, dy fraction.Length) Shape {
	if s.IsEmpty() {
		return Shape{}
	}
	moved := Shape{Outline: moveRing(s.Outline, dx, dy)}
	if len(s.Holes) > 0 {
		moved.Holes = make([][]Point, len(s.Holes))
		for i, hole := range s.Holes {
			moved.Holes[i] = moveRing(hole, dx, dy)
		}
	}
	return moved
}

func moveRing(ring []Point, dx, dy fraction.Length) []Point {
	moved := make([]Point, len(ring))
	for i, p := range ring {
		moved[i] = p.Plus(dx, dy)
	}
	return moved
}

// Mirror returns s as it is seen from behind: every x becomes axis - x. With
// the width of a piece as axis, a piece that stands at the origin stays there.
func (s Shape) Mirror(axis fraction.Length) Shape {
	if s.IsEmpty() {
		return Shape{}
	}
	mirrored := Shape{Outline: mirrorRing(s.Outline, axis)}
	if len(s.Holes) > 0 {
		mirrored.Holes = make([][]Point, len(s.Holes))
		for i, hole := range s.Holes {
			mirrored.Holes[i] = mirrorRing(hole, axis)
		}
	}
	return mirrored
}

// mirrorRing turns the ring's direction too, so that the material stays left.
func mirrorRing(ring []Point, axis fraction.Length) []Point {
	mirrored := make([]Point, len(ring))
	for i, p := range ring {
		mirrored[len(ring)-1-i] = Point{axis.Sub(p.X), p.Y}
	}
	return rotated(mirrored)
}

// Contains reports whether p lies in s, its edge included.
func (s Shape) Contains(p Point) bool {
	inside := false
	for _, ring := range s.rings {
		where := place(ring, p)
		if where == 0 {
			return true
		}
		if where > 0 {
			inside = !inside
		}
	}
	return inside
}

// place returns +1 for p inside the ring, 0 on its line and -1 outside. A ray
// from p to the right counts the edges that it crosses.
func place(ring []Point, p Point) int {
	inside := false
	for i, b := range ring {
		a := ring[before(i, len(ring))]
		if b == p {
			return 0
		}
		ca, cb := a.Y.Compare(p.Y), b.Y.Compare(p.Y)
		if ca*cb > 0 {
			continue
		}
		if ca == 0 && cb == 0 { // a level edge is never crossed
			if a.X.Compare(p.X)*b.X.Compare(p.X) < 0 {
				return 0
			}
			continue
		}
		t := turn(a, b, p)
		if t == 0 {
			return 0
		}
		// A vertex at the height of p counts as below the ray.
		if (ca > 0) != (cb > 0) && (t > 0) == (cb > 0) {
			inside = !inside
		}
	}
	if inside {
		return 1
	}
	return -1
}

// before and after step round a ring of n vertices.
func before(i, n int) int {
	if i == 0 {
		return n - 1
	}
	return i - 1
}

func after(i, n int) int {
	if i == n-1 {
		return 0
	}
	return i + 1
}

// rotated turns the ring so that it starts at its lowest vertex, the leftmost
// of these. It works in place.
func rotated(ring []Point) []Point {
	start := 0
	for i := range ring {
		if lower(ring[i], ring[start]) < 0 {
			start = i
		}
	}
	if start == 0 {
		return ring
	}
	slices.Reverse(ring[:start])
	slices.Reverse(ring[start:])
	slices.Reverse(ring)
	return ring
}

// straightened drops every vertex that stands twice in a row or in the middle
// of a straight line; a ring with no area left becomes nil. It works in place.
func straightened(ring []Point) []Point {
	if len(ring) < 3 {
		return nil
	}
	for dropped := true; dropped; {
		dropped = false
		for i := 0; i < len(ring); {
			n := len(ring)
			if n < 3 {
				return nil
			}
			if turn(ring[before(i, n)], ring[i], ring[after(i, n)]) != 0 {
				i++
				continue
			}
			ring = slices.Delete(ring, i, i+1)
			dropped = true
		}
	}
	return ring
}

// Upright is a vertical edge of a shape.
type Upright struct {
	X, Bottom, Top fraction.Length
	MaterialRight  bool // the shape lies to the right of the edge, not to the left
	Hole           int  // index of the hole whose side it is, -1 for the outline
}

// Uprights returns the vertical edges of s from left to right, at one x from
// the bottom up. A leaning edge is not among them.
func (s Shape) Uprights() []Upright {
	var found []Upright
	for hole, ring := range s.rings {
		for i, b := range ring {
			a := ring[before(i, len(ring))]
			if a.X != b.X {
				continue
			}
			down := b.Y.Less(a.Y)
			u := Upright{X: a.X, Bottom: a.Y, Top: b.Y, MaterialRight: down, Hole: hole}
			if down {
				u.Bottom, u.Top = b.Y, a.Y
			}
			found = append(found, u)
		}
	}
	slices.SortStableFunc(found, func(a, b Upright) int {
		if c := a.X.Compare(b.X); c != 0 {
			return c
		}
		return a.Bottom.Compare(b.Bottom)
	})
	return found
}
