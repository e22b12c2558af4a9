package plan

import (
	"slices"
	"strconv"

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
	cuttings := fraction.Must(p.Shape.Cuttings(m.job.Bit, m.job.Mark))
	notches := 0
	for _, c := range cuttings {
		if c.Kind == cutout.NotchCut {
			notches++
		}
	}
	number := 0
	for _, c := range cuttings {
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
			cutting.Drill = append(cutting.Drill, len(piece.Marks.Drill))
			piece.Marks.Drill = append(piece.Marks.Drill, Drill{Waste: cutting.Waste, At: s.At, Back: s.Back, Diameter: s.Diameter})
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
		centre := Point{X: middle.X.Sub(p.At.X), Y: middle.Y.Sub(p.At.Y)}
		out = append(out, Arc{Opening: o.Name, Centre: centre, Back: Point{X: piece.Width.Sub(centre.X), Y: centre.Y}, Radius: radius.Add(m.job.Gaps.Around(o.Kind)), Springs: o.Arch.Springing.Y.Sub(p.At.Y)})
	}
	return out
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

// CornerName is the name of a corner in the table of a piece's marks, counted from 0 through the
// outline and then through each hole: A … Z, A1 … Z1, A2 …
func CornerName(i int) string {
	name := string(rune('A' + i%26))
	if i >= 26 {
		name += strconv.Itoa(i / 26)
	}
	return name
}

// cornersOf returns the numbers of the corners at both ends of a way, or nil where one is no corner.
func cornersOf(piece *Piece, hole int, way cutout.Way) []int {
	corners, first := piece.Marks.Face, 0
	if hole >= 0 {
		first = len(corners)
		for _, h := range piece.Marks.Holes[:hole] {
			first += len(h.Face)
		}
		corners = piece.Marks.Holes[hole].Face
	}
	from, to := slices.Index(corners, way[0]), slices.Index(corners, way[len(way)-1])
	if from < 0 || to < 0 || from == to {
		return nil
	}
	return []int{first + from, first + to}
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
