package cutout

import "example.com/groovewright/fraction"

// Band returns the parts of s between the upright lines at left and right, each connected piece as
// one Shape, from left to right and then from the bottom up. The areas of the bands that divide a
// shape add up to its own. There are no pieces where left is not below right.
//
// It takes time in proportion to n log n for n vertices, if few lie above one another, and fails
// where a new corner does not fit a Length.
func (s Shape) Band(left, right fraction.Length) (pieces []Shape, err error) {
	defer fraction.Catch(&err)
	return s.band(left, right), nil
}

func (s Shape) band(left, right fraction.Length) []Shape {
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
	return w.pieces()
}

// Minus returns s less the inside of the closed polygon clip, in pieces like those of [Shape.Band].
//
// What comes of it depends only on where clip lies. Wholly inside it leaves a hole. Where it
// reaches the edge of s, or touches it from inside, it becomes a part of the outline, a notch.
// Across s it splits it. Outside, or touching from outside, it changes nothing. The direction of
// clip does not matter; its edges must not cross one another.
//
// It takes time in proportion to the product of the numbers of edges. It fails where a new corner
// does not fit a Length, and with [ErrTooFew] where clip has fewer than three corners.
func (s Shape) Minus(clip []Point) ([]Shape, error) {
	return s.overlay(clip, func(inShape, inClip bool) bool { return inShape && !inClip })
}

// Within returns the part of s inside the closed polygon clip: what [Shape.Minus] takes away, in
// the same order, and with the same errors.
func (s Shape) Within(clip []Point) ([]Shape, error) {
	return s.overlay(clip, func(inShape, inClip bool) bool { return inShape && inClip })
}

func (s Shape) overlay(clip []Point, keep func(_, _ bool) bool) (pieces []Shape, err error) {
	defer fraction.Catch(&err)
	switch {
	case len(clip) < 3:
		return nil, ErrTooFew
	case s.IsEmpty():
		return nil, nil
	case BoundsOverlap(s.outline, clip):
		var w sweep
		w.addShape(s, nil)
		w.addRing(-1, clip, true, nil)
		w.cross()
		w.run(keep)
		return w.pieces(), nil
	case keep(true, false):
		return []Shape{s}, nil
	}
	return nil, nil
}

// ClipLine returns the part of s to the left of the directed line from p to q, each connected piece
// as one Shape, in the order of [Shape.Band] and with its errors. The line has no ends. Where p and
// q are one point it is no line, and s is returned as it is.
func (s Shape) ClipLine(p, q Point) (pieces []Shape, err error) {
	defer fraction.Catch(&err)
	lo, hi := s.Bounds()
	switch {
	case s.IsEmpty():
		return nil, nil
	case p == q:
		return []Shape{s}, nil
	case p.X == q.X && p.Y.Less(q.Y):
		return s.band(lo.X, p.X), nil
	case p.X == q.X:
		return s.band(p.X, hi.X), nil
	}
	above := p.X.Less(q.X) // is the left of the line
	// The line is one long edge of the other outline, whose inside lies above it.
	var w sweep
	w.addShape(s, nil)
	w.addSide(side{a: p, b: q, left: lo.X, right: hi.X, other: true})
	w.cross()
	w.run(func(inShape, inOther bool) bool { return inShape && inOther == above })
	return w.pieces(), nil
}
