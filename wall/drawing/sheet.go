package drawing

import (
	"fmt"
	"math"
	"slices"
	"sort"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall/plan"
)

const (
	sheetTall  = 520.0 // most ink that a sheet's length takes
	sheetLeft  = 96.0  // lane for the measurements up the sheet, at least
	boardTall  = 270.0 // of a board
	boardWide  = 96.0
	numberSize = 10.5 // radius of a cut's number
	oneTick    = 5.0  // between ticks that are taken for one
)

// sheetDrawing draws one sheet as it lies on the bench, with its parts and cuts.
type sheetDrawing struct {
	canvas
	sheet  plan.Sheet
	stock  plan.Stock
	source string // of the stock in the plan, with a full stop, as path
	path   string // of the sheet
	area   box    // the whole sheet
}

// Sheet draws sheet i of a plan as it lies on the bench, with its parts, cuts and offcuts: with its
// pattern, or from the back where plan.Saw.Face says so.
func Sheet(p plan.Plan, i int) (Picture, error) {
	return draw(halfInk, fault.Of("Sheets"), i, len(p.Sheets), func(float64) *Picture {
		sheet := p.Sheets[i]
		stock, n := p.StockNamed(sheet.Stock)
		d := &sheetDrawing{sheet: sheet, stock: stock, source: ref("stock[%d].", n), path: ref("sheets[%d].", i)}
		d.canvas = newCanvas(p, halfInk, ref("sheet-%d", sheet.Number), fmt.Sprintf("%s %d, cut from %s", p.Profile.Word("Sheet", "Board"), sheet.Number, sheet.Stock))
		d.describe()
		d.lay()
		d.rect(d.area, "class", "board")
		if d.flip == 0 {
			faint := d.add("g", "fill-opacity", ".55")
			d.drawPattern(faint, d.view, p.Profile, d.stock.LeftPhase, d.stock.Width, d.stock.Length, flatly)
		}
		d.rect(d.area, "class", "edge")
		d.parts()
		for _, o := range sheet.Offcuts {
			d.rect(d.rectangle(o.X, o.Y, o.Width, o.Length), "class", "offcut", "fill", d.hatch("offcut", "dots", 6, -45))
		}
		bottom, bare := d.area.y+d.area.h, func(stop) {}
		d.beside(d.stops(nest.Crosscut), d.area.y, bottom, d.area.x, -1, 4, 17, bare)
		bottom = d.below(d.stops(nest.Rip), d.left, d.Width-7, bottom, 1, 4, 12, bare)
		d.leads = d.add("g")
		d.sawnOut()
		for _, c := range sheet.Cuts { // under the labels, which may have no place clear of them
			d.add("path", "class", "cut", "stroke-width", max(1.8, p.Saw.Kerf.Float64()*d.across()), "d", pen("M", d.kerf(c).from, "L", d.kerf(c).to))
		}
		d.labels() // before the numbers of the cuts, which have more places
		d.cuts()
		d.offcutLabels()
		d.Height = d.block(bottom+4, false, line{counted(ref("S%d", sheet.Number)), p.Profile.Word(": Sheet ", ": Board "), figure{fmt.Sprint(sheet.Number), d.path + "number"}, ", ", figure{sheet.Stock, d.path + "stock"}})
		return d.Picture
	})
}

// lay chooses the scale; a board, which would be a mere stripe, is stretched across.
func (d *sheetDrawing) lay() {
	wide, tall := d.stock.Width.Float64(), d.stock.Length.Float64()
	lane := sheetLeft
	for _, s := range d.stops(nest.Crosscut) {
		lane = max(lane, 26+s.text.width(typeSize))
	}
	d.scale = whole(min((halfInk-lane-14)/wide, sheetTall/tall))
	if wide*d.scale < boardWide {
		d.scale = whole(min(d.scale, boardTall/tall))
		d.stretch = boardWide / (wide * d.scale)
	}
	d.flip = either(d.plan.Saw.Face == plan.FaceDown, wide, 0)
	end := d.plan.Profile.Word("upper end of the sheet", "upper end") + either(d.flip > 0, ", from the back", "") + either(d.stretch > 0, " (drawn too wide"+either(d.plan.Profile.Edges == groove.Tongued, ", no tongue)", ")"), "")
	lines := line{end}.wrap(d.Width-4, d.Width-4)
	d.left, d.top, d.y1 = lane+(halfInk-lane-14-wide*d.across())/2, 20+12*float64(len(lines)), tall
	d.area = d.sized(d.stock.Width, d.stock.Length)
	d.frame = d.area.grow(16)
	d.frame.w = d.Width - 2 - d.frame.x
	for i, l := range lines {
		half := l.width(typeSize) / 2 // beside long measurements there is less room on the right
		l.write(&d.node, "soft", max(half, min(d.area.x+d.area.w/2, d.Width-2-half)), 15+12*float64(i), "middle")
	}
}

// rectangle is the one of a size at a place on the sheet, in ink.
func (d *sheetDrawing) rectangle(x, y, w, h fraction.Length) box {
	return d.view.area(x, y, x.Add(w), y.Add(h))
}

// parts outlines the pieces; what is sawn out of them later is hatched.
func (d *sheetDrawing) parts() {
	for _, p := range d.sheet.Placements {
		piece, _ := d.plan.Piece(p.Part)
		width, left := blank(piece)
		spot, on := d.rectangle(p.X, p.Y, width, piece.Height), d.add("g")
		if middle := spot.middle(); p.Turned {
			on.set("transform", ref("rotate(180 %.2f %.2f)", real(middle), imag(middle)))
		}
		shape := d.move(plan.Point{X: p.X.Add(left), Y: p.Y}).curved(piece.Marks.Arcs, piece.Rings()...)
		waste, seen := append([][]plan.Point{cutout.Rectangle(p.X, p.Y, width, piece.Height)}, fraction.Must(d.plan.Placed(p))...), false
		d.seats(waste, leastHatch, leastHatch)(func(box) bool { seen = true; return false })
		if seen {
			on.add("path", "fill", d.hatch("waste", "hatch", 5, 45), "fill-rule", "evenodd", "d", spot.path()+shape)
		}
		on.stroke("edge", shape)
	}
}

// blank is the width of what a piece is sawn from and where the piece begins in it.
func blank(p plan.Piece) (width, left fraction.Length) {
	width, left, err := p.Blank()
	return fraction.Must(width, err), left
}

// stops are the running measurements of one kind of cut and of the sheet's own size, each once. A
// trim by less than the blade has none: nobody can measure to a place off the sheet.
func (d *sheetDrawing) stops(kind nest.CutKind) (all []stop) {
	axis, size, field, ink := 1, d.stock.Length, "length", d.y
	if kind == nest.Rip {
		axis, size, field, ink = 0, d.stock.Width, "width", d.x
	}
	steps := map[fraction.Length]line{}
	add := func(text figure, at fraction.Length) { all = once(all, stop{text: line{text}, at: at, ink: ink(at)}) }
	add(d.length(size, d.source+field), size)
	for i, c := range d.sheet.Cuts {
		if at := c.Rect[axis].Add(c.At); c.Kind == kind && at.Sign() > 0 {
			path := d.path + ref("cuts[%d].", i)
			add(d.sum(plus(c.Rect[axis], path+ref("rect[%d]", axis)), plus(c.At, path+"at")), at)
			steps[at] = append(steps[at], either(len(steps[at]) == 0, " (", ", "), figure{fmt.Sprint(c.Step), path + "step"})
		}
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].at.Less(all[j].at) })
	for i, s := range all { // of several rips, or where ticks run together, a figure has its cut's number in brackets
		near := func(k int) bool { return k >= 0 && k < len(all) && math.Abs(all[k].ink-s.ink) < oneTick }
		if cut := steps[s.at]; (kind == nest.Rip && len(steps) > 1 || near(i-1) || near(i+1)) && len(cut) > 0 {
			all[i].text = slices.Concat(s.text, cut, line{")"})
		}
	}
	return all
}

// kerf is a cut's line from its lower or left end, the middle of its kerf, in ink.
func (d *sheetDrawing) kerf(c plan.Cut) segment {
	ends := fraction.Must(c.Line(d.plan.Saw.Kerf))
	return segment{d.at(ends[0]), d.at(ends[1])}
}

// sawnOut keeps numbers and labels off the holes and the notches of the pieces.
func (d *sheetDrawing) sawnOut() {
	for _, p := range d.sheet.Placements {
		all := fraction.Must(d.plan.Placed(p))
		for _, s := range d.edges(all[0]) {
			if d.around(all[0]).grow(-.1).holds(s.along(.5)) { // no side of its blank
				d.claimLine(s)
			}
		}
		for _, hole := range all[1:] {
			d.claim(d.around(hole))
		}
	}
}

// cuts numbers the cuts in sawing order, each on its line, or beside it with a lead; one
// without room for that has its number in the table alone.
func (d *sheetDrawing) cuts() {
	for i, c := range d.sheet.Cuts {
		kerf := d.kerf(c)
		on := kerf.numberSeats([]float64{0}, []float64{.5, .4, .6, .3, .7, .2, .8, .1, .9, .45, .55, .35, .65, .25, .75, .15, .85, .05, .95})
		beside := kerf.numberSeats([]float64{15, -15, 26, -26, 40, -40, 60, -60, 85, 110}, []float64{.5, .3, .7, .1, .9})
		if seat, ok := d.place(d.clear(append(on, beside...), kerf)...); ok {
			d.number(line{figure{fmt.Sprint(c.Step), d.path + ref("cuts[%d].step", i)}}, kerf, seat)
		}
	}
}

// labels writes each part's number with an arrow to its top, and its size where there is room.
func (d *sheetDrawing) labels() {
	for _, p := range d.sheet.Placements {
		piece, at := d.plan.Piece(p.Part)
		path := ref("pieces[%d].", at)
		label := line{figure{piece.Label, path + "label"}}
		width, _ := blank(piece)
		across := d.length(width, path+"width")
		if piece.Scribe != nil {
			across = d.sum(plus(piece.Width, path+"width"), plus(piece.Scribe.Width, path+"scribe.width"))
		}
		size := line{across, " × ", d.length(piece.Height, path+"height")}
		w, small, spot := textWidth(piece.Label, 20)+28, label.width(typeSize)+18, d.rectangle(p.X, p.Y, width, piece.Height)
		if d.fitted(d.view, fraction.Must(d.plan.Placed(p)), way{max(w, size.width(typeSize)+8), 46, func(seat box) {
			d.partTag(label, "big", 7, p.Turned, centered(complex(seat.x+seat.w/2, seat.y+13), w, 25))
			size.write(&d.node, "halo", seat.x+seat.w/2, seat.y+41, "middle")
		}}, way{w, 25, func(seat box) { d.partTag(label, "big", 7, p.Turned, seat) }},
			way{small, laneHigh, func(seat box) { d.partTag(label, "bold", 4.6, p.Turned, seat) }}) {
			continue
		}
		if seat, ok := d.place(besides(spot, small, laneHigh)...); ok { // else the cut list has it
			d.leadTo(seat, spot.middle())
			d.partTag(label, "bold", 4.6, p.Turned, seat)
		}
	}
}

// offcutLabels writes the number and the size of each offcut where there is room, else its number; one too narrow
// has it in the table alone, as a label beside it would stand on a piece.
func (d *sheetDrawing) offcutLabels() {
	for _, o := range d.plan.Leftovers(d.sheet) {
		n := d.sheet.OffcutNumber(o)
		path := d.path + ref("offcuts[%d].", n-1)
		number := line{"offcut ", counted(fmt.Sprint(n))}
		long := slices.Concat(number, line{": ", d.length(o.Width, path+"width"), " × ", d.length(o.Length, path+"length")})
		var ways []way
		for _, text := range []line{long, number} {
			ways = append(ways, d.level("halo", text, 4), d.upward("halo", text, 4, laneHigh))
		}
		d.fitted(d.view, [][]plan.Point{cutout.Rectangle(o.X, o.Y, o.Width, o.Length)}, ways...)
	}
}

// partTag draws a part's number, so far under the middle, with an arrow to the piece's upper edge.
func (d *sheetDrawing) partTag(label line, class string, under float64, turned bool, at box) {
	x, y, up := at.x+at.w-9, at.y+at.h/2, either(turned, -1.0, 1)
	d.tag(at, 3)
	label.write(&d.node, class, at.x+(at.w-14)/2, y+under, "middle")
	d.stroke("pole", "M", x, y+6*up, "v", -9*up)
	d.add("path", "fill", "var(--ink)", "d", pen("M", x, y-7*up, "l4 ", 6*up, "h-8z"))
}

// describe is the text alternative.
func (d *sheetDrawing) describe() {
	say := d.tape.Format
	d.desc("%s %d, %s.", d.plan.Profile.Word("Sheet", "Board"), d.sheet.Number, d.sheet.Stock)
	for _, p := range d.sheet.Placements {
		piece, _ := d.plan.Piece(p.Part)
		width, _ := blank(piece)
		d.desc("Piece %s, %s by %s, %s from the left edge and %s from the lower end%s.", piece.Label, say(width), say(piece.Height), say(p.X), say(p.Y), either(p.Turned, ", turned upside down", ""))
	}
	for _, c := range d.sheet.Cuts {
		d.desc("Cut %d: %s at %s.", c.Step, c.Kind, say(c.At))
	}
}
