package wall

import (
	"cmp"
	"slices"
	"sort"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
)

// edge is one edge of a region that is upright, or a leaning end: an end, the side of a step or the
// side of an opening, or a part of one of these that nothing else claims. Its height is that of the
// part which bounds the shape.
type edge struct {
	x         fraction.Length // of an edge that leans, half way between
	foot, top fraction.Length // x of its ends
	bottom    fraction.Length // y of its foot
	height    fraction.Length
	claim
	keep groove.Side // the side of the cut on which the panelling is
}

// claim is what makes an edge one that may be seen.
type claim struct {
	kind    BlemishKind
	where   Place
	opening string         // name, where it is the side of one
	weight  fraction.Ratio // per foot and inch of cut feature
	end     bool           // an end of the run; else a strip beside it can be weak
}

// prevails reports whether an edge that both claim counts as c: what weighs more, else an end, else
// by kind and name, so that the order of the openings does not matter.
func (c claim) prevails(d claim) bool {
	if n := c.weight.Compare(d.weight); n != 0 || c.end != d.end {
		return n > 0 || n == 0 && c.end
	}
	return cmp.Or(cmp.Compare(c.kind, d.kind), cmp.Compare(c.opening, d.opening)) > 0
}

// side is an upright line from bottom to top that something claims.
type side struct {
	x, bottom, top fraction.Length
	claim
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
func (g *region) findEdges(room *Room, r int, left, right endLine, grown [][][]cutout.Point) {
	run := &room.Runs[r]
	sides := slices.Concat(g.stepSides, openingSides(room, r, grown))
	for _, s := range g.exact {
		for _, u := range s.Uprights() {
			keep, end, line := groove.KeepLeft, run.Right, right
			if u.MaterialRight {
				keep, end, line = groove.KeepRight, run.Left, left
			}
			own := sides
			if line.upright() && u.X == line.foot.X { // whatever else claims it
				g.addEnd(keep, g.roundedHeight(side{x: u.X, bottom: u.Bottom, top: u.Top}, keep, room.Mark), fraction.Length{})
				own = append(slices.Clip(sides), side{u.X, u.Bottom, u.Top, endClaim(room, end, keep)})
			}
			g.addParts(room, u, keep, own)
		}
	}
	for _, s := range g.shapes {
		g.leaningEnds(room, run, s, left, right)
	}
	sort.SliceStable(g.edges, func(i, j int) bool {
		a, b := &g.edges[i], &g.edges[j]
		return cmp.Or(a.x.Compare(b.x), a.bottom.Compare(b.bottom)) < 0
	})
}

// addParts adds the parts of an upright line between the ends of what claims them, each with the
// claim that prevails there. Neighbours with one claim are one part.
func (g *region) addParts(room *Room, u cutout.Upright, keep groove.Side, sides []side) {
	ys := []fraction.Length{u.Bottom, u.Top}
	sides = slices.DeleteFunc(slices.Clone(sides), func(s side) bool { return s.x != u.X || !s.bottom.Less(u.Top) || !u.Bottom.Less(s.top) })
	for _, s := range sides {
		ys = append(ys, fraction.Max(s.bottom, u.Bottom), fraction.Min(s.top, u.Top))
	}
	slices.SortFunc(ys, fraction.Length.Compare)
	var parts []side
	for i, y := range ys[1:] {
		part, found := side{x: u.X, bottom: ys[i], top: y}, false
		for _, s := range sides {
			if !ys[i].Less(s.bottom) && !s.top.Less(y) && (!found || s.claim.prevails(part.claim)) {
				part.claim, found = s.claim, true
			}
		}
		n := len(parts) - 1
		switch {
		case !found || ys[i] == y:
		case n >= 0 && parts[n].claim == part.claim && parts[n].top == ys[i]:
			parts[n].top = y
		default:
			parts = append(parts, part)
		}
	}
	for _, p := range parts {
		e := edge{x: u.X, foot: u.X, top: u.X, bottom: p.bottom, claim: p.claim, keep: keep}
		if e.height = g.roundedHeight(p, keep, room.Mark); e.height.Sign() > 0 {
			if g.edges = append(g.edges, e); e.end {
				g.addEnd(keep, fraction.Length{}, e.height)
			}
		}
	}
}

// roundedHeight returns how high a part of an upright line is with its ends at marks where
// they are ends of a slope that neither the tape nor the corner of an opening gave. The shapes
// of the whole region do not show it: to keep clear of a corner far off, a long line of theirs may
// stop between marks.
func (g *region) roundedHeight(s side, keep groove.Side, mark fraction.Length) fraction.Length {
	top, bottom := s.top, s.bottom
	column := g.columnAt(s.x, keep == groove.KeepLeft)
	for _, c := range g.columns[column].cells {
		if c.top.at(s.x) == s.top {
			top = g.endOn(c.top, s.x, mark, fraction.Down)
		}
		if c.bottom.at(s.x) == s.bottom {
			bottom = g.endOn(c.bottom, s.x, mark, fraction.Up)
		}
	}
	return top.Sub(bottom)
}

// addEnd adds to what bounds the shape at an end, and to the length of it that is sealed as an end.
func (g *region) addEnd(keep groove.Side, height, length fraction.Length) {
	i := 0
	if keep == groove.KeepLeft {
		i = 1
	}
	g.endHeights[i], g.endLengths[i] = g.endHeights[i].Add(height), g.endLengths[i].Add(length)
}

// leaningEnds records the edges of a shape along a leaning end line; the side of an opening close to it
// is none.
func (g *region) leaningEnds(room *Room, run *Run, s cutout.Shape, left, right endLine) {
	for p, q := range s.Edges() {
		if g.upright(p, q) {
			continue
		}
		lean := func(foot, top cutout.Point, keep groove.Side, end End) {
			g.leaning[[2]cutout.Point{p, q}] = true
			height := top.Y.Sub(foot.Y)
			g.addEnd(keep, height, lengthOf(p, q))
			g.edges = append(g.edges, edge{x: foot.X.Add(top.X).Div(2), foot: foot.X, top: top.X, bottom: foot.Y, height: height,
				claim: endClaim(room, end, keep), keep: keep})
		}
		switch {
		case !left.upright() && q.Y.Less(p.Y) && left.near(p, room.Mark) && left.near(q, room.Mark):
			lean(q, p, groove.KeepRight, run.Left)
		case !right.upright() && p.Y.Less(q.Y) && right.near(p, room.Mark) && right.near(q, room.Mark):
			lean(p, q, groove.KeepLeft, run.Right)
		}
	}
}

// upright reports whether an edge of a snapped shape is upright in the exact ones.
func (g *region) upright(p, q cutout.Point) bool {
	low, high := fraction.Min(p.Y, q.Y), fraction.Max(p.Y, q.Y)
	return p.X == q.X && slices.ContainsFunc(g.exact, func(s cutout.Shape) bool {
		return slices.ContainsFunc(s.Uprights(), func(u cutout.Upright) bool {
			return u.X == p.X && u.Bottom.Less(high) && low.Less(u.Top)
		})
	})
}

// endClaim returns the claim of a run's end, on the side of it where the panelling is.
func endClaim(room *Room, end End, keep groove.Side) claim {
	kind, weight := room.Priorities.endWeight(end)
	where := AtLeftEnd
	if keep == groove.KeepLeft {
		where = AtRightEnd
	}
	return claim{kind: kind, where: where, weight: weight, end: true}
}

// openingSides returns the upright sides of the openings of run r, grown by their gaps. Those
// behind a casing weigh nothing.
func openingSides(room *Room, r int, grown [][][]cutout.Point) (sides []side) {
	for i, o := range room.Runs[r].Openings {
		c := claim{kind: OpeningSide, where: AtOpening, opening: o.Name, weight: room.Priorities.OpeningSide}
		if o.Kind == Box {
			c.kind, c.weight = BoxSide, room.Priorities.BoxSide
		} else if room.Cased(r, o) {
			c.weight = fraction.Ratio{}
		}
		for _, polygon := range grown[i] {
			for k, p := range polygon {
				if q := polygon[(k+1)%len(polygon)]; p.X == q.X {
					sides = append(sides, side{p.X, fraction.Min(p.Y, q.Y), fraction.Max(p.Y, q.Y), c})
				}
			}
		}
	}
	return sides
}

// near reports whether p lies within two marks of the line, measured along x, as every corner does
// that was rounded from the line and the one it meets.
func (e endLine) near(p cutout.Point, mark fraction.Length) bool {
	turned := func(p cutout.Point) cutout.Point { return cutout.Point{X: p.Y, Y: p.X} }
	x := heightOn(turned(e.foot), turned(e.top), p.Y)
	return x.Sub(p.X).Abs().Compare(mark.Mul(2)) <= 0
}

func (e edge) keepsLeft() bool { return e.keep == groove.KeepLeft }

// amount returns how much the edge looks cut, the pattern's origin at o.
func (e edge) amount(p *groove.Profile, o fraction.Length) fraction.Length {
	return fraction.Must(p.SlantDistance(e.foot.Sub(o), e.top.Sub(e.foot), e.keep))
}

// whole reports whether the edge shows a whole feature, the pattern's origin at o: one that leans,
// whether it crosses no bead or groove.
func (e edge) whole(p *groove.Profile, o fraction.Length) bool {
	if e.foot == e.top {
		return e.amount(p, o).IsZero()
	}
	crossed := fraction.Must(p.Crossed(e.foot.Sub(o), e.top.Sub(e.foot), e.keep))
	return !slices.ContainsFunc(crossed, func(c groove.Crossing) bool { return c.Feature.Kind != groove.Flat })
}

// seenEnd reports whether the edge is one of an end at which a cut feature weighs anything.
func (e edge) seenEnd() bool { return e.end && e.weight.Sign() > 0 }

// endsSeen reports whether a cut feature at the left and at the right end weighs anything.
func (g *region) endsSeen() (left, right bool) {
	for _, e := range g.edges {
		if e.seenEnd() {
			left, right = left || !e.keepsLeft(), right || e.keepsLeft()
		}
	}
	return left, right
}

// bareEnds reports whether the left and the right end of the run stay bare: openings take them, and
// no panel reaches there.
func (g *region) bareEnds() [2]bool {
	return [2]bool{g.endHeights[0].Sign() <= 0, g.endHeights[1].Sign() <= 0}
}

// showsEnd reports whether some of the edge at an end of the run is the end's: of the rest openings
// leave nothing, or claim it.
func (g *region) showsEnd(left bool) bool {
	return slices.ContainsFunc(g.edges, func(e edge) bool { return e.end && e.keepsLeft() != left })
}

// endAt returns where the foot of an end of the region stands, of the tallest part where openings
// part it, and how far to the right of that its top does.
func (g *region) endAt(left bool) (foot, lean fraction.Length) {
	foot = g.right
	if left {
		foot = g.left
	}
	var tallest fraction.Length
	for _, e := range g.edges {
		if e.end && e.keepsLeft() != left && tallest.Less(e.height) {
			foot, lean, tallest = e.foot, e.top.Sub(e.foot), e.height
		}
	}
	return foot, lean
}
