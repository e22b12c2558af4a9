package drawing

import (
	"fmt"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

const (
	endRepeats = 2     // whole repeats of the pattern that a drawing of an end shows
	endFace    = 20.0  // ink of the face that is shown
	endWide    = 262.0 // ink that the shown board takes
	endLane    = 56.0  // for what lies past the end
)

// tip is what is shown of the panelling at one end of a run.
type tip struct {
	run      plan.Run
	right    bool
	panel    wall.Panel      // the last one
	at       string          // its path
	from, to fraction.Length // what is shown of it, on the run
	shown    []stripe
}

// tip returns what lies within a length of one end of run i; nothing is shown where it has no
// panels. Boards are shown over their joints.
func (c *canvas) tip(i int, right bool, most fraction.Length) tip {
	run := c.plan.Runs[i]
	t := tip{run: run, right: right}
	n, profile := 0, c.plan.Profile
	if len(run.Panels) == 0 {
		return t
	}
	if right {
		n = len(run.Panels) - 1
	}
	panel := run.Panels[n]
	t.panel, t.at = panel, ref("runs[%d].panels[%d].", i, n)
	whole := panel.Right.Sub(panel.Left)
	if profile.Boards {
		whole = run.Limits[1].Sub(run.Limits[0])
	}
	span := fraction.Min(most, whole)
	t.from, t.to = panel.Left, panel.Left.Add(span)
	phase := panel.LeftPhase
	if right && profile.Pitch.Sign() > 0 {
		t.from, t.to, phase = panel.Right.Sub(span), panel.Right, panel.RightPhase.Sub(span).Mod(profile.Pitch)
	}
	t.shown = stripes(profile, t.from, t.to, phase)
	return t
}

// mitred reports whether the end of the run at the left or the right is an outside corner.
func mitred(run plan.Run, right bool) bool {
	return !right && run.Left.Kind == wall.OutsideCorner || right && run.Right.Kind == wall.OutsideCorner
}

// section draws the section of what is shown, a thickness of ink deep: put places what lies so far
// along the run, in ink, and so deep behind the face. A mitred end is narrower at the back. The
// joints of boards show a tongue on the side toward which one works; its size is none of the plan's.
func (c *canvas) section(t tip, thick float64, along func(fraction.Length) float64, put func(along, deep float64) complex128) {
	path := ""
	to := func(command string, along, deep float64) {
		p := put(along, deep)
		path += pen(command, real(p), imag(p))
	}
	first, last := along(t.from), along(t.to)
	back := [2]float64{first, last}
	if mitred(t.run, t.right) && t.right {
		back[1] -= thick
	} else if mitred(t.run, t.right) {
		back[0] += thick
	}
	deep := func(s stripe) float64 {
		if of := c.plan.Profile.Thickness.Float64(); of > 0 && s.Kind != groove.Flat {
			return max(min(3, thick/3), min(.8, s.Depth.Float64()/of)*thick)
		}
		return 0
	}
	to("M", back[0], thick)
	for _, s := range t.shown {
		x0, x1, d := along(fraction.Max(s.left, t.from)), along(fraction.Min(s.right, t.to)), deep(s)
		to("L", x0, 0)
		to("L", x0, d)
		if s.Kind == groove.Bead { // a round between two quirks
			quirk := min(1.5, (x1-x0)/4)
			to("L", x0+quirk, d)
			to("Q", (x0+x1)/2, -d)
			to(" ", x1-quirk, d)
		}
		to("L", x1, d)
		to("L", x1, 0)
	}
	to("L", back[1], thick)
	c.stroke("tag", path, "Z")
	way := thick / 3
	if t.run.SetOut.Direction == wall.Left {
		way = -way
	}
	for n, s := range t.shown {
		if n > 0 && s.index == 0 && c.plan.Profile.Boards {
			x := along(s.left)
			path = ""
			to("M", x, deep(s))
			for _, p := range [][2]float64{{0, thick / 3}, {way, thick / 3}, {way, thick * 2 / 3}, {0, thick * 2 / 3}, {0, thick}} {
				to("L", x+p[0], p[1])
			}
			c.stroke("edge", path)
		}
	}
}

// endDrawing is an end of a run drawn large, so that one sees what is whole and what is cut.
type endDrawing struct {
	canvas
	tip
	path  string  // of the run in the plan, with a full stop
	thick float64 // ink of the board's thickness
}

// End draws one end of run i of a plan large: the face of its last panel, the section under it and
// the width of each feature. A run without panels has none.
func End(p plan.Plan, i int, right bool) (Picture, error) {
	return draw(halfInk, fault.Of("Runs"), i, len(p.Runs), func(float64) *Picture {
		run := p.Runs[i]
		side, heading, end := "left", "Left end", run.Left
		if right {
			side, heading, end = "right", "Right end", run.Right
		}
		d := &endDrawing{path: ref("runs[%d].", i)}
		d.canvas = newCanvas(p, halfInk, ref("run-%d-%s-end", i+1, side), fmt.Sprintf("The %s end of %s, large", side, run.Name))
		cut := CutName(d.tape, end.Cut)
		d.desc("Face and section. %s: %s.", end.Kind, cut)
		if d.tip = d.canvas.tip(i, right, p.Profile.Pitch.Mul(endRepeats)); len(d.shown) == 0 {
			return nil
		}
		d.lay()
		text := line{heading}
		if cut != "" {
			text = line{heading + ": ", figure{clip(cut, halfInk-100, typeSize), d.path + side + ".cut"}}
		}
		text.write(&d.node, "bold", d.Width/2, 15, "middle")
		d.face()
		d.edge()
		d.sizes()
		return d.Picture
	})
}

// lay chooses the scale.
func (d *endDrawing) lay() {
	d.left = endLane // the end of the board stands where the lane begins
	if d.right {
		d.left = halfInk - endLane - endWide
	}
	d.scale = endWide / d.to.Sub(d.from).Float64()
	d.thick = max(8, min(26, d.plan.Profile.Thickness.Float64()*d.scale))
	d.top, d.x0 = 42, d.from.Float64()
}

// size adds up the width of a feature; nil where the drawing breaks off within it.
func (d *endDrawing) size(s stripe) (terms []term) {
	width := func(i int, sign func(fraction.Length, string) term) {
		terms = append(terms, sign(d.plan.Profile.Features[i].Width, ref("profile.features[%d].width", i)))
	}
	switch cutLeft, cutRight := s.left.Less(d.from), d.to.Less(s.right); {
	case !cutLeft && !cutRight:
		width(s.index, plus)
	case cutLeft && !cutRight && !d.right: // up to its right edge, less the phase
		for i := range s.index + 1 {
			width(i, plus)
		}
		terms = append(terms, minus(d.panel.LeftPhase, d.at+"left_phase"))
	case cutRight && !cutLeft && d.right: // from its left edge up to the phase
		terms = append(terms, plus(d.panel.RightPhase, d.at+"right_phase"))
		for i := range s.index {
			width(i, minus)
		}
	}
	return terms
}

// sides are the ink x of what is shown of a feature.
func (d *endDrawing) sides(s stripe) (x0, x1 float64) {
	return d.x(fraction.Max(s.left, d.from)), d.x(fraction.Min(s.right, d.to))
}

// face draws the face, under it the section with its beads and grooves, and the wall behind, which
// ends at an outside corner.
func (d *endDrawing) face() {
	first, last := d.x(d.from), d.x(d.to)
	d.rect(box{first, d.top, last - first, endFace}, "class", "board")
	for _, s := range d.shown {
		if s.Kind != groove.Flat {
			x0, x1 := d.sides(s)
			d.rect(box{x0, d.top, x1 - x0, endFace}, "class", s.Kind.String())
		}
	}
	d.rect(box{first, d.top, last - first, endFace}, "class", "edge")
	face := d.top + endFace + 8
	back := face + d.thick
	d.section(d.tip, d.thick, d.x, func(along, deep float64) complex128 { return complex(along, face+deep) })
	from, to := 6.0, d.Width-6
	if mitred(d.run, d.right) && d.right {
		to = last - d.thick
	} else if mitred(d.run, d.right) {
		from = first + d.thick
	}
	d.rect(box{from, back, to - from, 7}, "fill", d.hatch("wall", "hatch", 5, 45))
	d.stroke("edge", "M", from, back, "H", to)
}

// edge marks the end of the wall and how far the board stays from it.
func (d *endDrawing) edge() {
	at, limit, x, anchor := zero, d.run.Limits[0], 6.0, "start"
	gap := d.length(limit, d.path+"limits[0]")
	if d.right {
		at, limit, x, anchor = d.run.Width, d.run.Limits[1], d.Width-6, "end"
		gap = d.canvas.sum(plus(at, d.path+"width"), minus(limit, d.path+"limits[1]"))
	}
	edge := d.x(at)
	if edge < 6 || edge > d.Width-6 || limit == at || mitred(d.run, d.right) {
		return
	}
	d.stroke("start", "M", edge, d.top-5, "V", d.top+endFace+8+d.thick)
	text := line{"upright line: end of the wall"}
	if at.Less(limit) != d.right {
		text = append(text, ", ", gap, " off")
	}
	text.write(&d.node, "soft", x, d.top-9, anchor)
}

// sizes writes the width of each feature under the section, and its kind.
func (d *endDrawing) sizes() {
	base := d.top + endFace + d.thick + 26
	var all []stop
	for _, s := range d.shown {
		terms := d.size(s)
		if terms == nil {
			continue
		}
		x0, x1 := d.sides(s)
		d.stroke("pole", "M", x0, base-4, "v8M", x0, base, "H", x1, "M", x1, base-4, "v8")
		all = append(all, stop{text: line{d.canvas.sum(terms...), " " + s.Kind.String()}, ink: (x0 + x1) / 2})
	}
	d.Height = base + 15 + d.hang(all, "", typeSize, 8, d.Width-8, base+15, func(s stop) {
		d.stroke("lead", "M", s.ink, base+2, "L", s.spot, base+12)
	}) + 6
}
