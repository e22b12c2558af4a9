package plan

import (
	"cmp"
	"slices"

	"example.com/groovewright/cutout"
	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/warning"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/choice"
)

var jointKinds = map[wall.JointKind]finish.JointKind{
	wall.BottomJoint: finish.CounterLine, wall.TopJoint: finish.CabinetLine, wall.EndJoint: finish.EndJoint,
	wall.CornerJoint: finish.InsideCorner, wall.MitreJoint: finish.OutsideCorner, wall.StepJoint: finish.StepJoint,
	wall.OpeningJoint: finish.WindowJoint, wall.SeamJoint: finish.Seam,
}

// work returns the quantities of a choice, for its take-off.
func (m *maker) work(c *choice.Choice) finish.Work {
	j := &m.job
	w := finish.Work{Units: j.Units, Mark: j.Mark, Profile: j.Profile, Cooking: len(j.Cooking) > 0, Built: j.Built}
	for _, p := range c.Layout.Pieces {
		_, hi := p.Shape.Bounds()
		w.Face = w.Face.Add(fraction.Must(p.Shape.Area()))
		w.Edges = w.Edges.Add(p.Edges)
		w.Pieces = append(w.Pieces, finish.Piece{Width: hi.X, Height: hi.Y, Area: fraction.Must(p.Shape.Area()), OpeningEdges: p.OpeningEdges})
		w.Highest = fraction.Max(w.Highest, p.At.Y.Add(hi.Y))
		w.Fitting = append(w.Fitting, p.Label)
		if p.Closing {
			w.Closing = append(w.Closing, p.Label)
		}
	}
	for _, joint := range c.Layout.Joints {
		w.Mitred = w.Mitred || joint.Kind == wall.MitreJoint
		kind, sealed := jointKinds[joint.Kind]
		if !sealed {
			continue
		}
		trim, _ := j.TrimOf(joint.Run, joint.Kind)
		for _, o := range j.Runs[joint.Run].Openings {
			if o.Name == joint.Opening && !j.Cased(joint.Run, o) {
				trim = nil
			}
		}
		if trim != nil {
			parts := joint.Parts
			if parts == nil {
				parts = []fraction.Length{joint.Length}
			}
			for _, length := range parts {
				w.Covers = append(w.Covers, finish.Covering{Name: trim.Name, Along: cmp.Or(joint.Opening, j.Runs[joint.Run].Name), Length: length})
			}
		}
		w.Joints = append(w.Joints, finish.Joint{Kind: kind, Run: j.Runs[joint.Run].Name, Opening: joint.Opening, Length: joint.Length, Gap: joint.Gap,
			Grooves: joint.Kind == wall.BottomJoint, Hidden: trim != nil || joint.Kind == wall.EndJoint && !joint.Seen, Alone: joint.Alone})
		if joint.Seen {
			corner := joint.Kind == wall.MitreJoint
			w.Ends = append(w.Ends, finish.End{Run: j.Runs[joint.Run].Name, Length: joint.Length, Left: !corner && !joint.Right, Right: !corner && joint.Right, Corner: corner,
				Up: !corner && j.upAt(joint, c.Layout.Runs[joint.Run].Limits)})
		}
	}
	for i, run := range j.Runs {
		w.Up = w.Up.Add(c.Layout.Runs[i].Up)
		bottom, top := cutout.Bounds(wallOutline(&run))
		if i == 0 || top.Y.Less(w.Low) {
			w.Low = top.Y
		}
		w.Width = w.Width.Add(run.Width).Add(stairs(wallOutline(&run), run.Width))
		for _, o := range run.Openings {
			lo, hi := o.Bounds()
			if o.Kind == wall.Box {
				w.Boxes = append(w.Boxes, finish.Box{Name: o.Name, Gangs: o.DeviceGangs(j.Units), Up: j.behind(i, lo.X, hi.X)})
				continue
			}
			if j.behind(i, lo.X, hi.X) {
				continue
			}
			up := fraction.Min(hi.Y, top.Y).Sub(fraction.Max(lo.Y, bottom.Y))
			w.Sides = w.Sides.Add(fraction.Max(up, fraction.Length{}).Mul(2))
		}
	}
	for i, s := range j.Stock {
		if used := usedOf(c, i); used > 0 {
			w.Sheets = append(w.Sheets, finish.Sheet{Name: s.Name, Count: used, Width: s.Width, Length: s.Length, Price: s.Price, OnHand: s.Count != nil})
		}
	}
	return w
}

// behind reports whether one panel that is on the wall already spans a stretch of a run.
func (j *Job) behind(r int, from, to fraction.Length) bool {
	return slices.ContainsFunc(j.Installed, func(in wall.Installed) bool { return in.Run == r && !from.Less(in.Left) && !in.Right.Less(to) })
}

// upAt reports whether the panel at an end is on the wall already: the trim of that end was bought
// with it.
func (j *Job) upAt(end wall.Joint, limits [2]fraction.Length) bool {
	return slices.ContainsFunc(j.Installed, func(in wall.Installed) bool {
		return in.Run == end.Run && (!end.Right && in.Left.Compare(limits[0]) <= 0 || end.Right && in.Right.Compare(limits[1]) >= 0)
	})
}

// again returns what of a plan is on the wall and comes off for pieces to be fitted behind it, see [Plan.Behind], by the
// wall that it covers.
func (j *Job) again(p Plan) (all []finish.Piece) {
	seen := map[[2]int]bool{} // a panel may end in two corners
	for i, run := range p.Runs {
		if !p.Behind(i) {
			continue
		}
		right := run.CornerRight.Butts == run.Name
		butts, r := p.Run(run.CornerRight.Butts)
		panel, _ := butts.EndPanel(right)
		n := slices.IndexFunc(butts.Installed, func(in Installed) bool { return in.Left == panel.Left })
		if seen[[2]int{r, n}] {
			continue
		}
		seen[[2]int{r, n}] = true
		for _, part := range j.open(r, panel.Left, panel.Right) {
			lo, hi := part.Bounds()
			all = append(all, finish.Piece{Width: hi.X.Sub(lo.X), Height: hi.Y.Sub(lo.Y), Area: fraction.Must(part.Area())})
		}
	}
	return all
}

// open returns the wall of a run between two places without its openings.
func (j *Job) open(r int, from, to fraction.Length) []cutout.Shape {
	parts := fraction.Must(fraction.Must(cutout.NewShape(wallOutline(&j.Runs[r]))).Band(from, to))
	for _, o := range j.Runs[r].Openings {
		var left []cutout.Shape
		for _, p := range parts {
			left = append(left, fraction.Must(p.Minus(o.Outline))...)
		}
		parts = left
	}
	return parts
}

// usedOf counts the sheets of one kind of stock that a choice takes.
func usedOf(c *choice.Choice, stock int) (used int) {
	for _, sheet := range c.Nest.Sheets {
		if sheet.Stock == stock {
			used++
		}
	}
	return used
}

// warnings returns what should be measured again or thought over.
func (m *maker) warnings(made *Plan) []warning.Warning {
	out := append([]warning.Warning{}, m.job.doubts()...)
	least := m.job.Narrowest()
	for r, run := range m.chosen.Layout.Runs {
		for _, p := range run.Panels {
			if width := p.Right.Sub(p.Left); width.Less(least) && !m.job.Profile.Boards {
				out = append(out, warning.Warning{Path: fault.Of("Runs", r), Kind: NarrowPanel, Lengths: []fraction.Length{width}, Counts: []int{p.Number}})
			}
		}
	}
	for _, b := range m.chosen.Layout.Blemishes {
		if b.Kind != wall.Seam {
			continue
		}
		for _, i := range m.job.BoxesAt(b.Run, b.At) {
			run := &m.job.Runs[b.Run]
			out = append(out, warning.Warning{Path: fault.Of("Runs", b.Run, "Openings", i), Kind: SeamAtBox,
				Names: []string{run.Name, run.Openings[i].Name}, Lengths: []fraction.Length{b.At}})
		}
	}
	if broken := m.chosen.Layout.Broken; broken > 0 {
		out = append(out, warning.Warning{Path: fault.Of("Runs"), Kind: RulesBroken, Counts: []int{broken}})
	}
	for r, run := range made.Runs {
		for _, seam := range run.Seams {
			if seam.LapKept != nil && !*seam.LapKept {
				out = append(out, warning.Warning{Path: fault.Of("Runs", r), Kind: LapLost, Names: []string{run.Name}, Lengths: []fraction.Length{seam.At}})
			}
		}
	}
	for r, run := range made.Runs {
		if made.Behind(r) {
			out = append(out, warning.Warning{Path: fault.Of("Runs", r), Kind: ComesOff, Names: []string{run.CornerRight.Butts, run.CornerRight.Passes}})
		}
	}
	for i, p := range made.Pieces {
		if spare := fraction.Must(made.SpareWidth(p)); p.Closing && spare.Less(made.Scribe) {
			out = append(out, warning.Warning{Path: fault.Of("Pieces", i), Kind: LittleSpare,
				Names: []string{p.Label, made.ClosingEdge(p).String()}, Lengths: []fraction.Length{spare, made.Scribe}})
		}
		for k, w := range p.Weak {
			out = append(out, warning.Warning{Path: fault.Of("Pieces", i, "Weak", k), Kind: WeakSpot,
				Names: []string{p.Label, w.Kind.String(), w.WayOut.String()}, Lengths: []fraction.Length{w.Width, w.At.X, w.At.Y}})
		}
	}
	return out
}
