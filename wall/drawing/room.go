package drawing

import (
	"fmt"
	"slices"
	"strings"

	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

const (
	roomTall  = 300.0 // most ink that the room takes from back to front
	roomLane  = 48.0  // white round the room
	boardInk  = 10.0  // thickness of the panelling as drawn, much exaggerated
	wallInk   = 9.0   // thickness of the wall as drawn
	chainStep = 90.0  // between runs that do not meet
)

// roomDrawing draws the room from above.
type roomDrawing struct {
	scribe
	*Picture
	courses []course
	board   board
	leads   *node // lines under the labels
	scale   float64
}

// Room draws the room of a plan from above.
func Room(p plan.Plan) (Picture, error) {
	return draw(wideInk, fault.Of("Runs"), 0, len(p.Runs), func(width float64) *Picture { return drawRoom(newScribe(p), width) })
}

// drawRoom returns the plan view, at most as wide as asked for.
func drawRoom(s scribe, width float64) *Picture {
	d := &roomDrawing{scribe: s, Picture: newPicture(sized("room", width), "The room from above")}
	d.Desc = d.describe()
	d.Width = width
	d.lay()
	fill := d.hatch("wall", "hatch", 5, 45)
	for i := range d.courses {
		d.wall(i, fill)
	}
	for i := range d.courses {
		d.band(i)
	}
	d.leads = d.add("g")
	for i := range d.courses {
		d.corner(i)
	}
	for i := range d.courses {
		d.panels(i)
	}
	for i := range d.courses {
		d.name(i)
	}
	line{"You stand inside. " + d.plan.Profile.Word("Panels", "Boards") + " are drawn too thick."}.
		write(&d.root, "soft", d.Width/2, d.Height-8, "middle")
	return d.Picture
}

// meets reports whether run i ends in a corner that the next run shares.
func (d *roomDrawing) meets(i int) bool { return d.plan.Runs[i].CornerRight != nil }

// outside reports whether the corner at the right of run i is an outside one.
func (d *roomDrawing) outside(i int) bool {
	return d.plan.Runs[i].CornerRight.Kind == wall.OutsideCorner
}

// lay walks round the room, run by run, and then scales it to the page. Runs
// that do not meet are drawn one below the other.
func (d *roomDrawing) lay() {
	var x, y, lowest float64
	along := heading{1, 0}
	for i, run := range d.plan.Runs {
		if i > 0 && !d.meets(i-1) {
			x, y, along = 0, lowest, heading{1, 0}
			d.shift(i, &y)
		}
		c := course{run, i, x, y, along, run.Width.Float64()}
		d.courses = append(d.courses, c)
		x, y = c.at(c.length, 0)
		lowest = max(lowest, y, c.y)
		if d.meets(i) {
			along = along.turn(d.outside(i))
		}
	}
	d.fit()
}

// shift leaves room between two stretches of runs; the distance is a share of
// the whole, so that it looks the same whatever the room's size.
func (d *roomDrawing) shift(i int, y *float64) {
	total := 0.0
	for _, run := range d.plan.Runs {
		total += run.Width.Float64()
	}
	*y += total * chainStep / wideInk
}

// fit scales the walk to the page.
func (d *roomDrawing) fit() {
	var x0, y0, x1, y1 float64
	for i, c := range d.courses {
		ex, ey := c.at(c.length, 0)
		if i == 0 {
			x0, y0, x1, y1 = c.x, c.y, c.x, c.y
		}
		x0, y0, x1, y1 = min(x0, c.x, ex), min(y0, c.y, ey), max(x1, c.x, ex), max(y1, c.y, ey)
	}
	d.scale = (d.Width - 2*roomLane) / max(x1-x0, 1)
	if tall := (y1 - y0) * d.scale; tall > roomTall {
		d.scale = roomTall / (y1 - y0)
	}
	d.Width = max(halfInk, (x1-x0)*d.scale+2*roomLane)
	left := (d.Width - (x1-x0)*d.scale) / 2
	for i := range d.courses {
		c := &d.courses[i]
		c.x, c.y, c.length = left+(c.x-x0)*d.scale, roomLane+(c.y-y0)*d.scale, c.length*d.scale
	}
	d.Height = 2*roomLane + (y1-y0)*d.scale + 24
	if y1-y0 < 1 {
		d.Height += 50 // one straight wall: its name stands before it
	}
	d.board.frame = box{2, 2, d.Width - 4, d.Height - 26}
}

// ends are how far the panelling's wall side and its face run past both ends of
// the run: into the corner, short of it, or to the long point of a mitre.
func (d *roomDrawing) ends(i int) (wallLeft, faceLeft, wallRight, faceRight float64) {
	c := d.courses[i]
	wallRight, faceRight = c.length, c.length
	if d.meets(i) {
		switch corner := c.run.CornerRight; {
		case d.outside(i):
			faceRight += boardInk
		case corner.Butts == c.run.Name:
			wallRight, faceRight = c.length-boardInk, c.length-boardInk
		}
	}
	before := (i + len(d.courses) - 1) % len(d.courses)
	if d.meets(before) && (i > 0 || d.plan.Closed) {
		switch corner := d.courses[before].run.CornerRight; {
		case d.outside(before):
			faceLeft -= boardInk
		case corner.Butts == c.run.Name:
			wallLeft, faceLeft = boardInk, boardInk
		}
	}
	return wallLeft, faceLeft, wallRight, faceRight
}

// wall draws the wall behind one run.
func (d *roomDrawing) wall(i int, fill string) {
	c := d.courses[i]
	var p path
	c.ring(&p, [4][2]float64{{0, 0}, {c.length, 0}, {c.length, -wallInk}, {0, -wallInk}})
	d.add("path", "fill", fill, "d", p.String())
	var face path
	x, y := c.at(0, 0)
	face.move(x, y)
	x, y = c.at(c.length, 0)
	face.line(x, y)
	d.add("path", "class", "edge", "d", face.String())
	d.claim(c, 0, c.length, -wallInk, boardInk)
}

// claim keeps labels off a strip along a run.
func (d *roomDrawing) claim(c course, from, to, near, far float64) {
	x0, y0 := c.at(from, near)
	x1, y1 := c.at(to, far)
	d.board.claim(box{min(x0, x1), min(y0, y1), max(x0, x1) - min(x0, x1), max(y0, y1) - min(y0, y1)})
}

// band draws the panelling with its seams.
func (d *roomDrawing) band(i int) {
	c := d.courses[i]
	wallLeft, faceLeft, wallRight, faceRight := d.ends(i)
	var p path
	for n := 1; n < len(c.run.Panels); n++ { // up to what parts neighbours
		if a, b := c.run.Panels[n-1], c.run.Panels[n]; d.parted(a, b) {
			right, left := a.Right.Float64()*d.scale, b.Left.Float64()*d.scale
			c.ring(&p, [4][2]float64{{wallLeft, 0}, {right, 0}, {right, boardInk}, {faceLeft, boardInk}})
			wallLeft, faceLeft = left, left
		}
	}
	c.ring(&p, [4][2]float64{{wallLeft, 0}, {wallRight, 0}, {faceRight, boardInk}, {faceLeft, boardInk}})
	d.add("path", "class", "tag", "d", p.String())
	for n, panel := range c.run.Installed {
		var p path
		left, right := panel.Left.Float64()*d.scale, panel.Right.Float64()*d.scale
		c.ring(&p, [4][2]float64{{left, 0}, {right, 0}, {right, boardInk}, {left, boardInk}})
		d.add("path", "class", "opening", "fill", d.hatch(ref("installed-%d-%d", i, n), "hatch", 5, -45), "d", p.String())
	}
	var seams path
	for n := 1; n < len(c.run.Panels); n++ {
		if d.parted(c.run.Panels[n-1], c.run.Panels[n]) {
			continue
		}
		middle := (c.run.Panels[n-1].Right.Float64() + c.run.Panels[n].Left.Float64()) / 2 * d.scale
		x, y := c.at(middle, 0)
		seams.move(x, y)
		x, y = c.at(middle, boardInk)
		seams.line(x, y)
	}
	if seams.b.Len() > 0 {
		d.add("path", "class", "seam", "d", seams.String())
	}
}

// corner puts the corner's letter outside the wall.
func (d *roomDrawing) corner(i int) {
	if !d.meets(i) {
		return
	}
	c := d.courses[i]
	away := 22.0
	if d.outside(i) {
		away = -away
	}
	x, y := c.at(c.length+away, -22)
	if d.outside(i) {
		x, y = c.at(c.length+22, 22)
	}
	d.add("circle", "class", "tag", "cx", x, "cy", y, "r", 9)
	line{counted(CornerLetter(d.plan, i))}.write(&d.root, "bold", x, y+4, "middle")
	d.board.claim(around(x, y, 18, 18))
}

// CornerLetter names the corner at the right end of run i on the plan view and
// in the table; it is empty where there is none.
func CornerLetter(p plan.Plan, i int) string {
	if i < 0 || i >= len(p.Runs) || p.Runs[i].CornerRight == nil {
		return ""
	}
	n := 0
	for _, run := range p.Runs[:i] {
		if run.CornerRight != nil {
			n++
		}
	}
	return plan.CornerName(n)
}

// panels writes the numbers of each panel's pieces, which are the order of
// fitting, before the panel.
func (d *roomDrawing) panels(i int) {
	c := d.courses[i]
	for _, panel := range c.run.Panels {
		var text line
		for n, number := range panel.Pieces {
			at := d.pieceIndex(number)
			if at < 0 {
				continue
			}
			if n > 0 {
				text = append(text, " ")
			}
			text = append(text, word(d.plan.Pieces[at].Label, ref("pieces[%d].label", at)))
		}
		w := text.width(typeSize) + 8
		middle := (panel.Left.Float64() + panel.Right.Float64()) / 2 * d.scale
		var seats []box
		for _, into := range []float64{13, 28, 43} {
			for _, slide := range []float64{0, 10, -10, 22, -22, 34, -34} {
				seats = append(seats, c.before(middle+slide, boardInk+into, w, 15))
			}
		}
		if seat, ok := d.board.place(seats...); ok {
			d.add("rect", "class", "tag", "x", seat.x, "y", seat.y, "width", seat.w, "height", seat.h, "rx", 4)
			text.write(&d.root, "bold", seat.x+seat.w/2, seat.y+11.5, "middle")
		}
	}
}

// name writes a run's name, its width and its place in the order of fitting,
// inside the room where there is space, else outside; in a corner with no room
// for all of it the name alone, or the name clipped.
func (d *roomDrawing) name(i int) {
	c := d.courses[i]
	name := func(width float64) (lines []line) {
		for _, text := range wrap(c.run.Name, width, typeSize) {
			lines = append(lines, line{word(clip(text, width, typeSize), ref("runs[%d].name", i))})
		}
		return lines
	}
	figures := []line{{d.length(c.run.Width, ref("runs[%d].width", i)), " wide"}, {"fitted " + d.turn(i)}}
	for form, lines := range [][]line{name(220), name(110), name(220), name(110), name(80), {{word(clip(c.run.Name, 90, typeSize), ref("runs[%d].name", i))}}} {
		bold := len(lines)
		if form < 2 {
			lines = append(lines, figures...)
		}
		w, h := 0.0, 13*float64(len(lines))+3
		for _, l := range lines {
			w = max(w, l.width(typeSize)*1.06+6)
		}
		seat, ok := d.board.place(d.nameSeats(c, w, h)...)
		if !ok {
			continue
		}
		if form > 1 { // it may stand nearer to another run
			x, y := c.at(c.length/2, boardInk/2)
			d.leads.add("path", "class", "lead", "d", fmt.Sprintf("M%s %sL%s %s", ink(max(seat.x, min(x, seat.x+seat.w))), ink(max(seat.y, min(y, seat.y+seat.h))), ink(x), ink(y)))
		}
		for n, l := range lines {
			class := []string{"bold", "", "soft"}[max(0, n-bold+1)]
			l.write(&d.root, class, seat.x+seat.w/2, seat.y+11+13*float64(n), "middle")
		}
		return
	}
}

// nameSeats are the places for a run's name, those in the room first.
func (d *roomDrawing) nameSeats(c course, w, h float64) []box {
	var seats []box
	for _, into := range []float64{38, 54, 70, 90} {
		for _, share := range []float64{.5, .4, .6, .3, .7} {
			seats = append(seats, c.before(c.length*share, into, w, h))
		}
	}
	room := c.along.room()
	for _, away := range []float64{4, 14, 24} {
		for _, share := range []float64{.5, .3, .7, 0, 1} {
			x, y := c.at(c.length*share, -wallInk-away)
			seats = append(seats, around(x-room.x*w/2, y-room.y*h/2, w, h))
		}
	}
	return seats
}

// turn is the place of a run in the order of fitting, by the least number of
// its pieces; one without pieces is up already.
func (d *roomDrawing) turn(i int) string {
	var runs []string
	pieces := slices.Clone(d.plan.Pieces)
	slices.SortStableFunc(pieces, func(a, b plan.Piece) int { return a.Number - b.Number })
	for _, piece := range pieces {
		if !slices.Contains(runs, piece.Run) {
			runs = append(runs, piece.Run)
		}
	}
	names := []string{"first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth"}
	at := slices.Index(runs, d.plan.Runs[i].Name)
	switch {
	case at < 0:
		return "already"
	case at < len(names):
		return names[at]
	}
	return "later"
}

// describe is the text alternative.
func (d *roomDrawing) describe() string {
	var b strings.Builder
	b.WriteString("The runs clockwise, as seen by someone in the room. ")
	for i, run := range d.plan.Runs {
		fmt.Fprintf(&b, "%s, %s wide, fitted %s. ", run.Name, d.tape.Format(run.Width), d.turn(i))
		if c := run.CornerRight; c != nil {
			fmt.Fprintf(&b, "Corner %s, %s, to %s%s. ", CornerLetter(d.plan, i), c.Kind, c.Next, after(": passes ", c.Passes))
		}
	}
	return strings.TrimSpace(b.String())
}
