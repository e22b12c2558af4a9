package plan

import (
	"fmt"

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

// work returns the quantities that the take-off of a candidate reckons with.
func (m *maker) work(c *choice.Choice) finish.Work {
	j := &m.job
	w := finish.Work{Units: j.Units, Profile: j.Room.Profile, Cooking: len(j.Cooking) > 0, Built: j.Built}
	for _, p := range c.Layout.Pieces {
		_, hi := p.Shape.Bounds()
		run := j.Room.Runs[p.Run]
		w.Face = w.Face.Add(fraction.Must(p.Shape.Area()))
		w.Edges = w.Edges.Add(p.EdgeLength())
		w.Pieces = append(w.Pieces, finish.Piece{Width: hi.X, Height: hi.Y, OpeningEdges: m.openingEdges(&p)})
		w.Highest = fraction.Max(w.Highest, p.At.Y.Add(hi.Y))
		panel := panelOf(&c.Layout, p.Run, p.Panel)
		if p.Closing {
			w.Closing = append(w.Closing, p.Label)
			continue
		}
		w.Fitting = append(w.Fitting, fmt.Sprintf("piece %s on %s, %s to %s", p.Label, run.Name, m.tape().Format(panel.Left), m.tape().Format(panel.Right)))
	}
	for _, joint := range c.Layout.Joints {
		kind, sealed := jointKinds[joint.Kind]
		if !sealed {
			continue
		}
		w.Joints = append(w.Joints, finish.Joint{Kind: kind, Where: j.Room.Runs[joint.Run].Name, Length: joint.Length, Gap: joint.Gap, Grooves: joint.Kind == wall.BottomJoint})
		end := ""
		switch joint.Kind {
		case wall.EndJoint:
			end = "end of " + j.Room.Runs[joint.Run].Name
		case wall.MitreJoint:
			end = "outside corner of " + j.Room.Runs[joint.Run].Name
		}
		if end != "" && joint.Seen {
			w.Ends = append(w.Ends, finish.End{Name: end, Length: joint.Length, Corner: joint.Kind == wall.MitreJoint})
		}
	}
	for i, laid := range c.Layout.Runs {
		if corner := laid.Corner; corner != nil && j.Room.Runs[i].Right.Kind == wall.OutsideCorner {
			w.Mitred = append(w.Mitred, fmt.Sprintf("the corner of %s and %s", j.Room.Runs[i].Name, j.Room.Runs[corner.Next].Name))
		}
	}
	for i, run := range j.Room.Runs {
		if top := highest(&run); i == 0 || top.Less(w.Low) {
			w.Low = top
		}
		w.Width = w.Width.Add(run.Width)
		for _, o := range run.Openings {
			lo, hi := o.Bounds()
			if o.Kind == wall.Box {
				w.Boxes = append(w.Boxes, finish.Box{Name: o.Name, Gangs: o.DeviceGangs()})
				continue
			}
			up := fraction.Min(hi.Y, highest(&run)).Sub(fraction.Max(lo.Y, lowest(&run)))
			w.Sides = w.Sides.Add(fraction.Max(up, fraction.Length{}).Mul(2))
		}
	}
	for i, s := range j.Room.Stock {
		used := 0
		for _, sheet := range c.Nest.Sheets {
			if sheet.Stock == i {
				used++
			}
		}
		if used > 0 {
			row := finish.SheetRow{Name: s.Name, Count: used, Width: s.Width, Length: s.Length}
			if price, known := s.Price.Decimal(); known {
				row.Price = &price
			}
			w.Sheets = append(w.Sheets, row)
		}
	}
	return w
}

// highest returns the highest point of a run's wall.
func highest(run *wall.Run) fraction.Length {
	var top fraction.Length
	for _, h := range run.Heights {
		top = fraction.Max(top, h.Top)
	}
	return top
}

// lowest returns the lowest point of a run's wall.
func lowest(run *wall.Run) fraction.Length {
	bottom := run.Heights[0].Bottom
	for _, h := range run.Heights {
		bottom = fraction.Min(bottom, h.Bottom)
	}
	return bottom
}

// panelOf returns the panel of a run by its number.
func panelOf(l *wall.Layout, run, number int) wall.Panel {
	for _, p := range l.Runs[run].Panels {
		if p.Number == number {
			return p
		}
	}
	return wall.Panel{}
}

// openingEdges returns the edges of a piece that lie along windows and other
// openings, all but boxes.
func (m *maker) openingEdges(p *wall.Piece) fraction.Length {
	var sum fraction.Length
	holes := p.Shape.Holes()
	for i, name := range p.Holes {
		for _, o := range m.job.Room.Runs[p.Run].Openings {
			if o.Name == name && o.Kind != wall.Box {
				sum = sum.Add(wall.RingLength(holes[i]))
			}
		}
	}
	return sum
}

// warnings returns what should be measured again or thought over.
func (m *maker) warnings(pieces []Piece) ([]warning.Warning, error) {
	doubts, err := m.job.Doubts()
	out := append([]warning.Warning{}, doubts...)
	least := m.job.Room.Profile.Pitch().Scale(m.job.Room.Priorities.LeastPanel)
	for r, run := range m.layout.Runs {
		if m.job.Room.Profile.Boards {
			break
		}
		for _, p := range run.Panels {
			if width := p.Right.Sub(p.Left); width.Less(least) {
				out = append(out, warning.Warning{Path: fault.Of("Runs", r), Kind: NarrowPanel, Lengths: []fraction.Length{width}, Counts: []int{p.Number}})
			}
		}
	}
	if m.layout.Broken > 0 {
		out = append(out, warning.Warning{Path: fault.Of("Runs"), Kind: RulesBroken, Counts: []int{m.layout.Broken}})
	}
	for i, p := range pieces {
		for k, w := range p.Weak {
			out = append(out, warning.Warning{Path: fault.Of("Pieces", i, "Weak", k), Kind: WeakSpot,
				Names: []string{p.Label, w.Kind.String(), w.WayOut.String()}, Lengths: []fraction.Length{w.Width, w.At[0], w.At[1]}})
		}
	}
	return out, err
}
