package drawing

import (
	"fmt"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall/plan"
)

const (
	endRepeats = 2     // whole repeats of the pattern that a drawing of an end shows
	endFace    = 20.0  // ink of the face that is shown
	endWide    = 262.0 // ink that the shown board takes
	endLane    = 56.0  // for what lies past the end
)

// segment is one feature of the pattern near an end, or what is left of it.
type segment struct {
	feature groove.Feature
	left    fraction.Length // on the run
	right   fraction.Length
	size    line // its width; empty where the drawing breaks off within it
}

// endDrawing is an end of a run drawn large: the face, the section under it and
// the width of each feature, so that one sees what is whole and what is cut.
type endDrawing struct {
	scribe
	*Picture
	run   plan.Run
	index int
	panel int // index of the panel at this end
	right bool
	view
}

// End draws one end of run i of a plan large: the face of its last panel, the
// section under it and the width of each feature. A run without panels has none.
func End(p plan.Plan, i int, right bool) (Picture, error) {
	if i >= 0 && i < len(p.Runs) && (len(p.Runs[i].Panels) == 0 || p.Profile.Pitch.Sign() <= 0) {
		return Picture{}, &fault.Fault{Path: fault.Of("Runs", i, "Panels"), Want: "a panel with a pattern"}
	}
	return draw(halfInk, fault.Of("Runs"), i, len(p.Runs), func(float64) *Picture { return drawEnd(newScribe(p), i, right) })
}

// drawEnd returns the drawing of one end of run i, which has panels.
func drawEnd(s scribe, i int, right bool) *Picture {
	run := s.plan.Runs[i]
	d := &endDrawing{scribe: s, run: run, index: i, right: right}
	side, heading, end := "left", line{"Left end"}, run.Left
	if right {
		side, heading, end, d.panel = "right", line{"Right end"}, run.Right, len(run.Panels)-1
	}
	d.Picture = newPicture(fmt.Sprintf("run-%d-%s-end", i+1, side), fmt.Sprintf("The %s end of %s, large", side, run.Name))
	cut := CutName(d.tape, end.Cut)
	d.Desc = fmt.Sprintf("Face and section. %s: %s.", end.Kind, cut)
	d.Width = halfInk
	all := d.segments()
	d.lay(all)
	if cut != "" {
		heading = append(heading, ": ", word(clip(cut, halfInk-70, typeSize), ref("runs[%d].%s.cut", i, side)))
	}
	heading.write(&d.root, "bold", d.Width/2, 12, "middle")
	d.board(all)
	d.edge()
	d.sizes(all)
	return d.Picture
}

// segments lists the features from left to right that the drawing shows.
func (d *endDrawing) segments() []segment {
	panel, profile := d.run.Panels[d.panel], d.plan.Profile
	span := fraction.Min(profile.Pitch.Mul(endRepeats), panel.Right.Sub(panel.Left))
	path := ref("runs[%d].panels[%d].", d.index, d.panel)
	from, to, phase := panel.Left, panel.Left.Add(span), panel.LeftPhase
	if d.right {
		from, to, phase = panel.Right.Sub(span), panel.Right, panel.RightPhase.Sub(span).Mod(profile.Pitch)
	}
	var all []segment
	var before []term // the features before this one in its repeat
	for at, i := from.Sub(phase), 0; at.Less(to); i++ {
		n := i % len(profile.Features)
		if n == 0 {
			before = nil
		}
		feature := profile.Features[n]
		end := at.Add(feature.Width)
		mine := plus(feature.Width, ref("profile.features[%d].width", n))
		if from.Less(end) {
			s := segment{feature: feature, left: fraction.Max(at, from), right: fraction.Min(end, to)}
			cutLeft, cutRight := at.Less(from), to.Less(end)
			switch {
			case !cutLeft && !cutRight:
				s.size = line{d.sum(mine)}
			case cutLeft && !cutRight && !d.right:
				s.size = line{d.sum(append(append([]term{}, before...), mine, minus(panel.LeftPhase, path+"left_phase"))...)}
			case cutRight && !cutLeft && d.right:
				s.size = line{d.sum(append([]term{plus(panel.RightPhase, path+"right_phase")}, negated(before)...)...)}
			}
			all = append(all, s)
		}
		before = append(before, mine)
		if !at.Less(end) && n == len(profile.Features)-1 && i >= len(profile.Features)*2 {
			break // features without width
		}
		at = end
	}
	return all
}

// negated takes terms away instead of adding them.
func negated(terms []term) []term {
	var all []term
	for _, t := range terms {
		t.minus = !t.minus
		all = append(all, t)
	}
	return all
}

// lay chooses the scale; the end of the board stands where the lane begins.
func (d *endDrawing) lay(all []segment) {
	first, last := all[0].left, all[len(all)-1].right
	d.scale = endWide / last.Sub(first).Float64()
	d.top, d.x0 = 33, first.Float64()
	d.left = endLane
	if d.right {
		d.left = halfInk - endLane - endWide
	}
}

// board draws the face and under it the section with its beads and grooves.
func (d *endDrawing) board(all []segment) {
	first, last := d.x(all[0].left), d.x(all[len(all)-1].right)
	d.add("rect", "class", "board", "x", first, "y", d.top, "width", last-first, "height", endFace)
	for _, s := range all {
		if s.feature.Kind != groove.Flat {
			d.add("rect", "class", s.feature.Kind, "x", d.x(s.left), "y", d.top, "width", d.x(s.right)-d.x(s.left), "height", endFace)
		}
	}
	d.add("rect", "class", "edge", "x", first, "y", d.top, "width", last-first, "height", endFace)
	face := d.top + endFace + 8
	back := face + d.thick()
	var p path
	p.move(first, back)
	for _, s := range all {
		d.section(&p, s, face)
	}
	p.line(last, back)
	p.shut()
	d.add("path", "class", "tag", "d", p.String())
	fill := d.hatch("wall", "hatch", 5, 45)
	d.add("rect", "fill", fill, "x", 6, "y", back, "width", d.Width-12, "height", 7)
	d.add("path", "class", "edge", "d", fmt.Sprintf("M6 %sH%s", ink(back), ink(d.Width-6)))
}

// thick is the ink of the board's thickness.
func (d *endDrawing) thick() float64 {
	return max(8, min(24, d.plan.Profile.Thickness.Float64()*d.scale))
}

// section adds one feature to the section's upper line: a groove goes down by
// its depth, a bead is a round between two quirks.
func (d *endDrawing) section(p *path, s segment, face float64) {
	x0, x1 := d.x(s.left), d.x(s.right)
	deep := 0.0
	if t := d.plan.Profile.Thickness.Float64(); t > 0 {
		deep = min(.8, s.feature.Depth.Float64()/t) * d.thick()
	}
	switch s.feature.Kind {
	case groove.Groove:
		deep = max(deep, 3)
		p.line(x0, face)
		p.line(x0, face+deep)
		p.line(x1, face+deep)
		p.line(x1, face)
	case groove.Bead:
		deep = max(deep, 3)
		quirk := min(1.5, (x1-x0)/4)
		p.line(x0, face)
		p.line(x0, face+deep)
		p.line(x0+quirk, face+deep)
		p.b.WriteString(fmt.Sprintf("Q%s %s %s %s", ink((x0+x1)/2), ink(face-deep), ink(x1-quirk), ink(face+deep)))
		p.line(x1, face+deep)
		p.line(x1, face)
	default:
		p.line(x0, face)
		p.line(x1, face)
	}
}

// edge marks the end of the wall and how far the board stays from it.
func (d *endDrawing) edge() {
	var zero fraction.Length
	at, limit := zero, d.run.Limits[0]
	gap := line{d.sum(plus(limit, ref("runs[%d].limits[0]", d.index)))}
	x, anchor := 6.0, "start"
	if d.right {
		at, limit = d.run.Width, d.run.Limits[1]
		gap = line{d.sum(plus(d.run.Width, ref("runs[%d].width", d.index)), minus(limit, ref("runs[%d].limits[1]", d.index)))}
		x, anchor = d.Width-6, "end"
	}
	edge := d.x(at)
	if edge < 6 || edge > d.Width-6 || limit == at {
		return
	}
	d.add("path", "class", "start", "d", fmt.Sprintf("M%s %sV%s", ink(edge), ink(d.top-5), ink(d.top+endFace+8+d.thick())))
	text := line{"the wall ends at the upright line"}
	if inside := limit.Sub(at).Sign(); (inside > 0) != d.right {
		text = append(text, ", ", gap[0], " from the board")
	}
	text.write(&d.root, "small soft", x, d.top-8, anchor)
}

// sizes writes the width of each feature under the section, and its kind where
// there is room.
func (d *endDrawing) sizes(all []segment) {
	base := d.top + endFace + d.thick() + 26
	var wanted []float64
	var shown []segment
	for _, s := range all {
		x0, x1 := d.x(s.left), d.x(s.right)
		if s.size == nil {
			continue // the drawing breaks off within it
		}
		d.add("path", "class", "pole", "d", fmt.Sprintf("M%s %sv8M%s %sH%sM%s %sv8", ink(x0), ink(base-4), ink(x0), ink(base), ink(x1), ink(x1), ink(base-4)))
		wanted = append(wanted, (x0+x1)/2)
		shown = append(shown, s)
	}
	deepest := 0.0
	for i, x := range spread(wanted, poleGap, 8, d.Width-8) {
		text := append(line{}, shown[i].size...)
		text = append(text, " "+shown[i].feature.Kind.String())
		d.add("path", "class", "lead", "d", fmt.Sprintf("M%s %sL%s %s", ink(wanted[i]), ink(base+2), ink(x), ink(base+12)))
		text.upright(&d.root, "small", x, base+15, "end")
		deepest = max(deepest, text.width(smallSize))
	}
	d.Height = base + 15 + deepest + 6
}
