package drawing

import (
	"fmt"
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall/plan"
)

const (
	sheetTall  = 520.0 // most ink that a sheet's length takes
	sheetLeft  = 96.0  // lane for the measurements up the sheet, at least
	boardTall  = 270.0 // of a board
	boardWide  = 96.0
	numberSize = 7.5 // radius of a cut's number
)

// sheetDrawing draws one sheet, face up, with its parts and cuts.
type sheetDrawing struct {
	scribe
	*Picture
	sheet plan.Sheet
	stock plan.Stock
	index int
	view
	board board
	area  box   // the whole sheet
	leads *node // lines that run under everything drawn later
}

// Sheet draws sheet i of a plan, face up, with its parts, cuts and offcuts.
func Sheet(p plan.Plan, i int) (Picture, error) {
	return draw(halfInk, fault.Of("Sheets"), i, len(p.Sheets), func(float64) *Picture { return drawSheet(newScribe(p), i) })
}

// drawSheet returns the drawing of sheet i.
func drawSheet(s scribe, i int) *Picture {
	sheet := s.plan.Sheets[i]
	d := &sheetDrawing{scribe: s, sheet: sheet, index: i}
	d.Picture = newPicture(fmt.Sprintf("sheet-%d", sheet.Number), fmt.Sprintf("%s %d, cut from %s", s.plan.Profile.Word("Sheet", "Board"), sheet.Number, sheet.Stock))
	for _, stock := range s.plan.Stock {
		if stock.Name == sheet.Stock {
			d.stock = stock
		}
	}
	d.Desc = d.describe()
	d.lay()
	d.ground()
	d.parts()
	d.offcuts()
	d.leads = d.add("g")
	d.cuts()
	d.labels()
	d.measureUp()
	d.Height = d.measureAcross()
	return d.Picture
}

// piece finds a piece by its number.
func (d *sheetDrawing) piece(number int) plan.Piece {
	return d.plan.Pieces[d.pieceIndex(number)]
}

// pieceIndex is the place of a piece in the plan.
func (s scribe) pieceIndex(number int) int {
	return slices.IndexFunc(s.plan.Pieces, func(p plan.Piece) bool { return p.Number == number })
}

// lay chooses the scale: a sheet as wide as half a page; a board, which would be
// a mere stripe, shorter and stretched across.
func (d *sheetDrawing) lay() {
	wide, tall := d.stock.Width.Float64(), d.stock.Length.Float64()
	lane := sheetLeft
	for _, s := range d.stops(nest.Crosscut, 1, d.stock.Length, "length") {
		lane = max(lane, 26+s.text.width(typeSize))
	}
	d.scale = min((halfInk-lane-14)/wide, sheetTall/tall)
	if wide*d.scale < boardWide {
		d.scale = min(d.scale, boardTall/tall)
		d.stretch = boardWide / (wide * d.scale)
	}
	d.Width = halfInk
	d.left, d.top, d.y1 = lane+(halfInk-lane-14-wide*d.across())/2, 22, tall
	var zero fraction.Length
	d.area = d.view.area(zero, zero, d.stock.Width, d.stock.Length)
	d.board.frame = d.area.grow(16)
	for _, s := range d.stops(nest.Rip, 0, d.stock.Width, "width") {
		d.board.claim(box{d.x(s.at) - 1.5, d.area.y + d.area.h, 3, 8})
	}
	for _, s := range d.stops(nest.Crosscut, 1, d.stock.Length, "length") {
		d.board.claim(box{d.area.x - 8, d.y(s.at) - 1, 8, 2})
	}
	end := "upper end"
	if d.stretch > 0 {
		end += " (drawn too wide)"
	}
	line{end}.write(&d.root, "small soft", d.area.x+d.area.w/2, d.top-8, "middle")
}

// ground draws the sheet and, faintly, its own pattern.
func (d *sheetDrawing) ground() {
	rect := func(class string) {
		d.add("rect", "class", class, "x", d.area.x, "y", d.area.y, "width", d.area.w, "height", d.area.h)
	}
	rect("board")
	var zero fraction.Length
	faint := d.add("g", "fill-opacity", ".55")
	drawPattern(faint, d.view, stripes(d.plan.Profile, d.stock.LeftPhase, d.stock.Width), zero, d.stock.Length)
	rect("edge")
}

// spot is the rectangle that a placement takes on the sheet, in ink.
func (d *sheetDrawing) spot(p plan.Placement) box {
	piece := d.piece(p.Piece)
	return d.view.area(p.X, p.Y, p.X.Add(piece.Width), p.Y.Add(piece.Height))
}

// parts outlines the pieces; what is sawn out of them later is hatched.
func (d *sheetDrawing) parts() {
	fill := ""
	for _, p := range d.sheet.Placements {
		piece := d.piece(p.Piece)
		all := d.rings(p)
		spot := d.spot(p)
		if odd(piece) {
			if fill == "" {
				fill = d.hatch("waste", "hatch", 5, 45)
			}
			var waste path
			waste.rect(spot)
			for _, ring := range all {
				d.view.ring(&waste, ring)
			}
			d.add("path", "fill", fill, "fill-rule", "evenodd", "d", waste.String())
		}
		d.add("path", "class", "edge", "d", d.view.outline(all...))
	}
}

// rings are the outline and the holes of a placed piece on the sheet.
func (d *sheetDrawing) rings(p plan.Placement) [][]plan.Point {
	piece := d.piece(p.Piece)
	all := rings(piece)
	for r, ring := range all {
		all[r] = onSheet(ring, piece, p)
	}
	return all
}

// onSheet returns a ring of a piece in the sheet's coordinates.
func onSheet(ring []plan.Point, piece plan.Piece, p plan.Placement) []plan.Point {
	moved := make([]plan.Point, len(ring))
	for i, at := range ring {
		if p.Turned {
			at = plan.Point{piece.Width.Sub(at[0]), piece.Height.Sub(at[1])}
		}
		moved[i] = plan.Point{p.X.Add(at[0]), p.Y.Add(at[1])}
	}
	return moved
}

// odd reports whether a piece is more than a plain rectangle.
func odd(piece plan.Piece) bool {
	if len(piece.Holes) > 0 || len(piece.Outline) != 4 {
		return true
	}
	lo, hi := bounds(piece.Outline)
	for _, p := range piece.Outline {
		if (p[0] != lo[0] && p[0] != hi[0]) || (p[1] != lo[1] && p[1] != hi[1]) {
			return true
		}
	}
	return false
}

// offcuts draws what is left over.
func (d *sheetDrawing) offcuts() {
	if len(d.sheet.Offcuts) == 0 {
		return
	}
	fill := d.hatch("offcut", "dots", 6, -45)
	for _, o := range d.sheet.Offcuts {
		c := d.view.area(o.X, o.Y, o.X.Add(o.Width), o.Y.Add(o.Length))
		d.add("rect", "class", "offcut", "fill", fill, "x", c.x, "y", c.y, "width", c.w, "height", c.h)
	}
}

// sides are the ends of a cut's line on the sheet, in ink: the middle of its
// kerf, from the lower or left end.
func (d *sheetDrawing) sides(c nest.Cut) (x0, y0, x1, y1 float64) {
	middle := c.At.Add(d.plan.Saw.Kerf.Div(2))
	x, y, w, h := c.Rect[0], c.Rect[1], c.Rect[2], c.Rect[3]
	if c.Kind == nest.Rip {
		x = x.Add(middle)
		return d.x(x), d.y(y), d.x(x), d.y(y.Add(h))
	}
	y = y.Add(middle)
	return d.x(x), d.y(y), d.x(x.Add(w)), d.y(y)
}

// cuts draws the cuts in sawing order, each with its number on its line.
func (d *sheetDrawing) cuts() {
	for _, c := range d.sheet.Cuts {
		x0, y0, x1, y1 := d.sides(c)
		d.add("path", "class", "cut", "stroke-width", max(1.8, d.plan.Saw.Kerf.Float64()*d.across()),
			"d", fmt.Sprintf("M%s %sL%s %s", ink(x0), ink(y0), ink(x1), ink(y1)))
	}
	for i, c := range d.sheet.Cuts {
		x0, y0, x1, y1 := d.sides(c)
		var seats []box
		for _, f := range []float64{.5, .4, .6, .3, .7, .2, .8, .1, .9, .45, .55, .35, .65, .25, .75, .15, .85, .05, .95} {
			seats = append(seats, around(x0+f*(x1-x0), y0+f*(y1-y0), 2*numberSize, 2*numberSize))
		}
		onLine := len(seats)
		for _, f := range []float64{.5, .3, .7, .1, .9} { // beside the line, with a short lead
			for _, away := range []float64{11, -11, 20, -20} {
				dx, dy := away, 0.0
				if y0 == y1 {
					dx, dy = 0, away
				}
				seats = append(seats, around(x0+f*(x1-x0)+dx, y0+f*(y1-y0)+dy, 2*numberSize, 2*numberSize))
			}
		}
		seat, ok := d.board.place(seats...)
		if !ok {
			seat = seats[0]
			d.board.claim(seat)
		}
		x, y := seat.x+numberSize, seat.y+numberSize
		if i := slices.Index(seats, seat); i >= onLine {
			f := []float64{.5, .3, .7, .1, .9}[(i-onLine)/4]
			d.add("path", "class", "lead", "d", fmt.Sprintf("M%s %sL%s %s", ink(x), ink(y), ink(x0+f*(x1-x0)), ink(y0+f*(y1-y0))))
		}
		d.add("circle", "class", "cutnumber", "cx", x, "cy", y, "r", numberSize)
		line{word(fmt.Sprint(c.Step), ref("sheets[%d].cuts[%d].step", d.index, i))}.write(&d.root, "cuttext", x, y+3.6, "middle")
	}
}

// labels writes each part's number with an arrow to its top, and its size and
// the size of each offcut where there is room; the tables have them all.
func (d *sheetDrawing) labels() {
	for _, p := range d.sheet.Placements {
		for _, hole := range d.rings(p)[1:] {
			lo, hi := bounds(hole)
			d.board.claim(d.view.area(lo[0], lo[1], hi[0], hi[1]))
		}
	}
	for _, p := range d.sheet.Placements {
		at := d.pieceIndex(p.Piece)
		piece := d.plan.Pieces[at]
		label := line{word(piece.Label, ref("pieces[%d].label", at))}
		size := line{d.length(piece.Width, ref("pieces[%d].width", at)), " × ", d.length(piece.Height, ref("pieces[%d].height", at))}
		w := textWidth(piece.Label, 17) + 26
		sizeWidth := size.width(smallSize) + 8
		if seat, ok := d.board.first(seats(d.view, d.rings(p), max(w, sizeWidth), 38)); ok {
			d.partTag(label, p.Turned, around(seat.x+seat.w/2, seat.y+12, w, 22))
			size.write(&d.root, "small halo", seat.x+seat.w/2, seat.y+35, "middle")
		} else if seat, ok := d.board.first(seats(d.view, d.rings(p), w, 22)); ok {
			d.partTag(label, p.Turned, seat)
		} else {
			d.partLead(label, p)
		}
	}
	for i, o := range d.sheet.Offcuts {
		path := fmt.Sprintf("sheets[%d].offcuts[%d].", d.index, i)
		size := line{d.length(o.Width, path+"width"), " × ", d.length(o.Length, path+"length")}
		c := d.view.area(o.X, o.Y, o.X.Add(o.Width), o.Y.Add(o.Length))
		wide := max(size.width(smallSize), textWidth("offcut", smallSize)) + 4
		if seat, ok := d.board.place(within(c, wide, 26)...); ok {
			line{"offcut"}.write(&d.root, "small halo", seat.x+seat.w/2, seat.y+10, "middle")
			size.write(&d.root, "small halo", seat.x+seat.w/2, seat.y+22, "middle")
		} else if seat, ok := d.board.place(within(c, wide, 14)...); ok {
			size.write(&d.root, "small halo", seat.x+seat.w/2, seat.y+10, "middle")
		} else if seat, ok := d.board.place(within(c, 14, wide)...); ok {
			size.upright(&d.root, "small halo", seat.x+7, seat.y+seat.h/2, "middle")
		}
	}
}

// partTag draws a part's number with an arrow to the upper edge of the piece.
func (d *sheetDrawing) partTag(label line, turned bool, at box) {
	d.add("rect", "class", "tag", "x", at.x, "y", at.y, "width", at.w, "height", at.h, "rx", 4)
	label.write(&d.root, "big", at.x+(at.w-16)/2, at.y+at.h/2+6, "middle")
	d.arrow(at.x+at.w-11, at.y+at.h/2, turned)
}

// partLead puts the number of a part that is too small for it beside the part.
func (d *sheetDrawing) partLead(label line, p plan.Placement) {
	spot := d.spot(p)
	w := label.width(typeSize) + 18
	seat, ok := d.board.first(seats(d.view, d.rings(p), w, 14))
	if !ok {
		seat, ok = d.board.place(besides(spot, w, 14)...)
	}
	if !ok {
		return // the cut list has it
	}
	if !seat.inside(spot) {
		d.leads.add("path", "class", "lead", "d", fmt.Sprintf("M%s %sL%s %s", ink(seat.x+w/2), ink(seat.y+7), ink(spot.x+spot.w/2), ink(spot.y+spot.h/2)))
	}
	d.add("rect", "class", "tag", "x", seat.x, "y", seat.y, "width", w, "height", 14, "rx", 3)
	label.write(&d.root, "bold", seat.x+(w-12)/2, seat.y+11, "middle")
	d.arrow(seat.x+w-8, seat.y+7, p.Turned)
}

// arrow points to the upper edge of a piece.
func (d *sheetDrawing) arrow(x, y float64, turned bool) {
	up := 1.0
	if turned {
		up = -1
	}
	d.add("path", "class", "pole", "d", fmt.Sprintf("M%s %sv%s", ink(x), ink(y+6*up), ink(-9*up)))
	d.add("path", "fill", "var(--ink)", "d", fmt.Sprintf("M%s %sl4 %sh-8z", ink(x), ink(y-7*up), ink(6*up)))
}

// within returns places for a label of a size in an area, the middle first.
func within(area box, w, h float64) []box {
	if w > area.w-2 || h > area.h-2 {
		return nil
	}
	var found []box
	for _, fy := range []float64{.5, .3, .7, .1, .9, 0, 1} {
		for _, fx := range []float64{.5, .25, .75, 0, 1} {
			found = append(found, box{area.x + 1 + fx*(area.w-2-w), area.y + 1 + fy*(area.h-2-h), w, h})
		}
	}
	return found
}
