package drawing

import (
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
}

// numberPiece writes a piece's number on it, else across its neighbors or beside it.
func (e *elevation) numberPiece(piece plan.Piece) {
	_, at := e.plan.Piece(piece.Number)
	text := line{figure{piece.Label, ref("pieces[%d].label", at)}}
	large, small := textWidth(piece.Label, 20)+10, text.width(typeSize)+2
	v, rings := e.move(piece.At), rings(piece)
	spot := v.whole(piece.Width, piece.Height)
	if seat, ok := e.first(v.seats(rings, large+4, 30)); ok {
		seat = seat.grow(-2)
		e.tag(seat, 4)
		text.write(&e.node, "big", seat.x+seat.w/2, seat.y+20, "middle")
	} else if seat, ok := e.first(v.seats(rings, small, laneHigh)); ok {
		text.seated(&e.node, "bold halo", seat)
	} else if seat, ok := e.first(v.seats(rings, uprightHigh, small)); ok {
		text.upright(&e.node, "bold halo", seat.x+seat.w/2, seat.y+seat.h/2, "middle")
	} else if spot.w < small {
		e.numberAcross(text, spot, small+4)
	} else if x, y := spot.middle(); true {
		seat, ok := e.place(e.clear(besides(spot, large, laneHigh), point{x, y}, point{x, y})...)
		if !ok {
			return
		}
		e.leads.stroke("lead", "M", seat.x+large/2, seat.y+laneHigh/2, "L", x, y)
		e.tagged(seat, text)
	}
}

// numberAcross writes the number of a narrow piece over its seams too.
func (e *elevation) numberAcross(text line, spot box, wide float64) {
	bare := board{frame: e.frame}
	bare.taken = slices.DeleteFunc(slices.Clone(e.taken), func(c box) bool { return slices.Contains(e.seen, c) })
	left, right := e.sides()
	x := max(left+3, min(spot.x+spot.w/2-wide/2, right-3-wide)) // off the heights at the ends
	places := grid([]float64{x}, []float64{.5, .4, .6, .3, .7, .2, .8}, func(x, share float64) box {
		return box{x, spot.y + share*spot.h - laneHigh/2, wide, laneHigh}
	})
	if seat, ok := bare.place(places...); ok {
		e.claim(seat)
		e.tagged(seat, text)
	}
}

// names are the ways to write an opening's name: on one line or more, and last as much as has room.
func (e *elevation) names(i int) [][]line {
	name, from := e.run.Openings[i].Name, e.path+ref("openings[%d].name", i)
	long := textWidth(name, typeSize)
	return [][]line{{{figure{name, from}}}, wrapped(name, from, long*.62, long), wrapped(name, from, 80, long),
		{{figure{clip(name, 80, typeSize), from}}}}
}

// nameInside writes an opening's name in it and reports whether it has room.
func (e *elevation) nameInside(i int) bool {
	o := e.run.Openings[i]
	for _, lines := range e.names(i)[:3] {
		w, h := tagSize(lines)
		inside := within(e.around(o.Outline), w, h)
		if len(inside) == 0 {
			continue
		}
		seat, ok := e.place(inside...)
		if !ok { // over the line of the start: the tag hides a piece of it
			seat = inside[0]
			e.claim(seat)
		}
		e.tagged(seat, lines...)
		return true
	}
	return false
}

// nameBeside writes an opening's name near it, best on the wall, or as much of it as has room.
func (e *elevation) nameBeside(i int) {
	o := e.run.Openings[i]
	spot, wall, names := e.around(o.Outline), e.around(e.run.Outline), e.names(i)
	whole := names[:3]
	for n, lines := range append(whole[:3:3], names...) {
		w, h := tagSize(lines)
		places := besides(spot, w, h)
		if n < len(whole) {
			places = slices.DeleteFunc(places, func(c box) bool { return !c.inside(wall) })
		}
		seat, ok := e.place(places...)
		if !ok && n >= len(whole)-1 {
			x, y := spot.middle()
			if seat, ok = e.place(e.clear(farther(spot, w, h), point{x, y}, point{x, y})...); ok {
				e.leadTo(seat, x, y)
			}
		}
		if ok {
			e.tagged(seat, lines...)
			return
		}
	}
}

// tagSize is the size of a tag for some lines of text.
func tagSize(lines []line) (w, h float64) {
	return widest(typeSize, lines) + 8, laneHigh*float64(len(lines)) + 2
}

// tagged writes lines in the middle of a box of their own.
func (e *elevation) tagged(at box, lines ...line) {
	e.tag(at, 3)
	e.words = append(e.words, at)
	x, y := at.middle()
	for n, text := range lines {
		text.write(&e.node, "", x, y+typeSize*.36+laneHigh*(float64(n)-float64(len(lines)-1)/2), "middle")
	}
}
