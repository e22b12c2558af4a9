package jobfile

import (
	"strconv"
	"strings"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/warning"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// names returns a reader of names that may not be empty or stand twice.
func (r *reader) names(what string) func(*node) string {
	first := make(map[string]string) // the path at which a name stood first
	return func(n *node) string {
		name := r.text(n)
		if n.kind != stringNode {
			return name
		}
		if strings.TrimSpace(name) == "" {
			r.fault(n, ErrValue, "an empty name", "a name")
		} else if path, twice := first[name]; twice {
			r.fault(n, ErrValue, "this name stands at "+path+" already", "a name of its own for each "+what)
		} else {
			first[name] = n.path
		}
		return name
	}
}

// runs reads all runs into the job.
func (r *reader) runs(n *node, j *plan.Job) {
	items := r.list(n, "a list of runs")
	if n.kind == listNode && len(n.items) == 0 {
		r.fault(n, ErrValue, "no run at all", "at least one run")
	}
	names := r.names("run")
	for _, n := range items {
		j.Room.Runs = append(j.Room.Runs, r.run(n, names, j))
	}
}

// run reads one run. What lies along it is checked against its width at once.
func (r *reader) run(n *node, names func(*node) string, j *plan.Job) wall.Run {
	o := r.object(n, "a run")
	var run wall.Run
	if name := o.need("name", "a name for the run"); name != nil {
		run.Name = names(name)
	}
	needed(o, "width", wantLength, &run.Width, r.positive)
	needed(o, "left", "the kind of its left end", &run.Left, r.end)
	needed(o, "right", "the kind of its right end", &run.Right, r.end)
	if heights := o.need("heights", "the heights at two or more places"); heights != nil {
		run.Heights = r.heights(heights, run, j)
	}
	if openings := o.get("openings"); openings != nil {
		run.Openings = r.openings(openings, run, j)
	}
	if focal := o.get("focal"); focal != nil {
		run.Focal = r.focal(focal, run)
	}
	if breaks := o.get("breaks"); breaks != nil {
		run.Breaks = r.breaks(breaks, run)
	}
	if cooking := o.get("cooking"); cooking != nil {
		for _, n := range r.list(cooking, "a list of stretches beside a cooking appliance") {
			o := r.object(n, "a stretch beside a cooking appliance")
			from, to := r.stretch(o, run)
			o.done()
			j.Cooking = append(j.Cooking, plan.Cooking{Run: len(j.Room.Runs), From: from, To: to})
		}
	}
	o.done()
	return run
}

// end reads one end of a run.
func (r *reader) end(n *node) wall.End {
	o := r.object(n, "an end of a run")
	var e wall.End
	const kinds = "one of exposed, inside corner, outside corner, covered"
	needed(o, "kind", kinds, &e.Kind, func(n *node) wall.EndKind { return word(r, n, kinds, named[wall.EndKind]) })
	read(o, "lean", &e.Lean, r.length)
	if n := o.get("prominence"); n != nil {
		p := r.weight(n)
		e.Prominence = &p
	}
	o.done()
	return e
}

// heights reads the stations of a run, from its left end to its right end.
func (r *reader) heights(n *node, run wall.Run, j *plan.Job) []wall.Height {
	var all []wall.Height
	items := r.list(n, "a list of heights")
	sound := true
	for i, n := range items {
		before := len(r.faults)
		h := r.height(n, j)
		if sound = sound && len(r.faults) == before; !sound {
			all = append(all, h)
			continue
		}
		place := n.member("at")
		if place == nil {
			place = n
		}
		switch {
		case i == 0 && !h.At.IsZero():
			r.room(place, `"0"`, "the first height does not stand at the run's left end")
		case i > 0 && h.At.Less(all[i-1].At):
			r.room(place, "heights in order from left to right", "left of the height before it, which is at %s", all[i-1].At)
		case i > 1 && h.At == all[i-2].At:
			r.room(place, "at most two heights at one place, which make a step", "a third height at the same place")
		case run.Width.IsZero(): // missing or at fault itself
		case run.Width.Less(h.At):
			r.room(place, "a place within the run, or another width of it", "past the run's right end at %s", run.Width)
		case i == len(items)-1 && h.At != run.Width:
			r.room(place, strconv.Quote(fraction.Tape{Unit: r.units}.Format(run.Width))+", the width of the run", "the last height does not stand at the run's right end")
		case i == 1 && h.At.IsZero(), i == len(items)-1 && i > 0 && h.At == all[i-1].At:
			r.room(place, "one height at each end of the run", "a step at the very end of the run")
		}
		if !h.Bottom.Less(h.Top) {
			top := n.member("top")
			if top == nil {
				top = n
			}
			r.room(top, "a top above the bottom", "not above the bottom, which is at %s", h.Bottom)
		}
		all = append(all, h)
	}
	if n.kind == listNode && len(n.items) < 2 {
		r.fault(n, ErrValue, "fewer than two heights", "a height at each end of the run at least")
	}
	return all
}

// height reads one station.
func (r *reader) height(n *node, j *plan.Job) wall.Height {
	o := r.object(n, "a height")
	var h wall.Height
	if taped := o.get("taped"); taped != nil {
		p := r.taped(taped, j)
		h.At, h.Top = p.X, p.Y
		for _, key := range []string{"at", "top"} {
			if n := o.get(key); n != nil {
				r.fault(n, ErrValue, "the taped point says this already", "either at and top, or taped")
			}
		}
	} else {
		needed(o, "at", wantLength, &h.At, r.length)
		needed(o, "top", wantLength, &h.Top, r.length)
	}
	read(o, "bottom", &h.Bottom, r.length)
	o.done()
	return h
}

// stretch reads a stretch of a run, from left to right and within it.
func (r *reader) stretch(o *object, run wall.Run) (from, to fraction.Length) {
	before := len(r.faults)
	needed(o, "from", wantLength, &from, r.nonNegative)
	needed(o, "to", wantLength, &to, r.nonNegative)
	if len(r.faults) > before || o.node.kind != objectNode || run.Width.Sign() <= 0 {
		return from, to
	}
	if !from.Less(to) {
		r.room(o.node.member("to"), "a place to the right of from", "not to the right of from, which is %s", from)
	}
	if run.Width.Less(to) {
		r.room(o.node.member("to"), "a place within the run", "past the run's right end at %s", run.Width)
	}
	return from, to
}

// focal reads the zones in which a seam is seen more or less.
func (r *reader) focal(n *node, run wall.Run) []wall.Focal {
	var all []wall.Focal
	for _, n := range r.list(n, "a list of focal zones") {
		before := len(r.faults)
		o := r.object(n, "a focal zone")
		var f wall.Focal
		f.From, f.To = r.stretch(o, run)
		needed(o, "prominence", "a plain number, above 1 where a seam is seen more", &f.Prominence, r.weight)
		o.done()
		if len(r.faults) == before {
			for i, other := range all {
				if f.From.Less(other.To) && other.From.Less(f.To) {
					r.room(n, "focal zones that do not overlap", "overlaps the zone %d from %s to %s", i, other.From, other.To)
				}
			}
		}
		all = append(all, f)
	}
	return all
}

// breaks reads the places at which the pattern may start afresh.
func (r *reader) breaks(n *node, run wall.Run) []wall.Break {
	var all []wall.Break
	for _, n := range r.list(n, "a list of breaks") {
		before := len(r.faults)
		o := r.object(n, "a break")
		var b wall.Break
		needed(o, "at", wantLength, &b.At, r.length)
		needed(o, "prominence", "a plain number: what a pattern out of step there costs, as a weight", &b.Prominence, r.weight)
		o.done()
		if len(r.faults) == before && run.Width.Sign() > 0 {
			at := n.member("at")
			if b.At.Sign() <= 0 || !b.At.Less(run.Width) {
				r.room(at, "a place between the ends of the run", "not inside the run, which is %s wide", run.Width)
			}
			for _, other := range all {
				if other.At == b.At {
					r.room(at, "one break at each place", "a second break at the same place")
				}
			}
		}
		all = append(all, b)
	}
	return all
}

// corners checks that two runs which meet at a corner agree on what it is. A
// corner that only one of them names may be right, since the wall beside it may
// stay bare; it is doubted.
func (r *reader) corners(runs []*node, j *plan.Job) {
	last := len(j.Room.Runs) - 1
	for i, run := range j.Room.Runs {
		next := (i + 1) % len(runs)
		left := j.Room.Runs[next].Left
		meet := i < last || j.Room.Closed
		here, there := kind(runs[i].member("right")), kind(runs[next].member("left"))
		switch {
		case i == last && j.Room.Closed && !corner(run.Right):
			r.room(here, "an inside or outside corner with the first run", "the room is closed, but its last run does not meet the first")
		case !meet || run.Right.Kind == left.Kind:
		case i == last, corner(run.Right) && corner(left):
			r.room(there, strconv.Quote(run.Right.Kind.String())+", or another right end of "+runs[i].path,
				"the run before it, %q, ends there with kind %q", run.Name, run.Right.Kind)
		case corner(run.Right):
			doubt(j, here, warning.Warning{Kind: LonelyAtRight, Names: []string{j.Room.Runs[next].Name}})
		case corner(left):
			doubt(j, there, warning.Warning{Kind: LonelyAtLeft, Names: []string{run.Name}})
		}
	}
}

// corner reports whether an end meets another run.
func corner(e wall.End) bool { return e.Kind == wall.InsideCorner || e.Kind == wall.OutsideCorner }

// kind returns the node of an end's kind.
func kind(end *node) *node {
	if n := end.member("kind"); n != nil {
		return n
	}
	return end
}
