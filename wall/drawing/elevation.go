package drawing

import (
	"fmt"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

const (
	elevationTall = 215.0 // most ink that a wall's height takes
	heightLane    = 21.0  // beside the wall, before and after a height
	laneHigh      = 14.0  // a line of text
	flawGap       = 21.0  // between the signs of blemishes
)

// elevation draws one run face on, to scale.
type elevation struct {
	scribe
	*Picture
	run    plan.Run
	index  int // of the run in the plan
	pieces []plan.Piece
	view
	board board
	seen  []box   // the seams and the start, which numbers of narrow pieces may cover
	leads *node   // lines under the names and numbers
	floor float64 // ink y under the wall, where the story pole begins
}

// Elevation draws run i of a plan face on, to scale: its wall, pieces, openings,
// seams and blemishes, the heights at both ends, and its story pole.
func Elevation(p plan.Plan, i int) (Picture, error) {
	return draw(wideInk, fault.Of("Runs"), i, len(p.Runs), func(width float64) *Picture { return drawElevation(newScribe(p), i, width) })
}

// drawElevation returns the elevation of run i, as wide as asked for.
func drawElevation(s scribe, i int, width float64) *Picture {
	run := s.plan.Runs[i]
	e := &elevation{scribe: s, run: run, index: i}
	e.Picture = newPicture(sized(ref("run-%d", i+1), width), "Elevation of "+run.Name)
	e.Width = width
	for _, piece := range s.plan.Pieces {
		if piece.Run == run.Name {
			e.pieces = append(e.pieces, piece)
		}
	}
	e.Desc = e.describe()
	e.lay()
	e.wall()
	e.boards()
	e.openings()
	e.seams()
	e.datum()
	e.start()
	e.flaws()
	e.heights()
	e.labels()
	e.onTheWall()
	e.corners()
	e.Height = e.pole()
	return e.Picture
}

// lay chooses the scale and the lanes above the wall.
func (e *elevation) lay() {
	points := append([]plan.Point{{e.run.Limits[0], fraction.Length{}}, {e.run.Limits[1], fraction.Length{}}}, e.run.Outline...)
	for _, o := range e.run.Openings {
		points = append(points, o.Outline...)
	}
	lo, hi := bounds(points)
	wide, tall := hi[0].Sub(lo[0]).Float64(), hi[1].Sub(lo[1]).Float64()
	lane := e.lane()
	e.scale = (e.Width - 2*lane) / wide
	if tall*e.scale > elevationTall {
		e.scale = elevationTall / tall
	}
	e.left = lane + (e.Width-2*lane-wide*e.scale)/2
	e.x0, e.y1 = lo[0].Float64(), hi[1].Float64()
	e.top = e.callouts() + 3*laneHigh + 8
	if e.Width < wideInk {
		e.top += laneHigh // the start has a line to itself
	}
	e.floor = e.top + tall*e.scale
	e.board.frame = box{2, 0, e.Width - 4, e.floor}
}

// callouts writes what is seen at both ends and returns where they stop.
func (e *elevation) callouts() float64 {
	bottom := 0.0
	for side, end := range []plan.End{e.run.Left, e.run.Right} {
		name, field, x, anchor := "Left end: ", "left", 4.0, "start"
		if side == 1 {
			name, field, x, anchor = "Right end: ", "right", e.Width-4, "end"
		}
		path := fmt.Sprintf("runs[%d].%s", e.index, field)
		y := laneHigh
		line{name, word(end.Kind.String(), path+".kind")}.write(&e.root, "bold", x, y, anchor)
		for _, text := range wrap(CutName(e.tape, end.Cut), e.Width/2-12, typeSize) {
			y += laneHigh
			line{word(clip(text, e.Width/2-6, typeSize), path+".cut")}.write(&e.root, "", x, y, anchor)
		}
		if end.Lean.Sign() != 0 {
			y += laneHigh
			lean := line{"top leans ", e.sum(plus(end.Lean, path+".lean")), " right"}
			if end.Lean.Sign() < 0 {
				lean = line{"top leans ", e.sum(minus(end.Lean, path+".lean")), " left"}
			}
			lean.write(&e.root, "", x, y, anchor)
		}
		bottom = max(bottom, y)
	}
	return bottom
}

// wall draws the wall's own shape; what stays visible of it are the gaps.
func (e *elevation) wall() {
	e.add("path", "class", "wall", "d", e.outline(e.run.Outline))
	for i, panel := range e.run.Installed {
		fill := e.hatch(fmt.Sprintf("installed-%d", i), "hatch", 9, -45)
		lo, hi := bounds(e.run.Outline)
		area := e.area(panel.Left, lo[1], panel.Right, hi[1])
		e.add("rect", "class", "opening", "fill", fill, "x", area.x, "y", area.y, "width", area.w, "height", area.h)
	}
}

// onTheWall says so on the installed panels that have room for it; the key
// explains their hatch.
func (e *elevation) onTheWall() {
	lo, hi := bounds(e.run.Outline)
	for _, panel := range e.run.Installed {
		text := line{"on the wall already"}
		places := within(e.area(panel.Left, lo[1], panel.Right, hi[1]), text.width(typeSize)+8, 16)
		if seat, ok := e.board.place(places...); ok {
			e.tag(text, seat)
		}
	}
}

// boards draws the pieces with their pattern.
func (e *elevation) boards() {
	for _, piece := range e.pieces {
		group := e.add("g")
		e.drawPiece(group, e.move(piece.At), e.plan.Profile, piece, fmt.Sprintf("piece-%d", piece.Number))
	}
}

// openings draws the openings as taped; the strip to the board is their gap.
func (e *elevation) openings() {
	if len(e.run.Openings) == 0 {
		return
	}
	fill := e.hatch("opening", "hatch", 6, 45)
	for _, o := range e.run.Openings {
		e.add("path", "class", "paper", "d", e.outline(o.Outline))
		e.add("path", "class", "opening", "fill", fill, "d", e.outline(o.Outline))
	}
}

// seams draws a heavy line in the middle of each gap between panels.
func (e *elevation) seams() {
	for i := 1; i < len(e.run.Panels); i++ {
		a, b := e.run.Panels[i-1], e.run.Panels[i]
		if e.parted(a, b) {
			continue
		}
		x := (e.x(a.Right) + e.x(b.Left)) / 2
		top, bottom := e.floor, e.top
		for _, piece := range e.pieces {
			if piece.Panel == a.Number || piece.Panel == b.Number {
				v := e.move(piece.At)
				top, bottom = min(top, v.y(piece.Height)), max(bottom, v.y(fraction.Length{}))
			}
		}
		for _, span := range e.spans(x, top-5, bottom+5) {
			e.add("path", "class", "seam", "d", fmt.Sprintf("M%s %sV%s", ink(x), ink(span[0]), ink(span[1])))
		}
		seam := box{x - 2, top - 5, 4, bottom - top + 10}
		e.board.claim(seam)
		e.seen = append(e.seen, seam)
	}
}

// parted reports whether more than a seam lies between neighbours, such as a
// door or a panel that is on the wall already.
func (s scribe) parted(a, b plan.Panel) bool {
	return s.plan.Gaps.Seam.Add(s.tape.Mark).Less(b.Left.Sub(a.Right))
}

// spans cuts the openings out of an upright line from y0 down to y1.
func (e *elevation) spans(x, y0, y1 float64) [][2]float64 {
	left := [][2]float64{{y0, y1}}
	for _, o := range e.run.Openings {
		lo, hi := bounds(o.Outline)
		area := e.area(lo[0], lo[1], hi[0], hi[1])
		if x <= area.x || x >= area.x+area.w {
			continue
		}
		var kept [][2]float64
		for _, s := range left {
			if s[0] < area.y {
				kept = append(kept, [2]float64{s[0], min(s[1], area.y)})
			}
			if s[1] > area.y+area.h {
				kept = append(kept, [2]float64{max(s[0], area.y+area.h), s[1]})
			}
		}
		left = kept
	}
	return left
}

// datum draws the level line that all heights are taken from.
func (e *elevation) datum() {
	y := e.y(fraction.Length{})
	left, right := e.sides()
	e.add("path", "class", "datum", "d", fmt.Sprintf("M%s %sH%s", ink(left-9), ink(y), ink(right+9)))
	e.floor = max(e.floor, y)
}

// start marks where to begin and which way to go on.
func (e *elevation) start() {
	x, y := e.x(e.run.SetOut.From), e.top-2*laneHigh-8
	e.add("path", "class", "start", "d", fmt.Sprintf("M%s %sV%s", ink(x), ink(y-4), ink(e.floor+10)))
	begin := box{x - 1.5, y, 3, e.floor - y}
	e.board.claim(begin)
	e.seen = append(e.seen, begin)
	way := 1.0
	if e.run.SetOut.Direction == wall.Left {
		way = -1
	}
	e.add("path", "class", "start", "d", fmt.Sprintf("M%s %sh%s", ink(x), ink(y-4), ink(way*34)))
	e.add("path", "class", "startmark", "d", fmt.Sprintf("M%s %sl%s -4v8z", ink(x+way*42), ink(y-4), ink(-way*9)))
	e.add("circle", "class", "startmark", "cx", x, "cy", y-4, "r", 4)
	path := fmt.Sprintf("runs[%d].set_out.", e.index)
	text := line{"Start at ", e.length(e.run.SetOut.From, path+"from"), ", work to the ", word(e.run.SetOut.Direction.String(), path+"direction")}
	wide := text.width(typeSize)
	at, anchor := x+10, "start"
	if way > 0 {
		at = x + 48
	}
	if at+wide > e.Width-4 {
		at, anchor = x-10, "end"
		if way < 0 {
			at = x - 48
		}
	}
	if anchor == "end" && at-wide < 4 { // no room on either side of the arrow
		at, anchor, y = max(4, min(x-wide/2, e.Width-4-wide)), "start", y-laneHigh
	}
	text.write(&e.root, "starttext", at, y, anchor)
	if anchor == "end" {
		at -= wide
	}
	e.board.claim(box{at, y - typeSize, wide, typeSize + 3})
}

// flaws marks the blemishes with numbered lozenges above the wall, numbered as
// in the book's table.
func (e *elevation) flaws() {
	y := e.top - laneHigh + 1
	var wanted []float64
	var number []int
	for i, b := range e.plan.Blemishes {
		if b.Run == e.run.Name && b.Cost.Sign() > 0 {
			wanted, number = append(wanted, e.x(b.At)), append(number, BlemishNumber(e.plan, i))
		}
	}
	order(wanted, number)
	if len(wanted) > int(e.Width/flawGap)-1 {
		return // no room; the table has them
	}
	for i, x := range spread(wanted, flawGap, 12, e.Width-12) {
		e.add("path", "class", "flawlead", "d", fmt.Sprintf("M%s %sL%s %s", ink(x), ink(y), ink(wanted[i]), ink(e.roof(wanted[i]))))
		e.add("path", "class", "flaw", "d", fmt.Sprintf("M%s %sl9 -9l9 9l-9 9z", ink(x-9), ink(y)))
		e.add("circle", "class", "flawdot", "cx", wanted[i], "cy", e.roof(wanted[i]), "r", 2)
		line{counted(fmt.Sprint(number[i]))}.write(&e.root, "flawtext", x, y+3.5, "middle")
		e.board.claim(box{min(x-9, wanted[i]), y - 9, max(x+9, wanted[i]) - min(x-9, wanted[i]), e.top - y + 9})
	}
}

// BlemishNumber is the number of blemish i of a plan on the elevations; those
// that cost nothing have none, and no drawing shows them.
func BlemishNumber(p plan.Plan, i int) int {
	number := 0
	for _, b := range p.Blemishes[:max(0, min(i+1, len(p.Blemishes)))] {
		if b.Cost.Sign() > 0 {
			number++
		}
	}
	return number
}

// roof is the ink y of the wall's top at an ink x.
func (e *elevation) roof(x float64) float64 {
	top := e.floor
	for i, p := range e.run.Outline {
		q := e.run.Outline[(i+1)%len(e.run.Outline)]
		x0, y0, x1, y1 := e.x(p[0]), e.y(p[1]), e.x(q[0]), e.y(q[1])
		if x < min(x0, x1)-.5 || x > max(x0, x1)+.5 {
			continue
		}
		if x1 == x0 {
			top = min(top, y0, y1)
		} else {
			top = min(top, y0+max(0, min(1, (x-x0)/(x1-x0)))*(y1-y0))
		}
	}
	return top
}
