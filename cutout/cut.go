package cutout

import "example.com/groovewright/fraction"

// Band returns the parts of s between the upright lines at left and right, each
// connected piece as one Shape, from left to right and then from the bottom up.
//
// A new corner where a sloped edge meets a line of the band is computed, no tape
// gave it. With a mark above zero such a corner is rounded to the mark into the
// space: up the line at the bottom, down the line at the top, so that each piece
// lies within the exact one. Vertices of s are never moved. Where no mark lies
// between a corner and the far end of its edge, or where moving it would run
// over another corner of the piece, the first half, quarter and so on to 1/256
// of the mark that can be used is, and if there is none the corner stays exact.
//
// With a mark of zero all is exact, and the areas of the bands that divide a
// shape add up to its own. There are no pieces when left is not below right.
// It takes time in proportion to n log n for n vertices, if few lie above one
// another. It panics with a *[fraction.OverflowError] if a new corner does not
// fit a Length.
func (s Shape) Band(left, right, mark fraction.Length) []Shape {
	lo, hi := s.Bounds()
	if s.IsEmpty() || !left.Less(right) || !left.Less(hi.X) || !lo.X.Less(right) {
		return nil
	}
	if !lo.X.Less(left) && !right.Less(hi.X) {
		return []Shape{s}
	}
	var w sweep
	w.addShape(s, &[2]fraction.Length{left, right})
	w.run(inShapeOnly)
	return settled(w.pieces(), mark, s, nil)
}

// Minus returns s less the inside of the closed polygon clip, each connected
// piece as one Shape, in the order of [Shape.Band] and rounded as there: a
// corner where an upright and a sloped edge meet is moved along the upright one,
// a corner of a level and a sloped edge along the level one, a corner of two
// sloped edges to the first mark beside it that lies in the space. A corner of
// an upright and a level edge is never moved.
//
// What comes of it depends only on where clip lies. Wholly inside it leaves a
// hole. Where it reaches the edge of s, or touches it from inside, it becomes a
// part of the outline, a notch. Across s it splits it. Outside, or touching from
// outside, it changes nothing. The direction of clip does not matter; its edges
// must not cross one another. It takes time in proportion to the product of the
// numbers of edges.
func (s Shape) Minus(clip []Point, mark fraction.Length) []Shape {
	if !s.meets(clip) {
		return s.whole()
	}
	return s.overlay(clip, mark, func(inShape, inClip bool) bool { return inShape && !inClip })
}

// Within returns the part of s inside the closed polygon clip: what [Shape.Minus]
// takes away, in the same order and rounded the same way.
func (s Shape) Within(clip []Point, mark fraction.Length) []Shape {
	if !s.meets(clip) {
		return nil
	}
	return s.overlay(clip, mark, func(inShape, inClip bool) bool { return inShape && inClip })
}

func (s Shape) overlay(clip []Point, mark fraction.Length, keep func(_, _ bool) bool) []Shape {
	var w sweep
	w.addShape(s, nil)
	w.addRing(-1, clip, true, nil)
	w.cross()
	w.run(keep)
	return settled(w.pieces(), mark, s, clip)
}

// meets reports whether the bounds of s and of ring overlap.
func (s Shape) meets(ring []Point) bool {
	if s.IsEmpty() || len(ring) == 0 {
		return false
	}
	lo, hi := s.Bounds()
	from, to := bounds(ring)
	return from.X.Less(hi.X) && lo.X.Less(to.X) && from.Y.Less(hi.Y) && lo.Y.Less(to.Y)
}

func (s Shape) whole() []Shape {
	if s.IsEmpty() {
		return nil
	}
	return []Shape{s}
}

// ClipLine returns the part of s to the left of the directed line from p to q,
// each connected piece as one Shape, in the order of [Shape.Band] and rounded as
// in [Shape.Minus]. The line has no ends; p and q count as taped. Where p and q
// are one point it is no line, and s is returned as it is.
func (s Shape) ClipLine(p, q Point, mark fraction.Length) []Shape {
	if s.IsEmpty() || p == q {
		return s.whole()
	}
	lo, hi := s.Bounds()
	switch direction := p.X.Compare(q.X); {
	case direction == 0 && p.Y.Less(q.Y):
		return s.Band(lo.X, p.X, mark)
	case direction == 0:
		return s.Band(p.X, hi.X, mark)
	case direction > 0:
		return s.clipSloped(q, p, mark, func(inShape, above bool) bool { return inShape && !above })
	}
	return s.clipSloped(p, q, mark, func(inShape, above bool) bool { return inShape && above })
}

// clipSloped sweeps s with the line as one long edge of the other outline: what
// lies above it counts as inside.
func (s Shape) clipSloped(p, q Point, mark fraction.Length, keep func(_, _ bool) bool) []Shape {
	var w sweep
	w.addShape(s, nil)
	lo, hi := s.Bounds()
	w.addSide(side{a: p, b: q, left: lo.X, right: hi.X, other: true})
	w.cross()
	w.run(keep)
	return settled(w.pieces(), mark, s, []Point{p, q})
}
