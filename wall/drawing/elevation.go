package drawing

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

const (
	elevationTall = 480.0          // most ink that a wall's height takes,
	elevationLow  = 110.0          // and what it takes however little is left for it
	elevationPage = 745.0          // of all that the drawing has, so that it stands on a page with its heading
	landInk       = 940.0          // natural width of a drawing on paper in landscape
	landPage      = 582.0          // most that it takes upwards there
	wordless      = 1.12           // times as large as with words on its story pole, at least, or it has them,
	ampleScale    = perInch / 10   // ink to the inch, but for what is as large as this
	heightLane    = 24.0           // beside the wall, before and after a height
	nameLane      = 84.0           // before it, for the names of the chains
	endLane       = 92.0           // and more, for what is seen at an end
	startLane     = 48.0           // from the start to the words there
	flawRadius    = 11.0           // half the height of the sign of a blemish
	uprightHigh   = 13.0           // room across that an upright number takes
	farName       = 80.0           // most ink from an opening to its name
	levelPart     = "height level" // class of the height of one
	leastNext     = 2.5            // of the edges of the next wall's panels that are seen
	hiddenEdge    = "out of sight" // where the panels of the next wall stand before it
)

// elevation draws one run face on, to scale.
type elevation struct {
	canvas
	run    plan.Run
	at     int    // of the run in the plan
	path   string // of the run in the plan, with a full stop
	pieces []plan.Piece
	wide   float64 // inches that are shown of it,
	high   float64 // and upwards
	tall   float64 // most ink that the wall's height takes
	begin  float64 // ink y of the line that says where to start
	floor  float64 // ink y under the wall,
	low    float64 // and under the heights of its corners there
	keyed  []line  // letters of openings with their names
	missed line    // pieces, openings and blemishes that have no room for their numbers and letters
	lost   int     // pieces and openings of these
	brief  bool    // the story pole has distances alone
}

// Elevation draws run i of a plan face on, to scale: its wall, pieces, openings, seams and
// blemishes, heights at its stations and of its openings, and under it the chains of dimensions and
// the story pole. Of a run that is not laid out, as in [plan.Job.Walls], it draws the wall alone. Where a phone has no
// room to name all pieces and openings, it has the wide one.
func Elevation(p plan.Plan, i int) (Picture, error) {
	return draw(wideInk, fault.Of("Runs"), i, len(p.Runs), func(width float64) *Picture {
		if width < wideInk {
			if small, _ := fitElevation(p, i, width, math.Inf(1), false); small.lost == 0 {
				return small.Picture
			}
			return nil
		}
		best, most := (*elevation)(nil), -1.0
		largest := whole(elevationTall / newElevation(p, i, width, "", "").high)
		for _, paper := range [][2]float64{{width, elevationPage}, {landInk, landPage}} {
			for _, brief := range []bool{false, true} {
				if brief && min(largest, ampleScale)/wordless+largest/1e3 <= most {
					break
				}
				e, shrunk := fitElevation(p, i, paper[0], paper[1], brief)
				if worth := min(e.scale, ampleScale)/either(brief, wordless, 1) + e.scale/1e3; worth > most && (best == nil || e.Height <= paper[1]) {
					best, most = e, either(e.Height > paper[1], 0, worth)
				}
				if !shrunk {
					break // words take nothing from it
				}
			}
		}
		return best.Picture
	})
}

// fitElevation draws run i in a width, so tall that all of it has room on a page, and reports whether that made it smaller.
func fitElevation(p plan.Plan, i int, width, page float64, brief bool) (e *elevation, shrunk bool) {
	for tall := elevationTall; ; tall, shrunk = e.scale*e.high-.8*(e.Height-page), true {
		e = newElevation(p, i, width, ref("run-%d", i+1), "Elevation of ")
		e.tall, e.brief = max(tall, elevationLow), brief
		for _, add := range []func(){e.describe, e.lay, e.wall, e.seams, e.strips, e.openings, e.start, e.above, e.bottoms, e.heights, e.labels, e.flaws, e.onTheWall} {
			add()
		}
		leaf := either(len(p.Pieces) > 0, line{counted(ref("E%d", i+1)), ": "}, nil) // a wall alone has none
		e.Height = e.foot(e.pole(e.chains(e.low)), append(leaf, "Elevation of "))
		if e.Height <= page || tall <= elevationLow {
			return e, shrunk
		}
	}
}

// newElevation returns the empty drawing of run i.
func newElevation(p plan.Plan, i int, width float64, name, title string) *elevation {
	run := p.Runs[i]
	e := &elevation{canvas: newCanvas(p, width, sized(name, width), title+run.Name), run: run, at: i, path: ref("runs[%d].", i), tall: elevationTall}
	lo, hi := run.Extent()
	e.x0, e.y1, e.wide, e.high = lo.X.Float64(), hi.Y.Float64(), hi.X.Sub(lo.X).Float64(), hi.Y.Sub(lo.Y).Float64()
	for _, piece := range p.Pieces {
		if piece.Run == run.Name {
			e.pieces = append(e.pieces, piece)
		}
	}
	return e
}

// scaled chooses the scale, one to a whole number.
func (e *elevation) scaled(most float64) {
	left, right := e.lanes()
	e.scale = whole(min((e.Width-left-right)/e.wide, most))
	e.left = max(left, (e.Width-e.wide*e.scale)/2)
}

// lay chooses the scale and the lanes above the wall.
func (e *elevation) lay() {
	e.scaled(e.tall / e.high)
	x, way, wide := e.x(e.run.SetOut.From), either(e.run.SetOut.Direction == wall.Left, -19.0, 19), e.startWords().width(typeSize)
	over := e.Width < wideInk || max(e.Width-x-way, x+way) < wide+33 // the arrow is under its words, which have no room beside it
	e.begin = e.callouts() + 6 + either(over, 2*laneHigh, laneHigh)
	e.top = e.begin + 10
	seen, _ := e.corners(true)
	for _, s := range seen {
		e.top = max(e.top, e.begin+17+s.text.width(typeSize))
	}
	e.floor = e.top + e.high*e.scale
	e.frame = box{4, 0, e.Width - 8, e.floor}
}

// callouts writes what is seen at both ends, beside the wall where that has room, else over it, and returns where they stop.
func (e *elevation) callouts() (bottom float64) {
	_, lane := e.lanes() // the names of chains are lower
	beside := min(e.left, e.Width-e.left-e.wide*e.scale) - lane
	ahead := e.x(e.run.SetOut.From) - e.left // of the start, on the wall
	if e.run.SetOut.Direction == wall.Right {
		ahead = e.wide*e.scale - ahead
	}
	aside := beside >= endLane && ahead >= startLane+e.startWords().width(typeSize)
	room := either(aside, beside, e.Width/2)
	for side, end := range []plan.End{e.run.Left, e.run.Right} {
		name, path, x := []string{"Left end: ", "Right end: "}[side], e.path+[]string{"left", "right"}[side], []float64{4, e.Width - 4}[side]
		lines := line{name, figure{end.Word(), path + ".kind"}}.wrap(room/1.1-12, room-8)
		seen := either(e.plan.Passes(e.at, side == 1), line{hiddenEdge}, line{figure{end.Cut.Name(e.tape), path + ".cut"}})
		e.desc("%s.", strings.TrimSuffix(name+end.Word()+", "+seen.String(), ", "))
		bold := len(lines)
		lines = append(lines, seen.wrap(room-12, room-6)...)
		if sign := end.Lean.Sign(); sign != 0 {
			way := map[int][]string{1: {" + ", " right"}, -1: {" - ", " left"}}[sign]
			lines = append(lines, line{"top leans ", e.sum(term{end.Lean.Abs(), way[0] + path + ".lean"}), way[1]})
		}
		for n, text := range lines {
			y, w := laneHigh*float64(n+1), text.width(typeSize)*1.1
			text.write(&e.node, either(n < bold, "bold", ""), x, y, anchors[float64(2*side-1)])
			e.word(box{x - w*float64(side), y - 13, w, laneHigh})
		}
		bottom = max(bottom, laneHigh*float64(len(lines)))
	}
	return either(aside, 0, bottom)
}

// wall draws the wall's own shape, the panels that are on it, and the pieces with their pattern.
func (e *elevation) wall() {
	e.stroke("wall", e.curved(nil, e.run.Outline))
	up := e.standing("wall")
	thick, width := e.plan.Profile.Thickness, e.run.Width
	for side, off := range []fraction.Length{e.run.Limits[0], width.Sub(e.run.Limits[1])} {
		at := []fraction.Length{zero, width.Sub(thick)}[side]
		if next := e.strip(plan.Installed{Left: at, Right: at.Add(thick)}); next.w > leastNext && !off.Less(thick) && e.run.End(side == 1).Kind == wall.InsideCorner {
			up.rect(next, "class", "next")
		}
	}
	for _, piece := range e.pieces {
		e.drawPiece(e.add("g"), e.move(piece.At), e.plan.Profile, piece, ref("piece-%d", piece.Number))
	}
	e.claimLine(e.edges(e.run.Outline)...) // no label covers the edge of the wall
}

// standing draws the panels that are on the wall, and returns what is clipped with them to its shape.
func (e *elevation) standing(what string) *node {
	up := e.add("g", "clip-path", e.clip(e.path+what, e.curved(nil, e.run.Outline)))
	for _, panel := range e.run.Installed {
		up.rect(e.strip(panel), "class", "opening", "fill", e.hatch("installed", "hatch", 9, -45))
	}
	return up
}

// strips draws the level strips behind boards, which openings cut off.
func (e *elevation) strips() {
	left, right := e.sides()
	on := e.add("g", "clip-path", e.clip(e.path+"strips", e.curved(nil, e.run.Outline)))
	for _, y := range e.run.Supports {
		on.stroke("strip", "M", left, e.y(y), "H", right)
		e.claimLine(segment{complex(left, e.y(y)), complex(right, e.y(y))})
	}
}

// strip is the box of an installed panel, as high as the wall.
func (e *elevation) strip(panel plan.Installed) box {
	lo, hi := cutout.Bounds(e.run.Outline)
	return e.area(panel.Left, lo.Y, panel.Right, hi.Y)
}

// onTheWall says so on each installed panel, level or upright, where it has room; its hatch says it too.
func (e *elevation) onTheWall() {
	text, frame := line{"on the wall"}, e.frame
	defer func() { e.frame = frame }()
	for _, panel := range e.run.Installed {
		e.frame = e.strip(panel)
		e.fitted(e.view, [][]plan.Point{e.run.Outline}, e.tagged(e.level("", text, 8)), e.tagged(e.upward("", text, 8, laneHigh)))
	}
}

// arcs are the arcs of an opening, which the marks of a piece have with its gap.
func (e *elevation) arcs(o plan.Opening) []plan.Arc {
	return fraction.Must(e.plan.ArcsOf(e.run, o))
}

// openings draws the openings as taped, without their gaps, and the level datum over them.
func (e *elevation) openings() {
	for _, o := range e.run.Openings {
		shape := e.curved(e.arcs(o), o.Outline)
		e.stroke("paper", shape)
		e.add("path", "class", "opening", "fill", e.hatch("opening", "hatch", 6, 45), "d", shape)
	}
	y := e.y(zero)
	left, right := e.sides()
	e.stroke("datum", "M", left-9, y, "H", right+9)
	e.floor = max(e.floor, y)
}

// seams draws a heavy line in the middle of each gap between panels, as far as both have an edge
// there; the joints of boards are their pattern.
func (e *elevation) seams() {
	for _, s := range fraction.Must(e.plan.Meetings(e.run)) {
		x, top, foot := e.x(s.X), e.y(s.High), e.y(s.Low)
		e.stroke("seam", "M", x, top, "V", foot)
		e.claim(box{x - 2, top, 4, foot - top})
	}
}

// start marks where to begin and which way to go on.
func (e *elevation) start() {
	if e.run.Bare() {
		return
	}
	y := e.begin
	x, way := e.arrow(e.floor+10, y-4, 34)
	text, left, right := e.startWords(), x-29+way*19, x+29+way*19 // where the text may end and start
	wide := text.width(typeSize)
	seat, ok := e.place(box{right, y - typeSize, wide, typeSize + 3}, box{left - wide, y - typeSize, wide, typeSize + 3})
	if !ok { // no room on either side of the arrow
		seat = box{max(4, min(x-wide/2, e.Width-4-wide)), y - laneHigh - typeSize, wide, typeSize + 3}
		e.word(seat)
	}
	ends := ok && seat.x < x // else they begin in their seat, which may be wider than the drawing
	text.write(&e.node, "starttext", seat.x+either(ends, wide, 0), seat.y+typeSize, either(ends, "end", "start"))
}

// arrow draws the line of the start to a height in ink, with an arrow there in the way to work.
func (e *elevation) arrow(foot, y, long float64) (x, way float64) {
	x, way = e.x(e.run.SetOut.From), either(e.run.SetOut.Direction == wall.Left, -1.0, 1)
	e.stroke("start", "M", x, foot, "V", y, "h", way*long)
	e.stroke("startmark", "M", x+way*(long+8), y, "l", -way*9, " -4v8z")
	e.dot("startmark", complex(x, y), 4)
	e.claim(spanned(x-1.5, y, x+1.5, foot))
	e.claim(spanned(x-way*5, y-5, x+way*(long+9), y+5))
	return x, way
}

// startWords say where to start and which way to work.
func (e *elevation) startWords() line {
	tongue := either(e.plan.Profile.Boards && e.plan.Profile.Edges == groove.Tongued, ", tongue ahead", "")
	return append(e.startsAt(), ", work ", figure{e.run.SetOut.Direction.String(), e.path + "set_out.direction"}, tongue)
}

// startsAt says where to start, which may be past an end of the wall.
func (e *elevation) startsAt() line {
	from, path := e.run.SetOut.From, e.path+"set_out.from"
	switch {
	case from.Sign() < 0:
		return line{"Start ", e.sum(minus(from, path)), " past the end"}
	case e.run.Width.Less(from):
		return line{"Start ", e.sum(plus(from, path), minus(e.run.Width, e.path+"width")), " past the end"}
	}
	return line{"Start at ", e.length(from, path)}
}

// above writes the heights of the corners of the wall's top over it, off the line of the start.
func (e *elevation) above() {
	all, _ := e.corners(true)
	if !e.run.Bare() {
		all = append(all, stop{ink: e.x(e.run.SetOut.From)})
	}
	e.below(all, 8, e.Width-8, e.top, -1, 4, 8, e.riser(e.top-1))
}

// flaws numbers the blemishes, each near its place with a lead to it, or in the table alone.
func (e *elevation) flaws() {
	for i, b := range e.plan.Blemishes {
		if b.Run != e.run.Name || b.Cost.Sign() <= 0 {
			continue
		}
		text, at := line{counted(fmt.Sprint(e.plan.BlemishNumber(i)))}, complex(e.x(b.At), e.height(b))
		half := flawRadius - 4 + text.width(typeSize)/2
		seat, ok := e.led(2*half, 2*flawRadius, farLead, spot(at))
		if !ok {
			e.missed = append(append(e.missed, " · blemish "), text...)
			continue
		}
		e.stroke("flawlead", "M", seat.middle(), "L", at)
		e.stroke("flaw", "M", seat.middle()-complex(half, 0), "l", half, -flawRadius, "l", half, flawRadius, "l", -half, flawRadius, "z")
		e.dot("flawdot", at, 2)
		text.seated(&e.node, "flawtext", seat)
		e.words, e.lines = append(e.words, seat), append(e.lines, segment{seat.middle(), at})
	}
}

// height is the ink y of a blemish: the middle of the edge of a step or an opening that it is of, else
// where the wall begins under its top or under an opening there.
func (e *elevation) height(b plan.Blemish) float64 {
	x := real(e.around(e.run.Outline).grow(-1).toward(complex(e.x(b.At), 0)))
	found, off := e.top, math.Inf(1)
	for wall := e.edges(e.run.Outline); found < e.floor && (!inside(complex(x, found+1), wall) || e.open(x, found+1)); {
		found++
	}
	for _, edge := range fraction.Must(e.plan.Uprights(e.run)) {
		high := edge.High.Sub(edge.Low)
		if b.Height != nil {
			high = high.Sub(*b.Height)
		}
		miss := math.Abs(high.Float64())
		if (b.Where == wall.AtStep || b.Where == wall.AtOpening) && edge.X == b.At && miss < off {
			found, off = (e.y(edge.Low)+e.y(edge.High))/2, miss
		}
	}
	return found
}

// describe is the text alternative: what someone who cannot see the drawing needs from it.
func (e *elevation) describe() {
	run, say := e.run, e.tape.Format
	e.desc("%s, %s wide.", run.Name, say(run.Width))
	if !e.run.Bare() {
		e.desc("%s and work to the %s.", e.startsAt(), run.SetOut.Direction)
	}
	for _, panel := range run.Panels {
		e.desc("%s %d from %s to %s.", e.plan.Profile.Word("Panel", "Board"), panel.Number, say(panel.Left), say(panel.Right))
	}
	for _, o := range run.Openings {
		lo, hi := cutout.Bounds(o.Outline)
		e.desc("%s (%s) from %s to %s, %s to %s above the datum.", o.Name, o.Kind, say(lo.X), say(hi.X), say(lo.Y), say(hi.Y))
	}
}

// labels writes openings' names, first those that fit in their openings, and pieces' numbers. An opening that has no room for
// its name near it, and each of a coded run, has a letter, with the name in a list under the drawing.
func (e *elevation) labels() {
	e.leads = e.add("g")
	var outside []int
	var spots []box
	var across []segment
	names := func(i int) []way {
		return e.names(figure{e.run.Openings[i].Name, e.path + ref("openings[%d].name", i)})
	}
	for i, o := range e.run.Openings {
		spot := e.around(o.Outline)
		across = append(across, spot.diagonals()...)
		if e.run.Coded() || !e.fitted(e.view, [][]plan.Point{o.Outline}, names(i)...) {
			outside, spots = append(outside, i), append(spots, spot)
		}
	}
	e.lines = append(e.lines, across...) // no lead of a name crosses another opening
	e.claimOpenings()
	for n, i := range outside {
		beside := func(ways ...way) bool {
			return e.nameBeside(spots[n], spots, e.around(e.run.Outline), spot(spots[n].middle()), ways...)
		}
		if e.run.Coded() || !beside(names(i)...) {
			e.nameByLetter(i, spots[n], beside)
		}
	}
	e.lines = slices.DeleteFunc(e.lines, func(l segment) bool { return slices.Contains(across, l) })
	for _, piece := range e.pieces {
		e.numberPiece(piece)
	}
	e.taped()
}

// nameByLetter writes the letter of an opening in it or near it, and keeps its name for a list.
func (e *elevation) nameByLetter(i int, on box, beside func(ways ...way) bool) {
	o, letter := e.run.Openings[i], line{counted(strings.ToLower(plan.CornerName(i)))}
	e.keyed = append(e.keyed, append(slices.Clone(letter), "\u00a0", figure{o.Name, e.path + ref("openings[%d].name", i)}))
	as := way{max(14, letter.width(typeSize)+2), letterSize, func(seat box) { letter.seated(&e.node, "bold halo", seat) }}
	e.taken = slices.DeleteFunc(e.taken, func(b box) bool { return b == on })
	in := e.fitted(e.view, [][]plan.Point{o.Outline}, as)
	if e.claim(on); !in && !beside(as) {
		e.missed, e.lost = append(append(e.missed, " · opening "), letter...), e.lost+1
	}
}

// claimOpenings keeps labels off the openings.
func (e *elevation) claimOpenings() {
	for _, o := range e.run.Openings {
		e.claim(e.around(o.Outline))
	}
}

// taped names the corners of openings that were found from taped distances, as their table does.
func (e *elevation) taped() {
	var names []func()
	for i, p := range e.plan.Taped {
		if slices.ContainsFunc(e.run.Openings, func(o plan.Opening) bool { return p.Run == e.run.Name && p.Opening == o.Name }) {
			name, at := line{"c", figure{fmt.Sprint(p.Number), ref("taped[%d].number", i)}}, e.view.at(p.At)
			e.dots = append(e.dots, at)
			e.dot("startmark", at, 2)
			names = append(names, func() {
				if !e.nameAt("halo taped", name, at) {
					e.callout("halo taped", name, name.width(typeSize)+2, letterSize, spot(at))
				}
			})
		}
	}
	for _, write := range names { // clear of all dots
		write()
	}
}

// numberPiece writes a piece's number on it, level or upright, else beside it with a lead.
func (e *elevation) numberPiece(piece plan.Piece) {
	text := e.numbered("", []plan.Piece{piece})
	v, large := e.move(piece.At), textWidth(piece.Label, 20)+10
	if !e.fitted(v, piece.Rings(), way{large + 4, 30, func(seat box) {
		seat = seat.grow(-2)
		e.tag(seat, 4)
		text.write(&e.node, "big", seat.x+seat.w/2, seat.y+20, "middle")
	}}, e.tagged(e.level("bold halo", text, 6)), e.tagged(e.level("bold", text, 1)), e.tagged(e.upward("bold", text, 6, uprightHigh))) {
		if seat, ok := e.pointed(large, laneHigh, farLead, spot(v.sized(piece.Width, piece.Height).middle())); ok {
			e.tagged(e.level("", text, 0)).write(seat)
		} else {
			e.missed, e.lost = append(append(e.missed, " · piece "), text...), e.lost+1
		}
	}
}
