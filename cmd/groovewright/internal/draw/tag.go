package draw

import (
	"fmt"
	"slices"

	"example.com/groovewright/fraction"
)

// labels writes each opening's name and each piece's number where they fit.
func (e *elevation) labels() {
	for i := range e.run.Openings {
		e.nameOpening(i)
	}
	for _, o := range e.run.Openings {
		lo, hi := bounds(o.Outline)
		e.board.claim(e.area(lo[0], lo[1], hi[0], hi[1]))
	}
	for _, piece := range e.pieces {
		text := line{word(piece.Label, ref("pieces[%d].label", e.pieceIndex(piece.Number)))}
		w := textWidth(piece.Label, 17) + 10
		v := e.move(piece.At)
		if seat, ok := e.board.first(seats(v, rings(piece), w+4, 26)); ok {
			seat = seat.grow(-2)
			e.add("rect", "class", "tag", "x", seat.x, "y", seat.y, "width", seat.w, "height", seat.h, "rx", 4)
			text.write(&e.root, "big", seat.x+seat.w/2, seat.y+17, "middle")
		} else if seat, ok := e.board.first(seats(v, rings(piece), textWidth(piece.Label, typeSize)+2, 13)); ok {
			text.write(&e.root, "bold halo", seat.x+seat.w/2, seat.y+11, "middle")
		} else if seat, ok := e.board.place(besides(v.area(fraction.Length{}, fraction.Length{}, piece.Width, piece.Height), w, 15)...); ok {
			spot := v.area(fraction.Length{}, fraction.Length{}, piece.Width, piece.Height)
			e.add("path", "class", "lead", "d", fmt.Sprintf("M%s %sL%s %s", ink(seat.x+w/2), ink(seat.y+7), ink(spot.x+spot.w/2), ink(spot.y+spot.h/2)))
			e.tag(text, seat)
		}
	}
}

// nameOpening writes an opening's name in it or beside it, on one line or more,
// or what there is room for.
func (e *elevation) nameOpening(i int) {
	o := e.run.Openings[i]
	lo, hi := bounds(o.Outline)
	area := e.area(lo[0], lo[1], hi[0], hi[1])
	forms := [][]string{{o.Name}, wrap(o.Name, textWidth(o.Name, typeSize)*.62, typeSize), {clip(o.Name, 80, typeSize)}}
	for _, words := range forms[:2] {
		w, h := tagSize(words)
		inside := within(area, w, h)
		seat, ok := e.board.place(inside...)
		if !ok && len(inside) > 0 { // over the line of the start: the tag hides a piece of it
			seat, ok = inside[0], true
			e.board.claim(seat)
		}
		if ok {
			e.tagWords(i, words, seat)
			return
		}
	}
	for _, form := range []struct {
		words  []string
		onWall bool
	}{{forms[0], true}, {forms[1], true}, {forms[0], false}, {forms[1], false}, {forms[2], false}} {
		w, h := tagSize(form.words)
		places := besides(area, w, h)
		if form.onWall {
			places = e.onWall(places)
		}
		if seat, ok := e.board.place(places...); ok {
			e.tagWords(i, form.words, seat)
			return
		}
	}
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
