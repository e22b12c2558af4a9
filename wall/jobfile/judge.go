package jobfile

import (
	"slices"
	"strconv"
	"strings"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/warning"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// judge checks what only shows when the whole job has been read without a
// fault: corners, phases within the pattern, a saw that fits the sheets.
func (r *reader) judge(root *node, j *plan.Job) {
	pitch := j.Room.Profile.Pitch()
	for i, s := range j.Room.Stock {
		n := root.member("stock").items[i]
		r.phase(n.member("left_phase"), s.LeftPhase, pitch)
		if trims := j.Room.Saw.SquareUp.Mul(2); !s.Squared && !trims.Less(s.Length) {
			r.room(n.member("length"), "a sheet longer than both trims", "nothing is left after %s comes off both ends", j.Room.Saw.SquareUp)
		}
	}
	priced := slices.ContainsFunc(j.Room.Stock, func(s nest.Stock) bool { return s.Count == nil && s.Price.Known() })
	for i, s := range j.Room.Stock {
		if priced && s.Count == nil && !s.Price.Known() {
			doubt(j, root.member("stock").items[i], warning.Warning{Kind: NoPrice})
		}
	}
	for i, p := range j.Room.Installed {
		r.phase(root.member("installed").items[i].member("left_phase"), p.LeftPhase, pitch)
	}
	r.corners(root.member("runs").items, j)
	r.materials(root.member("finish"), j.Finish.Validate(j.Units))
	if len(r.faults) == 0 {
		r.check(root, j.Room.Validate())
	}
}

// phase refuses a phase that is not within one repeat of the pattern.
func (r *reader) phase(n *node, phase, pitch fraction.Length) {
	if n != nil && !phase.Less(pitch) {
		r.room(n, `a phase from "0" up to the repeat`, "not below one repeat of the pattern, which is %s", pitch)
	}
}

// materials records what the package finish refuses.
func (r *reader) materials(n *node, err error) {
	for _, refused := range fault.All(err) {
		text, _ := refused.Path.MarshalText() // it writes any path
		path := below(n.path, string(text))
		place := n.find(path)
		f := Fault{Path: path, Value: refused.Value, Problem: "not accepted", Want: refused.Want, Kind: ErrRoom, Err: refused, offset: place.offset}
		if f.Value == "" && place.path == path && place.scalar() {
			f.Value = place.quoted()
		}
		r.faults = append(r.faults, f)
	}
}

// check records what another package refuses, at the path below n that its
// error begins with.
func (r *reader) check(n *node, err error) {
	if err == nil {
		return
	}
	for line := range strings.Lines(err.Error()) { // one fault a line
		path, problem, found := strings.Cut(strings.TrimSuffix(line, "\n"), ": ")
		if !found {
			path, problem = "", line
		}
		path = below(n.path, path)
		place := n.find(path)
		f := Fault{Path: path, Problem: problem, Kind: ErrRoom, Err: err, offset: place.offset}
		if value, want, found := strings.Cut(problem, "want "); found && (value == "" || strings.HasSuffix(value, `": `)) {
			f.Value, f.Problem, f.Want = strings.TrimSuffix(value, ": "), "not accepted", want
			if value == "" && place.path == path && place.scalar() {
				f.Value = place.quoted()
			}
		}
		r.faults = append(r.faults, f)
	}
}

// below joins a path to the path of the value that it lies in.
func below(path, rest string) string {
	switch {
	case path == "":
		return rest
	case rest == "":
		return path
	}
	return path + "." + rest
}

// installed reads the panels that are on the wall already. A run is told by
// its name or by its index, from 0, as in the paths of faults.
func (r *reader) installed(n *node, room wall.Room, runs *node) []wall.Installed {
	var all []wall.Installed
	for _, n := range r.list(n, "a list of panels on the wall") {
		before := len(r.faults)
		o := r.object(n, "a panel on the wall")
		var p wall.Installed
		needed(o, "run", "the name of a run", &p.Run, func(n *node) int { return r.whichRun(n, room) })
		needed(o, "left", wantLength, &p.Left, r.length)
		needed(o, "right", wantLength, &p.Right, r.length)
		needed(o, "left_phase", wantLength, &p.LeftPhase, r.nonNegative)
		o.done()
		if len(r.faults) == before {
			r.onWall(n, p, all, room)
		}
		all = append(all, p)
	}
	return all
}

// whichRun reads the name or the index of a run.
func (r *reader) whichRun(n *node, room wall.Room) int {
	if n.kind == numberNode {
		return r.integer(n, 0, max(0, len(room.Runs)-1))
	}
	names := make([]string, len(room.Runs))
	for i, run := range room.Runs {
		names[i] = strconv.Quote(run.Name)
	}
	want := "the name of a run: " + shorten(strings.Join(names, ", "))
	return word(r, n, want, func(s string) (int, bool) {
		i := slices.Index(names, strconv.Quote(s))
		return max(i, 0), i >= 0
	})
}

// onWall checks where an installed panel is.
func (r *reader) onWall(n *node, p wall.Installed, before []wall.Installed, room wall.Room) {
	if !p.Left.Less(p.Right) {
		r.room(n.member("right"), "a right edge to the right of the left one", "not to the right of left, which is %s", p.Left)
	}
	if p.Run < len(room.Runs) {
		run := room.Runs[p.Run]
		// An end that leans away from the run reaches past its foot.
		begin := fraction.Min(run.Left.Lean, fraction.Length{})
		end := run.Width.Add(fraction.Max(run.Right.Lean, fraction.Length{}))
		if run.Left.Kind == wall.OutsideCorner { // mitred, one thickness past the wall
			begin = begin.Sub(room.Profile.Thickness)
		}
		if run.Right.Kind == wall.OutsideCorner {
			end = end.Add(room.Profile.Thickness)
		}
		if p.Left.Less(begin) {
			r.room(n.member("left"), "a panel on the run", "before the start of the run at %s", begin)
		}
		if end.Less(p.Right) {
			r.room(n.member("right"), "a panel on the run", "past the end of the run at %s", end)
		}
	}
	for i, other := range before {
		if p.Run == other.Run && p.Left.Less(other.Right) && other.Left.Less(p.Right) {
			r.room(n.member("left"), "panels beside each other", "overlaps installed[%d]", i)
		}
	}
}

// priorities sets the weights and least sizes that the file names.
func (r *reader) priorities(n *node, into *wall.Priorities) {
	o := r.object(n, "the priorities")
	for _, p := range wall.PriorityList() {
		if p.Weight != nil {
			read(o, p.Name, p.Weight(into), r.weight)
		} else {
			read(o, p.Name, p.Size(into), r.nonNegative)
		}
	}
	o.done()
}
