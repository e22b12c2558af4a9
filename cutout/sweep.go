package cutout

import (
	"slices"

	"example.com/groovewright/fraction"
)

// Everything here rests on one decomposition. All edges but uprights are cut at the x of every
// vertex and crossing. Between two neighbouring x, in a slab, the edges lie one above the other
// without meeting, and the space between two of them, a cell, is wholly in or out:
//
//	   ____________________
//	  /|        |  top    /|
//	 / |        | ------ / |      cells of one slab, from the bottom up;
//	/  |  slab  | hole  /  |      upright edges are the gaps between
//	\  |        |------/   |      the cells of neighbouring slabs
//	 \_|________|_____/____|
//
// Whether a cell is in is counted from below by the even-odd rule, for the shape and for the other
// outline each by itself, so that no ring needs a direction and edges that coincide cancel.

// side is an edge that is not upright, read from left to right.
type side struct {
	a, b        Point           // the whole edge, from which heights are worked out
	left, right fraction.Length // the part of it that counts
	first, last int             // the same as indices into sweep.xs
	other       bool            // it belongs to the outline that cuts, not to the shape
	ring        int             // the hole it belongs to, -1 for an outline
	y, next     fraction.Length // its heights at the slab's left and right, while sweeping
}

func (s *side) heightAt(x fraction.Length) fraction.Length { return heightAt(s.a, s.b, x) }

// cell is one trapezoid of a slab. Its ends may have no height, not both.
type cell struct {
	slab         int
	lower, upper int                // indices into sweep.sides
	y            [4]fraction.Length // heights of its corners
}

// The corners of a cell: at its bottom and its top, left and right.
const (
	bl = iota
	br
	tl
	tr
)

// sweep is a decomposition: slab i lies between xs[i] and xs[i+1] and has the cells from start[i]
// to start[i+1]. Cells that touch along an edge are one.
type sweep struct {
	sides []side
	xs    []fraction.Length
	cells []cell
	start []int
}

// addRing takes in the edges of a ring, whole or as far as they lie between the limits.
func (w *sweep) addRing(number int, ring []Point, other bool, limits *[2]fraction.Length) {
	for a, b := range edges(ring) {
		switch a.X.Compare(b.X) {
		case 0:
			continue
		case 1:
			a, b = b, a
		}
		s := side{a: a, b: b, left: a.X, right: b.X, other: other, ring: number}
		if limits != nil {
			s.left, s.right = fraction.Max(a.X, limits[0]), fraction.Min(b.X, limits[1])
			if !s.left.Less(s.right) {
				continue
			}
		}
		w.addSide(s)
	}
}

func (w *sweep) addSide(s side) {
	w.sides = append(w.sides, s)
	w.xs = append(w.xs, s.left, s.right)
}

func (w *sweep) addShape(s Shape, limits *[2]fraction.Length) {
	for number, ring := range s.rings {
		w.addRing(number, ring, false, limits)
	}
}

// cross adds the x of every crossing of the other outline's edges; those of the shape have none.
func (w *sweep) cross() {
	for i := range w.sides {
		for j := i + 1; j < len(w.sides); j++ {
			s, t := &w.sides[i], &w.sides[j]
			if !s.other && !t.other {
				continue
			}
			from, to := fraction.Max(s.left, t.left), fraction.Min(s.right, t.right)
			if !from.Less(to) {
				continue
			}
			before := s.heightAt(from).Compare(t.heightAt(from))
			if before != 0 && before == -s.heightAt(to).Compare(t.heightAt(to)) {
				w.xs = append(w.xs, crossingX(s.a, s.b, t.a, t.b))
			}
		}
	}
}

// run does the decomposition. It keeps the cells for which keep returns true.
func (w *sweep) run(keep func(inShape, inOther bool) bool) {
	slices.SortFunc(w.xs, fraction.Length.Compare)
	w.xs = slices.Compact(w.xs)
	for i := range w.sides {
		s := &w.sides[i]
		s.first, _ = slices.BinarySearchFunc(w.xs, s.left, fraction.Length.Compare)
		s.last, _ = slices.BinarySearchFunc(w.xs, s.right, fraction.Length.Compare)
	}
	slices.SortFunc(w.sides, func(s, t side) int { return s.first - t.first })

	w.cells = make([]cell, 0, 2*len(w.sides))
	w.start = make([]int, 0, len(w.xs)+1)
	active := make([]int, 0, len(w.sides))
	fresh := 0 // sides from here on begin further right
	for i := 0; i+1 < len(w.xs); i++ {
		w.start = append(w.start, len(w.cells))
		active = slices.DeleteFunc(active, func(k int) bool { return w.sides[k].last <= i })
		for _, k := range active {
			w.sides[k].y = w.sides[k].next
		}
		for ; fresh < len(w.sides) && w.sides[fresh].first == i; fresh++ {
			w.sides[fresh].y = w.sides[fresh].heightAt(w.xs[i])
			active = append(active, fresh)
		}
		for _, k := range active {
			w.sides[k].next = w.sides[k].heightAt(w.xs[i+1])
		}
		slices.SortStableFunc(active, w.upward)
		w.stack(active, keep)
	}
	w.start = append(w.start, len(w.cells))
}

// upward orders the sides of a slab from the bottom up. As no two cross, comparing both heights one
// after the other is enough, and needs no sum that might overflow.
func (w *sweep) upward(i, j int) int {
	s, t := &w.sides[i], &w.sides[j]
	if c := s.y.Compare(t.y); c != 0 {
		return c
	}
	return s.next.Compare(t.next)
}

// stack walks up one slab and appends its cells.
func (w *sweep) stack(active []int, keep func(inShape, inOther bool) bool) {
	var inShape, inOther, in bool
	c := cell{slab: len(w.start) - 1}
	for i := 0; i < len(active); {
		first := active[i]
		for same := true; same; same = i < len(active) && w.upward(first, active[i]) == 0 {
			if w.sides[active[i]].other {
				inOther = !inOther
			} else {
				inShape = !inShape
			}
			i++
		}
		now, s := keep(inShape, inOther), &w.sides[first]
		switch {
		case now && !in:
			c.lower, c.y[bl], c.y[br] = first, s.y, s.next
		case in && !now:
			c.upper, c.y[tl], c.y[tr] = first, s.y, s.next
			w.cells = append(w.cells, c)
		}
		in = now
	}
}

// slab returns the cells of slab i; there are none left of the first and right of the last.
func (w *sweep) slab(i int) []cell {
	if i < 0 || i+1 >= len(w.start) {
		return nil
	}
	return w.cells[w.start[i]:w.start[i+1]]
}

func inShapeOnly(inShape, _ bool) bool { return inShape }

// Cell is a part of a shape between two neighbouring x of vertices: a trapezoid with upright sides
// at Left and Right, given by the heights of its corners. One of the sides may have no height.
type Cell struct {
	Left, Right                                fraction.Length
	BottomLeft, BottomRight, TopLeft, TopRight fraction.Length
}

// Cells cuts s at the x of every vertex and returns the cells from left to right and the bottom up.
// They do not overlap; their areas add up to that of s. It fails where a height fits no Length.
func (s Shape) Cells() (cells []Cell, err error) {
	defer fraction.Catch(&err)
	var w sweep
	w.addShape(s, nil)
	w.run(inShapeOnly)
	for _, c := range w.cells {
		cells = append(cells, Cell{w.xs[c.slab], w.xs[c.slab+1], c.y[bl], c.y[br], c.y[tl], c.y[tr]})
	}
	return cells, nil
}
