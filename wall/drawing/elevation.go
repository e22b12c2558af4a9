package drawing

import (
	"fmt"
	"strings"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

const (
	elevationTall = 215.0 // most ink that a wall's height takes
	heightLane    = 21.0  // beside the wall, before and after a height
	flawGap       = 21.0  // between the signs of blemishes
)

// elevation draws one run face on, to scale.
type elevation struct {
	canvas
	run    plan.Run
	path   string // of the run in the plan, with a full stop
	level  string // names the datum beside the wall
	pieces []plan.Piece
	seen   []box   // the seams and the start, which numbers of narrow pieces may cover
	floor  float64 // ink y under the wall, where the story pole begins
}

// Elevation draws run i of a plan face on, to scale: its wall, pieces, openings, seams and
// blemishes, the heights at both ends, and its story pole.
func Elevation(p plan.Plan, i int) (Picture, error) {
	return draw(wideInk, fault.Of("Runs"), i, len(p.Runs), func(width float64) *Picture {
		e := newElevation(p, i, width, ref("run-%d", i+1), "Elevation of ")
		e.describe()
		e.lay()
		e.wall()
		e.seams()
		e.openings()
		e.start()
		e.flaws()
		e.heights()
		e.labels()
		e.onTheWall()
		e.corners()
		e.Height = e.pole()
		return e.Picture
	})
}

// StoryPole draws the story pole of run i of a plan alone, as it stands under the run's elevation,
// with the widths of the panels above it.
func StoryPole(p plan.Plan, i int) (Picture, error) {
	return draw(wideInk, fault.Of("Runs"), i, len(p.Runs), func(width float64) *Picture {
		e := newElevation(p, i, width, ref("run-%d-pole", i+1), "Story pole of ")
		e.scaled()
		for _, mark := range e.run.StoryPole {
			e.Desc += fmt.Sprintf("%s: %s. ", MarkName(p.Profile, mark), e.tape.Format(mark.At))
		}
		e.Height = e.pole()
		return e.Picture
	})
}

// newElevation returns the empty drawing of run i.
func newElevation(p plan.Plan, i int, width float64, name, title string) *elevation {
	run := p.Runs[i]
	e := &elevation{canvas: newCanvas(p, width, sized(name, width), title+run.Name), run: run, path: ref("runs[%d].", i), level: "level datum"}
	if width < wideInk {
		e.level = "level"
	}
	for _, piece := range p.Pieces {
		if piece.Run == run.Name {
			e.pieces = append(e.pieces, piece)
		}
	}
	return e
}

// scaled chooses the scale and returns the height of what is shown, in ink.
func (e *elevation) scaled() (tall float64) {
	points := append([]plan.Point{{X: e.run.Limits[0]}, {X: e.run.Limits[1]}}, e.run.Outline...)
	for _, o := range e.run.Openings {
		points = append(points, o.Outline...)
	}
	lo, hi := cutout.Bounds(points)
	wide, high := hi.X.Sub(lo.X).Float64(), hi.Y.Sub(lo.Y).Float64()
	e.scale = min((e.Width-2*e.lane())/wide, elevationTall/high)
	e.left = (e.Width - wide*e.scale) / 2
	e.x0, e.y1 = lo.X.Float64(), hi.Y.Float64()
	return high * e.scale
}

// lay chooses the scale and the lanes above the wall.
func (e *elevation) lay() {
	tall := e.scaled()
	e.top = e.callouts() + 3*laneHigh + 8
	if e.Width < wideInk {
		e.top += laneHigh // the start has a line to itself
	}
	e.floor = e.top + tall
	e.frame = box{2, 0, e.Width - 4, e.floor}
}

// callouts writes what is seen at both ends and returns where they stop.
func (e *elevation) callouts() float64 {
	bottom := 0.0
	for side, end := range []plan.End{e.run.Left, e.run.Right} {
		name, path, x, anchor := "Left end: ", e.path+"left", 4.0, "start"
		if side == 1 {
			name, path, x, anchor = "Right end: ", e.path+"right", e.Width-4, "end"
		}
		y := laneHigh
		line{name, figure{end.Kind.String(), path + ".kind"}}.write(&e.node, "bold", x, y, anchor)
		for _, text := range wrapped(CutName(e.tape, end.Cut), path+".cut", e.Width/2-12, e.Width/2-6) {
			y += laneHigh
			text.write(&e.node, "", x, y, anchor)
		}
		if sign := end.Lean.Sign(); sign != 0 {
			y += laneHigh
			lean, way := plus(end.Lean, path+".lean"), " right"
			if sign < 0 {
				lean, way = minus(end.Lean, path+".lean"), " left"
			}
			line{"top leans ", e.sum(lean), way}.write(&e.node, "", x, y, anchor)
		}
		bottom = max(bottom, y)
	}
	return bottom
}

// strip is the box of an installed panel, as high as the wall.
func (e *elevation) strip(panel plan.Installed) box {
	lo, hi := cutout.Bounds(e.run.Outline)
	return e.area(panel.Left, lo.Y, panel.Right, hi.Y)
}

// wall draws the wall's own shape, whose gaps stay visible, and the pieces with their pattern.
func (e *elevation) wall() {
	e.stroke("wall", e.outline(e.run.Outline))
	for i, panel := range e.run.Installed {
		e.rect(e.strip(panel), "class", "opening", "fill", e.hatch(ref("installed-%d", i), "hatch", 9, -45))
	}
	for _, piece := range e.pieces {
		e.drawPiece(e.add("g"), e.move(piece.At), e.plan.Profile, piece, ref("piece-%d", piece.Number))
	}
}

// onTheWall says so on the installed panels that have room for it; the key explains their hatch.
func (e *elevation) onTheWall() {
	for _, panel := range e.run.Installed {
		text := line{"on the wall already"}
		if seat, ok := e.place(within(e.strip(panel), text.width(typeSize)+8, 16)...); ok {
			e.tagged(seat, text)
		}
	}
}

// openings draws the openings as taped, without their gaps, and the level datum over them.
func (e *elevation) openings() {
	for _, o := range e.run.Openings {
		e.stroke("paper", e.outline(o.Outline))
		e.add("path", "class", "opening", "fill", e.hatch("opening", "hatch", 6, 45), "d", e.outline(o.Outline))
	}
	y := e.y(zero)
	left, right := e.sides()
	e.stroke("datum", "M", left-9, y, "H", right+9)
	e.floor = max(e.floor, y)
}

// seams draws a heavy line in the middle of each gap between panels, under the openings.
func (e *elevation) seams() {
	for i := 1; i < len(e.run.Panels); i++ {
		a, b := e.run.Panels[i-1], e.run.Panels[i]
		if e.parted(a, b) {
			continue
		}
		x, top, bottom := (e.x(a.Right)+e.x(b.Left))/2, e.floor, e.top
		for _, piece := range e.pieces {
			if piece.Panel == a.Number || piece.Panel == b.Number {
				v := e.move(piece.At)
				top, bottom = min(top, v.y(piece.Height)), max(bottom, v.y(zero))
			}
		}
		e.stroke("seam", "M", x, top-5, "V", bottom+5)
		e.see(box{x - 2, top - 5, 4, bottom - top + 10})
	}
}

// start marks where to begin and which way to go on.
func (e *elevation) start() {
	x, y := e.x(e.run.SetOut.From), e.top-2*laneHigh-8
	e.stroke("start", "M", x, y-4, "V", e.floor+10)
	e.see(box{x - 1.5, y, 3, e.floor - y})
	way, left, right := 1.0, x-10, x+48 // where text may end and start
	if e.run.SetOut.Direction == wall.Left {
		way, left, right = -1, x-48, x+10
	}
	e.stroke("start", "M", x, y-4, "h", way*34)
	e.stroke("startmark", "M", x+way*42, y-4, "l", -way*9, " -4v8z")
	e.dot("startmark", x, y-4, 4)
	path := e.path + "set_out."
	text := line{"Start at ", e.length(e.run.SetOut.From, path+"from"), ", work to the ", figure{e.run.SetOut.Direction.String(), path + "direction"}}
	wide := text.width(typeSize)
	at, anchor := right, "start"
	switch {
	case right+wide <= e.Width-4:
	case left-wide >= 4:
		at, anchor, right = left, "end", left-wide
	default: // no room on either side of the arrow
		right, y = max(4, min(x-wide/2, e.Width-4-wide)), y-laneHigh
		at = right
	}
	text.write(&e.node, "starttext", at, y, anchor)
	e.claim(box{right, y - typeSize, wide, typeSize + 3})
}

// see claims the place of a line that numbers of narrow pieces may cover.
func (e *elevation) see(c box) {
	e.claim(c)
	e.seen = append(e.seen, c)
}

// flaws marks the blemishes above the wall with the numbers of the book's table, if there is room.
func (e *elevation) flaws() {
	y := e.top - laneHigh + 1
	var all []stop
	for i, b := range e.plan.Blemishes {
		if b.Run == e.run.Name && b.Cost.Sign() > 0 {
			all = append(all, stop{text: line{counted(fmt.Sprint(BlemishNumber(e.plan, i)))}, ink: e.x(b.At)})
		}
	}
	if len(all) > int(e.Width/flawGap)-1 {
		return
	}
	for _, s := range spreadStops(all, flawGap, 12, e.Width-12) {
		x, roof := s.spot, e.roof(s.ink)
		e.stroke("flawlead", "M", x, y, "L", s.ink, roof)
		e.stroke("flaw", "M", x-9, y, "l9 -9l9 9l-9 9z")
		e.dot("flawdot", s.ink, roof, 2)
		s.text.write(&e.node, "flawtext", x, y+3.5, "middle")
		left, right := min(x-9, s.ink), max(x+9, s.ink)
		e.claim(box{left, y - 9, right - left, e.top - y + 9})
	}
}

// BlemishNumber returns the number, from 1, of blemish i of a plan on the elevations; 0 where the
// plan has no such blemish and where it costs nothing, since no drawing shows it then.
func BlemishNumber(p plan.Plan, i int) (number int) {
	if i < 0 || i >= len(p.Blemishes) || p.Blemishes[i].Cost.Sign() <= 0 {
		return 0
	}
	for _, b := range p.Blemishes[:i+1] {
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
		x0, y0, x1, y1 := e.x(p.X), e.y(p.Y), e.x(q.X), e.y(q.Y)
		switch {
		case x < min(x0, x1)-.5 || x > max(x0, x1)+.5:
		case x1 == x0:
			top = min(top, y0, y1)
		default:
			top = min(top, y0+max(0, min(1, (x-x0)/(x1-x0)))*(y1-y0))
		}
	}
	return top
}

// describe is the text alternative: what someone who cannot see the drawing needs from it.
func (e *elevation) describe() {
	run, say := e.run, e.tape.Format
	end := func(end plan.End) string {
		return strings.TrimSuffix(end.Kind.String()+": "+CutName(e.tape, end.Cut), ": ")
	}
	e.desc("%s, %s wide. Left end: %s. Right end: %s.", run.Name, say(run.Width), end(run.Left), end(run.Right))
	e.desc("Start %s from the left end and work to the %s.", say(run.SetOut.From), run.SetOut.Direction)
	for _, panel := range run.Panels {
		e.desc("%s %d from %s to %s.", e.plan.Profile.Word("Panel", "Board"), panel.Number, say(panel.Left), say(panel.Right))
	}
	for _, o := range run.Openings {
		lo, hi := cutout.Bounds(o.Outline)
		e.desc("%s (%s) from %s to %s, %s to %s above the datum.", o.Name, o.Kind, say(lo.X), say(hi.X), say(lo.Y), say(hi.Y))
	}
}
