package drawing

import (
	"slices"
	"strings"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/plan"
)

const (
	markLead  = 22.0 // from the story pole down to its labels
	narrowest = 0.95 // of the estimate, what the widest common face needs for figures and words mixed
)

// pole draws the story pole under the wall, and above it the width of each panel in a break of its
// dimension line; one that finds no room is left to the table. It returns where the drawing ends.
func (e *elevation) pole() float64 {
	chain := e.floor + 18
	for i, panel := range e.run.Panels {
		at := e.path + ref("panels[%d].", i)
		text := line{e.sum(plus(panel.Right, at+"right"), minus(panel.Left, at+"left"))}
		x0, x1, w := e.x(panel.Left), e.x(panel.Right), text.width(typeSize)+6
		if mid := (x0 + x1) / 2; x1-x0 >= w+14 {
			e.stroke("pole", "M", x0, chain-4, "v8M", x0, chain, "H", mid-w/2, "M", mid+w/2, chain, "H", x1, "M", x1, chain-4, "v8")
			text.write(&e.node, "", mid, chain+4, "middle")
		}
	}
	base := chain + 15
	if len(e.run.StoryPole) == 0 {
		return base
	}
	return base + markLead + e.marks(base)*narrowest + 6
}

// sides are the ink x just outside the wall and its panels.
func (e *elevation) sides() (left, right float64) {
	lo, hi := cutout.Bounds(e.run.Outline)
	return min(e.x(e.run.Limits[0]), e.x(lo.X)) - 3, max(e.x(e.run.Limits[1]), e.x(hi.X)) + 3
}

// lane is the room that the heights at the ends take.
func (e *elevation) lane() float64 {
	widest := textWidth(e.level, typeSize)
	for _, p := range e.run.Outline {
		if e.atEnd(p) != 0 {
			widest = max(widest, textWidth(e.tape.Format(p.Y), typeSize))
		}
	}
	return widest + heightLane
}

// heights writes the heights over the datum at both ends, moved apart where they are close.
func (e *elevation) heights() {
	left, right := e.sides()
	for side := range 2 {
		all := []stop{{text: line{e.level}, ink: e.y(zero)}}
		for i, p := range e.run.Outline {
			if e.atEnd(p) == side+1 && p.Y.Sign() != 0 {
				all = append(all, stop{text: line{e.length(p.Y, e.path+ref("outline[%d][1]", i))}, at: p.Y, ink: e.y(p.Y)})
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

// corners writes the height of each corner between the ends: of the top, and of the bottom's steps.
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
		text := line{name, e.length(p.Y, e.path+ref("outline[%d][1]", i))}
		x, y, w := e.x(p.X), e.y(p.Y), text.width(smallSize)+2
		seats := grid([]float64{4, 17, 30}, []float64{-w / 2, 5, -5 - w, 13, -13 - w, 26, -26 - w, 40, -40 - w}, func(away, aside float64) box {
			return box{x + aside, y - away - 12, w, 12}
		})
		off := slices.DeleteFunc(slices.Clone(seats), func(c box) bool {
			x, y := c.middle()
			return e.holds(x, y, e.run.Outline)
		})
		if seat, ok := e.place(append(off, seats...)...); ok {
			text.write(&e.node, "small halo", seat.x+1, seat.y+10, "start")
			e.dot("startmark", x, y, 1.8)
		}
	}
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

// marks draws the ticks of the story pole on a line at base and returns the length of its longest
// label.
func (e *elevation) marks(base float64) float64 {
	groups := e.run.PolePlaces()
	texts := e.texts(groups)
	at := func(group []int) float64 { return e.x(e.run.StoryPole[group[0]].At) }
	from := e.x(e.run.SetOut.From)
	ticks := pen("M", min(at(groups[0]), from), base, "H", max(at(groups[len(groups)-1]), from))
	var stops []stop // one for each line
	for i, group := range groups {
		ticks += pen("M", at(group), base-5, "v10")
		for n, text := range texts[i] {
			stops = append(stops, stop{text: text, ink: at(group), last: n == len(texts[i])-1})
		}
	}
	e.stroke("pole", ticks)
	e.dot("startmark", from, base, 4)
	return e.hang(stops, "", typeSize, 8, e.Width-8, base+markLead, func(s stop) {
		if s.last {
			e.stroke("lead", "M", s.ink, base+5, "L", s.spot, base+markLead-8, "v4")
		}
	})
}

// poleLines are the lengths tried of an upright line, the best first; 0 is for the distances alone.
var poleLines = []float64{215, 290, 350, 410, 0}

// texts are the upright lines at each place: all words, else the distances alone, else only each
// second, third … of them; the table has them all.
func (e *elevation) texts(groups [][]int) [][]line {
	most := int((e.Width-16)/poleGap) + 1
	texts, count := make([][]line, len(groups)), 0
	for _, long := range poleLines {
		count = 0
		for i, group := range groups {
			texts[i] = e.written(group, long)
			count += len(texts[i])
		}
		if count <= most {
			return texts
		}
	}
	every := (count + most - 2) / (most - 1)
	for i := range texts {
		if i%every != 0 && i != len(texts)-1 {
			texts[i] = nil
		}
	}
	return texts
}

// written is what is marked at a place and its distance from the start, in lines up to a length.
func (e *elevation) written(group []int, long float64) []line {
	if long == 0 {
		return []line{{e.fromStart(group[0])}}
	}
	var all []line
	var text line
	add := func(space string, f figure) {
		switch longer := append(slices.Clone(text), space, f); {
		case len(text) == 0:
			text = line{f}
		case longer.width(typeSize) > long:
			all, text = append(all, text), line{f}
		default:
			if last, ok := text[len(text)-1].(figure); ok && last.from == f.from {
				longer = append(slices.Clone(text[:len(text)-1]), figure{last.text + space + f.text, f.from})
			}
			text = longer
		}
	}
	for n, i := range group {
		space := " "
		if n > 0 {
			space = "; "
		}
		for _, one := range strings.Fields(MarkName(e.plan.Profile, e.run.StoryPole[i])) {
			add(space, figure{clip(one, long, typeSize), e.path + ref("story_pole[%d]", i)})
			space = " "
		}
	}
	add(": ", e.fromStart(group[0]))
	return append(all, text)
}

// fromStart is the distance of a story-pole mark from the start.
func (e *elevation) fromStart(i int) figure {
	mark, from := e.run.StoryPole[i], e.run.SetOut.From
	at, start := e.path+ref("story_pole[%d].at", i), e.path+"set_out.from"
	if mark.At.Less(from) {
		return e.sum(plus(from, start), minus(mark.At, at))
	}
	return e.sum(plus(mark.At, at), minus(from, start))
}
