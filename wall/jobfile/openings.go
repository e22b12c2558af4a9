package jobfile

import (
	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/warning"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// openings reads the boxes, windows and other openings of a run.
func (r *reader) openings(n *node, run wall.Run, j *plan.Job) []wall.Opening {
	var all []wall.Opening
	names := r.names("opening of a run")
	for _, n := range r.list(n, "a list of openings") {
		before := len(r.faults)
		opening := r.opening(n, names, j)
		if len(r.faults) == before {
			r.inside(n, opening, all, run, j)
		}
		all = append(all, opening)
	}
	return all
}

// opening reads one opening. Its outline is a rectangle, the corners as they
// stand in the file, or points taped from two places.
func (r *reader) opening(n *node, names func(*node) string, j *plan.Job) wall.Opening {
	o := r.object(n, "an opening")
	var w wall.Opening
	if name := o.need("name", "a name for the opening"); name != nil {
		w.Name = names(name)
	}
	const kinds = "one of box, window, other"
	needed(o, "kind", kinds, &w.Kind, func(n *node) wall.OpeningKind { return word(r, n, kinds, named[wall.OpeningKind]) })
	if gangs := o.get("gangs"); gangs != nil {
		w.Gangs = r.integer(gangs, 1, wall.MaxGangs)
		if w.Kind != wall.Box {
			r.fault(gangs, ErrValue, "only a box has gangs", "no gangs here")
		}
	}
	before := len(r.faults)
	shape := n
	if points := o.get("points"); points != nil {
		shape = points
		r.instead(o, "either the points, or left and bottom with a size or an outline", "left", "bottom", "width", "height", "outline")
		w.Outline = r.points(points, j)
	} else {
		w.Outline = r.placed(o)
	}
	if len(r.faults) == before {
		r.polygon(first(shape, "outline"), w.Outline)
	}
	if rise := o.get("rise"); rise != nil {
		up := r.positive(rise)
		if o.get("outline") != nil {
			r.instead(o, "either an outline, or width and height", "rise")
		}
		if len(r.faults) == before {
			arches := len(j.Arches)
			w.Outline = r.arched(rise, w.Outline, up, j)
			if shape != n { // taped corners may leave no room for it
				r.polygon(rise, w.Outline)
			}
			for i := range j.Arches[arches:] {
				j.Arches[arches+i].Opening = w.Name
			}
		}
	}
	o.done()
	return w
}

// placed reads an outline that stands at left and bottom: either a rectangle
// of width and height, or corners from there.
func (r *reader) placed(o *object) []cutout.Point {
	before := len(r.faults)
	var left, bottom, width, height fraction.Length
	outline := o.get("outline")
	needed(o, "left", wantLength+", or points instead", &left, r.length)
	needed(o, "bottom", wantLength+", or points instead", &bottom, r.length)
	if outline != nil {
		r.instead(o, "either an outline, or width and height", "width", "height")
		var corners []cutout.Point
		for _, n := range r.list(outline, "a list of corners") {
			p := r.pair(n)
			corners = append(corners, cutout.Point{X: left.Add(p.X), Y: bottom.Add(p.Y)})
		}
		return corners
	}
	needed(o, "width", wantLength+", or an outline instead", &width, r.positive)
	needed(o, "height", wantLength+", or an outline instead", &height, r.positive)
	if len(r.faults) > before {
		return nil
	}
	return cutout.Rectangle(left, bottom, width, height)
}

// instead refuses fields beside the one that says the same in another way.
func (r *reader) instead(o *object, want string, keys ...string) {
	for _, key := range keys {
		if n := o.get(key); n != nil {
			r.fault(n, ErrValue, "the outline is told already", want)
		}
	}
}

// pair reads a corner [x, y].
func (r *reader) pair(n *node) cutout.Point {
	const want = `two lengths, such as ["1 1/2", "0"]`
	if !r.is(n, listNode, want) {
		return cutout.Point{}
	}
	if len(n.items) != 2 {
		r.fault(n, ErrValue, "not two lengths", want)
		return cutout.Point{}
	}
	return cutout.Point{X: r.length(n.items[0]), Y: r.length(n.items[1])}
}

// polygon refuses corners that bound no one area, such as an outline that
// crosses itself.
func (r *reader) polygon(n *node, corners []cutout.Point) {
	if _, err := cutout.NewShape(corners); err != nil {
		r.faults = append(r.faults, Fault{
			Path: n.path, Value: n.quoted(), Problem: reason(err), Want: "the corners of one outline, in order round it",
			Kind: ErrRoom, Err: err, offset: n.offset,
		})
	}
}

// inside checks that an opening lies on its run and that no box overlaps another
// opening. An opening may rise past the top and reach below the bottom: that is
// how a window or a door cuts through.
func (r *reader) inside(n *node, opening wall.Opening, before []wall.Opening, run wall.Run, j *plan.Job) {
	lo, hi := bounds(opening.Outline)
	left, width := first(n, "left", "points"), first(n, "width", "outline", "points")
	if lo.X.Sign() < 0 {
		r.room(left, "an opening inside the run", "reaches %s past the run's left end", lo.X.Neg())
	}
	if run.Width.Sign() > 0 && run.Width.Less(hi.X) {
		r.room(width, "an opening inside the run, or another width of the run", "reaches to %s, past the run's right end at %s", hi.X, run.Width)
	}
	if bottom, top, ok := span(run); ok && (!lo.Y.Less(top) || !bottom.Less(hi.Y)) {
		r.room(first(n, "bottom", "points"), "an opening that the wall has a part of",
			"wholly above or below the wall, which reaches from %s to %s", bottom, top)
	}
	for _, other := range before {
		switch {
		case !overlap(opening.Outline, other.Outline):
		case opening.Kind == wall.Box || other.Kind == wall.Box:
			r.room(left, "a box clear of other openings", "overlaps the %s %q", other.Kind, other.Name)
		default:
			doubt(j, left, warning.Warning{Kind: Overlap, Names: []string{other.Name, other.Kind.String()}})
		}
	}
}

// overlap reports whether two outlines have more than edges in common.
func overlap(a, b []cutout.Point) bool {
	alo, ahi := bounds(a)
	blo, bhi := bounds(b)
	if !alo.X.Less(bhi.X) || !blo.X.Less(ahi.X) || !alo.Y.Less(bhi.Y) || !blo.Y.Less(ahi.Y) {
		return false // the usual case, at little cost
	}
	shape, err := cutout.NewShape(a)
	return err == nil && len(shape.Within(b, fraction.Length{})) > 0
}

// bounds returns the lower left and upper right of a box round points.
func bounds(points []cutout.Point) (lo, hi cutout.Point) {
	for i, p := range points {
		if i == 0 {
			lo, hi = p, p
			continue
		}
		lo = cutout.Point{X: fraction.Min(lo.X, p.X), Y: fraction.Min(lo.Y, p.Y)}
		hi = cutout.Point{X: fraction.Max(hi.X, p.X), Y: fraction.Max(hi.Y, p.Y)}
	}
	return lo, hi
}

// span returns the lowest bottom and the highest top of a run.
func span(run wall.Run) (bottom, top fraction.Length, ok bool) {
	for i, h := range run.Heights {
		if i == 0 {
			bottom, top = h.Bottom, h.Top
		}
		bottom, top = fraction.Min(bottom, h.Bottom), fraction.Max(top, h.Top)
	}
	return bottom, top, bottom.Less(top)
}

// first returns the first of the named fields that is there, n if none is.
func first(n *node, keys ...string) *node {
	for _, key := range keys {
		if m := n.member(key); m != nil {
			return m
		}
	}
	return n
}
