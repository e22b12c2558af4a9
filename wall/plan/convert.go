package plan

import (
	"slices"
	"sort"

	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

// Walls returns what is known of a valid job before it is planned: a plan without a panel, whose
// runs are the walls as they were taped, to be drawn.
func (j Job) Walls() (p Plan, err error) {
	defer fraction.Catch(&err)
	if err := j.Validate(); err != nil {
		return Plan{}, err
	}
	p = (&maker{job: j}).frame()
	for r := range j.Runs {
		p.Runs = append(p.Runs, j.wall(r))
	}
	return p, nil
}

// wall returns a run as it was taped.
func (j *Job) wall(r int) Run {
	taped := &j.Runs[r]
	run := Run{
		Name: taped.Name, Width: taped.Width, Limits: [2]fraction.Length{{}, taped.Width},
		Left: End{Kind: taped.Left.Kind, Lean: taped.Left.Lean}, Right: End{Kind: taped.Right.Kind, Lean: taped.Right.Lean},
		Outline: wallOutline(taped), Openings: []Opening{}, Keep: taped.Keep,
	}
	for _, o := range taped.Openings {
		run.Openings = append(run.Openings, Opening{Name: o.Name, Kind: o.Kind, Outline: o.Outline})
	}
	for _, in := range j.Installed {
		if in.Run == r {
			run.Installed = append(run.Installed, Installed{in.Left, in.Right, in.LeftPhase})
		}
	}
	for _, c := range j.Cooking {
		if c.Run == r {
			run.Cooking = append(run.Cooking, Clearance{c.From, c.To, c.Manual})
		}
	}
	return run
}

// runs returns the runs as laid out.
func (m *maker) runs() []Run {
	var out []Run
	for r, laid := range m.chosen.Layout.Runs {
		run := m.job.wall(r)
		if len(laid.Panels)+len(run.Installed) == 0 { // it stays bare
			run.Panels, run.StoryPole = []wall.Panel{}, []Mark{}
			out = append(out, run)
			continue
		}
		run.Limits, run.SetOut = laid.Limits, SetOut{laid.SetOut, why(&laid)}
		run.Restarts, run.Panels = laid.Restarts, append([]wall.Panel{}, laid.Panels...)
		if c := laid.Corner; c != nil {
			run.CornerRight = &Corner{Kind: run.Right.Kind, Next: m.job.Runs[c.Next].Name, Mismatch: c.Mismatch}
			if c.Passes >= 0 {
				run.CornerRight.Passes, run.CornerRight.Butts = m.job.Runs[c.Passes].Name, m.job.Runs[c.Butts].Name
			}
		}
		for side, end := range []*End{&run.Left, &run.Right} {
			if end.Bare = laid.EndsBare[side]; !end.Bare {
				end.Cut = m.shown(laid.EndPhases[side], laid.EndLeans[side], []groove.Side{groove.KeepRight, groove.KeepLeft}[side])
			}
		}
		run.StoryPole = m.storyPole(r, &run)
		run.Trim.Bottom, _ = m.job.TrimOf(r, wall.BottomJoint)
		run.Trim.Top, _ = m.job.TrimOf(r, wall.TopJoint)
		run.Trim.Casing, _ = m.job.TrimOf(r, wall.OpeningJoint)
		out = append(out, run)
	}
	return out
}

// why returns the reason of a setting-out.
func why(laid *wall.RunLayout) Why {
	switch left, right := laid.EndsSeen[0], laid.EndsSeen[1]; {
	case left && right:
		return BothSeen
	case left:
		return LeftSeen
	case right:
		return RightSeen
	}
	return NeitherSeen
}

// wallOutline returns the shape of the wall as taped, with its leaning ends.
func wallOutline(run *wall.Run) []Point {
	var lower, upper []Point
	for _, h := range run.Heights {
		lower, upper = append(lower, Point{X: h.At, Y: h.Bottom}), append(upper, Point{X: h.At, Y: h.Top})
	}
	last := len(upper) - 1
	upper[0].X, upper[last].X = upper[0].X.Add(run.Left.Lean), upper[last].X.Add(run.Right.Lean)
	slices.Reverse(upper)
	return slices.Compact(append(slices.Compact(lower), upper...))
}

// Stairs returns how high the steps at the foot of the wall are together where they are stairs: two or more, all up or
// all down. It is 0 where there are none.
func (r Run) Stairs() fraction.Length { return stairs(r.Outline, r.Width) }

// stairs is [Run.Stairs] of an outline, which goes along the foot first, and its width.
func stairs(outline []Point, width fraction.Length) (high fraction.Length) {
	ups, downs := 0, 0
	for i := 1; i < len(outline) && !outline[i].X.Less(outline[i-1].X); i++ {
		if rise := outline[i].Y.Sub(outline[i-1].Y); outline[i].X == outline[i-1].X && outline[i].X.Less(width) {
			high, ups, downs = high.Add(rise), ups+max(0, rise.Sign()), downs+max(0, -rise.Sign())
		}
	}
	if max(ups, downs) < 2 || min(ups, downs) > 0 {
		return fraction.Length{}
	}
	return high.Abs()
}

// storyPole returns running marks from the left end of the run.
func (m *maker) storyPole(r int, run *Run) []Mark {
	marks := []Mark{{At: run.Limits[0], Kind: PanelsStart}, {At: run.Limits[1], Kind: PanelsStop}}
	if o := run.SetOut.Origin; m.job.Profile.Pitch().Sign() > 0 && !o.Less(run.Limits[0]) && !run.Limits[1].Less(o) {
		marks = append(marks, Mark{At: o, Kind: RepeatStarts})
	}
	edge := func(mark Mark) {
		if mark.At != run.Limits[0] && mark.At != run.Limits[1] {
			marks = append(marks, mark)
		}
	}
	for i, p := range run.Panels {
		right := Mark{At: p.Right, Kind: PanelRight, Panel: p.Number}
		if i+1 < len(run.Panels) && run.Panels[i+1].Left == p.Right { // no gap between them
			right.Kind, right.Next = PanelsMeet, run.Panels[i+1].Number
		}
		if i == 0 || run.Panels[i-1].Right != p.Left {
			edge(Mark{At: p.Left, Kind: PanelLeft, Panel: p.Number})
		}
		edge(right)
	}
	for _, p := range run.Installed {
		edge(Mark{At: p.Left, Kind: InstalledLeft})
		edge(Mark{At: p.Right, Kind: InstalledRight})
	}
	taped := &m.job.Runs[r]
	for _, o := range taped.Openings {
		lo, hi := o.Bounds()
		marks = append(marks, Mark{At: lo.X, Kind: OpeningLeft, Opening: o.Name}, Mark{At: hi.X, Kind: OpeningRight, Opening: o.Name})
	}
	for i, h := range taped.Heights {
		if i > 0 && h.At == taped.Heights[i-1].At {
			marks = append(marks, Mark{At: h.At, Kind: StepSide})
		}
	}
	sort.SliceStable(marks, func(i, j int) bool { return marks[i].At.Less(marks[j].At) })
	return meetInstalled(marks)
}

// meetInstalled makes one mark of the edges of two panels at one place, of which one or both are on the
// wall already.
func meetInstalled(marks []Mark) (out []Mark) {
	for _, m := range marks {
		right := slices.IndexFunc(out, func(o Mark) bool {
			return o.At == m.At && (o.Kind == InstalledRight || o.Kind == InstalledLeft || o.Kind == PanelLeft || o.Kind == PanelRight)
		})
		if right >= 0 && (m.Kind == InstalledLeft || m.Kind == InstalledRight) {
			out[right].Kind = InstalledMeet
			continue
		}
		out = append(out, m)
	}
	return out
}

// bare returns a piece without its marks.
func (m *maker) bare(p wall.Piece) Piece {
	_, hi := p.Shape.Bounds()
	piece := Piece{
		Number: p.Number, Label: p.Label, Run: m.job.Runs[p.Run].Name, Panel: p.Panel,
		At: p.At, Width: hi.X, Height: hi.Y, LeftPhase: p.LeftPhase,
		Outline: p.Shape.Outline(), Holes: []Hole{}, Closing: p.Closing, Scribe: p.Scribe, Weak: []Weak{},
	}
	for i, hole := range p.Shape.Holes() {
		piece.Holes = append(piece.Holes, Hole{Opening: p.Holes[i], Outline: hole})
	}
	return piece
}

// pieces returns the pieces with their marks.
func (m *maker) pieces() []Piece {
	out := []Piece{}
	for _, p := range m.chosen.Layout.Pieces {
		piece := m.bare(p)
		m.mark(&piece, p)
		out = append(out, piece)
	}
	return out
}

// sheets returns the sheets to saw for the pieces of a plan.
func (m *maker) sheets(made Plan) []Sheet {
	out := []Sheet{}
	for i, s := range m.chosen.Nest.Sheets {
		sheet := Sheet{Number: i + 1, Stock: m.job.Stock[s.Stock].Name, Placements: append([]nest.Placement{}, s.Placements...),
			Offcuts: append([]nest.Offcut{}, s.Offcuts...)}
		places := map[int]rect{}
		for _, p := range s.Placements {
			piece, _ := made.Piece(p.Part)
			places[p.Part] = made.placed(piece, p)
		}
		sheet.Cuts = cutList(made.closeLast(sheet, s.Cuts), places, made.Saw)
		out = append(out, sheet)
	}
	return out
}
