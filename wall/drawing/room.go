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
	canvas
	courses []course
	order   []string // names of the runs in the order of fitting
}

// Room draws the room of a plan from above.
func Room(p plan.Plan) (Picture, error) {
	return draw(wideInk, fault.Of("Runs"), 0, len(p.Runs), func(width float64) *Picture {
		d := &roomDrawing{canvas: newCanvas(p, width, sized("room", width), "The room from above")}
		pieces := slices.Clone(p.Pieces)
		slices.SortStableFunc(pieces, func(a, b plan.Piece) int { return a.Number - b.Number })
		for _, piece := range pieces {
			if !slices.Contains(d.order, piece.Run) {
				d.order = append(d.order, piece.Run)
			}
		}
		d.Desc = d.describe()
		d.lay()
		fill := d.hatch("wall", "hatch", 5, 45)
		for _, c := range d.courses {
			d.wall(c, fill)
		}
		for i, c := range d.courses {
			d.panelling(i, c)
		}
		d.leads = d.add("g")
		for i, c := range d.courses {
			d.corner(i, c)
		}
		for _, c := range d.courses {
			d.numbers(c)
		}
		for i, c := range d.courses {
			d.named(i, c)
		}
		line{"You stand inside. " + p.Profile.Word("Panels", "Boards") + " are drawn too thick."}.
			write(&d.node, "soft", d.Width/2, d.Height-8, "middle")
		return d.Picture
	})
}

// meets reports whether run i ends in a corner that the next run shares.
func (d *roomDrawing) meets(i int) bool { return d.plan.Runs[i].CornerRight != nil }

// outside reports whether the corner at the right of run i is an outside one.
func (d *roomDrawing) outside(i int) bool {
	return d.plan.Runs[i].CornerRight.Kind == wall.OutsideCorner
}

// lay walks round the room, run by run, and scales the walk to the page. Runs that do not meet are
// drawn one below the other; the distance is a share of the whole, so that it looks the same whatever
// the room's size.
func (d *roomDrawing) lay() {
	total := 0.0
	for _, run := range d.plan.Runs {
		total += run.Width.Float64()
	}
	var at complex128
	along := complex128(1)
	var x0, y0, x1, y1 float64
	for i, run := range d.plan.Runs {
		if i > 0 && !d.meets(i-1) {
			at, along = complex(0, y1+total*chainStep/wideInk), 1
		}
		c := course{run, at, along, run.Width.Float64()}
		d.courses = append(d.courses, c)
		at = c.at(c.long, 0)
		x0, y0, x1, y1 = min(x0, real(at)), min(y0, imag(at)), max(x1, real(at)), max(y1, imag(at))
		if d.meets(i) {
			along *= 1i
			if d.outside(i) {
				along = -along
			}
		}
	}
	d.scale = (d.Width - 2*roomLane) / max(x1-x0, 1)
	if tall := (y1 - y0) * d.scale; tall > roomTall {
		d.scale = roomTall / (y1 - y0)
	}
	d.Width = max(halfInk, (x1-x0)*d.scale+2*roomLane)
	left := (d.Width - (x1-x0)*d.scale) / 2
	for i := range d.courses {
		c := &d.courses[i]
		c.start, c.long = complex(left+(real(c.start)-x0)*d.scale, roomLane+(imag(c.start)-y0)*d.scale), c.long*d.scale
	}
	d.Height = 2*roomLane + (y1-y0)*d.scale + 24
	if y1-y0 < 1 {
		d.Height += 50 // one straight wall: its name stands before it
	}
	d.frame = box{2, 2, d.Width - 4, d.Height - 26}
}

// ends are how far the panelling's wall side and its face run past both ends of the run: into the
// corner, short of it, or to the long point of a miter.
func (d *roomDrawing) ends(i int) (wallLeft, faceLeft, wallRight, faceRight float64) {
	c := d.courses[i]
	past := func(i int) (wall, face float64) {
		switch {
		case !d.meets(i):
			return 0, 0
		case d.outside(i):
			return 0, boardInk
		case d.plan.Runs[i].CornerRight.Butts == c.run.Name:
			return -boardInk, -boardInk
		}
		return 0, 0
	}
	wall, face := past(i)
	wallRight, faceRight = c.long+wall, c.long+face
	if i > 0 || d.plan.Closed {
		wall, face = past((i + len(d.courses) - 1) % len(d.courses))
		wallLeft, faceLeft = -wall, -face
	}
	return wallLeft, faceLeft, wallRight, faceRight
}

// wall draws the wall behind one run, and keeps labels off it and its panelling.
func (d *roomDrawing) wall(c course, fill string) {
	d.add("path", "fill", fill, "d", c.band(0, c.long, -wallInk, 0, c.long))
	d.stroke("edge", c.line(0, complex(c.long, 0)))
	p, q := c.at(0, -wallInk), c.at(c.long, boardInk)
	x, y := min(real(p), real(q)), min(imag(p), imag(q))
	d.claim(box{x, y, max(real(p), real(q)) - x, max(imag(p), imag(q)) - y})
}

// panelling draws the panels of a run as a band with its seams; it is broken where more than a seam
// lies between neighbors.
func (d *roomDrawing) panelling(i int, c course) {
	wallLeft, faceLeft, wallRight, faceRight := d.ends(i)
	band, seams := "", ""
	for n := 1; n < len(c.run.Panels); n++ {
		a, b := c.run.Panels[n-1], c.run.Panels[n]
		right, left := a.Right.Float64()*d.scale, b.Left.Float64()*d.scale
		if d.parted(a, b) {
			band += c.band(wallLeft, right, boardInk, faceLeft, right)
			wallLeft, faceLeft = left, left
		} else {
			seams += c.line(complex((right+left)/2, 0), complex((right+left)/2, boardInk))
		}
	}
	d.stroke("tag", band, c.band(wallLeft, wallRight, boardInk, faceLeft, faceRight))
	for n, panel := range c.run.Installed {
		left, right := panel.Left.Float64()*d.scale, panel.Right.Float64()*d.scale
		d.add("path", "class", "opening", "fill", d.hatch(ref("installed-%d-%d", i, n), "hatch", 5, -45), "d", c.band(left, right, boardInk, left, right))
	}
	if seams != "" {
		d.stroke("seam", seams)
	}
}

// corner puts the corner's letter outside the wall.
func (d *roomDrawing) corner(i int, c course) {
	if !d.meets(i) {
		return
	}
	p := c.at(c.long+22, -22)
	if d.outside(i) {
		p = c.at(c.long+22, 22)
	}
	x, y := real(p), imag(p)
	d.dot("tag", x, y, 9)
	line{counted(CornerLetter(d.plan, i))}.write(&d.node, "bold", x, y+4, "middle")
	d.claim(centered(x, y, 18, 18))
}

// CornerLetter names the corner at the right end of run i on the plan view and in the table; it is
// empty where there is none.
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

// numbers writes the numbers of each panel's pieces, which are the order of fitting, before the panel.
func (d *roomDrawing) numbers(c course) {
	for _, panel := range c.run.Panels {
		var text line
		for _, number := range panel.Pieces {
			piece, at := d.plan.Piece(number)
			if at < 0 {
				continue
			}
			if text != nil {
				text = append(text, " ")
			}
			text = append(text, word(piece.Label, ref("pieces[%d].label", at)))
		}
		w := text.width(typeSize) + 8
		middle := (panel.Left.Float64() + panel.Right.Float64()) / 2 * d.scale
		seats := grid([]float64{13, 28, 43}, []float64{0, 10, -10, 22, -22, 34, -34}, func(into, slide float64) box {
			return c.before(middle+slide, boardInk-10+into, w, 15)
		})
		if seat, ok := d.place(seats...); ok {
			d.tag(seat, 4)
			text.write(&d.node, "bold", seat.x+seat.w/2, seat.y+11.5, "middle")
		}
	}
}

// named writes a run's name, its width and its place in the order of fitting, inside the room where
// there is space, else outside; in a corner with no room for all of it the name alone, or the name
// clipped.
func (d *roomDrawing) named(i int, c course) {
	name := func(width float64) (lines []line) {
		for _, text := range wrap(c.run.Name, width, typeSize) {
			lines = append(lines, line{word(clip(text, width, typeSize), ref("runs[%d].name", i))})
		}
		return lines
	}
	figures := []line{{d.length(c.run.Width, ref("runs[%d].width", i)), " wide"}, {"fitted " + d.turn(c.run)}}
	for form, lines := range [][]line{name(220), name(110), name(220), name(110), name(80), {{word(clip(c.run.Name, 90, typeSize), ref("runs[%d].name", i))}}} {
		bold := len(lines)
		if form < 2 {
			lines = append(lines, figures...)
		}
		w, h := 0.0, 13*float64(len(lines))+3
		for _, l := range lines {
			w = max(w, l.width(typeSize)*1.06+6)
		}
		seat, ok := d.place(nameSeats(c, w, h)...)
		if !ok {
			continue
		}
		if form > 1 { // it may stand nearer to another run
			p := c.at(c.long/2, boardInk/2)
			d.leadTo(seat, real(p), imag(p))
		}
		for n, l := range lines {
			class := []string{"bold", "", "soft"}[max(0, n-bold+1)]
			l.write(&d.node, class, seat.x+seat.w/2, seat.y+11+13*float64(n), "middle")
		}
		return
	}
}

// nameSeats are the places for a run's name, those in the room first.
func nameSeats(c course, w, h float64) []box {
	at := func(into, share float64) box { return c.before(c.long*share, into, w, h) }
	return append(grid([]float64{28, 44, 60, 80}, []float64{.5, .4, .6, .3, .7}, at),
		grid([]float64{-wallInk - 4, -wallInk - 14, -wallInk - 24}, []float64{.5, .3, .7, 0, 1}, at)...)
}

// turn is the place of a run in the order of fitting; one without pieces is up already.
func (d *roomDrawing) turn(run plan.Run) string {
	names := []string{"first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth"}
	at := slices.Index(d.order, run.Name)
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
		fmt.Fprintf(&b, "%s, %s wide, fitted %s. ", run.Name, d.tape.Format(run.Width), d.turn(run))
		if c := run.CornerRight; c != nil {
			fmt.Fprintf(&b, "Corner %s, %s, to %s%s. ", CornerLetter(d.plan, i), c.Kind, c.Next, after(": passes ", c.Passes))
		}
	}
	return strings.TrimSpace(b.String())
}
