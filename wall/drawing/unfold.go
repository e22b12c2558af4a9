package drawing

import (
	"math"
	"slices"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall/plan"
)

const (
	unfoldTall  = 180.0        // most ink that a wall takes upwards
	unfoldScale = perInch / 40 // least ink to the inch before the walls stand in several rows
	boardLeast  = 22.0         // of a board that has its number
	cornerGap   = 26.0         // between walls
	mostFrames  = 12           // of a fitting strip
	frameTall   = 90.0         // most ink that its walls take upwards,
	frameLow    = 34.0         // and at least, but where one takes the whole width
)

// unfold returns the walls of a plan in as few rows as have room, with white above and below each; a row's datum is level.
func unfold(p plan.Plan, width float64, name, title string, above, below float64) (walls []*elevation) {
	pic := newCanvas(p, width, sized(name, width), title).Picture
	total, widest, top, foot := 0.0, 0.0, math.Inf(-1), math.Inf(1)
	for i := range p.Runs {
		e := newElevation(p, i, width, name, title)
		e.Picture = pic
		walls = append(walls, e)
		total, widest, top, foot = total+e.wide, max(widest, e.wide), max(top, e.y1), min(foot, e.y1-e.high)
	}
	room := width - 8 - cornerGap*float64(len(walls)+1)
	scale := either(room/total < unfoldScale*.7, min(unfoldScale, (width-8-2*cornerGap)/widest), room/total)
	scale = min(scale, unfoldTall/(top-foot))
	for rest, y := walls, above; len(rest) > 0; {
		n, x := 0, cornerGap
		top, foot = math.Inf(-1), math.Inf(1)
		for _, e := range rest {
			long := e.wide * scale
			if n > 0 && x+long+cornerGap > width {
				break
			}
			e.scale, e.left, e.frame = scale, x, box{x - cornerGap/2, y - above, long + cornerGap, 0}
			n, x, top, foot = n+1, x+long+cornerGap, max(top, e.y1), min(foot, e.y1-e.high)
		}
		high := (top - foot) * scale
		for _, e := range rest[:n] {
			e.top, e.floor, e.frame.h = y+(top-e.y1)*scale, y+high, high+above
		}
		rest, pic.Height, y = rest[n:], y+high+below, y+high+below+above
	}
	return walls
}

// Unfolded draws all walls of a plan side by side: their pattern, the pieces with their numbers, the
// letters of their corners, where to start and which way to work.
func Unfolded(p plan.Plan) (Picture, error) {
	return draw(wideInk, fault.Of("Runs"), 0, len(p.Runs), func(width float64) *Picture {
		walls, deepest := unfold(p, width, "unfolded", "All walls, unfolded", 26, 0), 0.0
		for _, e := range walls {
			_, high := e.called()
			deepest = max(deepest, high)
		}
		walls = unfold(p, width, "unfolded", "All walls, unfolded", 26, deepest+28)
		for i, e := range walls {
			e.wall()
			e.seams()
			e.openings()
			e.leads = e.add("g")
			e.claimOpenings()
			narrow := p.Profile.Boards && len(e.pieces) > 1 && p.Profile.Pitch.Float64()*e.scale < boardLeast
			if !narrow || !e.fitted(e.view, [][]plan.Point{e.run.Outline}, e.tagged(e.level("bold", e.numbered("", e.pieces), 16))) {
				for _, piece := range e.pieces {
					e.numberPiece(piece)
				}
			}
			e.onTheWall()
			y := e.floor + 12
			if e.run.Bare() {
				e.desc("%s: stays bare.", e.run.Name)
			} else {
				e.arrow(e.floor, y, 16)
				e.desc("%s: start at %s, work to the %s.", e.run.Name, e.tape.Format(e.run.SetOut.From), e.run.SetOut.Direction)
			}
			middle := e.frame.x + e.frame.w/2
			name, high := e.called()
			if high > laneHigh*float64(len(name)) {
				for n, l := range name {
					l.upright(&e.node, either(n < len(name)-1, "bold", ""), complex(middle+(float64(n)-float64(len(name)-1)/2)*poleGap, y+10), "end")
				}
			} else {
				e.under(len(name)-1, middle, y+20, "middle", name...)
			}
			if letter := p.CornerLetter(i); letter != "" {
				e.letter(letter, complex(e.frame.x+e.frame.w, e.frame.y+12))
			}
		}
		return walls[0].Picture
	})
}

// numbered are the labels of the first and the last of some pieces.
func (e *elevation) numbered(what string, pieces []plan.Piece) line {
	text := line{what}
	for n, piece := range []plan.Piece{pieces[0], pieces[len(pieces)-1]}[:min(2, len(pieces))] {
		_, at := e.plan.Piece(piece.Number)
		text = append(text, either(n > 0, " to ", ""), figure{piece.Label, ref("pieces[%d].label", at)})
	}
	return text
}

// called are a run's name and its width in lines under its wall, and what they take downwards: more than
// the lines where a word is wider than a narrow wall, as the name is upright then.
func (e *elevation) called() (lines []line, high float64) {
	room, name, width := (e.frame.w-4)/1.1, line{figure{e.run.Name, e.path + "name"}}, line{e.length(e.run.Width, e.path+"width")}
	if lines = name.wrap(room, max(room, 60)); widest(typeSize, lines) <= room {
		return append(lines, width), laneHigh * float64(len(lines)+1)
	}
	for long := 80.0; len(lines) > 1 && float64(len(lines)+1)*poleGap > e.frame.w || long == 80; long *= 1.2 {
		lines = name.wrap(long, math.Inf(1))
	}
	return append(lines, width), widest(typeSize*1.1, lines) + laneHigh
}

// Preview draws the finished walls of a plan, with light from the left and without a note.
func Preview(p plan.Plan) (Picture, error) {
	return draw(wideInk, fault.Of("Runs"), 0, len(p.Runs), func(width float64) *Picture {
		walls := unfold(p, width, "preview", "The finished walls", 8, 8)
		for _, e := range walls {
			e.desc("%s.", e.run.Name)
			up := e.add("g", "clip-path", e.clip(e.path+"on-the-wall", e.curved(nil, e.run.Outline)))
			for k, n := range e.run.Installed {
				lo, hi := cutout.Bounds(e.run.Outline)
				board := plan.Piece{Width: n.Right.Sub(n.Left), Height: hi.Y.Sub(lo.Y), LeftPhase: n.LeftPhase}
				e.paint(up, ref("%sinstalled-%d", e.path, k), e.strip(n).path(), plan.Point{X: n.Left, Y: lo.Y}, board)
			}
			for _, piece := range e.pieces {
				shape := e.move(piece.At).curved(piece.Marks.Arcs, piece.Rings()...)
				e.paint(&e.node, ref("preview-%d", piece.Number), shape, piece.At, piece)
			}
			for _, o := range e.run.Openings {
				e.stroke("void", e.curved(e.arcs(o), o.Outline))
			}
		}
		return walls[0].Picture
	})
}

// paint draws a board of a shape at a place, with the light from the left on its profile.
func (e *elevation) paint(on *node, what, shape string, at plan.Point, board plan.Piece) {
	on.stroke("painted", shape).set("fill-rule", "evenodd")
	on = on.add("g", "clip-path", e.clip(what, shape))
	e.drawPattern(on, e.move(at), e.plan.Profile, board.LeftPhase, board.Width, board.Height, lit)
}

// FittingStrip draws a run after each of its pieces is fitted, or of more than a dozen after each few, those
// hatched that were fitted last. A run of one piece has none.
func FittingStrip(p plan.Plan, i int) (Picture, error) {
	return draw(wideInk, fault.Of("Runs"), i, len(p.Runs), func(width float64) *Picture {
		e := newElevation(p, i, width, ref("run-%d-fitting", i+1), "Order of fitting of ")
		if len(e.pieces) < 2 {
			return nil
		}
		frames := slices.Collect(slices.Chunk(e.pieces, (len(e.pieces)+mostFrames-1)/mostFrames))
		n, up := len(frames), 0
		across := max(1, min(n, int(width/110), int(width/(e.wide*frameLow/e.high+16))))
		cell := width / float64(across)
		e.scale = min((cell-16)/e.wide, frameTall/e.high)
		tall := e.high*e.scale + laneHigh + 10
		for k, last := range frames {
			up += len(last)
			e.left, e.top = float64(k%across)*cell+(cell-e.wide*e.scale)/2, 4+float64(k/across)*tall
			e.stroke("wall", e.curved(nil, e.run.Outline))
			if len(e.run.Installed) > 0 {
				e.standing(ref("frame-%d", k))
			}
			for m, piece := range e.pieces[:up] {
				shape := e.move(piece.At).curved(piece.Marks.Arcs, piece.Rings()...)
				e.stroke("board", shape).set("fill-rule", "evenodd")
				if m >= up-len(last) {
					e.add("path", "fill", e.hatch("now", "edge", 6, 45), "fill-rule", "evenodd", "d", shape) // bolder than an opening
				}
				e.stroke("edge", shape)
			}
			for _, o := range e.run.Openings {
				e.stroke("void", e.curved(e.arcs(o), o.Outline))
			}
			text := e.numbered("fit ", last)
			text.write(&e.node, "bold", float64(k%across)*cell+cell/2, e.top+e.high*e.scale+laneHigh-2, "middle")
			e.desc("Then %s.", text)
		}
		e.Height = 4 + tall*float64((n+across-1)/across)
		return e.Picture
	})
}
