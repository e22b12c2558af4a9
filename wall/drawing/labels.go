package drawing

import (
	"fmt"
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/plan"
)

// uprightHigh is the room across that an upright number takes.
const uprightHigh = 10.0

// labels writes each opening's name and each piece's number where they fit: the
// names that stand in their openings first, so that no other covers an opening.
func (e *elevation) labels() {
	e.leads = e.add("g")
	var outside []int
	for i := range e.run.Openings {
		if !e.nameInside(i) {
			outside = append(outside, i)
		}
	}
	for _, o := range e.run.Openings {
		e.board.claim(e.spot(o))
	}
	for _, i := range outside {
		e.nameBeside(i)
	}
	for _, piece := range e.pieces {
		e.numberPiece(piece)
	}
}

// spot is the box round an opening.
func (e *elevation) spot(o plan.Opening) box {
	lo, hi := bounds(o.Outline)
	return e.area(lo[0], lo[1], hi[0], hi[1])
}

// numberPiece writes a piece's number on it, as large as there is room for; on
// one that is too narrow, across its neighbours; beside one that is too low.
func (e *elevation) numberPiece(piece plan.Piece) {
	text := line{word(piece.Label, ref("pieces[%d].label", e.pieceIndex(piece.Number)))}
	large, small := textWidth(piece.Label, 17)+10, text.width(typeSize)+2
	v := e.move(piece.At)
	spot := v.area(fraction.Length{}, fraction.Length{}, piece.Width, piece.Height)
	if seat, ok := e.board.first(seats(v, rings(piece), large+4, 26)); ok {
		seat = seat.grow(-2)
		e.add("rect", "class", "tag", "x", seat.x, "y", seat.y, "width", seat.w, "height", seat.h, "rx", 4)
		text.write(&e.root, "big", seat.x+seat.w/2, seat.y+17, "middle")
	} else if seat, ok := e.board.first(seats(v, rings(piece), small, 13)); ok {
		text.write(&e.root, "bold halo", seat.x+seat.w/2, seat.y+11, "middle")
	} else if seat, ok := e.board.first(seats(v, rings(piece), uprightHigh, small)); ok {
		text.upright(&e.root, "bold halo", seat.x+seat.w/2, seat.y+seat.h/2, "middle")
	} else if spot.w < small {
		e.numberAcross(text, spot, small+4)
	} else if seat, ok := e.board.place(besides(spot, large, 15)...); ok {
		e.leads.add("path", "class", "lead", "d", fmt.Sprintf("M%s %sL%s %s", ink(seat.x+large/2), ink(seat.y+7), ink(spot.x+spot.w/2), ink(spot.y+spot.h/2)))
		e.tag(text, seat)
	}
}

// numberAcross writes the number of a narrow piece over its seams too.
func (e *elevation) numberAcross(text line, spot box, wide float64) {
	bare := board{frame: e.board.frame}
	for _, c := range e.board.taken {
		if !slices.Contains(e.seen, c) {
			bare.claim(c)
		}
	}
	left, right := e.sides()
	x := max(left+3, min(spot.x+spot.w/2-wide/2, right-3-wide)) // off the heights at the ends
	var places []box
	for _, share := range []float64{.5, .4, .6, .3, .7, .2, .8} {
		places = append(places, box{x, spot.y + share*spot.h - 7, wide, 14})
	}
	if seat, ok := bare.place(places...); ok {
		e.board.claim(seat)
		e.tag(text, seat)
	}
}

// forms are the ways to write an opening's name: on one line or more, and cut
// off.
func forms(name string) (whole [][]string, clipped []string) {
	return [][]string{{name}, wrap(name, textWidth(name, typeSize)*.62, typeSize), wrap(name, 80, typeSize)}, []string{clip(name, 80, typeSize)}
}

// nameInside writes an opening's name in it and reports whether it has room.
func (e *elevation) nameInside(i int) bool {
	whole, _ := forms(e.run.Openings[i].Name)
	for _, words := range whole {
		w, h := tagSize(words)
		inside := within(e.spot(e.run.Openings[i]), w, h)
		seat, ok := e.board.place(inside...)
		if !ok && len(inside) > 0 { // over the line of the start: the tag hides a piece of it
			seat, ok = inside[0], true
			e.board.claim(seat)
		}
		if ok {
			e.tagWords(i, words, seat)
			return true
		}
	}
	return false
}

// nameBeside writes an opening's name near it, on the wall if there is room, or
// as much of it as there is room for.
func (e *elevation) nameBeside(i int) {
	whole, clipped := forms(e.run.Openings[i].Name)
	spot := e.spot(e.run.Openings[i])
	for n, words := range slices.Concat(whole, whole, [][]string{clipped}) {
		w, h := tagSize(words)
		places := besides(spot, w, h)
		if n < len(whole) {
			places = e.onWall(places)
		}
		if seat, ok := e.board.place(places...); ok {
			e.tagWords(i, words, seat)
			return
		}
		if n < len(whole)-1 {
			continue
		}
		if seat, ok := e.board.place(farther(spot, w, h)...); ok {
			x, y := spot.x+spot.w/2, spot.y+spot.h/2
			e.leads.add("path", "class", "lead", "d", fmt.Sprintf("M%s %sL%s %s", ink(max(seat.x, min(x, seat.x+w))), ink(max(seat.y, min(y, seat.y+h))), ink(x), ink(y)))
			e.tagWords(i, words, seat)
			return
		}
	}
}

// farther are places round an area that want a lead to it, the nearest first.
func farther(area box, w, h float64) []box {
	var found []box
	x, y := area.x+area.w/2, area.y+area.h/2
	for _, away := range []float64{6, 14, 24, 38, 54} {
		for _, slide := range []float64{0, -.5, .5, -1, 1} {
			found = append(found,
				around(x+slide*w, area.y-away-h/2, w, h), around(x+slide*w, area.y+area.h+away+h/2, w, h),
				around(area.x+area.w+away+w/2, y+slide*2*h, w, h), around(area.x-away-w/2, y+slide*2*h, w, h))
		}
	}
	return found
}

// tagSize is the size of a tag for some lines of text.
func tagSize(words []string) (w, h float64) {
	for _, text := range words {
		w = max(w, textWidth(text, typeSize)+8)
	}
	return w, laneHigh*float64(len(words)) + 2
}

// tagWords writes the name of opening i, broken into lines.
func (e *elevation) tagWords(i int, words []string, at box) {
	e.add("rect", "class", "tag", "x", at.x, "y", at.y, "width", at.w, "height", at.h, "rx", 3)
	for n, text := range words {
		line{word(text, ref("runs[%d].openings[%d].name", e.index, i))}.
			write(&e.root, "", at.x+at.w/2, at.y+12+laneHigh*float64(n), "middle")
	}
}

// onWall keeps the places that lie wholly on the wall.
func (e *elevation) onWall(places []box) []box {
	lo, hi := bounds(e.run.Outline)
	wall := e.area(lo[0], lo[1], hi[0], hi[1])
	return slices.DeleteFunc(places, func(c box) bool { return !c.inside(wall) })
}

// tag writes a line in a box of its own.
func (e *elevation) tag(text line, at box) {
	e.add("rect", "class", "tag", "x", at.x, "y", at.y, "width", at.w, "height", at.h, "rx", 3)
	text.write(&e.root, "", at.x+at.w/2, at.y+at.h/2+4, "middle")
}

// besides returns the places for a label below, above and beside an area.
func besides(area box, w, h float64) []box {
	var found []box
	for _, away := range []float64{3, 10, 20, 34} {
		mid := area.x + area.w/2 - w/2
		found = append(found,
			box{mid, area.y + area.h + away, w, h}, box{mid, area.y - away - h, w, h},
			box{area.x + area.w + away, area.y + area.h/2 - h/2, w, h}, box{area.x - away - w, area.y + area.h/2 - h/2, w, h},
			box{area.x, area.y + area.h + away, w, h}, box{area.x + area.w - w, area.y + area.h + away, w, h},
			box{area.x, area.y - away - h, w, h}, box{area.x + area.w - w, area.y - away - h, w, h})
	}
	return found
}
