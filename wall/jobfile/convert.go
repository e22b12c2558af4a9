package jobfile

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// defaults returns the file of a job in these units that says nothing: what absent fields mean.
func defaults(units fraction.Unit) file {
	return fileOf(plan.NewJob(units, groove.Profile{Name: "own profile"}))
}

// job returns the job of a file. The places that were taped are not in it yet.
func (c *converter) job(f *file) plan.Job {
	j := plan.Job{Title: f.Title, Units: f.Units, Bit: f.Saw.Bit, Sawing: plan.Sawing{Kind: f.Saw.Kind, Face: f.Saw.Face}, Built: f.Built, Finish: f.Finish}
	c.stands(fault.Of("tape"), "Mark")
	c.stands(fault.Of("saw", "bit"), "Bit")
	c.stands(fault.Of("saw"), "Sawing")
	j.Mark, j.Scribe, j.Closed, j.Trim, j.Priorities = f.Tape, f.Scribe, f.Closed, f.Trim, f.Priorities
	if j.Snap = plan.DefaultSnap(j.Mark); f.Snap != nil {
		j.Snap = *f.Snap
	}
	j.Profile = f.Profile.Own
	if f.Profile.Form == 1 {
		ready, ok := groove.Find(f.Profile.Ready)
		known := readyNames()
		for _, p := range c.profiles {
			if known = append(known, p.Name); p.Name == f.Profile.Ready {
				ready, ok = p, true
			}
		}
		if now, renamed := groove.Renamed(f.Profile.Ready); renamed && !ok {
			c.fault(fault.Of("profile"), &cause{ErrValue, "is now " + strconv.Quote(now), nil}, "that profile, with stock as wide as it shows")
		} else if j.Profile = ready; !ok {
			c.fault(fault.Of("profile"), &cause{ErrValue, ErrValue.Error() + fault.DidYouMean(f.Profile.Ready, known...), nil}, "one of "+strings.Join(known, ", "))
		}
	}
	j.Stock, j.Gaps, j.Saw = append(j.Stock, f.Stock...), f.Gaps, nest.Saw{Kerf: f.Saw.Kerf, SquareUp: f.Saw.SquareUp, LeastRip: f.Saw.LeastRip}
	for i, p := range f.Plates {
		if _, twice := j.Plates[p.Gangs]; twice {
			c.fault(fault.Of("plates", i, "gangs"), &cause{ErrValue, "it stands above already", nil}, "each number of gangs once")
		}
		if j.Plates == nil {
			j.Plates = map[int]wall.Plate{}
		}
		j.Plates[p.Gangs] = wall.Plate{Width: p.Width, Height: p.Height}
		c.stands(fault.Of("plates", i), "Plates", p.Gangs)
	}
	for i := range f.Runs {
		j.Runs = append(j.Runs, c.run(&j, i, &f.Runs[i]))
	}
	for _, p := range f.Installed {
		n := p.Run.Index
		if p.Run.Form == 1 {
			n = slices.IndexFunc(j.Runs, func(r wall.Run) bool { return r.Name == p.Run.Name })
		}
		j.Installed = append(j.Installed, wall.Installed{Run: n, Left: p.Left, Right: p.Right, LeftPhase: p.LeftPhase})
	}
	return j
}

// run returns a run; what the job has beside its runs is put there.
func (c *converter) run(j *plan.Job, r int, f *run) wall.Run {
	run := wall.Run{Name: f.Name, Width: f.Width, Left: f.Left, Right: f.Right, Trim: f.Trim, Keep: f.Keep}
	run.Focal, run.Breaks = append(run.Focal, f.Focal...), append(run.Breaks, f.Breaks...)
	for i, h := range f.Heights {
		path := fault.Of("runs", r, "heights", i)
		height := wall.Height{Bottom: h.Bottom}
		if h.Taped != nil {
			c.refuse(path, "either at and top, or taped", map[string]bool{"at": h.At != nil, "top": h.Top != nil})
			c.taped(j, under(path, "taped"), plan.TapedPoint{Run: r, Opening: -1, Index: i}, *h.Taped, nil)
		} else {
			c.need(path, "at", h.At, &height.At)
			c.need(path, "top", h.Top, &height.Top)
		}
		run.Heights = append(run.Heights, height)
	}
	for i := range f.Openings {
		run.Openings = append(run.Openings, c.opening(j, r, i, &f.Openings[i]))
	}
	for i, s := range f.Cooking {
		c.stands(fault.Of("runs", r, "cooking", i), "Cooking", len(j.Cooking))
		j.Cooking = append(j.Cooking, plan.Cooking{Run: r, From: s.From, To: s.To, Manual: s.Manual})
	}
	return run
}

// need sets into from a length that must be there.
func (c *converter) need(path fault.Path, name string, l *fraction.Length, into *fraction.Length) {
	if l == nil {
		c.fault(under(path, name), ErrMissing, length.want)
		return
	}
	*into = *l
}

// refuse records the fields that are there beside one that says the same in another way.
func (c *converter) refuse(path fault.Path, want string, there map[string]bool) {
	for name, is := range there {
		if is {
			c.fault(under(path, name), &cause{ErrValue, "it is given in another way already", nil}, want)
		}
	}
}

// opening returns an opening. Its outline is a rectangle, the corners as they stand in the file, or
// left to [plan.Job.Locate] where the corners were taped.
func (c *converter) opening(j *plan.Job, r, i int, f *opening) wall.Opening {
	path := fault.Of("runs", r, "openings", i)
	o := wall.Opening{Name: f.Name, Kind: f.Kind, Gangs: f.Gangs}
	if f.Points != nil {
		c.refuse(path, "either points, or left and bottom with a size or an outline", map[string]bool{
			"left": f.Left != nil, "bottom": f.Bottom != nil, "width": f.Width != nil, "height": f.Height != nil, "outline": f.Outline != nil})
		for k, corner := range f.Points.Corners {
			c.stands(under(path, "points", "corners", k), "Runs", r, "Openings", i, "Outline", k)
			c.taped(j, under(path, "points", "corners", k), plan.TapedPoint{Run: r, Opening: i, Index: k}, corner, f.Points)
		}
		c.stands(under(path, "points"), "Runs", r, "Openings", i, "Outline")
		return o
	}
	var left, bottom, width, height fraction.Length
	c.need(path, "left", f.Left, &left)
	c.need(path, "bottom", f.Bottom, &bottom)
	if f.Outline != nil {
		c.refuse(path, "either an outline, or width and height", map[string]bool{"width": f.Width != nil, "height": f.Height != nil})
		o.Outline = each(f.Outline, func(p pair) cutout.Point { return cutout.Point{X: left.Add(p[0]), Y: bottom.Add(p[1])} })
		c.stands(under(path, "outline"), "Runs", r, "Openings", i, "Outline")
		return o
	}
	c.need(path, "width", f.Width, &width)
	c.need(path, "height", f.Height, &height)
	for _, side := range []struct {
		name string
		long fraction.Length
	}{{"width", width}, {"height", height}} {
		if side.long.Sign() <= 0 {
			c.fault(under(path, side.name), ErrRoom, "a "+side.name+" above 0")
		}
	}
	o.Outline = cutout.Rectangle(left, bottom, width, height)
	c.stands(under(path, "width"), "Runs", r, "Openings", i, "Outline")
	for k, names := range [4][2]string{{"left", "bottom"}, {"width", "bottom"}, {"width", "height"}, {"left", "height"}} {
		c.stands(under(path, names[0]), "Runs", r, "Openings", i, "Outline", k, "X")
		c.stands(under(path, names[1]), "Runs", r, "Openings", i, "Outline", k, "Y")
	}
	return o
}

// arches puts arched heads on the openings that have a rise.
func (c *converter) arches(j *plan.Job, f *file) {
	for r, run := range f.Runs {
		for i, o := range run.Openings {
			if o.Rise == nil {
				continue
			}
			c.stands(fault.Of("runs", r, "openings", i, "rise"), "Runs", r, "Openings", i, "Arch")
			into := &j.Runs[r].Openings[i]
			outline, arch, err := wall.Arched(into.Outline, *o.Rise, j.Mark)
			if err != nil {
				c.refused(fault.Under(err, "Runs", r, "Openings", i))
				continue
			}
			into.Outline, into.Arch = outline, arch
		}
	}
}

// taped adds a taped place to the job. What it does not say itself is that of all corners, but a
// side belongs to its bases.
func (c *converter) taped(j *plan.Job, path fault.Path, t plan.TapedPoint, f corner, common *points) {
	bases, side := f.Bases, f.Side
	if common != nil && bases == nil {
		if bases = common.Bases; side == nil {
			side = common.Side
		}
	}
	switch n := len(j.Taped); {
	case bases == nil:
		c.fault(under(path, "bases"), ErrMissing, "two or more known points [x, y] on the run")
	case side == nil:
		c.fault(under(path, "side"), ErrMissing, "left or right of the line from the first base to the second")
	case len(f.Distances) != len(bases):
		c.fault(under(path, "distances"), &cause{ErrValue, fmt.Sprintf("%d distances from %d bases", len(f.Distances), len(bases)), nil}, "one distance for each base")
	default:
		c.stands(path, "Taped", n)
		c.stands(under(path, "bases"), "Taped", n, "From")
		t.Side = *side
		for i, d := range f.Distances {
			t.From = append(t.From, cutout.Taped{From: cutout.Point{X: bases[i][0], Y: bases[i][1]}, Distance: d})
			c.stands(under(path, "distances", i), "Taped", n, "From", i)
		}
		j.Taped = append(j.Taped, t)
	}
}
