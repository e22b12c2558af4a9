package draw

import (
	"fmt"
	"slices"
	"sort"

	"example.com/groovewright/cmd/groovewright/internal/plan"
	"example.com/groovewright/fraction"
)

const (
	poleGap   = 13.0  // between neighbouring upright numbers
	poleWords = 215.0 // most length of an upright label
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
	base := chain + 18
	marks := slices.Clone(e.run.StoryPole)
	places := make([]int, len(marks))
	for i := range places {
		places[i] = i
	}
	sort.SliceStable(places, func(a, b int) bool { return marks[places[a]].At.Less(marks[places[b]].At) })
	if len(marks) == 0 {
		return base
	}
	from := e.run.SetOut.From
	var wanted []float64
	for _, i := range places {
		wanted = append(wanted, e.x(marks[i].At))
	}
	lo, hi := min(wanted[0], e.x(from)), max(wanted[len(wanted)-1], e.x(from))
	e.add("path", "class", "pole", "d", fmt.Sprintf("M%s %sH%s", ink(lo), ink(base), ink(hi)))
	e.add("circle", "class", "startmark", "cx", e.x(from), "cy", base, "r", 4)
	deepest := 0.0
	spots := spread(wanted, poleGap, 8, e.Width-8)
	for n, i := range places {
		x := wanted[n]
		e.add("path", "class", "pole", "d", fmt.Sprintf("M%s %sv10", ink(x), ink(base-5)))
		e.add("path", "class", "lead", "d", fmt.Sprintf("M%s %sL%s %sv5", ink(x), ink(base+5), ink(spots[n]), ink(base+17)))
		text := e.mark(i)
		text.upright(&e.root, "", spots[n], base+25, "end")
		deepest = max(deepest, text.width(typeSize))
	}
	y := base + 25 + deepest + 4
	line{"Story pole: each mark is measured from the start (●), both ways."}.write(&e.root, "soft", e.Width/2, y+12, "middle")
	return y + 20
}

// mark is the distance of a story-pole mark from the start, and what it marks.
func (e *elevation) mark(i int) line {
	mark, from := e.run.StoryPole[i], e.run.SetOut.From
	path := fmt.Sprintf("runs[%d].", e.index)
	at, start := plus(mark.At, path+ref("story_pole[%d].at", i)), plus(from, path+"set_out.from")
	if mark.At.Less(from) {
		at, start = start, at
	}
	start.minus = true
	text := line{e.sum(at, start)}
	if room := poleWords - text.width(typeSize); room > 30 && mark.What != "" {
		text = append(text, " ", word(clip(mark.What, room, typeSize), path+ref("story_pole[%d].what", i)))
	}
	return text
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

// heights writes the heights over the datum at both ends and, above the wall,
// at each corner of its top between them.
func (e *elevation) heights() {
	lo, hi := bounds(e.run.Outline)
	for side := range 2 {
		found := []height{{line{"level datum"}, e.y(fraction.Length{})}}
		for i, p := range e.run.Outline {
			if e.atEnd(p, lo, hi) == side+1 && p[1].Sign() != 0 {
				found = append(found, height{line{e.length(p[1], ref("runs[%d].outline[%d][1]", e.index, i))}, e.y(p[1])})
			}
		}
		e.chain(found, side)
	}
	for i, p := range e.run.Outline {
		if e.atEnd(p, lo, hi) != 0 || p[1].Sign() == 0 || p[1] == lo[1] {
			continue
		}
		text := line{"height ", e.length(p[1], ref("runs[%d].outline[%d][1]", e.index, i))}
		x, y, w := e.x(p[0]), e.y(p[1]), text.width(smallSize)+2
		var seats []box
		for _, away := range []float64{4, 17, 30} {
			seats = append(seats, box{x - w/2, y - away - 12, w, 12}, box{x + 5, y - away - 12, w, 12}, box{x - 5 - w, y - away - 12, w, 12},
				box{x + 13, y - away - 12, w, 12}, box{x - 13 - w, y - away - 12, w, 12})
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
func (e *elevation) atEnd(p, lo, hi plan.Point) int {
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
	lo, hi := e.run.Limits[0], e.run.Limits[1]
	near, bend, text, anchor := min(e.x(lo), e.x(fraction.Length{}))-3, sideLane-12, sideLane-16, "end"
	if side == 1 {
		near, bend, text, anchor = max(e.x(hi), e.x(e.run.Width))+3, e.Width-sideLane+12, e.Width-sideLane+16, "start"
	}
	for i, y := range spread(wanted, 13, e.top-6, e.floor+6) {
		class := ""
		if len(all[i].text) == 1 && all[i].text.String() == "level datum" {
			class = "starttext"
		} else {
			e.add("path", "class", "lead", "d", fmt.Sprintf("M%s %sL%s %s", ink(near), ink(wanted[i]), ink(bend), ink(y)))
		}
		all[i].text.write(&e.root, class, text, y+4, anchor)
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
