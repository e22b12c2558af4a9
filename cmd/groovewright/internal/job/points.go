package job

import (
	"errors"
	"fmt"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/wall"
)

// ClosesWithin is how far three or more taped distances may fail to meet in one
// point before they are doubted.
var ClosesWithin = fraction.Of(1, 8)

// archMarks is how many marks of the tape the corners of an arch may lie outside
// the true arc; [cutout.Arc] needs two at least.
const archMarks = 2

// Taped is a point that the file gives by its distances from known points.
type Taped struct {
	Path    string // of the point in the file
	Run     int    // index of the run
	At      cutout.Point
	Exact   bool            // the distances meet there exactly
	Within  fraction.Length // else At lies no further than this from where they meet
	Closing fraction.Length // the greatest that any of its distances is off, without sign
}

// Name says which point it is: "corner 4 of the box", counted from 1, or "height 2 of the wall". Where the path tells neither it is
// the path.
func (t Taped) Name(room *wall.Room) string {
	var run, opening, corner int
	if n, _ := fmt.Sscanf(t.Path, "runs[%d].openings[%d].points.corners[%d]", &run, &opening, &corner); n == 3 && run < len(room.Runs) && opening < len(room.Runs[run].Openings) {
		return fmt.Sprintf("corner %d of %s", corner+1, room.Runs[run].Openings[opening].Name)
	}
	if n, _ := fmt.Sscanf(t.Path, "runs[%d].heights[%d]", &run, &corner); n == 2 && run < len(room.Runs) {
		return fmt.Sprintf("height %d of %s", corner+1, room.Runs[run].Name)
	}
	return t.Path
}

// points reads the corners of an opening that was taped from two or more base
// points: their places on the run, and for each corner the distances from them.
func (r *reader) points(n *node, j *Job) []cutout.Point {
	o := r.object(n, "taped points")
	var corners []cutout.Point
	bases := r.bases(o)
	side := o.get("side")
	if list := o.need("corners", "a list of corners, each with its distances from the bases"); list != nil {
		for _, n := range r.list(list, "a list of corners") {
			c := r.object(n, "a taped corner")
			corners = append(corners, r.located(c, bases, side, j))
			c.done()
		}
	}
	o.done()
	return corners
}

// taped reads a single point with bases of its own.
func (r *reader) taped(n *node, j *Job) cutout.Point {
	o := r.object(n, "a taped point")
	p := r.located(o, r.bases(o), nil, j)
	o.done()
	return p
}

// bases reads the known points.
func (r *reader) bases(o *object) []cutout.Point {
	const want = "two or more known points [x, y] on the run"
	n := o.need("bases", want)
	if n == nil {
		return nil
	}
	var bases []cutout.Point
	for _, item := range r.list(n, want) {
		bases = append(bases, r.pair(item))
	}
	if n.kind == listNode && (len(n.items) < 2 || len(n.items) > maxBases) {
		r.fault(n, ErrValue, fmt.Sprintf("%d base points", len(n.items)), fmt.Sprintf("2 to %d of them", maxBases))
	}
	return bases
}

// maxBases is the most points that one corner is taped from.
const maxBases = 8

// located finds one corner from its distances. The side, unless the corner has
// its own, is that of all of them.
func (r *reader) located(o *object, bases []cutout.Point, common *node, j *Job) cutout.Point {
	before := len(r.faults)
	const want = "one distance for each base"
	distances := o.need("distances", want)
	side := o.get("side")
	if side == nil {
		side = common
	}
	const sides = "left or right of the line from the first base to the second"
	if side == nil {
		o.missing("side", sides)
		return cutout.Point{}
	}
	where := word(r, side, sides, parseSide)
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
	j.Taped = append(j.Taped, Taped{Path: o.node.path, Run: len(j.Room.Runs), At: found.At, Exact: found.Exact, Within: found.Within, Closing: off})
	if len(bases) > 2 && ClosesWithin.Less(off) {
		tape := fraction.Tape{Mark: j.Room.Mark, Unit: j.Units}
		j.doubt(distances, "the distances do not meet in one point: the one from base %d is off by %s; tape them again", i+1, tape.Format(off))
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

// Arch is the true arc of an arched head, for a trammel: the outline of its
// opening only comes near it.
type Arch struct {
	Run     int    // index of the run
	Opening string // its name
	Centre  cutout.Point
	Springs fraction.Length // the height at which the arc starts on both sides
	Radius  fraction.Length
}

// arched returns a rectangle with an arched head that rises above its height.
// The corners stand on the tape's marks, on or outside the true arc, so that
// what stands in the opening has room.
func (r *reader) arched(n *node, left, bottom, width, height, rise fraction.Length, j *Job) []cutout.Point {
	mark := j.Room.Mark
	outline, err := cutout.Arched(cutout.Point{X: left, Y: bottom}, width, height, rise, mark.Mul(archMarks), mark, cutout.Outside)
	if err != nil {
		r.faults = append(r.faults, Fault{
			Path: n.path, Value: n.quoted(), Problem: err.Error(), Want: "a rise of at most half the width", Kind: ErrRoom, Err: err, offset: n.offset,
		})
		return outline
	}
	if radius, err := cutout.Radius(width, rise); err == nil {
		springs := bottom.Add(height)
		centre := cutout.Point{X: left.Add(width.Div(2)), Y: springs.Add(rise).Sub(radius)}
		j.Arches = append(j.Arches, Arch{Run: len(j.Room.Runs), Centre: centre, Springs: springs, Radius: radius})
	}
	return outline
}
