package drawing

import (
	"fmt"
	"sort"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/plan"
)

const (
	poleGap   = 13.0 // between neighbouring upright numbers
	markLead  = 22.0 // from the story pole down to its labels
	narrowest = 0.95 // of the estimate, what the widest common face needs for figures and words mixed
)

// pole draws the story pole under the wall, running from the setting-out point
// both ways, and above it the widths of the panels. It returns where the
// drawing ends.
func (e *elevation) pole() float64 {
	chain := e.floor + 18
	for i, panel := range e.run.Panels {
		at := fmt.Sprintf("runs[%d].panels[%d].", e.index, i)
		width := line{e.sum(plus(panel.Right, at+"right"), minus(panel.Left, at+"left"))}
		e.measured(width, e.x(panel.Left), e.x(panel.Right), chain)
	}
	base := chain + 15
	if len(e.run.StoryPole) == 0 {
		return base
	}
	return base + markLead + e.marks(base)*narrowest + 6
}

// measured draws a dimension line with its number in a break of the line; a
// number that finds no room is left to the table.
func (e *elevation) measured(text line, x0, x1, y float64) {
	w := text.width(typeSize) + 6
	if x1-x0 < w+14 {
		return
	}
	mid := (x0 + x1) / 2
	e.add("path", "class", "pole", "d", fmt.Sprintf("M%s %sv8M%s %sH%sM%s %sH%sM%s %sv8",
		ink(x0), ink(y-4), ink(x0), ink(y), ink(mid-w/2), ink(mid+w/2), ink(y), ink(x1), ink(x1), ink(y-4)))
	text.write(&e.root, "", mid, y+4, "middle")
}

// height is one number of the chains beside the wall.
type height struct {
	text line
	y    float64
}

// sides are the ink x just outside the wall and its panels.
func (e *elevation) sides() (left, right float64) {
	lo, hi := bounds(e.run.Outline)
	return min(e.x(e.run.Limits[0]), e.x(lo[0])) - 3, max(e.x(e.run.Limits[1]), e.x(hi[0])) + 3
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
			widest = max(widest, textWidth(e.tape.Format(p[1]), typeSize))
		}
	}
	return widest + heightLane
}

// heights writes the heights over the datum at both ends.
func (e *elevation) heights() {
	for side := range 2 {
		found := []height{{line{e.levelWords()}, e.y(fraction.Length{})}}
		for i, p := range e.run.Outline {
			if e.atEnd(p) == side+1 && p[1].Sign() != 0 {
				found = append(found, height{line{e.length(p[1], ref("runs[%d].outline[%d][1]", e.index, i))}, e.y(p[1])})
			}
		}
		e.chain(found, side)
	}
}

// corners writes the height of each corner of the wall between its ends: of
// the top everywhere, of the bottom where it steps.
func (e *elevation) corners() {
	for i, p := range e.run.Outline {
		if e.atEnd(p) != 0 || p[1].Sign() == 0 {
			continue
		}
		n := len(e.run.Outline)
		before, after := e.run.Outline[(i+n-1)%n], e.run.Outline[(i+1)%n]
		upper := p[0].Less(before[0]) || after[0].Less(p[0]) // the outline runs counterclockwise
		if !upper && before[0] != p[0] && after[0] != p[0] {
			continue
		}
		name := "height "
		if !upper {
			name = "bottom "
		}
		text := line{name, e.length(p[1], ref("runs[%d].outline[%d][1]", e.index, i))}
		x, y, w := e.x(p[0]), e.y(p[1]), text.width(smallSize)+2
		var seats []box
		for _, away := range []float64{4, 17, 30} {
			seats = append(seats, box{x - w/2, y - away - 12, w, 12})
			for _, aside := range []float64{5, 13, 26, 40} {
				seats = append(seats, box{x + aside, y - away - 12, w, 12}, box{x - aside - w, y - away - 12, w, 12})
			}
		}
		if seat, ok := e.board.place(e.offWall(seats)...); ok {
			text.write(&e.root, "small halo", seat.x+1, seat.y+10, "start")
			e.add("circle", "class", "startmark", "cx", x, "cy", y, "r", 1.8)
		}
	}
}

// offWall puts the places that lie off the wall before the others.
func (e *elevation) offWall(places []box) []box {
	var on, off []box
	for _, c := range places {
		if holds((c.x+c.w/2-e.left)/e.scale+e.x0, e.y1-(c.y+c.h/2-e.top)/e.scale, e.run.Outline) {
			on = append(on, c)
		} else {
			off = append(off, c)
		}
	}
	return append(off, on...)
}

// atEnd tells whether a corner of the wall belongs to its left end (1), its
// right end (2) or neither (0): the outermost corners and those of a lean.
func (e *elevation) atEnd(p plan.Point) int {
	var zero fraction.Length
	switch {
	case !fraction.Max(zero, e.run.Left.Lean).Less(p[0]):
		return 1
	case !p[0].Less(fraction.Min(e.run.Width, e.run.Width.Add(e.run.Right.Lean))):
		return 2
	}
	return 0
}

// chain writes the heights of one end, moved apart where they are close.
func (e *elevation) chain(all []height, side int) {
	sort.SliceStable(all, func(a, b int) bool { return all[a].y < all[b].y })
	wanted := make([]float64, len(all))
	for i, h := range all {
		wanted[i] = h.y
	}
	left, right := e.sides()
	near, bend, text, anchor := left, left-9, left-13, "end"
	if side == 1 {
		near, bend, text, anchor = right, right+9, right+13, "start"
	}
	for i, y := range spread(wanted, 13, e.top-6, e.floor+6) {
		class, w := "", all[i].text.width(typeSize)
		if all[i].text.String() == e.levelWords() {
			class = "starttext"
		} else {
			e.add("path", "class", "lead", "d", fmt.Sprintf("M%s %sL%s %s", ink(near), ink(wanted[i]), ink(bend), ink(y)))
		}
		all[i].text.write(&e.root, class, text, y+4, anchor)
		if side == 0 {
			e.board.claim(box{text - w, y - 7, w, 14})
		} else {
			e.board.claim(box{text, y - 7, w, 14})
		}
	}
}

// order sorts places along a line, and with each the number that belongs to it.
func order(places []float64, numbers []int) {
	sort.Stable(byPlace{places, numbers})
}

type byPlace struct {
	places  []float64
	numbers []int
}

func (b byPlace) Len() int           { return len(b.places) }
func (b byPlace) Less(i, j int) bool { return b.places[i] < b.places[j] }
func (b byPlace) Swap(i, j int) {
	b.places[i], b.places[j] = b.places[j], b.places[i]
	b.numbers[i], b.numbers[j] = b.numbers[j], b.numbers[i]
}
