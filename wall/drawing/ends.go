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

// endDrawing is an end of a run drawn large, so that one sees what is whole and what is cut.
type endDrawing struct {
	canvas
	run   plan.Run
	path  string // of the run in the plan, with a full stop
	right bool
	panel wall.Panel      // the last one
	at    string          // its path
	from  fraction.Length // what is shown of it, on the run
	to    fraction.Length
	shown []stripe
	thick float64 // ink of the board's thickness
}

// End draws one end of run i of a plan large: the face of its last panel, the section under it and
// the width of each feature. A run without panels has none.
func End(p plan.Plan, i int, right bool) (Picture, error) {
	return draw(halfInk, fault.Of("Runs"), i, len(p.Runs), func(float64) *Picture {
		run := p.Runs[i]
		side, heading, end := "left", line{"Left end"}, run.Left
		if right {
			side, heading, end = "right", line{"Right end"}, run.Right
		}
		d := &endDrawing{run: run, path: ref("runs[%d].", i), right: right}
		d.canvas = newCanvas(p, halfInk, ref("run-%d-%s-end", i+1, side), fmt.Sprintf("The %s end of %s, large", side, run.Name))
		cut := CutName(d.tape, end.Cut)
		d.desc("Face and section. %s: %s.", end.Kind, cut)
		if d.lay(); len(d.shown) == 0 {
			return nil
		}
		if cut != "" {
			heading = append(heading, ": ", figure{clip(cut, halfInk-70, typeSize), d.path + side + ".cut"})
		}
		heading.write(&d.node, "bold", d.Width/2, 12, "middle")
		d.face()
		d.edge()
		d.sizes()
		return d.Picture
	})
}

// lay finds what the drawing shows and chooses the scale.
func (d *endDrawing) lay() {
	if len(d.run.Panels) == 0 {
		return
	}
	n, profile := 0, d.plan.Profile
	d.left = endLane // the end of the board stands where the lane begins
	if d.right {
		n, d.left = len(d.run.Panels)-1, halfInk-endLane-endWide
	}
	panel := d.run.Panels[n]
	d.panel, d.at = panel, d.path+ref("panels[%d].", n)
	span := fraction.Min(profile.Pitch.Mul(endRepeats), panel.Right.Sub(panel.Left))
	d.from, d.to = panel.Left, panel.Left.Add(span)
	phase := panel.LeftPhase
	if d.right && profile.Pitch.Sign() > 0 {
		d.from, d.to, phase = panel.Right.Sub(span), panel.Right, panel.RightPhase.Sub(span).Mod(profile.Pitch)
	}
	d.shown = stripes(profile, d.from, d.to, phase)
	d.scale = endWide / span.Float64()
	d.thick = max(8, min(24, profile.Thickness.Float64()*d.scale))
	d.top, d.x0 = 33, d.from.Float64()
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

// face draws the face and under it the section with its beads and grooves.
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
	path := pen("M", first, back)
	for _, s := range d.shown {
		path += d.section(s, face)
	}
	d.stroke("tag", path, "L", last, back, "Z")
	d.rect(box{6, back, d.Width - 12, 7}, "fill", d.hatch("wall", "hatch", 5, 45))
	d.stroke("edge", "M6 ", back, "H", d.Width-6)
}

// section is the upper line of the section of one feature; a bead is a round between two quirks.
func (d *endDrawing) section(s stripe, face float64) string {
	x0, x1 := d.sides(s)
	deep := 3.0
	if t := d.plan.Profile.Thickness.Float64(); t > 0 {
		deep = max(deep, min(.8, s.Depth.Float64()/t)*d.thick)
	}
	switch low := face + deep; s.Kind {
	case groove.Groove:
		return pen("L", x0, face, "L", x0, low, "L", x1, low, "L", x1, face)
	case groove.Bead:
		quirk := min(1.5, (x1-x0)/4)
		return pen("L", x0, face, "L", x0, low, "L", x0+quirk, low, "Q", (x0+x1)/2, face-deep, x1-quirk, low, "L", x1, low, "L", x1, face)
	}
	return pen("L", x0, face, "L", x1, face)
}

// edge marks the end of the wall and how far the board stays from it.
func (d *endDrawing) edge() {
	at, limit, x, anchor := zero, d.run.Limits[0], 6.0, "start"
	gap := d.length(limit, d.path+"limits[0]")
	if d.right {
		at, limit, x, anchor = d.run.Width, d.run.Limits[1], d.Width-6, "end"
		gap = d.sum(plus(at, d.path+"width"), minus(limit, d.path+"limits[1]"))
	}
	edge := d.x(at)
	if edge < 6 || edge > d.Width-6 || limit == at {
		return
	}
	d.stroke("start", "M", edge, d.top-5, "V", d.top+endFace+8+d.thick)
	text := line{"the wall ends at the upright line"}
	if at.Less(limit) != d.right {
		text = append(text, ", ", gap, " from the board")
	}
	text.write(&d.node, "small soft", x, d.top-8, anchor)
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
		all = append(all, stop{text: line{d.sum(terms...), " " + s.Kind.String()}, ink: (x0 + x1) / 2})
	}
	d.Height = base + 15 + d.hang(all, "small", smallSize, 8, d.Width-8, base+15, func(s stop) {
		d.stroke("lead", "M", s.ink, base+2, "L", s.spot, base+12)
	}) + 6
}
