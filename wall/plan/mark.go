package plan

import (
	"cmp"
	"fmt"
	"math/big"
	"slices"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/wall"
)

// mark adds the lines to draw on a piece, the order of its cuts and its weak spots.
func (m *maker) mark(piece *Piece, p wall.Piece) {
	marks := fraction.Must(p.Shape.Marks())
	piece.Marks = Marks{From: m.edges(piece), Corners: marks.Outline, Arcs: m.arcs(piece, p)}
	for i, hole := range marks.Holes {
		piece.Marks.Holes = append(piece.Marks.Holes, HoleMarks{p.Holes[i], hole})
	}
	m.ends(piece)
	cuttings := fraction.Must(p.Shape.Cuttings(m.job.Bit, m.job.Mark))
	notches := 0
	for _, c := range cuttings {
		if c.Kind == cutout.NotchCut {
			notches++
		}
	}
	number := 0
	for _, c := range cuttings {
		if c.Kind == cutout.EdgeCut && !slices.ContainsFunc(c.Ways, func(way cutout.Way) bool { return !piece.beside(way, m.job.Snap) }) {
			continue
		}
		cutting := Cutting{Waste: Waste{Kind: c.Kind}}
		if len(c.Tight) > 0 {
			cutting.Tight = c.Tight
		}
		switch {
		case c.Hole >= 0:
			cutting.Opening = p.Holes[c.Hole]
		case c.Kind == cutout.NotchCut && notches > 1:
			number++
			cutting.Number = number
		}
		for _, s := range c.Starters {
			arc, within := piece.arcAround(c.Hole, s.Corner)
			if within {
				continue // the saw follows the arc
			}
			at := m.withinArc(arc, s.At, s.Diameter.Div(2))
			hole := Drill{Waste: cutting.Waste, At: at, Back: Point{X: s.Back.X, Y: at.Y}, Diameter: s.Diameter}
			if slices.Contains(piece.Marks.Drill, hole) {
				continue // two corners a bit apart share it
			}
			cutting.Drill = append(cutting.Drill, len(piece.Marks.Drill))
			piece.Marks.Drill = append(piece.Marks.Drill, hole)
		}
		for _, way := range c.Ways {
			cutting.Saw = append(cutting.Saw, SawCut{Points: way, Corners: cornersOf(piece, c.Hole, way)})
		}
		piece.Marks.Order = append(piece.Marks.Order, cutting)
	}
	limits := cutout.Limits{Strip: m.job.Priorities.LeastStrip, Corner: m.job.Priorities.LeastCorner, LegRatio: m.job.Priorities.LegRatio}
	for _, w := range fraction.Must(p.Shape.WeakSpots(limits)) {
		piece.Weak = append(piece.Weak, Weak{Kind: w.Kind, At: w.At, Width: w.Width, WayOut: w.WayOut})
	}
}

// arcs returns the true arcs of the arched heads that the piece has edges of.
func (m *maker) arcs(piece *Piece, p wall.Piece) []Arc {
	var out []Arc
	for _, o := range m.job.Runs[p.Run].Openings {
		if o.Arch == nil || !m.standsOn(p, o.Arch) {
			continue
		}
		middle, radius, err := o.Arch.Circle()
		if err != nil {
			continue // a valid job has no such arch
		}
		gap := m.job.Gaps.Around(o.Kind)
		centre := Point{X: middle.X.Sub(p.At.X), Y: middle.Y.Sub(p.At.Y)}
		out = append(out, Arc{Opening: o.Name, Centre: centre, Back: Point{X: piece.Width.Sub(centre.X), Y: centre.Y}, Radius: radius.Add(gap), Springs: o.Arch.Springing.Y.Sub(p.At.Y),
			Half: o.Arch.Chord.Div(2).Add(gap), Near: m.job.Mark.Mul(arcMarks).Add(gap.Div(2))})
	}
	return out
}

// arcMarks is how many marks of the tape a corner may lie off the arc that it stands for, beside half of the gap: two by
// [cutout.Arc] and up to one each way by rounding. A gap round a corner that turns by a right angle is 0.42 of it more
// from the corner than from the edges.
const arcMarks = 4

// ArcAt returns the arc that a corner of a piece stands for, nil for none.
func ArcAt(arcs []Arc, p Point) *Arc {
	minus := func(a, b fraction.Length) *big.Rat { return new(big.Rat).Sub(a.Rat(), b.Rat()) }
	for i := range arcs {
		a := &arcs[i]
		near := cmp.Or(a.Near, fraction.Of(1, 4)).Rat()
		if minus(a.Springs, p.Y).Cmp(near) >= 0 {
			continue
		}
		x, y := minus(p.X, a.Centre.X), minus(p.Y, a.Centre.Y)
		if past := new(big.Rat).Sub(new(big.Rat).Abs(x), near); a.Half.Sign() > 0 && past.Cmp(a.Half.Rat()) >= 0 {
			continue // the circle goes on there, the arc does not
		}
		square := x.Add(x.Mul(x, x), y.Mul(y, y))
		least, most := new(big.Rat).Sub(a.Radius.Rat(), near), new(big.Rat).Add(a.Radius.Rat(), near)
		if (least.Sign() < 0 || least.Mul(least, least).Cmp(square) < 0) && square.Cmp(most.Mul(most, most)) < 0 {
			return a
		}
	}
	return nil
}

// ends finds where the arcs of a piece end: at each corner on an arc beside one that is not on it.
func (m *maker) ends(piece *Piece) {
	number := 0
	for _, ring := range piece.Marks.rings() {
		on := func(i int) *Arc { return ArcAt(piece.Marks.Arcs, ring[(i+len(ring))%len(ring)]) }
		for i, at := range ring {
			if a := on(i); a != nil && (on(i-1) != a || on(i+1) != a) {
				if on(i-1) == a || on(i+1) == a {
					at = piece.onArc(a, at, m.job.Mark, m.job.Snap)
				}
				a.Ends = append(a.Ends, ArcEnd{Corner: number, At: at, Back: Point{X: piece.Width.Sub(at.X), Y: at.Y}})
			}
			number++
		}
	}
}

// rings returns the corners of the outline and of each hole on the face.
func (m Marks) rings() [][]Point {
	all := [][]Point{m.Face}
	for _, hole := range m.Holes {
		all = append(all, hole.Face)
	}
	return all
}

// NamedCorner is a corner of a piece, with a name if it is to be marked. It has none where it only
// stands for a place within an arc, and lies on the arc where that ends; where rounding alone makes it;
// and in a level hole, which is marked as a whole.
type NamedCorner struct {
	Name       string
	Face, Back Point
	Paths      [2]string // of these two in the JSON of the marks
}

// Named returns the corners of the outline and then of each hole, with names that run on without a
// gap. A corner no farther than snap from the straight line between those beside it has none. A corner
// without a place on the back is left out.
func (m Marks) Named(snap fraction.Length) (all [][]NamedCorner) {
	ends, paths := map[int]ArcEnd{}, map[int]string{}
	for i, a := range m.Arcs {
		for k, e := range a.Ends {
			ends[e.Corner], paths[e.Corner] = e, fmt.Sprintf("arcs[%d].ends[%d].", i, k)
		}
	}
	number, named := 0, 0
	for r, face := range m.rings() {
		back, of := m.Back, ""
		if r > 0 {
			back, of = m.Holes[r-1].Back, fmt.Sprintf("holes[%d].", r-1)
		}
		ring := make([]NamedCorner, min(len(face), len(back)))
		before := len(ring) - 1 // the last corner that is one
		for i := range ring {
			c := NamedCorner{Face: face[i], Back: back[i], Paths: [2]string{fmt.Sprintf("%sface[%d]", of, i), fmt.Sprintf("%sback[%d]", of, i)}}
			e, ends := ends[number+i]
			if ends {
				c.Face, c.Back, c.Paths = e.At, e.Back, [2]string{paths[number+i] + "at", paths[number+i] + "back"}
			}
			switch on := ArcAt(m.Arcs, face[i]); {
			case r > 0 && Level(face):
			case on == nil && !ends && onLine(face[i], face[before], face[(i+1)%len(ring)], snap):
			case ends || on == nil:
				c.Name = CornerName(named)
				named++
				fallthrough
			default:
				before = i
			}
			ring[i] = c
		}
		number += len(face)
		all = append(all, ring)
	}
	return all
}

// Stretch is a part of a line to saw, from where the one before ends.
type Stretch struct {
	Arc *Arc // to saw along, nil for a straight line
	To  Point
}

// Stretches returns where a line to saw begins and its parts. An arc stands in the place of the corners
// near it, and its ends are on it, to a mark of the tape, at most snap within the opening; a straight line that meets one
// there ends there too. It fails where a place does not fit a Length.
func (p Piece) Stretches(c SawCut, mark, snap fraction.Length) (from Point, parts []Stretch, err error) {
	defer fraction.Catch(&err)
	on := func(i int) *Arc {
		if i < 0 || i >= len(c.Points) {
			return nil
		}
		return ArcAt(p.Marks.Arcs, c.Points[i])
	}
	for i, at := range c.Points {
		before, after := on(i) != nil && on(i) == on(i-1), on(i) != nil && on(i) == on(i+1)
		if before || after {
			at = p.onArc(on(i), at, mark, snap)
		} else if i < len(c.Corners) {
			at = p.Marks.end(c.Corners[i], at)
		}
		switch last := len(parts) - 1; {
		case i == 0:
			from = at
		case before && last >= 0 && parts[last].Arc == on(i):
			parts[last].To = at
		case before:
			parts = append(parts, Stretch{on(i), at})
		default:
			parts = append(parts, Stretch{To: at})
		}
	}
	return from, parts, nil
}

// end returns where an arc ends at a corner, and the corner itself where none does.
func (m Marks) end(corner int, at Point) Point {
	for _, a := range m.Arcs {
		for _, e := range a.Ends {
			if e.Corner == corner {
				return e.At
			}
		}
	}
	return at
}

// onArc returns the place on an arc right below a corner that stands for it or, where the corner lies on
// the lower or the upper edge of the piece, or that place would be below the piece, right beside it on that
// edge; the corner itself where there is none.
func (p Piece) onArc(a *Arc, at Point, mark, snap fraction.Length) Point {
	if !at.Y.IsZero() && at.Y != p.Height {
		y, err := cutout.HeightOnCircle(a.Centre, a.Radius, at.X, mark, snap)
		if err != nil {
			return at
		}
		if at.Y = fraction.Max(y, fraction.Length{}); y.Sign() >= 0 {
			return at
		}
	}
	if right, err := cutout.HeightOnCircle(Point{X: a.Centre.Y, Y: a.Centre.X}, a.Radius, at.Y, mark, snap); err == nil {
		if at.X.Less(a.Centre.X) {
			right = a.Centre.X.Mul(2).Sub(right)
		}
		at.X = right
	}
	return at
}

// arcAround returns the arc that a corner of the outline (hole -1) or of a hole stands for, nil for none, and whether
// those before and after it stand for the same.
func (p *Piece) arcAround(hole int, at Point) (a *Arc, within bool) {
	ring := p.Marks.rings()[hole+1]
	i := slices.Index(ring, at)
	if a = ArcAt(p.Marks.Arcs, at); a == nil || i < 0 {
		return a, false
	}
	n := len(ring)
	return a, ArcAt(p.Marks.Arcs, ring[(i+n-1)%n]) == a && ArcAt(p.Marks.Arcs, ring[(i+1)%n]) == a
}

// withinArc returns the middle of a starter hole in an arch, lowered to where the hole is within the arc: the corners
// that stand for the arc are a little outside. Beside its springing that is under the arc.
func (m *maker) withinArc(a *Arc, at Point, radius fraction.Length) Point {
	if a == nil {
		return at
	}
	if most, err := cutout.HeightOnCircle(a.Centre, a.Radius.Sub(radius), at.X, m.job.Mark, m.job.Mark); err == nil {
		at.Y = fraction.Min(at.Y, fraction.Max(most, a.Springs.Sub(radius)))
	}
	return at
}

// standsOn reports whether an edge of the piece lies on the arch: somewhere between the springings
// the piece is what comes first above their height.
func (m *maker) standsOn(p wall.Piece, a *wall.Arch) bool {
	for u, v := range p.Shape.Edges() {
		from, to := fraction.Max(u.X.Add(p.At.X), a.Springing.X), fraction.Min(v.X.Add(p.At.X), a.Springing.X.Add(a.Chord))
		if from.Less(to) && m.firstAbove(p.Panel, from.Add(to).Div(2), a.Springing.Y) == p.Number {
			return true
		}
	}
	return false
}

// firstAbove returns the number of a panel's piece that comes first at x above a height, 0 for none.
func (m *maker) firstAbove(panel int, x, height fraction.Length) (number int) {
	var lowest fraction.Length
	for _, p := range m.chosen.Layout.Pieces {
		if p.Panel != panel {
			continue
		}
		at := x.Sub(p.At.X)
		for u, v := range p.Shape.Edges() { // the piece lies to the left of each: above those that run to the right
			if !u.X.Less(v.X) || at.Less(u.X) || v.X.Less(at) {
				continue
			}
			y := fraction.Must(cutout.HeightAt(u, v, at)).Add(p.At.Y)
			if height.Less(y) && (number == 0 || y.Less(lowest)) {
				number, lowest = p.Number, y
			}
		}
	}
	return number
}

// CornerName is the name of a corner by its place, from 0, among those that are named: A … Z, AA, AB …
// It has letters alone, as pieces and the leaves of a book have figures.
func CornerName(i int) string {
	const letters = "ABCDEFGHJKMNPRSTUVWXYZ" // none that looks like a figure or another letter
	if i = max(i, 0); i < len(letters) {
		return letters[i : i+1]
	}
	return CornerName(i/len(letters)-1) + CornerName(i%len(letters))
}

// cornersOf returns the numbers of the corners along a way, or nil where a point of it is no corner or
// both ends are the same.
func cornersOf(piece *Piece, hole int, way cutout.Way) (numbers []int) {
	first := 0
	rings := piece.Marks.rings()
	for _, ring := range rings[:hole+1] {
		first += len(ring)
	}
	for _, at := range way {
		i := slices.Index(rings[hole+1], at)
		if i < 0 {
			return nil
		}
		numbers = append(numbers, first+i)
	}
	if numbers[0] == numbers[len(numbers)-1] {
		return nil
	}
	return numbers
}

// edges says whether the factory or the saw made the edges from which a piece is measured; of the edge
// of an offcut nobody knows.
func (m *maker) edges(piece *Piece) MarkEdges {
	for _, s := range m.chosen.Nest.Sheets {
		stock := m.job.Stock[s.Stock]
		kind := func(ofStock bool) EdgeKind {
			switch {
			case !ofStock:
				return SawnEdge
			case stock.Count != nil:
				return AnyEdge
			}
			return FactoryEdge
		}
		for _, p := range s.Placements {
			if p.Part != piece.Number {
				continue
			}
			width, inset, err := piece.Blank()
			left, lower := p.X.IsZero(), p.Y.IsZero()
			if p.Turned {
				left = p.X.Add(fraction.Must(width, err)) == stock.Width
				lower = p.Y.Add(piece.Height) == stock.Length
			}
			return MarkEdges{kind(left && inset.IsZero()), kind(lower)}
		}
	}
	return MarkEdges{}
}
