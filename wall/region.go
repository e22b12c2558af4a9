package wall

import (
	"context"
	"slices"
	"sync"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

// fitting says how a run is made at its two ends: whether it butts against the face of its
// neighbour there. It matters only at inside corners.
type fitting struct {
	buttsLeft, buttsRight bool
}

// region is what one run's panels cover: the wall's shape less gaps and openings.
type region struct {
	exact       []cutout.Shape           // as the lines run
	taped       map[cutout.Point]bool    // corners that stay where they are when a shape is snapped
	shapes      []cutout.Shape           // snapped: computed corners on the tape's marks
	tolerance   fraction.Length          // within which a computed place goes to a mark on either side
	left, right fraction.Length          // leftmost and rightmost x that panels reach
	columns     []column                 // left to right; between two that do not touch lies a void
	slots       []slot                   // of the columns, left to right
	counts      [][]int32                // of pieces of a panel over columns [first][last]
	stepSides   []side                   // upright sides of steps, after the gap
	edges       []edge                   // upright edges with a weight or a strip to keep clear of
	endHeights  [2]fraction.Length       // of the part that bounds the shape at its left and right end
	endLengths  [2]fraction.Length       // along what nothing that weighs more claims of it, also where it leans
	leaning     map[[2]cutout.Point]bool // edges of shapes along an end that leans

	heightLock sync.Mutex // of heights, which layouts ask for again and again
	heights    map[sloped]fraction.Length

	// Behind the lock, by panel: see band and Model.piecesOf. What joints add up to.
	lock    sync.Mutex
	bands   map[span][]cutout.Shape
	pieces  map[span][]Piece
	lengths map[against][]fraction.Length
}

// newRegion returns the region of run number r of the room, fitted as f says.
func newRegion(ctx context.Context, room *Room, r int, f fitting) (*region, error) {
	run := &room.Runs[r]
	g := &region{tolerance: room.Snap, taped: map[cutout.Point]bool{}, leaning: map[[2]cutout.Point]bool{}, bands: map[span][]cutout.Shape{}, pieces: map[span][]Piece{}, heights: map[sloped]fraction.Length{}}
	leftEnd, rightEnd := endLines(room, run, f)
	for _, end := range []endLine{leftEnd, rightEnd} {
		g.taped[end.foot], g.taped[end.top] = true, true
	}
	shapes, err := g.wallShape(room, r, leftEnd, rightEnd)
	if err != nil {
		return nil, err
	}
	grown := make([][][]cutout.Point, len(run.Openings))
	for i, o := range run.Openings {
		check(ctx)
		grown[i] = fraction.Must(cutout.Grow(o.Outline, room.Gaps.Around(o.Kind)))
		for _, clip := range grown[i] {
			shapes = each(shapes, func(s cutout.Shape) ([]cutout.Shape, error) { return s.Minus(clip) })
			for _, p := range clip {
				g.taped[p] = true
			}
		}
	}
	// Where an opening takes an end, what a mitre or a lean has past it goes too.
	shapes = slices.DeleteFunc(shapes, func(s cutout.Shape) bool {
		lo, hi := s.Bounds()
		return hi.X.Sign() <= 0 || !lo.X.Less(run.Width)
	})
	check(ctx)
	g.exact, g.shapes = shapes, g.snap(shapes, room.Mark)
	if len(g.shapes) == 0 {
		return nil, &NoLayoutError{Run: run.Name, Reason: NothingLeft}
	}
	g.left, g.right = extent(g.shapes)
	check(ctx)
	g.columns = columnsOf(g.exact)
	g.slots = slotsOf(g.columns, room.Mark)
	g.findEdges(room, r, leftEnd, rightEnd, grown)
	g.counts = make([][]int32, len(g.columns))
	for i := range g.columns {
		check(ctx)
		g.counts[i] = g.countsFrom(i)
	}
	return g, nil
}

func (g *region) snap(shapes []cutout.Shape, mark fraction.Length) []cutout.Shape {
	return fraction.Must(cutout.Snap(shapes, mark, g.tolerance, func(p cutout.Point) bool { return g.taped[p] }))
}

// endLine is the line at which panels stop, from foot up to top.
type endLine struct{ foot, top cutout.Point }

func (e endLine) upright() bool { return e.foot.X == e.top.X }

// endLines returns the lines at which the panels of a run stop at its left and right end: a side
// gap from the wall's end, one thickness farther where the run butts, and one thickness past an
// outside corner, where the mitre's long point lies.
func endLines(room *Room, run *Run, f fitting) (left, right endLine) {
	shift := func(e End, butts bool) fraction.Length {
		switch {
		case e.Kind == OutsideCorner:
			return room.Profile.Thickness.Neg()
		case e.Kind == InsideCorner && butts:
			return room.Profile.Thickness.Add(room.Gaps.Side)
		}
		return room.Gaps.Side
	}
	from := func(x fraction.Length, h Height, e End) endLine {
		return endLine{cutout.Point{X: x, Y: h.Bottom}, cutout.Point{X: x.Add(e.Lean), Y: h.Top}}
	}
	return from(shift(run.Left, f.buttsLeft), run.Heights[0], run.Left),
		from(run.Width.Sub(shift(run.Right, f.buttsRight)), run.Heights[len(run.Heights)-1], run.Right)
}

// wallShape returns the exact shape of the wall between its end lines, after the top and bottom
// gaps and with each step's upright side moved by the side gap.
func (g *region) wallShape(room *Room, r int, left, right endLine) ([]cutout.Shape, error) {
	var tops, bottoms []cutout.Point
	run := &room.Runs[r]
	for _, h := range run.Heights {
		tops = append(tops, cutout.Point{X: h.At, Y: h.Top.Sub(room.Gaps.Top)})
		bottoms = append(bottoms, cutout.Point{X: h.At, Y: h.Bottom.Add(room.Gaps.Bottom).Neg()})
	}
	// A bottom is a top seen upside down, so that one rule serves both.
	last := len(tops) - 1
	tops[0].X = run.Left.Lean
	tops[last].X = run.Width.Add(run.Right.Lean)
	for i := range tops {
		g.taped[tops[i]] = true
		g.taped[cutout.Point{X: bottoms[i].X, Y: bottoms[i].Y.Neg()}] = true
	}
	top, _ := room.TrimOf(r, TopJoint)
	bottom, _ := room.TrimOf(r, BottomJoint)
	tops, bottoms = g.level(room, tops, top, room.Gaps.Top), g.level(room, bottoms, bottom, room.Gaps.Bottom)
	for i := range bottoms {
		bottoms[i].Y = bottoms[i].Y.Neg()
	}
	atStep := claim{kind: StepSide, where: AtStep, weight: room.Priorities.StepSide}
	for _, line := range [][]cutout.Point{tops, bottoms} {
		for i, q := range line[1:] {
			if p := line[i]; p.X == q.X {
				g.stepSides = append(g.stepSides, side{p.X, fraction.Min(p.Y, q.Y), fraction.Max(p.Y, q.Y), atStep})
			}
		}
	}

	beyond := fraction.Inches(1)
	farLeft := fraction.Min(left.foot.X, left.top.X, tops[0].X, bottoms[0].X).Sub(beyond)
	farRight := fraction.Max(right.foot.X, right.top.X, tops[len(tops)-1].X, run.Width).Add(beyond)
	bottoms = extend(bottoms, farLeft, farRight, run)
	tops = extend(tops, farLeft, farRight, run)
	b, t := len(bottoms)-1, len(tops)-1
	meetBeyond(&bottoms[0], &tops[0], bottoms[1], tops[1])
	meetBeyond(&bottoms[b], &tops[t], bottoms[b-1], tops[t-1])
	slices.Reverse(tops)
	outline := slices.Compact(slices.Concat(bottoms, tops))
	if last := len(outline) - 1; outline[last] == outline[0] {
		outline = outline[:last]
	}

	whole, err := cutout.NewShape(outline)
	if err != nil {
		return nil, &NoLayoutError{Run: run.Name, Reason: NoHeight}
	}
	from, to := farLeft, farRight
	if left.upright() {
		from = left.foot.X
	}
	if right.upright() {
		to = right.foot.X
	}
	if !from.Less(to) {
		return nil, &NoLayoutError{Run: run.Name, Reason: NoWidth}
	}
	shapes := fraction.Must(whole.Band(from, to))
	if !left.upright() {
		shapes = each(shapes, func(s cutout.Shape) ([]cutout.Shape, error) { return s.ClipLine(left.top, left.foot) })
	}
	if !right.upright() {
		shapes = each(shapes, func(s cutout.Shape) ([]cutout.Shape, error) { return s.ClipLine(right.foot, right.top) })
	}
	return shapes, nil
}

// extend carries a line on past its ends, as far as an end line may stand: straight where the wall
// leans, level past an upright end or an outside corner, where no tape was held.
func extend(line []cutout.Point, farLeft, farRight fraction.Length, run *Run) []cutout.Point {
	beyond := func(e End, x fraction.Length, end, next cutout.Point) cutout.Point {
		if e.Lean.IsZero() || e.Kind == OutsideCorner {
			return cutout.Point{X: x, Y: end.Y}
		}
		return cutout.Point{X: x, Y: heightOn(end, next, x)}
	}
	last := len(line) - 1
	out := []cutout.Point{beyond(run.Left, farLeft, line[0], line[1])}
	out = append(out, line...)
	return append(out, beyond(run.Right, farRight, line[last], line[last-1]))
}

// meetBeyond moves the end points of a bottom and a top line that were carried on to one x past the
// end of the wall, at nextBottom and nextTop, to where they meet, if they have crossed.
func meetBeyond(bottom, top *cutout.Point, nextBottom, nextTop cutout.Point) {
	slope := func(from, to cutout.Point) fraction.Ratio { return to.Y.Sub(from.Y).Over(to.X.Sub(from.X)) }
	opening := slope(*top, nextTop).Sub(slope(*bottom, nextBottom))
	if bottom.Y.Less(top.Y) || opening.IsZero() {
		return
	}
	x := bottom.X.Add(bottom.Y.Sub(top.Y).Scale(fraction.NewRatio(1, 1).Div(opening)))
	for _, next := range []cutout.Point{nextBottom, nextTop} {
		if x == next.X || x.Less(next.X) != bottom.X.Less(next.X) {
			return // they cross within the wall
		}
	}
	meet := cutout.Point{X: x, Y: heightOn(*bottom, nextBottom, x)}
	*bottom, *top = meet, meet
}

// moveSteps moves the upright side of each step of a top line by side toward its taller part; the
// low line runs on level over the gap.
func moveSteps(line []cutout.Point, side fraction.Length) []cutout.Point {
	var out []cutout.Point
	add := func(x fraction.Length, y fraction.Length) { out = append(out, cutout.Point{X: x, Y: y}) }
	last := len(line) - 1
	for i, p := range line {
		switch {
		case i > 0 && line[i-1].X == p.X && line[i-1].Y.Less(p.Y): // written with the point before it
		case i+1 < last && line[i+1].X == p.X && p.Y.Less(line[i+1].Y):
			x := p.X.Add(side)
			out = append(out, p)
			add(x, p.Y)
			add(x, heightOn(line[i+1], line[i+2], x))
		case 0 < i && i < last && line[i+1].X == p.X && line[i+1].Y.Less(p.Y):
			x := p.X.Sub(side)
			add(x, heightOn(line[i-1], p, x))
			add(x, line[i+1].Y)
		default:
			out = append(out, p)
		}
	}
	return slices.Compact(out)
}

// heightOn returns the height at x of the line through a and b.
func heightOn(a, b cutout.Point, x fraction.Length) fraction.Length {
	return fraction.Must(cutout.HeightAt(a, b, x))
}

// snapped returns the mark that a computed place goes to: the nearest one within the tolerance, else,
// or where two are equally near, that above or below.
func (g *region) snapped(y, mark fraction.Length, way fraction.Direction) fraction.Length {
	if mark.IsZero() {
		return y
	}
	on, off := y.Round(mark, fraction.Nearest)
	if g.tolerance.Less(off.Abs()) || off.Abs().Mul(2) == mark {
		on, _ = y.Round(mark, way)
	}
	return on
}

func floor(x, mark fraction.Length) fraction.Length {
	if mark.IsZero() {
		return x
	}
	x, _ = x.Round(mark, fraction.Down)
	return x
}

func ceil(x, mark fraction.Length) fraction.Length { return floor(x.Neg(), mark).Neg() }

// each returns what is left of all the shapes.
func each(shapes []cutout.Shape, cut func(cutout.Shape) ([]cutout.Shape, error)) (out []cutout.Shape) {
	for _, s := range shapes {
		out = append(out, fraction.Must(cut(s))...)
	}
	return out
}

// extent returns the leftmost and the rightmost x of the shapes.
func extent(shapes []cutout.Shape) (left, right fraction.Length) {
	for i, s := range shapes {
		lo, hi := s.Bounds()
		if i == 0 {
			left, right = lo.X, hi.X
		}
		left, right = fraction.Min(left, lo.X), fraction.Max(right, hi.X)
	}
	return left, right
}
