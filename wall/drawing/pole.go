package drawing

import (
	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/plan"
)

const (
	markLead  = 22.0 // from the story pole down to its labels
	narrowest = 0.95 // of the estimate, what the widest common face needs for figures and words mixed
)

// pole draws the story pole under the wall, running from the setting-out point both ways, and above
// it the widths of the panels. It returns where the drawing ends.
func (e *elevation) pole() float64 {
	chain := e.floor + 18
	for i, panel := range e.run.Panels {
		at := e.path + ref("panels[%d].", i)
		width := line{e.sum(plus(panel.Right, at+"right"), minus(panel.Left, at+"left"))}
		e.measured(width, e.x(panel.Left), e.x(panel.Right), chain)
	}
	base := chain + 15
	if len(e.run.StoryPole) == 0 {
		return base
	}
	return base + markLead + e.marks(base)*narrowest + 6
}

// measured draws a dimension line with its number in a break of the line; a number that finds no
// room is left to the table.
func (e *elevation) measured(text line, x0, x1, y float64) {
	w := text.width(typeSize) + 6
	if x1-x0 < w+14 {
		return
	}
	mid := (x0 + x1) / 2
	e.stroke("pole", "M", x0, y-4, "v8M", x0, y, "H", mid-w/2, "M", mid+w/2, y, "H", x1, "M", x1, y-4, "v8")
	text.write(&e.node, "", mid, y+4, "middle")
}

// sides are the ink x just outside the wall and its panels.
func (e *elevation) sides() (left, right float64) {
	lo, hi := cutout.Bounds(e.run.Outline)
	return min(e.x(e.run.Limits[0]), e.x(lo.X)) - 3, max(e.x(e.run.Limits[1]), e.x(hi.X)) + 3
}

// levelWords name the datum beside the wall.
func (e *elevation) levelWords() string {
	if e.Width < wideInk {
		return "level"
	}
	return "level datum"
}

// lane is the room that the heights at the ends take.
func (e *elevation) lane() float64 {
	widest := textWidth(e.levelWords(), typeSize)
	for _, p := range e.run.Outline {
		if e.atEnd(p) != 0 {
			widest = max(widest, textWidth(e.tape.Format(p.Y), typeSize))
		}
	}
	return widest + heightLane
}

// heightOf is the height of corner i of the wall.
func (e *elevation) heightOf(i int) figure {
	return e.length(e.run.Outline[i].Y, e.path+ref("outline[%d][1]", i))
}

// heights writes the heights over the datum at both ends, moved apart where they are close.
func (e *elevation) heights() {
	left, right := e.sides()
	for side := range 2 {
		level := stop{text: line{e.levelWords()}, ink: e.y(zero)}
		all := []stop{level}
		for i, p := range e.run.Outline {
			if e.atEnd(p) == side+1 && p.Y.Sign() != 0 {
				all = append(all, stop{text: line{e.heightOf(i)}, at: p.Y, ink: e.y(p.Y)})
			}
		}
		near, out, anchor := left, -1.0, "end"
		if side == 1 {
			near, out, anchor = right, 1, "start"
		}
		for _, s := range spreadStops(all, poleGap, e.top-6, e.floor+6) {
			class, w, x := "starttext", s.text.width(typeSize), near+13*out
			if !s.at.IsZero() {
				class = ""
				e.stroke("lead", "M", near, s.ink, "L", near+9*out, s.spot)
			}
			s.text.write(&e.node, class, x, s.spot+4, anchor)
			e.claim(box{min(x, x+w*out), s.spot - 7, w, 14})
		}
	}
}

// corners writes the height of each corner of the wall between its ends: of the top everywhere, of
// the bottom where it steps.
func (e *elevation) corners() {
	n := len(e.run.Outline)
	for i, p := range e.run.Outline {
		if e.atEnd(p) != 0 || p.Y.Sign() == 0 {
			continue
		}
		before, after := e.run.Outline[(i+n-1)%n], e.run.Outline[(i+1)%n]
		name := "height "
		if !p.X.Less(before.X) && !after.X.Less(p.X) { // the outline runs counterclockwise: of the bottom
			if before.X != p.X && after.X != p.X {
				continue
			}
			name = "bottom "
		}
		text := line{name, e.heightOf(i)}
		x, y, w := e.x(p.X), e.y(p.Y), text.width(smallSize)+2
		seats := grid([]float64{4, 17, 30}, []float64{-w / 2, 5, -5 - w, 13, -13 - w, 26, -26 - w, 40, -40 - w}, func(away, aside float64) box {
			return box{x + aside, y - away - 12, w, 12}
		})
		if seat, ok := e.place(e.offWall(seats)...); ok {
			text.write(&e.node, "small halo", seat.x+1, seat.y+10, "start")
			e.dot("startmark", x, y, 1.8)
		}
	}
}

// offWall puts the places that lie off the wall before the others.
func (e *elevation) offWall(places []box) []box {
	var on, off []box
	for _, c := range places {
		if x, y := c.middle(); e.holds(x, y, e.run.Outline) {
			on = append(on, c)
		} else {
			off = append(off, c)
		}
	}
	return append(off, on...)
}

// atEnd returns 1 for a corner of the wall that belongs to its left end, 2 for its right end and 0
// for neither: the outermost corners and those of a lean.
func (e *elevation) atEnd(p plan.Point) int {
	switch {
	case !fraction.Max(zero, e.run.Left.Lean).Less(p.X):
		return 1
	case !p.X.Less(fraction.Min(e.run.Width, e.run.Width.Add(e.run.Right.Lean))):
		return 2
	}
	return 0
}
