package plan

import (
	"math"
	"slices"

	"example.com/groovewright/cutout"
	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall"
)

// mostNails is the most nails or supports over one length that are listed.
const mostNails = 1000

// Nails returns where the nails of a piece stand on its face, for the list as for drawings: at least so far off every
// edge as the plan says, of a miter off that of the back, and farther, as the plan says too, off electrical boxes and
// off what else is cut out within the wall, as cables and pipes lie in the wall there. A window has a frame in place of
// these. What would stand nearer stands at the nearest place of its support that is clear; bare has a place of each
// support without any.
//
// A sheet has nails in columns, as if supports lay behind its upright edges and, from the left one on, between, and
// round each window in it: at most as far apart as the plan says. One stands alone where there is no room for half
// that distance. A board has one at its foot, one at its top, and one where it crosses a support between, see
// [Run].Supports: through its tongue, which is on the side toward which one works, and where it has none through its
// face; with a tongue the board that starts a run has others through its face along the edge there. Nails fails where a place
// does not fit a Length.
func (p Plan) Nails(piece Piece) (nails, bare []Point, err error) {
	defer fraction.Catch(&err)
	f := p.Fixing
	if f.Nails == finish.UsualNails || min(f.Supports.Sign(), f.Inset.Sign()) <= 0 {
		return nil, nil, nil
	}
	run, _ := p.Run(piece.Run)
	n := nailing{Plan: p, run: run, piece: piece, off: f.Inset}
	for _, o := range run.Openings {
		if around := fraction.Max(f.Clear, f.Inset).Add(p.Gaps.Around(o.Kind)); run.inWall(o) {
			lo, hi := cutout.Bounds(o.Outline)
			n.closed = append(n.closed, [2]Point{
				{X: lo.X.Sub(around).Sub(piece.At.X), Y: lo.Y.Sub(around).Sub(piece.At.Y)},
				{X: hi.X.Add(around).Sub(piece.At.X), Y: hi.Y.Add(around).Sub(piece.At.Y)}})
		}
	}
	switch {
	case f.Level:
		n.crossings()
	case min(f.Edge.Sign(), f.Field.Sign()) > 0:
		n.columns()
	}
	return n.nails, n.bare, nil
}

// inWall reports whether cables or pipes lie in the wall at an opening.
func (r Run) inWall(o Opening) bool { return o.Kind.InWall(o.Outline, r.Outline) }

// InWall reports whether cables or pipes lie in a wall at an opening.
func (p Plan) InWall() bool {
	return slices.ContainsFunc(p.Runs, func(r Run) bool { return slices.ContainsFunc(r.Openings, r.inWall) })
}

// nailing places the nails of a piece. No nail stands within a closed place, a rectangle of the face.
type nailing struct {
	Plan
	run         Run
	piece       Piece
	off         fraction.Length
	closed      [][2]Point
	nails, bare []Point
}

// stretch is a part of a line, from one place to another.
type stretch [2]fraction.Length

// shuts reports whether a closed place has an upright line at x.
func shuts(c [2]Point, x fraction.Length) bool { return c[0].X.Less(x) && x.Less(c[1].X) }

// shut reports whether a closed place has a place within it.
func (n *nailing) shut(at Point) bool {
	return slices.ContainsFunc(n.closed, func(c [2]Point) bool { return shuts(c, at.X) && c[0].Y.Less(at.Y) && at.Y.Less(c[1].Y) })
}

// free returns the parts of an upright line where nails may be.
func (n *nailing) free(x fraction.Length) (parts []stretch) {
	parts = n.piece.clear(x, n.off)
	for _, c := range n.closed {
		var left []stretch
		for _, part := range parts {
			if !shuts(c, x) {
				left = append(left, part)
				continue
			}
			left = append(left, stretch{part[0], fraction.Min(part[1], c[0].Y)}, stretch{fraction.Max(part[0], c[1].Y), part[1]})
		}
		parts = slices.DeleteFunc(left, func(part stretch) bool { return part[1].Less(part[0]) })
	}
	return parts
}

// joined returns parts of an upright line with those as one that only a closed place parts: nothing carries nails there.
func (n *nailing) joined(x fraction.Length, parts []stretch) (all []stretch) {
	for _, part := range parts {
		last := len(all) - 1
		if last >= 0 && slices.ContainsFunc(n.closed, func(c [2]Point) bool {
			return shuts(c, x) && !all[last][1].Less(c[0].Y) && !c[1].Y.Less(part[0])
		}) {
			all[last][1] = part[1]
		} else {
			all = append(all, part)
		}
	}
	return all
}

// nearest returns the place of some parts that is nearest to one.
func nearest(parts []stretch, y fraction.Length) (at fraction.Length) {
	for i, part := range parts {
		place := fraction.Max(part[0], fraction.Min(y, part[1]))
		if i == 0 || place.Sub(y).Abs().Less(at.Sub(y).Abs()) {
			at = place
		}
	}
	return at
}

// columns places the nails of a sheet.
func (n *nailing) columns() {
	f, in := n.Fixing, n.insets()
	left, right := in[0], n.piece.Width.Sub(in[1])
	whole := stretch{{}, n.piece.Height}
	near := func(from, to fraction.Length) bool { return to.Sub(from).Mul(2).Less(f.Edge) }
	if near(left, right) {
		n.column(left.Add(right).Div(2), f.Edge, whole)
	} else {
		n.column(left, f.Edge, whole)
		for x, k := f.Supports, 1; x.Less(right) && k < mostNails-1; x, k = x.Add(f.Supports), k+1 {
			if !near(left, x) && !near(x, right) {
				n.column(x, f.Field, whole)
			}
		}
		n.column(right, f.Edge, whole)
	}
	n.shoulders()
	for _, hole := range n.piece.Holes {
		if slices.ContainsFunc(n.run.Openings, func(o Opening) bool { return o.Name == hole.Opening && o.Kind == wall.Window }) {
			n.nails = append(n.nails, slices.DeleteFunc(n.piece.round(hole.Outline, f.Edge, n.off), n.shut)...)
		}
	}
}

// shoulders places nails along the upright edges of a sheet within its width that are longer than nails at edges
// are apart, where none stands half as near.
func (n *nailing) shoulders() {
	apart := n.Fixing.Edge
	for i, a := range n.piece.Outline {
		b := n.piece.Outline[(i+1)%len(n.piece.Outline)]
		rise := b.Y.Sub(a.Y)
		if a.X != b.X || a.X.IsZero() || a.X == n.piece.Width || !apart.Less(rise.Abs()) {
			continue
		}
		others, bare := slices.Clip(n.nails), n.bare
		n.nails = nil
		in := n.off.Mul(int64(-rise.Sign())) // what is left of an edge as one goes round is the piece
		n.column(a.X.Add(in), apart, stretch{fraction.Min(a.Y, b.Y), fraction.Max(a.Y, b.Y)})
		n.bare = bare // no support lies there of its own
		n.nails = append(others, slices.DeleteFunc(n.nails, func(at Point) bool {
			return slices.ContainsFunc(others, func(other Point) bool {
				return fraction.Max(at.X.Sub(other.X).Abs(), at.Y.Sub(other.Y).Abs()).Mul(2).Less(apart)
			})
		})...)
	}
}

// clipped returns what of some parts lies in a stretch.
func clipped(parts []stretch, span stretch) (in []stretch) {
	for _, part := range parts {
		if from, to := fraction.Max(part[0], span[0]), fraction.Min(part[1], span[1]); !to.Less(from) {
			in = append(in, stretch{from, to})
		}
	}
	return in
}

// column places nails up a stretch of a support. One that has to move goes where there is none about as near as half their distance.
func (n *nailing) column(x, apart fraction.Length, span stretch) {
	free, parts, first := clipped(n.free(x), span), n.joined(x, clipped(n.piece.clear(x, n.off), span)), len(n.nails)
	if len(free) == 0 && len(parts) > 0 {
		n.bare = append(n.bare, Point{X: x, Y: parts[0][0]})
		return
	}
	var moved []fraction.Length
	for _, part := range parts {
		high := part[1].Sub(part[0])
		wanted := []fraction.Length{part[0].Add(high.Div(2))}
		if !high.Mul(2).Less(apart) {
			wanted = spaced(part[0], high, apart)
		}
		for _, y := range wanted {
			if at := nearest(free, y); at == y {
				n.nails = append(n.nails, Point{X: x, Y: y})
			} else {
				moved = append(moved, at)
			}
		}
	}
	for _, y := range moved {
		if !slices.ContainsFunc(n.nails[first:], func(at Point) bool { return at.Y.Sub(y).Abs().Mul(2).Less(apart) }) {
			n.nails = append(n.nails, Point{X: x, Y: y})
		}
	}
}

// spaced returns places up a column, as many as a height takes at most so far apart, and one more.
func spaced(from, high, apart fraction.Length) (places []fraction.Length) {
	n := max(1, min(mostNails, steps(high, apart)))
	for k := range n + 1 {
		places = append(places, from.Add(high.Mul(k).Div(n)))
	}
	return places
}

// crossings places the nails of a board: up its middle, as screws are, or through its tongue. The board with which a run starts has others
// through the face along the edge that no tongue holds; what is sawn off a tongue at the run's end is held through the face there.
// Beside a door, or what else no board goes on beyond, it is as at an end.
func (n *nailing) crossings() {
	if n.Profile.Edges != groove.Tongued || n.Fixing.Nails == finish.PanelScrews {
		n.crossing(n.piece.Width.Div(2), true)
		return
	}
	starts, ends := fraction.Length{}, n.piece.Width
	if n.run.SetOut.Direction == wall.Left {
		starts, ends = ends, starts
	}
	atEnd := func(x fraction.Length) bool { return !n.Meets(n.piece, !x.IsZero()) }
	in := n.insets()
	face := func(x fraction.Length) fraction.Length {
		if n.piece.Width.Less(in[0].Add(in[1])) {
			return n.piece.Width.Div(2)
		}
		return fraction.Max(in[0], fraction.Min(x, n.piece.Width.Sub(in[1])))
	}
	if atEnd(ends) {
		n.crossing(face(ends), true)
	} else {
		n.crossing(ends, !ends.IsZero())
	}
	if atEnd(starts) && !(atEnd(ends) && face(starts) == face(ends)) {
		n.crossing(face(starts), true)
	}
}

// crossing places nails of a board up a line, one where it crosses each support; at an edge left of the line or right.
func (n *nailing) crossing(x fraction.Length, left bool) {
	board := n.piece
	lying := nailing{piece: board.lying(), off: n.off}
	for _, c := range n.closed {
		lying.closed = append(lying.closed, [2]Point{{X: c[0].Y, Y: c[0].X}, {X: c[1].Y, Y: c[1].X}})
	}
	supports := n.supports(n.run)
	for _, part := range n.joined(x, board.upright(x, left)) {
		from, to := board.At.Y.Add(part[0].Add(n.off)), board.At.Y.Add(part[1].Sub(n.off))
		for _, y := range crossed(from, to, n.off.Mul(2), supports) {
			at := Point{X: x, Y: y.Sub(board.At.Y)}
			if !n.shut(at) {
				n.nails = append(n.nails, at)
			} else if free := lying.free(at.Y); len(free) > 0 {
				n.nails = append(n.nails, Point{X: nearest(free, x), Y: at.Y})
			} else {
				n.bare = append(n.bare, at)
			}
		}
	}
}

// crossed returns the two heights and the supports between them, from below; a support so near to one of the
// two stands for it, and the middle for both where they are as near to each other.
func crossed(from, to, near fraction.Length, supports []fraction.Length) (at []fraction.Length) {
	if to.Sub(from).Less(near) {
		return []fraction.Length{from.Add(to).Div(2)}
	}
	for _, y := range supports {
		if !y.Less(from) && !to.Less(y) {
			at = append(at, y)
		}
	}
	if len(at) == 0 || !at[0].Sub(from).Less(near) {
		at = append([]fraction.Length{from}, at...)
	}
	if !to.Sub(at[len(at)-1]).Less(near) {
		at = append(at, to)
	}
	return at
}

// supports returns how high the middles of the level supports behind the boards of a run stand between the foot and the
// top of its wall, over the datum and from below: the same for all its boards, on marks of the tape, about evenly and, as
// marks have it, at most as far apart as the plan says. Each stops at the openings that it meets. Sheets have none.
func (p Plan) supports(run Run) (at []fraction.Length) {
	if !p.Fixing.Level || p.Fixing.Supports.Sign() <= 0 || len(run.Outline) == 0 {
		return nil
	}
	round := func(l fraction.Length, way fraction.Direction) fraction.Length {
		rounded, _ := l.Round(p.Tape, way)
		return rounded
	}
	lo, hi := cutout.Bounds(run.Outline)
	foot, apart := round(lo.Y, fraction.Down), round(p.Fixing.Supports, fraction.Down)
	if apart.IsZero() { // nearer than marks are
		apart = p.Fixing.Supports
	}
	high := round(hi.Y, fraction.Up).Sub(foot)
	n := min(mostNails, steps(high, apart))
	for k := int64(1); k < n; k++ {
		at = append(at, foot.Add(round(high.Mul(k).Div(n), fraction.Down)))
	}
	return at
}

// insets returns how far in from the left and the right of a piece its nails stand at least: off an edge
// that leans, and at a miter off the edge of the back, which lies a thickness in, and where studs hold the nails
// off the first of these: what lies before it reaches round the corner as thick as it is.
func (n *nailing) insets() (in [2]fraction.Length) {
	piece := n.piece
	for i, a := range piece.Outline {
		b := piece.Outline[(i+1)%len(piece.Outline)]
		if lo, hi := fraction.Min(a.X, b.X), fraction.Max(a.X, b.X); hi.Sub(lo).Mul(flatter).Less(a.Y.Sub(b.Y).Abs()) {
			if lo.IsZero() {
				in[0] = fraction.Max(in[0], hi)
			}
			if hi == piece.Width {
				in[1] = fraction.Max(in[1], hi.Sub(lo))
			}
		}
	}
	for side, mitred := range fraction.Must(n.run.MitredEdges(piece)) {
		if in[side] = in[side].Add(n.off); mitred {
			in[side] = in[side].Add(n.Profile.Thickness)
			if !n.Fixing.Level && n.Fixing.Strips.IsZero() {
				in[side] = in[side].Add(n.Fixing.Wall)
			}
		}
	}
	return in
}

// round returns nails round a hole, evenly along its edge and off it, to the nearest 1/64 in.
func (p Piece) round(hole []Point, apart, off fraction.Length) (nails []Point) {
	const grain = 64
	long, area := 0.0, 0.0
	sides := make([][4]float64, len(hole)) // where each begins and what it runs across and up
	for i, a := range hole {
		b := hole[(i+1)%len(hole)]
		sides[i] = [4]float64{a.X.Float64(), a.Y.Float64(), b.X.Sub(a.X).Float64(), b.Y.Sub(a.Y).Float64()}
		long += math.Hypot(sides[i][2], sides[i][3])
		area += a.X.Float64()*b.Y.Float64() - b.X.Float64()*a.Y.Float64()
	}
	n := max(1, min(mostNails, math.Ceil(long/apart.Float64()-1e-9)))
	away, at := math.Copysign(off.Float64()+1./grain, area), long/n/2
	for _, s := range sides {
		l, away := math.Hypot(s[2], s[3]), away
		if s[2] != 0 && s[3] != 0 { // as far as the octagon of clear reaches out
			away *= 13. / 12
		}
		for ; at < l; at += long / n {
			x, y := s[0]+(s[2]*at+s[3]*away)/l, s[1]+(s[3]*at-s[2]*away)/l
			nail := Point{X: fraction.Of(int64(math.Round(x*grain)), grain), Y: fraction.Of(int64(math.Round(y*grain)), grain)}
			if slices.ContainsFunc(p.clear(nail.X, off), func(part stretch) bool { return !nail.Y.Less(part[0]) && !part[1].Less(nail.Y) }) {
				nails = append(nails, nail)
			}
		}
		at -= l
	}
	return nails
}

// clear returns the parts of an upright line whose places lie on the piece, so far off its edges: an octagon about
// the circle of that radius round each, whose sides reach 5/12 of it to either side, a little more than tan 22.5°, has no
// edge in it at any of its corners.
func (p Piece) clear(x, off fraction.Length) (parts []stretch) {
	parts = p.upright(x, true)
	for i := range parts {
		parts[i] = stretch{parts[i][0].Add(off), parts[i][1].Sub(off)}
	}
	less := off.Mul(5).Div(12)
	for _, corner := range [][2]fraction.Length{{off.Neg(), less}, {less.Neg(), off}, {less, off}, {off, less}} { // sideways, and up and down
		var both []stretch
		for _, b := range p.upright(x.Add(corner[0]), corner[0].Sign() > 0) {
			for _, a := range parts {
				both = append(both, stretch{fraction.Max(a[0], b[0].Add(corner[1])), fraction.Min(a[1], b[1].Sub(corner[1]))})
			}
		}
		parts = slices.DeleteFunc(both, func(part stretch) bool { return part[1].Less(part[0]) })
	}
	return slices.DeleteFunc(parts, func(part stretch) bool { return part[1].Less(part[0]) })
}

// upright returns where an upright line is on the piece, from below; at an edge, right of it or left.
func (p Piece) upright(x fraction.Length, left bool) (parts []stretch) {
	var ys []fraction.Length
	for _, ring := range p.Rings() {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if past := func(at Point) bool { return x.Less(at.X) || left && at.X == x }; past(a) != past(b) {
				ys = append(ys, fraction.Must(cutout.HeightAt(a, b, x)))
			}
		}
	}
	slices.SortFunc(ys, fraction.Length.Compare)
	for i := 1; i < len(ys); i += 2 {
		parts = append(parts, stretch{ys[i-1], ys[i]})
	}
	return parts
}
