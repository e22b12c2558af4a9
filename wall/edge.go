package wall

import (
	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
)

// edge is one upright edge of a region: an end, the side of a step or the side of an opening. Its
// height is that of the part which bounds the shape.
type edge struct {
	x, height fraction.Length
	keep      groove.Side // the side of the cut on which the panelling is
	kind      BlemishKind
	where     Place
	opening   string         // name, where it is the side of one
	weight    fraction.Ratio // per foot and inch of cut feature
	end       bool           // an end of the run; else a strip beside it can be weak
}

// endWeight returns the kind of blemish and the weight of a run's end.
func (p *Priorities) endWeight(e End) (kind BlemishKind, weight fraction.Ratio) {
	switch e.Kind {
	case Exposed:
		kind, weight = ExposedEnd, p.ExposedEnd
	case OutsideCorner:
		kind, weight = OutsideCornerEnd, p.OutsideCorner
	case Covered:
		kind, weight = CoveredEnd, p.CoveredEnd
	case InsideCorner:
		return CornerMismatch, fraction.Ratio{} // its mismatch is counted, not its cut
	}
	if e.Prominence != nil {
		weight = *e.Prominence
	}
	return kind, weight
}

// findEdges records the upright edges of the region and the heights of its ends.
func (g *region) findEdges(room *Room, run *Run, left, right endLine, grown [][][]cutout.Point) {
	steps := stepSides(run, room.Gaps.Side)
	for _, s := range g.exact {
		for _, u := range s.Uprights() {
			e := edge{x: u.X, height: g.roundedHeight(u, room.Mark), keep: groove.KeepLeft}
			if e.height.Sign() <= 0 {
				continue
			}
			if u.MaterialRight {
				e.keep = groove.KeepRight
			}
			switch opening := openingAt(run, grown, u); {
			case left.upright() && u.X == left.foot.X && u.MaterialRight:
				g.addEnd(room, e, e.height, run.Left)
			case right.upright() && u.X == right.foot.X && !u.MaterialRight:
				g.addEnd(room, e, e.height, run.Right)
			case opening != nil:
				e.kind, e.weight, e.where, e.opening = OpeningSide, room.Priorities.OpeningSide, AtOpening, opening.Name
				if opening.Kind == Box {
					e.kind, e.weight = BoxSide, room.Priorities.BoxSide
				}
				g.edges = append(g.edges, e)
			case steps[u.X]:
				e.kind, e.weight, e.where = StepSide, room.Priorities.StepSide, AtStep
				g.edges = append(g.edges, e)
			}
		}
	}
	for _, s := range g.shapes {
		g.leaningEnds(room, run, s, left, right)
	}
}

// roundedHeight returns how high the upright is with its ends at marks, into the space, where
// neither the tape nor the corner of an opening gave them. The shapes of the whole region do not
// show it: to keep clear of a corner far off, a long line of theirs may stop between marks.
func (g *region) roundedHeight(u cutout.Upright, mark fraction.Length) fraction.Length {
	top, bottom := u.Top, u.Bottom
	if !g.taped[cutout.Point{X: u.X, Y: top}] {
		top = floor(top, mark)
	}
	if !g.taped[cutout.Point{X: u.X, Y: bottom}] {
		bottom = ceil(bottom, mark)
	}
	return top.Sub(bottom)
}

// addEnd adds an edge of the run's left or right end, so long.
func (g *region) addEnd(room *Room, e edge, length fraction.Length, end End) {
	e.kind, e.weight = room.Priorities.endWeight(end)
	e.end, e.where = true, AtLeftEnd
	side := 0
	if e.keepsLeft() {
		e.where, side = AtRightEnd, 1
	}
	g.endHeights[side], g.endLengths[side] = g.endHeights[side].Add(e.height), g.endLengths[side].Add(length)
	g.edges = append(g.edges, e)
}

// leaningEnds records the edges of a shape along a leaning end line, each at its middle height.
func (g *region) leaningEnds(room *Room, run *Run, s cutout.Shape, left, right endLine) {
	outline := s.Outline()
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		e := edge{x: p.X.Add(q.X).Div(2), height: q.Y.Sub(p.Y).Abs()}
		lean := func(keep groove.Side, end End) {
			e.keep, g.leaning[[2]cutout.Point{p, q}] = keep, true
			g.addEnd(room, e, lengthOf(p, q), end)
		}
		switch {
		case !left.upright() && q.Y.Less(p.Y) && left.near(p, room.Mark) && left.near(q, room.Mark):
			lean(groove.KeepRight, run.Left)
		case !right.upright() && p.Y.Less(q.Y) && right.near(p, room.Mark) && right.near(q, room.Mark):
			lean(groove.KeepLeft, run.Right)
		}
	}
}

// near reports whether p lies within two marks of the line, measured along x, as every corner does
// that was rounded from the line and the one it meets.
func (e endLine) near(p cutout.Point, mark fraction.Length) bool {
	turned := func(p cutout.Point) cutout.Point { return cutout.Point{X: p.Y, Y: p.X} }
	x := heightOn(turned(e.foot), turned(e.top), p.Y)
	return x.Sub(p.X).Abs().Compare(mark.Mul(2)) <= 0
}

// stepSides returns where the upright sides of steps can stand after the gap.
func stepSides(run *Run, side fraction.Length) map[fraction.Length]bool {
	at := map[fraction.Length]bool{}
	for i := 0; i+1 < len(run.Heights); i++ {
		if x := run.Heights[i].At; x == run.Heights[i+1].At {
			at[x.Sub(side)], at[x], at[x.Add(side)] = true, true, true
		}
	}
	return at
}

// openingAt returns the opening on whose grown side the upright lies, or nil.
func openingAt(run *Run, grown [][][]cutout.Point, u cutout.Upright) *Opening {
	for i := range run.Openings {
		for _, polygon := range grown[i] {
			for k, p := range polygon {
				q := polygon[(k+1)%len(polygon)]
				if p.X == u.X && q.X == u.X &&
					fraction.Max(fraction.Min(p.Y, q.Y), u.Bottom).Less(fraction.Min(fraction.Max(p.Y, q.Y), u.Top)) {
					return &run.Openings[i]
				}
			}
		}
	}
	return nil
}

func (e edge) keepsLeft() bool { return e.keep == groove.KeepLeft }

// endAt returns where an end of the region stands, a leaning one by the middle of its tallest part.
func (g *region) endAt(left bool) fraction.Length {
	at, tallest := g.right, fraction.Length{}
	if left {
		at = g.left
	}
	for _, e := range g.edges {
		if e.end && e.keepsLeft() != left && tallest.Less(e.height) {
			at, tallest = e.x, e.height
		}
	}
	return at
}
