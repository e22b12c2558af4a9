package drawing

import (
	"fmt"
	"slices"

	"example.com/groovewright/wall/plan"
)

// uprightHigh is the room across that an upright number takes.
const uprightHigh = 13.0

// labels writes openings' names, first those that fit in their openings, and pieces' numbers.
func (e *elevation) labels() {
	e.leads = e.add("g")
	var outside []int
	for i := range e.run.Openings {
		if !e.nameInside(i) {
			outside = append(outside, i)
		}
	}
	for _, o := range e.run.Openings {
		e.claim(e.around(o.Outline))
	}
	for _, i := range outside {
		e.nameBeside(i)
	}
	for _, piece := range e.pieces {
		e.numberPiece(piece)
	}
	e.taped()
}

// taped numbers the corners of openings that were found from taped distances, as their table does.
func (e *elevation) taped() {
	first := len(e.dots)
	var numbers []line
	for i, p := range e.plan.Taped {
		if slices.ContainsFunc(e.run.Openings, func(o plan.Opening) bool { return p.Run == e.run.Name && p.Opening == o.Name }) {
			numbers = append(numbers, line{figure{fmt.Sprint(p.Number), ref("taped[%d].number", i)}})
			e.dots = append(e.dots, point{e.x(p.At.X), e.y(p.At.Y)})
			e.dot("startmark", e.x(p.At.X), e.y(p.At.Y), 2)
		}
	}
	for i, number := range numbers {
		if at := e.dots[first+i]; !e.nameAt("halo taped", number, at) {
			e.callout("halo taped", number, number.width(typeSize)+2, letterSize, at, at)
		}
	}
}

// numberPiece writes a piece's number on it, level or upright, else beside it with a lead.
func (e *elevation) numberPiece(piece plan.Piece) {
	_, at := e.plan.Piece(piece.Number)
	text := line{figure{piece.Label, ref("pieces[%d].label", at)}}
	large, small := textWidth(piece.Label, 20)+10, text.width(typeSize)+6
	v, seated := e.move(piece.At), func(seat box) { text.seated(&e.node, "bold halo", seat) }
	if !e.fitted(v, rings(piece), way{large + 4, 30, func(seat box) {
		seat = seat.grow(-2)
		e.tag(seat, 4)
		text.write(&e.node, "big", seat.x+seat.w/2, seat.y+20, "middle")
	}}, way{small, laneHigh, func(seat box) {
		e.tag(seat, 3)
		seated(seat)
	}}, way{small - 4, laneHigh, seated}, way{uprightHigh, small, func(seat box) {
		text.upright(&e.node, "bold halo", seat.x+seat.w/2, seat.y+seat.h/2, "middle")
	}}) && !e.tagBeside(v.sized(piece.Width, piece.Height), nil, large, laneHigh, text) {
		e.missed[0] = append(e.missed[0], text...)
	}
}

// tagBeside writes lines of a size in the first place of some, else near what they name, with a lead
// that crosses no text where they stand off it, and reports whether there is room.
func (e *elevation) tagBeside(spot box, places []box, w, h float64, lines ...line) bool {
	x, y := spot.middle()
	seat, ok := e.place(places...)
	if !ok {
		if seat, ok = e.led(w, h, point{x, y}, point{x, y}); ok {
			e.leadTo(seat, x, y)
		}
	}
	if ok {
		e.words = append(e.words, seat)
		e.tagged(seat, lines...)
	}
	return ok
}

// names are the ways to write an opening's name: on one line or more, and last as much as has room.
func (e *elevation) names(i int) [][]line {
	name, from := e.run.Openings[i].Name, e.path+ref("openings[%d].name", i)
	whole, long := line{figure{name, from}}, textWidth(name, typeSize)
	return [][]line{{whole}, whole.wrap(long*.62, long), whole.wrap(80, long),
		{{figure{clip(name, 80, typeSize), from}}}}
}

// nameInside writes an opening's name in it, if it has room.
func (e *elevation) nameInside(i int) bool {
	return slices.ContainsFunc(e.names(i)[:3], func(lines []line) bool {
		w, h := tagSize(lines)
		return e.fitted(e.view, [][]plan.Point{e.run.Openings[i].Outline}, way{w, h, func(seat box) { e.tagged(seat, lines...) }})
	})
}

// nameBeside writes as much of an opening's name as has room close to it on the wall, else near it.
func (e *elevation) nameBeside(i int) {
	spot, wall := e.around(e.run.Openings[i].Outline), e.around(e.run.Outline)
	for _, lines := range e.names(i) {
		w, h := tagSize(lines)
		on := slices.DeleteFunc(besides(spot, w, h), func(c box) bool { return !c.inside(wall) })
		if e.tagBeside(spot, on, w, h, lines...) {
			return
		}
	}
	e.missed[1] = append(e.missed[1], e.names(i)[0][0]...)
}

// tagSize is the size of a tag for some lines of text.
func tagSize(lines []line) (w, h float64) {
	return widest(typeSize, lines) + 8, laneHigh*float64(len(lines)) + 2
}

// tagged writes lines in the middle of a box of their own.
func (e *elevation) tagged(at box, lines ...line) {
	e.tag(at, 3)
	x, y := at.middle()
	e.under(0, x, y+typeSize*.36-laneHigh*float64(len(lines)-1)/2, "middle", lines...)
}
