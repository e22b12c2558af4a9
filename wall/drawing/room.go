package drawing

import (
	"math/cmplx"
	"slices"
	"strings"

	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

const (
	roomTall  = 385.0 // most ink that the room takes from back to front
	roomLane  = 52.0  // white round the room
	boardInk  = 10.0  // thickness of the panelling as drawn, much exaggerated
	wallInk   = 9.0   // thickness of the wall as drawn
	chainStep = 90.0  // between runs that do not meet
)

// roomDrawing draws the room from above.
type roomDrawing struct {
	canvas
	courses []course
	apart   []bool // by run: it would cross another, and is drawn off the one before it
	bands   []box  // by run: its wall with its panelling
}

// Room draws the room of a plan from above.
func Room(p plan.Plan) (Picture, error) {
	return draw(wideInk, fault.Of("Runs"), 0, len(p.Runs), func(width float64) *Picture {
		d := &roomDrawing{canvas: newCanvas(p, width, sized("room", width), "The room from above")}
		d.desc("The runs clockwise, as seen by someone in the room.")
		d.lay()
		each := func(parts ...func(i int, c course)) {
			for _, part := range parts {
				for i, c := range d.courses {
					part(i, c)
				}
			}
		}
		each(d.wall, d.panelling)
		d.leads = d.add("g")
		each(d.corner, d.named)
		note := line{p.Profile.Word("Panels", "Boards") + " are on your side, drawn too thick." + either(slices.Contains(d.apart, true), " Parted where runs would cross; a part may be turned.", "")}
		y := d.under(0, d.Width/2, d.Height-8, "middle", note.wrap(d.Width/1.1, d.Width/1.1)...)
		d.Height = d.block(y, false, line{counted("R1"), ": Plan of the room"})
		return d.Picture
	})
}

// bend is 1 where run i meets the next in an inside corner, -1 in an outside one, 0 in none.
func (d *roomDrawing) bend(i int) float64 {
	if c := d.plan.Runs[i].CornerRight; c != nil {
		return either(c.Kind == wall.OutsideCorner, -1.0, 1)
	}
	return 0
}

// lay walks round the room, run by run, and scales the walk to the page. Runs that do not meet are
// drawn one below the other, a share of the whole apart, and so is one that would cross another.
func (d *roomDrawing) lay() {
	total := 0.0
	for _, run := range d.plan.Runs {
		total += run.Width.Float64()
	}
	at, along := point(0), point(1)
	var x0, y0, x1, y1 float64
	for i, run := range d.plan.Runs {
		c := course{run, at, along, run.Width.Float64()}
		d.apart = append(d.apart, i > 0 && d.bend(i-1) != 0 && d.crosses(c, total/20))
		if i > 0 && (d.bend(i-1) == 0 || d.apart[i]) {
			along = 1
			c.start, c.along = complex(0, y1+total*chainStep/wideInk), along
			if d.apart[i] {
				c.start += complex(0, total*chainStep/wideInk/2) // for the letter of its corner
			}
		}
		d.courses = append(d.courses, c)
		at = c.at(c.long, 0)
		x0, y0, x1, y1 = min(x0, real(at)), min(y0, imag(at)), max(x1, real(at)), max(y1, imag(at))
		if bend := d.bend(i); bend != 0 {
			along *= complex(0, bend)
		}
	}
	d.scale = whole(min((d.Width-2*roomLane)/max(x1-x0, 1), roomTall/(y1-y0)))
	left := (d.Width - (x1-x0)*d.scale) / 2
	for i := range d.courses {
		c := &d.courses[i]
		c.start, c.long = complex(left+(real(c.start)-x0)*d.scale, roomLane+(imag(c.start)-y0)*d.scale), c.long*d.scale
	}
	d.Height = 2*roomLane + (y1-y0)*d.scale + either(y1-y0 < 1, 24.0+50, 24) // the name of one straight wall stands before it
	d.frame = box{2, 2, d.Width - 4, d.Height - 26}
}

// crosses reports whether a run meets one before the last of its chain, but for the start of the
// first, which it may miss by a little.
func (d *roomDrawing) crosses(c course, little float64) bool {
	area := func(c course) box { return segment{c.start, c.at(c.long, 0)}.span().grow(.01) }
	for i, other := range d.courses[:max(0, len(d.courses)-1)] {
		closing := i == 0 && cmplx.Abs(c.at(c.long, 0)-other.start) < little
		if !closing && area(c).overlaps(area(other)) {
			return true
		}
	}
	return false
}

// before is the run to the left of run i; in a room that is not closed the last, at whose end is no corner.
func (d *roomDrawing) before(i int) int { return (i + len(d.courses) - 1) % len(d.courses) }

// ends are where the panelling's wall side and its face end along the run, such as at a miter.
func (d *roomDrawing) ends(i int) (wallLeft, faceLeft, wallRight, faceRight float64) {
	c := d.courses[i]
	past := func(i int) (wall, face float64) {
		bend := d.bend(i)
		wall = either(bend > 0 && d.plan.Runs[i].CornerRight.Butts == c.run.Name, -boardInk, 0)
		return wall, either(bend < 0, boardInk, wall)
	}
	wallLeft, faceLeft = past(d.before(i))
	wallRight, faceRight = past(i)
	return -wallLeft, -faceLeft, c.long + wallRight, c.long + faceRight
}

// wall draws the wall behind one run, and keeps labels off it and its panelling.
func (d *roomDrawing) wall(i int, c course) {
	from, to := -wallInk*d.bend(d.before(i)), c.long+wallInk*d.bend(i)
	d.add("path", "fill", d.hatch("wall", "hatch", 5, 45), "d", c.band(0, c.long, -wallInk, from, to))
	d.stroke("edge", c.line(0, complex(c.long, 0)))
	d.bands = append(d.bands, segment{c.at(0, -wallInk), c.at(c.long, boardInk)}.span())
	d.claim(d.bands[i])
}

// panelling draws the panels of a run as a band with its seams, broken where neighbors are parted.
func (d *roomDrawing) panelling(i int, c course) {
	if c.run.Bare() {
		return
	}
	wallLeft, faceLeft, wallRight, faceRight := d.ends(i)
	band, seams := "", ""
	for n := 1; n < len(c.run.Panels); n++ {
		a, b := c.run.Panels[n-1], c.run.Panels[n]
		right, left := a.Right.Float64()*d.scale, b.Left.Float64()*d.scale
		if d.plan.Gaps.Seam.Add(d.tape.Mark).Less(b.Left.Sub(a.Right)) { // more than a seam, such as a door
			band += c.band(wallLeft, right, boardInk, faceLeft, right)
			wallLeft, faceLeft = left, left
		} else {
			seams += c.line(complex((right+left)/2, 0), complex((right+left)/2, boardInk))
		}
	}
	d.stroke("tag", band, c.band(wallLeft, wallRight, boardInk, faceLeft, faceRight))
	for n, panel := range c.run.Installed {
		left, right := panel.Left.Float64()*d.scale, panel.Right.Float64()*d.scale
		if d.bend(d.before(i)) > 0 && !panel.Left.Less(d.plan.Profile.Thickness) { // it leaves room for the panel of the other wall
			left = max(left, boardInk)
		}
		if d.bend(i) > 0 && !c.run.Width.Sub(panel.Right).Less(d.plan.Profile.Thickness) {
			right = min(right, c.long-boardInk)
		}
		d.add("path", "class", "opening", "fill", d.hatch(ref("installed-%d-%d", i, n), "hatch", 5, -45), "d", c.band(left, right, boardInk, left, right))
	}
	if seams != "" {
		d.stroke("seam", seams)
	}
}

// corner puts the letter of a corner outside the wall, at both runs where they are drawn apart.
func (d *roomDrawing) corner(i int, c course) {
	if corner := c.run.CornerRight; corner != nil {
		d.desc("Corner %s, %s, to %s.", d.plan.CornerLetter(i), corner.Kind, strings.TrimSuffix(corner.Next+": passes "+corner.Passes, ": passes "))
		d.letter(d.plan.CornerLetter(i), c.at(c.long+23, -23*d.bend(i)))
	}
	if d.apart[i] {
		d.letter(d.plan.CornerLetter(i-1), c.at(-23, -23*d.bend(i-1)))
	}
}

// named writes a run's name and width beside its wall, else with a lead to it.
func (d *roomDrawing) named(i int, c course) {
	d.desc("%s, %s wide.", c.run.Name, d.tape.Format(c.run.Width))
	var ways []way
	for _, width := range []float64{220, 110} {
		lines := append(line{figure{c.run.Name, ref("runs[%d].name", i)}}.wrap(width, width), line{d.length(c.run.Width, ref("runs[%d].width", i)), " wide"})
		ways = append(ways, way{widest(typeSize, lines)*1.06 + 6, laneHigh*float64(len(lines)) + 3, func(seat box) {
			d.under(len(lines)-1, seat.x+seat.w/2, seat.y+14, "middle", lines...)
		}})
	}
	on := spot(c.at(c.long/2, boardInk/2))
	if !d.nameBeside(d.bands[i], d.bands, d.frame, on, ways...) {
		written(ways, func(w, h float64) (box, bool) { return d.pointed(w, h, farLead, on) })
	}
}

// course is where one run lies on the plan view. A right angle to the right is a product with i, as y runs down.
type course struct {
	run   plan.Run
	start point   // its left end
	along point   // its direction, of length 1
	long  float64 // in the same unit as start
}

// at is the place that lies so far along the run and so far into the room.
func (c course) at(along, into float64) point { return c.start + c.along*complex(along, into) }

// line is the path through some places, each along the run and into the room.
func (c course) line(points ...complex128) (path string) {
	for i, p := range points {
		path += pen(either(i == 0, "M", "L"), c.at(real(p), imag(p)))
	}
	return path
}

// band is the path round a strip: from and to along the wall, deepFrom and deepTo at its depth.
func (c course) band(from, to, deep, deepFrom, deepTo float64) string {
	return c.line(complex(from, 0), complex(to, 0), complex(deepTo, deep), complex(deepFrom, deep)) + "Z"
}
