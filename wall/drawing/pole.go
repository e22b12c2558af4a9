package drawing

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

const (
	mostWord = 215.0 // the longest word that the story pole does not break
	barRoom  = 250.0 // of the title block, for the bar of the scale
)

// span is one length of a chain of dimensions.
type span struct {
	lo, hi fraction.Length
	text   line
}

// ticks are both ends of a dimension, and its line to where it goes on.
func ticks(x0, x1, y float64) string {
	return pen("M", x0-4, y+4, "l8 -8M", x1-4, y+4, "l8 -8M", x0, y, "H")
}

// chain draws dimensions in breaks of a line, or under it beside other stops, with what they are at the left, and returns
// where they end.
func (e *elevation) chain(y float64, what string, under []stop, spans ...span) float64 {
	for _, s := range spans {
		x0, x1, w := e.x(s.lo), e.x(s.hi), s.text.width(typeSize)+6
		mid := (x0 + x1) / 2
		if x1-x0 < w+8 {
			e.stroke("pole", ticks(x0, x1, y), x1)
			under = append(under, stop{text: s.text, ink: mid})
			continue
		}
		e.stroke("pole", ticks(x0, x1, y), mid-w/2, "M", mid+w/2, y, "H", x1)
		s.text.write(&e.node, "", mid, y+4.6, "middle")
	}
	start, w, up, n := e.x(spans[0].lo)-8, textWidth(what, typeSize), 0.0, float64(len(under))
	for i, s := range under {
		if float64(i-2)*poleGap > s.ink-under[0].ink {
			up = 7 // over leads that spread to the left
		}
	}
	if seat := (box{start - w, y - 8 - up, w, laneHigh}); w < start && !slices.ContainsFunc(e.taken, seat.overlaps) {
		line{what}.write(&e.node, "", start, y+4.6-up, "end")
	}
	if n == 0 || n*poleGap > e.Width-16 {
		return y + laneHigh // the table has them
	}
	return e.below(under, 8, e.Width-8, y, 1, 0, 11, func(stop) {}) + 4
}

// chains draws the widths of the panels with the gaps between, and that of the whole wall, and returns
// where they end. Boards, which are as wide as each other, have only the whole.
func (e *elevation) chains(y float64) float64 {
	var at []term
	for i, panel := range e.run.Panels {
		if path := e.path + ref("panels[%d].", i); !e.plan.Profile.Boards {
			at = append(at, plus(panel.Left, path+"left"), plus(panel.Right, path+"right"))
		}
	}
	for i, panel := range e.run.Installed {
		path := e.path + ref("installed[%d].", i)
		at = append(at, plus(panel.Left, path+"left"), plus(panel.Right, path+"right"))
	}
	whole := []term{{}, plus(e.run.Width, e.path+"width")}
	corners, sides := e.breaks()
	before, same := []span(nil), func(a, b span) bool { return a.lo == b.lo && a.hi == b.hi }
	y += laneHigh
	_, behind := e.corners(true)
	_, low := e.corners(false)
	behind = append(behind, low...)
	for i, at := range [][]term{at, corners, sides} { // the wall has a row of its own
		ends := slices.DeleteFunc(slices.Clone(whole), func(end term) bool { // a miter may reach past an end of the wall
			return i == 0 && end.length.Less(e.run.Limits[0]) == e.run.Limits[1].Less(end.length)
		})
		if all := e.between(append(at, ends...)); len(all) > 0 && (i == 1 && behind != nil || !slices.EqualFunc(all, before, same) && !same(all[0], span{hi: e.run.Width})) {
			y, before = e.chain(y, []string{"panels", "heights at", "openings"}[i], [][]stop{1: behind, 2: nil}[i], all...), all
		}
	}
	all := []span{{zero, e.run.Width, line{"wall ", e.length(e.run.Width, e.path+"width")}}}
	left, right := plus(e.run.Limits[0], e.path+"limits[0]"), plus(e.run.Limits[1], e.path+"limits[1]")
	if left.length.Sign() < 0 { // what reaches past an end
		all = append(all, span{left.length, zero, line{e.sum(minus(left.length, e.path+"limits[0]")), " past"}})
	}
	if e.run.Width.Less(right.length) {
		all = append(all, span{e.run.Width, right.length, line{e.sum(right, minus(e.run.Width, e.path+"width")), " past"}})
	}
	return e.chain(y, "", nil, all...)
}

// between are the lengths from each place to the next.
func (e *elevation) between(at []term) (all []span) {
	sort.SliceStable(at, func(i, j int) bool { return at[i].length.Less(at[j].length) })
	at = slices.CompactFunc(at, func(a, b term) bool { return a.length == b.length })
	for i, t := range at[min(1, len(at)):] {
		from := at[i]
		all = append(all, span{from.length, t.length, line{e.sum(t, minus(from.length, strings.TrimPrefix(from.path, " + ")))}})
	}
	return all
}

// breaks are the corners of the wall's outline and those of its openings but boxes, all between its ends; of an opening with an arch its sides.
func (e *elevation) breaks() (corners, sides []term) {
	add := func(to *[]term, x fraction.Length, path string) {
		if x.Sign() > 0 && x.Less(e.run.Width) {
			*to = append(*to, plus(x, e.path+path))
		}
	}
	for i, p := range e.run.Outline {
		if e.run.AtEnd(p) == 0 {
			add(&corners, p.X, ref("outline[%d][0]", i))
		}
	}
	for i, o := range e.run.Openings {
		lo, hi := cutout.Bounds(o.Outline)
		for k, p := range o.Outline {
			if o.Kind != wall.Box && (len(e.arcs(o)) == 0 || p.X == lo.X || p.X == hi.X) {
				add(&sides, p.X, ref("openings[%d].outline[%d][0]", i, k))
			}
		}
	}
	return corners, sides
}

// open reports whether a place of ink lies in an opening.
func (e *elevation) open(x, y float64) bool {
	return slices.ContainsFunc(e.run.Openings, func(o plan.Opening) bool { return inside(complex(x, y), e.edges(o.Outline)) })
}

// pole draws the story pole and returns where it ends.
func (e *elevation) pole(y float64) float64 {
	if e.run.Bare() {
		return y
	}
	groups := e.run.PolePlaces()
	texts, what := e.texts(groups)
	base := e.under(0, e.Width/2, y+4, "middle", line{"Story pole: distances from the start" + what}.wrap(e.Width-16, e.Width-16)...) - 4
	at := func(group []int) float64 { return e.x(e.run.StoryPole[group[0]].At) }
	from := e.x(e.run.SetOut.From)
	ticks := pen("M", min(at(groups[0]), from), base, "H", max(at(groups[len(groups)-1]), from))
	var stops []stop // one for each line
	for i, group := range groups {
		ticks += pen("M", at(group), base-5, "v10")
		for n, text := range texts[i] {
			stops = append(stops, stop{text: text, ink: at(group), bare: n < len(texts[i])-1})
		}
	}
	e.stroke("pole", ticks)
	e.dot("startmark", complex(from, base), 4)
	return e.below(stops, 8, e.Width-8, base+4, 1, 0, 15, func(stop) {})
}

// StoryPole draws the story pole of run i alone, as under its elevation, with the chains of dimensions over it. A run that
// stays bare has none.
func StoryPole(p plan.Plan, i int) (Picture, error) {
	return draw(wideInk, fault.Of("Runs"), i, len(p.Runs), func(width float64) *Picture {
		e := newElevation(p, i, width, ref("run-%d-pole", i+1), "Story pole of ")
		if e.run.Bare() {
			return nil
		}
		e.scaled(perInch)
		for n, mark := range e.run.StoryPole {
			e.desc("%s: %s from the start.", mark.Name(p.Profile), e.fromStart(n))
		}
		e.Height = e.foot(e.pole(e.chains(0)), line{"Story pole of "})
		return e.Picture
	})
}

// foot draws the bar of the scale and the title block, which says what is drawn, and returns the drawing's height.
func (e *elevation) foot(y float64, what line) float64 {
	y += 8
	wide := min(widest(typeSize, e.keyed)+20, e.Width-16)
	rows := slices.Collect(slices.Chunk(e.keyed, int((e.Width-16)/wide)))
	if len(e.missed) > 0 {
		rows = append(rows, []line{slices.Concat(line{"No room here for these"}, e.missed)})
	}
	y += either(len(rows) > 0, 12.0, 0)
	for _, row := range rows {
		room, top := either(len(row) == 1, e.Width-16, wide), y
		for k, name := range row {
			y = max(y, e.under(0, 8+float64(k)*wide, top, "start", name.wrap(room, room)...))
		}
	}
	return e.block(y, true, append(what, figure{e.run.Name, e.path + "name"}))
}

// bar draws a bar of the scale and returns where it ends.
func (c *canvas) bar(x, y float64) float64 {
	inch, steps := 1.0, []int{1, 2, 3, 6, 12, 24, 48, 96, 192}
	if unit := c.tape.Unit; unit != fraction.Inch {
		inch, steps = either(unit == fraction.Millimetre, 1/25.4, 1/2.54), []int{1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000}
	}
	i := max(0, slices.IndexFunc(steps, func(s int) bool { return float64(s)*inch*c.scale > 44 }))
	step := float64(steps[i]) * inch * c.scale
	c.stroke("bar", "M", x, y, "h", step, "v5h", -step, "z")
	c.stroke("edge", "M", x, y, "h", 2*step, "v5h", -2*step, "z")
	for n := range 3 {
		line{counted(fmt.Sprint(n * steps[i]))}.write(&c.node, "", x+float64(n)*step, y+20, []string{"start", "middle", "middle"}[n])
	}
	return y + 28
}

// block draws the title block, with the scale in print and the unit, and returns where it ends; with a bar of the scale
// at its right, or above it where that is narrow.
func (c *canvas) block(top float64, bar bool, what line) float64 {
	room, end := c.Width-16, 0.0
	if bar && c.Width < wideInk {
		top = c.bar(8, top)
	} else if bar {
		end = c.bar(c.Width-barRoom+12, top+11) + 9
		room -= barRoom
	}
	lines := what.wrap(room/1.1, room/1.1)
	bold := len(lines)
	lines = append(lines, line{figure{c.plan.Title, "title"}}.wrap(room, room)...)
	size := line{"Scale ", counted(ref("1:%.0f", perInch/c.scale)), ", lengths in " + c.tape.Unit.Plural()}
	if n := len(lines) - 1; lines[n].width(typeSize)+size.width(typeSize) < room-20 {
		lines[n] = slices.Concat(lines[n], line{" · "}, size)
	} else {
		lines = append(lines, size)
	}
	end = max(end, c.under(bold, 8, top+15, "start", lines...))
	c.rect(box{1, top, c.Width - 2, end - top - 9}, "class", "frame")
	return end - 7
}

// sides are the ink x just outside the wall and its panels.
func (e *elevation) sides() (left, right float64) {
	lo, hi := cutout.Bounds(e.run.Outline)
	return min(e.x(e.run.Limits[0]), e.x(lo.X)) - 3, max(e.x(e.run.Limits[1]), e.x(hi.X)) + 3
}

// lanes are the room that the heights beside the wall take, and before it the names of the chains.
func (e *elevation) lanes() (left, right float64) {
	points := slices.DeleteFunc(slices.Clone(e.run.Outline), func(p plan.Point) bool { return e.run.AtEnd(p) == 0 })
	for _, o := range e.run.Openings {
		points = append(points, o.Outline...)
	}
	for _, y := range e.run.Supports {
		points = append(points, plan.Point{Y: y})
	}
	for _, p := range points {
		right = max(right, heightLane+textWidth(e.length(p.Y, "").text, typeSize))
	}
	return max(right, either(e.Width < wideInk, 0, nameLane)), right
}

// heights writes heights over the datum on both sides, moved apart where they are close: of the
// wall's ends, and of the lower and upper sides of the openings, each on the side that is nearer.
func (e *elevation) heights() {
	left, right := e.sides()
	lo, hi := max(e.top-30, e.begin+9), e.floor+30
	most := int((hi-lo)/poleGap) + 1
	for side, near := range []float64{left, right} {
		out := float64(2*side - 1)
		all := []stop{{text: line{counted("0")}, ink: e.y(zero), class: "starttext"}}
		add := func(y fraction.Length, path string) {
			if len(all) < most {
				all = once(all, stop{text: line{e.length(y, path)}, at: y, ink: e.y(y)})
			}
		}
		for i, p := range e.run.Outline {
			if e.run.AtEnd(p) == side+1 {
				add(p.Y, e.path+ref("outline[%d][1]", i))
			}
		}
		for i, y := range e.run.Supports {
			add(y, e.path+ref("supports[%d]", i))
		}
		for i, o := range e.run.Openings {
			spot := e.around(o.Outline)
			if real(spot.middle()) > e.Width/2 != (side == 1) {
				continue
			}
			foot, head := cutout.Bounds(o.Outline)
			drawn := map[fraction.Length]bool{}
			for k, p := range o.Outline {
				bound := p.Y == foot.Y || p.Y == head.Y
				springs := func(a plan.Arc) bool { return a.Springs == p.Y }
				if arcs := e.arcs(o); drawn[p.Y] || !bound && len(arcs) > 0 && !slices.ContainsFunc(arcs, springs) {
					continue
				}
				drawn[p.Y] = true
				add(p.Y, e.path+ref("openings[%d].outline[%d][1]", i, k))
				y, far := e.y(p.Y), either(bound, spot.x+float64(side)*spot.w, e.x(p.X)) // or of a horn
				e.stroke("ext", "M", near, y, "H", far)
				e.claim(box{min(near, far), y - .8, math.Abs(near - far), 1.6})
			}
		}
		e.beside(all, lo, hi, near, out, 0, 12, func(s stop) {
			if s.at.IsZero() {
				e.stroke("startmark", "M", near+4*out, s.ink, "l-5 -8h10z")
			}
		})
	}
}

// corners are the heights of the corners between the ends, of the top or the bottom, at their places, or of a level part in its middle;
// those apart that lie behind an opening, over or under which they would be taken for its own.
func (e *elevation) corners(top bool) (seen, behind []stop) {
	n := len(e.run.Outline)
	for i, p := range e.run.Outline {
		before, after := e.run.Outline[(i+n-1)%n], e.run.Outline[(i+1)%n]
		isTop := p.X.Less(before.X) || after.X.Less(p.X) // the outline runs counterclockwise
		level := func(p, q plan.Point) bool {
			return p.Y == q.Y && e.run.AtEnd(p) == 0 && e.run.AtEnd(q) == 0 && !e.open(e.x(p.X), e.y(p.Y))
		}
		if e.run.AtEnd(p) == 0 && isTop == top && !level(p, after) && !(p.Y.IsZero() && !top) {
			text := e.length(p.Y, e.path+ref("outline[%d][1]", i))
			s := stop{text: line{text}, at: p.X, ink: e.x(p.X), y: e.y(p.Y), class: "height"}
			if level(before, p) {
				s.ink, s.class = (e.x(p.X)+e.x(before.X))/2, levelPart
				if e.open(s.ink-8, s.y+1) || e.open(s.ink+8, s.y+1) { // of the part that is seen
					s.ink = (s.ink + e.x(before.X)) / 2
				}
			}
			riser := spanned(s.ink, s.y, s.ink, either(top, -mostInk, mostInk))
			if slices.ContainsFunc(e.run.Openings, func(o plan.Opening) bool { return e.around(o.Outline).overlaps(riser) }) {
				behind = append(behind, stop{text: line{either(top, "top ", "foot "), text}, ink: e.x(p.X), at: p.X, class: "height"})
			} else {
				seen = append(seen, s)
			}
		}
	}
	if top { // from left to right
		slices.Reverse(seen)
	}
	return seen, behind
}

// riser draws the line from a height to its place, with a bar on a level part.
func (e *elevation) riser(from float64) func(s stop) {
	return func(s stop) {
		e.stroke("lead", "M", s.ink, from, "V", s.y)
		if s.class == levelPart {
			e.stroke("level", "M", s.ink-5, s.y, "h10v3h-10z")
		}
		e.claim(spanned(s.ink-1, from, s.ink+1, s.y))
	}
}

// bottoms writes the heights of the corners of the wall's bottom under it.
func (e *elevation) bottoms() {
	all, _ := e.corners(false)
	e.low = e.below(all, 8, e.Width-8, e.floor, 1, 6, 17, e.riser(e.floor)) - either(len(all) == 0, 18.0, 0)
}

// poleLines are the lengths tried of an upright line, the best first; 0 is for the distances alone.
// A short one has many lines, which may take five sixths of the room, to stand near their marks.
var poleLines = []float64{120, 165, 215, 290, 350, 410, 0}

// texts are the upright lines at each place, and what to say of them: all words, else the distances alone, else only each
// second, third … of them; the table has them all.
func (e *elevation) texts(groups [][]int) (texts [][]line, what string) {
	most, count := int((e.Width-16)/poleGap)+1, 0
	texts = make([][]line, len(groups))
	for _, long := range either(e.brief, []float64{0}, poleLines) {
		count = 0
		for i, group := range groups {
			if texts[i] = []line{{e.fromStart(group[0])}}; long > 0 {
				texts[i] = e.written(group).wrap(long, max(long, mostWord))
			}
			count += len(texts[i])
		}
		if count <= most && (long > 200 || long == 0 || count <= most*5/6) {
			return texts, either(long == 0, ", named in its table", "")
		}
	}
	every := (count + most - 2) / (most - 1)
	for i := range texts {
		if i%every != 0 && i != len(texts)-1 {
			texts[i] = nil
		}
	}
	return texts, ref(", one in %d; its table has all, with their names", every)
}

// written is what is marked at a place and its distance from the start.
func (e *elevation) written(group []int) (text line) {
	for n, i := range group {
		text = append(text, either(n > 0, "; ", ""), figure{e.run.StoryPole[i].Name(e.plan.Profile), e.path + ref("story_pole[%d]", i)})
	}
	return append(text, ": ", e.fromStart(group[0]))
}

// fromStart is the distance of a story-pole mark from the start, below 0 on the other side of it.
func (e *elevation) fromStart(i int) figure {
	mark, from := e.run.StoryPole[i], e.run.SetOut.From
	at, start := e.path+ref("story_pole[%d].at", i), e.path+"set_out.from"
	if e.run.SetOut.Direction == wall.Left {
		return e.sum(plus(from, start), minus(mark.At, at))
	}
	return e.sum(plus(mark.At, at), minus(from, start))
}
