package jobfile

import (
	"errors"
	"fmt"
	"slices"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/warning"
	"example.com/groovewright/wall/plan"
)

// ClosesWithin is how far three or more taped distances may fail to meet in one
// point before they are doubted.
var ClosesWithin = fraction.Of(1, 8)

// archMarks is how many marks of the tape the corners of an arch may lie outside
// the true arc; [cutout.Arc] needs two at least.
const archMarks = 2

// points reads the corners of an opening that was taped from two or more base
// points: their places on the run, and for each corner the distances from them.
// A corner may have bases and a side of its own.
func (r *reader) points(n *node, j *plan.Job) []cutout.Point {
	o := r.object(n, "taped points")
	var corners []cutout.Point
	common := r.stand(o)
	if list := o.need("corners", "a list of corners, each with its distances from the bases"); list != nil {
		for _, n := range r.list(list, "a list of corners") {
			c := r.object(n, "a taped corner")
			corners = append(corners, r.located(c, common, j))
			c.done()
		}
	}
	o.done()
	return corners
}

// taped reads a single point with bases of its own.
func (r *reader) taped(n *node, j *plan.Job) cutout.Point {
	o := r.object(n, "a taped point")
	p := r.located(o, stand{}, j)
	o.done()
	return p
}

// stand is what a corner is taped from.
type stand struct {
	told  bool // there are bases in the file
	bases []cutout.Point
	side  *node // on which of their sides the corner lies, nil where it is not told
}

const (
	wantBases = "two or more known points [x, y] on the run"
	wantSide  = "left or right of the line from the first base to the second"
)

// stand reads the known points and the side.
func (r *reader) stand(o *object) stand {
	s := stand{side: o.get("side")}
	n := o.get("bases")
	if n == nil {
		return s
	}
	s.told = true
	for _, item := range r.list(n, wantBases) {
		s.bases = append(s.bases, r.pair(item))
	}
	if n.kind == listNode && (len(n.items) < 2 || len(n.items) > maxBases) {
		r.fault(n, ErrValue, fmt.Sprintf("%d base points", len(n.items)), fmt.Sprintf("2 to %d of them", maxBases))
	}
	return s
}

// maxBases is the most points that one corner is taped from.
const maxBases = 8

// located finds one corner from its distances. What it does not tell itself is
// that of all corners, but a side belongs to its bases.
func (r *reader) located(o *object, common stand, j *plan.Job) cutout.Point {
	before := len(r.faults)
	const want = "one distance for each base"
	own := r.stand(o)
	distances := o.need("distances", want)
	switch {
	case own.told:
	case common.told && own.side == nil:
		own = common
	case common.told:
		own.bases = common.bases
	default:
		o.missing("bases", wantBases)
		return cutout.Point{}
	}
	bases := own.bases
	if own.side == nil {
		o.missing("side", wantSide)
		return cutout.Point{}
	}
	where := word(r, own.side, wantSide, parseSide)
	if distances == nil {
		return cutout.Point{}
	}
	var taped []cutout.Taped
	for i, n := range r.list(distances, want) {
		if distance := r.nonNegative(n); i < len(bases) {
			taped = append(taped, cutout.Taped{From: bases[i], Distance: distance})
		}
	}
	if distances.kind == listNode && len(distances.items) != len(bases) {
		r.fault(distances, ErrValue, fmt.Sprintf("%d distances from %d bases", len(distances.items), len(bases)), want)
	}
	if len(r.faults) > before || len(bases) < 2 {
		return cutout.Point{}
	}
	found, err := cutout.Locate(taped, where, j.Room.Mark)
	if err != nil {
		r.unlocated(distances, err)
		return cutout.Point{}
	}
	i, off := found.Worst()
	j.Taped = append(j.Taped, plan.TapedPoint{Path: o.node.path, Run: len(j.Room.Runs), At: found.At, Exact: found.Exact, Within: found.Within, Closing: off})
	if len(bases) > 2 && ClosesWithin.Less(off) {
		doubt(j, distances, warning.Warning{Kind: PointsApart, Lengths: []fraction.Length{off}, Counts: []int{i + 1}})
	}
	return found.At
}

// unlocated records distances that no point can have.
func (r *reader) unlocated(n *node, err error) {
	problem := err.Error()
	var taped *cutout.TapedError
	if errors.As(err, &taped) {
		problem = taped.Cause.Error()
		if n.items[taped.Pair[0]].kind == stringNode {
			n = n.items[taped.Pair[0]]
		}
	}
	r.faults = append(r.faults, Fault{
		Path: n.path, Value: n.quoted(), Problem: problem, Want: "distances that meet in a point", Kind: ErrRoom, Err: err, offset: n.offset,
	})
}

func parseSide(s string) (cutout.Side, bool) {
	switch s {
	case "left":
		return cutout.Left, true
	case "right":
		return cutout.Right, true
	}
	return cutout.Left, false
}

// arched sets an arched head with the rise on the two highest corners of an
// outline, which are neighbours. Where they were not taped at one height the
// higher counts for both. The corners of the head stand on the tape's marks, on or
// outside the true arc, so that what stands in the opening has room.
func (r *reader) arched(n *node, corners []cutout.Point, rise fraction.Length, j *plan.Job) []cutout.Point {
	at := 0 // the head runs from corner at to the next
	lower := func(i int) fraction.Length { return fraction.Min(corners[i].Y, corners[(i+1)%len(corners)].Y) }
	for i := range corners {
		if lower(at).Less(lower(i)) {
			at = i
		}
	}
	p, q := corners[at], corners[(at+1)%len(corners)]
	if off := p.Y.Sub(q.Y).Abs(); ClosesWithin.Less(off) {
		doubt(j, n, warning.Warning{Kind: ArchUneven, Lengths: []fraction.Length{off}})
	}
	mark, springs := j.Room.Mark, fraction.Max(p.Y, q.Y)
	left, chord := cutout.Point{X: fraction.Min(p.X, q.X), Y: springs}, p.X.Sub(q.X).Abs()
	head, err := cutout.Arc(left, chord, rise, mark.Mul(archMarks), mark, cutout.Outside)
	if err != nil {
		r.faults = append(r.faults, Fault{
			Path: n.path, Value: n.quoted(), Problem: err.Error(), Want: "a rise of at most half the width", Kind: ErrRoom, Err: err, offset: n.offset,
		})
		return corners
	}
	if radius, err := cutout.Radius(chord, rise); err == nil {
		centre := cutout.Point{X: left.X.Add(chord.Div(2)), Y: springs.Add(rise).Sub(radius)}
		j.Arches = append(j.Arches, plan.Arch{Run: len(j.Room.Runs), Centre: centre, Springs: springs, Radius: radius})
	}
	if q.X.Less(p.X) {
		slices.Reverse(head)
	}
	if at == len(corners)-1 {
		return slices.Concat(head, corners[1:at])
	}
	return slices.Concat(corners[:at], head, corners[at+2:])
}
