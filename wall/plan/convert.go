package plan

import (
	"cmp"
	"fmt"
	"slices"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

func points(ring []cutout.Point) []Point {
	out := []Point{}
	for _, p := range ring {
		out = append(out, Point{p.X, p.Y})
	}
	return out
}

// runs returns the runs as laid out.
func (m *maker) runs() []Run {
	var out []Run
	for r, laid := range m.layout.Runs {
		taped := m.job.Room.Runs[r]
		run := Run{
			Name: taped.Name, Width: taped.Width, Limits: laid.Limits,
			Left: End{Kind: taped.Left.Kind.String(), Lean: taped.Left.Lean}, Right: End{Kind: taped.Right.Kind.String(), Lean: taped.Right.Lean},
			SetOut:  SetOut{From: laid.SetOut.From, Direction: laid.SetOut.Direction, Origin: laid.SetOut.Origin},
			Outline: wallOutline(&taped), Openings: []Opening{}, Panels: []Panel{},
		}
		for _, o := range taped.Openings {
			run.Openings = append(run.Openings, Opening{Name: o.Name, Kind: o.Kind.String(), Outline: points(o.Outline)})
		}
		for _, s := range laid.Restarts {
			run.Restarts = append(run.Restarts, Restart(s))
		}
		if c := laid.Corner; c != nil {
			run.CornerRight = &Corner{Kind: run.Right.Kind, Next: m.job.Room.Runs[c.Next].Name, Mismatch: c.Mismatch}
			if c.Passes >= 0 {
				run.CornerRight.Passes, run.CornerRight.Butts = m.job.Room.Runs[c.Passes].Name, m.job.Room.Runs[c.Butts].Name
			}
		}
		for _, p := range laid.Panels {
			run.Panels = append(run.Panels, Panel(p))
		}
		for _, in := range m.job.Room.Installed {
			if in.Run == r {
				run.Installed = append(run.Installed, Installed{in.Left, in.Right, in.LeftPhase})
			}
		}
		run.Left.Cut, run.Right.Cut = m.describe(laid.EndPhases[0], groove.KeepRight), m.describe(laid.EndPhases[1], groove.KeepLeft)
		run.SetOut.Why = why(&taped, &run)
		run.StoryPole = m.storyPole(r, &run)
		out = append(out, run)
	}
	return out
}

// why tells the reason of a setting-out by what is to be seen at both ends.
func why(taped *wall.Run, run *Run) string {
	seen := func(e wall.End) bool {
		if e.Prominence != nil && e.Kind != wall.InsideCorner {
			return e.Prominence.Sign() > 0
		}
		return e.Kind == wall.Exposed || e.Kind == wall.OutsideCorner
	}
	left := fmt.Sprintf("%s at the left end (%s)", run.Left.Cut, run.Left.Kind)
	right := fmt.Sprintf("%s at the right end (%s)", run.Right.Cut, run.Right.Kind)
	hidden := func(e wall.End) string {
		if e.Kind == wall.InsideCorner {
			return "in the corner: "
		}
		return "out of sight: "
	}
	switch {
	case seen(taped.Left) && seen(taped.Right):
		return "seen: " + left + " and " + right
	case seen(taped.Left):
		return "seen: " + left + "; " + hidden(taped.Right) + right
	case seen(taped.Right):
		return "seen: " + right + "; " + hidden(taped.Left) + left
	}
	return "neither end is seen: " + left + ", " + right
}

// wallOutline returns the shape of the wall as taped, with its leaning ends.
func wallOutline(run *wall.Run) []Point {
	var lower, upper []Point
	last := len(run.Heights) - 1
	for i, h := range run.Heights {
		lower = append(lower, Point{h.At, h.Bottom})
		x := h.At
		if i == 0 {
			x = x.Add(run.Left.Lean)
		}
		if i == last {
			x = x.Add(run.Right.Lean)
		}
		upper = append(upper, Point{x, h.Top})
	}
	slices.Reverse(upper)
	return slices.Compact(append(slices.Compact(lower), upper...))
}

// storyPole returns running marks from the left end of the run.
func (m *maker) storyPole(r int, run *Run) []Mark {
	boards := m.job.Room.Profile.Boards
	what, joint := wordFor(boards, "panel", "board"), wordFor(boards, "seam of panels", "joint of")
	marks := []Mark{
		{run.Limits[0], what + "s start"}, {run.Limits[1], what + "s stop"},
	}
	if o := run.SetOut.Origin; !o.Less(run.Limits[0]) && !run.Limits[1].Less(o) {
		marks = append(marks, Mark{o, "a repeat starts"})
	}
	edge := func(at fraction.Length, edge string) {
		if at != run.Limits[0] && at != run.Limits[1] {
			marks = append(marks, Mark{at, edge})
		}
	}
	for i, p := range run.Panels {
		if i == 0 || run.Panels[i-1].Right != p.Left {
			edge(p.Left, fmt.Sprintf("%s %d, left", what, p.Number))
		}
		if i+1 < len(run.Panels) && run.Panels[i+1].Left == p.Right { // no gap between them
			edge(p.Right, fmt.Sprintf("%s %d and %d", joint, p.Number, run.Panels[i+1].Number))
		} else {
			edge(p.Right, fmt.Sprintf("%s %d, right", what, p.Number))
		}
	}
	for _, p := range run.Installed {
		edge(p.Left, what+" on the wall, left")
		edge(p.Right, what+" on the wall, right")
	}
	for _, o := range run.Openings {
		lo, hi := o.Outline[0][0], o.Outline[0][0]
		for _, p := range o.Outline {
			lo, hi = fraction.Min(lo, p[0]), fraction.Max(hi, p[0])
		}
		marks = append(marks, Mark{lo, o.Name + ", left"}, Mark{hi, o.Name + ", right"})
	}
	for i, h := range m.job.Room.Runs[r].Heights {
		if i > 0 && h.At == m.job.Room.Runs[r].Heights[i-1].At {
			marks = append(marks, Mark{h.At, "step"})
		}
	}
	slices.SortStableFunc(marks, func(a, b Mark) int { return cmp.Or(a.At.Compare(b.At)) })
	return marks
}

// pieces returns the pieces with their marks.
func (m *maker) pieces() []Piece {
	out := []Piece{}
	for _, p := range m.layout.Pieces {
		_, hi := p.Shape.Bounds()
		piece := Piece{
			Number: p.Number, Label: p.Label, Run: m.job.Room.Runs[p.Run].Name, Panel: p.Panel,
			At: Point{p.At.X, p.At.Y}, Width: hi.X, Height: hi.Y, LeftPhase: p.LeftPhase,
			Outline: points(p.Shape.Outline), Holes: []Hole{}, Closing: p.Closing, Weak: []Weak{},
		}
		for i, hole := range p.Shape.Holes {
			piece.Holes = append(piece.Holes, Hole{Opening: p.Holes[i], Outline: points(hole)})
		}
		m.mark(&piece, p)
		out = append(out, piece)
	}
	return out
}

// sheets returns the sheets to saw.
func (m *maker) sheets() []Sheet {
	out := []Sheet{}
	for i, s := range m.nest.Sheets {
		sheet := Sheet{Number: i + 1, Stock: m.job.Room.Stock[s.Stock].Name, Placements: []Placement{}, Cuts: slices.Concat([]nest.Cut{}, s.Cuts), Offcuts: slices.Concat([]nest.Offcut{}, s.Offcuts)}
		for _, p := range s.Placements {
			sheet.Placements = append(sheet.Placements, Placement{Piece: p.Part, X: p.X, Y: p.Y, Turned: p.Turned})
		}
		out = append(out, sheet)
	}
	return out
}
