package cutout

import (
	"encoding/json"
	"iter"
	"math/big"
	"slices"
	"sort"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
)

// Point is a place on a flat face: X to the right, Y up, both in inches.
type Point struct{ X, Y fraction.Length }

// MarshalJSON writes the point as [x, y].
func (p Point) MarshalJSON() ([]byte, error) { return json.Marshal([2]fraction.Length{p.X, p.Y}) }

// UnmarshalJSON reads what MarshalJSON writes.
func (p *Point) UnmarshalJSON(data []byte) error {
	var xy []fraction.Length
	if err := json.Unmarshal(data, &xy); err != nil {
		return err
	}
	if len(xy) != 2 {
		return &fault.Fault{Value: string(data), Want: "a point [x, y]"}
	}
	*p = Point{xy[0], xy[1]}
	return nil
}

// plus returns p moved by dx to the right and dy up.
func (p Point) plus(dx, dy fraction.Length) Point { return Point{p.X.Add(dx), p.Y.Add(dy)} }

// lower orders points from the lowest up and, at one height, from the left.
func lower(p, q Point) int {
	if c := p.Y.Compare(q.Y); c != 0 {
		return c
	}
	return p.X.Compare(q.X)
}

// Shape is one connected part of a flat face: an outline with holes, all edges straight.
//
// The outline runs counterclockwise and each hole clockwise, so that the material always lies to
// the left of an edge; every ring starts at its lowest vertex, the leftmost of these, and has no
// vertex in the middle of a straight line. The edge belongs to the shape, but two shapes that share
// only an edge or a point do not overlap.
//
// A Shape is immutable, and only [NewShape] and the methods make one, so that each is valid. The
// zero Shape is empty, and every method works on it. Shapes are compared with [Shape.Equal].
type Shape struct {
	outline []Point
	holes   [][]Point
}

// Outline returns the vertices of the outline, none where s is empty.
func (s Shape) Outline() []Point { return slices.Clone(s.outline) }

// Holes returns the vertices of each hole.
func (s Shape) Holes() [][]Point {
	holes := slices.Clone(s.holes)
	for i, hole := range holes {
		holes[i] = slices.Clone(hole)
	}
	return holes
}

// Edges yields each edge of the outline and the holes, with the material to its left.
func (s Shape) Edges() iter.Seq2[Point, Point] {
	return func(yield func(_, _ Point) bool) {
		for _, ring := range s.rings {
			for a, b := range edges(ring) {
				if !yield(a, b) {
					return
				}
			}
		}
	}
}

// edges yields each edge of a ring from its first vertex on.
func edges(ring []Point) iter.Seq2[Point, Point] {
	return func(yield func(_, _ Point) bool) {
		for i, a := range ring {
			if !yield(a, ring[after(i, len(ring))]) {
				return
			}
		}
	}
}

// IsEmpty reports whether s has no outline.
func (s Shape) IsEmpty() bool { return len(s.outline) == 0 }

// Equal reports whether s and t have the same vertices.
func (s Shape) Equal(t Shape) bool {
	return slices.Equal(s.outline, t.outline) && slices.EqualFunc(s.holes, t.holes, slices.Equal)
}

// rings yields the outline as number -1, then the holes from 0 up.
func (s Shape) rings(yield func(int, []Point) bool) {
	if !yield(-1, s.outline) {
		return
	}
	for i, hole := range s.holes {
		if !yield(i, hole) {
			return
		}
	}
}

// ring returns the hole of that number, or the outline for -1.
func (s Shape) ring(number int) []Point {
	if number < 0 {
		return s.outline
	}
	return s.holes[number]
}

// setRing puts another ring in the place of one.
func (s *Shape) setRing(number int, ring []Point) {
	if number < 0 {
		s.outline = ring
	} else {
		s.holes[number] = ring
	}
}

// rings is the JSON form of a shape.
type rings struct {
	Outline []Point   `json:"outline"`
	Holes   [][]Point `json:"holes,omitempty"`
}

// MarshalJSON writes the vertices: {"outline": [["0", "0"], …], "holes": […]}.
func (s Shape) MarshalJSON() ([]byte, error) { return json.Marshal(rings{s.outline, s.holes}) }

// UnmarshalJSON reads what MarshalJSON writes, by [NewShape]: rings in either direction, and an
// error for rings that are no shape. No outline and no holes are the empty shape.
func (s *Shape) UnmarshalJSON(data []byte) error {
	var r rings
	if err := json.Unmarshal(data, &r); err != nil {
		return err
	}
	if r.Outline == nil && r.Holes == nil {
		*s = Shape{}
		return nil
	}
	made, err := NewShape(r.Outline, r.Holes...)
	if err == nil {
		*s = made
	}
	return err
}

// Area returns the exact area, the outline's less the holes', and fails where it fits no Area.
func (s Shape) Area() (area fraction.Area, err error) {
	defer fraction.Catch(&err)
	sum := new(big.Rat)
	for _, ring := range s.rings {
		sum.Add(sum, signedArea(ring))
	}
	return mustFit(sum).Times(fraction.Inches(1)), nil
}

// Bounds returns the lower left and the upper right corner of the smallest upright rectangle round
// s; both are the origin where s is empty.
func (s Shape) Bounds() (lo, hi Point) { return Bounds(s.outline) }

// Move returns s moved by dx to the right and dy up. It fails where a coordinate fits no Length.
func (s Shape) Move(dx, dy fraction.Length) (moved Shape, err error) {
	defer fraction.Catch(&err)
	return s.move(dx, dy), nil
}

func (s Shape) move(dx, dy fraction.Length) (moved Shape) {
	moved.outline = moveRing(s.outline, dx, dy)
	for _, hole := range s.holes {
		moved.holes = append(moved.holes, moveRing(hole, dx, dy))
	}
	return moved
}

func moveRing(ring []Point, dx, dy fraction.Length) []Point {
	moved := slices.Clone(ring)
	for i, p := range ring {
		moved[i] = p.plus(dx, dy)
	}
	return moved
}

// atOrigin moves s so that its bounding rectangle starts at the origin.
func (s Shape) atOrigin() Shape {
	lo, _ := s.Bounds()
	return s.move(lo.X.Neg(), lo.Y.Neg())
}

// Contains reports whether p lies in s, its edge included.
func (s Shape) Contains(p Point) bool { return s.locate(p) >= 0 }

// locate returns +1 for p inside s, 0 on its edge and -1 outside.
func (s Shape) locate(p Point) int {
	where := locate(s.outline, p)
	for i := 0; i < len(s.holes) && where > 0; i++ {
		where = -locate(s.holes[i], p)
	}
	return where
}

// locate returns +1 for p inside the ring, 0 on its line and -1 outside. A ray from p to the right
// counts the edges that it crosses.
func locate(ring []Point, p Point) int {
	inside := false
	for a, b := range edges(ring) {
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
		side := Orient(a, b, p)
		if side == 0 {
			return 0
		}
		// A vertex at the height of p counts as below the ray.
		if (ca > 0) != (cb > 0) && (side > 0) == (cb > 0) {
			inside = !inside
		}
	}
	if inside {
		return 1
	}
	return -1
}

// before and after step round a ring of n vertices.
func before(i, n int) int { return (i + n - 1) % n }
func after(i, n int) int  { return (i + 1) % n }

// rotated turns the ring in place so that it starts at its lowest vertex, the leftmost of these.
func rotated(ring []Point) []Point {
	start := 0
	for i := range ring {
		if lower(ring[i], ring[start]) < 0 {
			start = i
		}
	}
	if start > 0 {
		slices.Reverse(ring[:start])
		slices.Reverse(ring[start:])
		slices.Reverse(ring)
	}
	return ring
}

// simplify drops every vertex that stands twice in a row or in the middle of a straight line; a
// ring with no area left becomes nil. It works in place.
func simplify(ring []Point) []Point {
	for dropped := true; dropped; {
		dropped = false
		for i := 0; i < len(ring); {
			if len(ring) < 3 {
				return nil
			}
			if orientAt(ring, i) != 0 {
				i++
				continue
			}
			ring = slices.Delete(ring, i, i+1)
			dropped = true
		}
	}
	if len(ring) < 3 {
		return nil
	}
	return ring
}

// Upright is a vertical edge of a shape.
type Upright struct {
	X, Bottom, Top fraction.Length
	MaterialRight  bool // the shape lies to the right of the edge, not to the left
}

// Uprights returns the vertical edges of s, none that leans, from left to right and the bottom up.
func (s Shape) Uprights() []Upright {
	var found []Upright
	for a, b := range s.Edges() {
		if a.X != b.X {
			continue
		}
		u := Upright{X: a.X, Bottom: a.Y, Top: b.Y}
		if b.Y.Less(a.Y) {
			u = Upright{X: a.X, Bottom: b.Y, Top: a.Y, MaterialRight: true}
		}
		found = append(found, u)
	}
	sort.SliceStable(found, func(i, j int) bool {
		a, b := found[i], found[j]
		return lower(Point{a.Bottom, a.X}, Point{b.Bottom, b.X}) < 0
	})
	return found
}
