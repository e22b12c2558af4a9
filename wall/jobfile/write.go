package jobfile

import (
	"io"
	"reflect"
	"slices"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// Write writes a job as a job file, from which [Read] gives a job that equals j but for empty lists
// and maps, which become nil. Lengths are bare numbers in the job's units; defaults are left out.
//
// It fails, and writes nothing, for a job that is not valid, for one with a value that a file
// cannot have (a length finer or longer than [fraction.Parse] reads, a weight that no decimal
// gives), and for a file of more than [MaxBytes].
func Write(w io.Writer, j plan.Job) (err error) {
	defer fraction.Catch(&err)
	if err := j.Validate(); err != nil {
		return err
	}
	file, otherwise := fileOf(j), defaults(j.Units)
	otherwise.Units = fraction.Inch
	e := encoder{units: j.Units}
	text := e.value(reflect.ValueOf(file), reflect.ValueOf(otherwise), nil).layout("", maxLine)
	if len(text) >= MaxBytes {
		e.faults.Join(&fault.Fault{Cause: ErrValue, Want: "a job that fits into a file"})
	}
	if err := e.faults.Err(); err != nil {
		return err
	}
	_, err = io.WriteString(w, text+"\n")
	return err
}

// fileOf returns the file of a job: what [converter.job] turns back.
func fileOf(j plan.Job) file {
	f := file{Title: j.Title, Units: j.Units, Tape: j.Mark, Scribe: j.Scribe, Closed: j.Closed, Profile: profileOf(j.Profile), Gaps: j.Gaps,
		Stock: j.Stock, Saw: saw{Kerf: j.Saw.Kerf, SquareUp: j.Saw.SquareUp, Bit: j.Bit, Kind: j.Sawing.Kind, Face: j.Sawing.Face, LeastRip: j.Saw.LeastRip},
		Installed: each(j.Installed, func(p wall.Installed) installed {
			return installed{whichRun{1, j.Runs[p.Run].Name, 0}, p.Left, p.Right, p.LeftPhase}
		}),
		Priorities: j.Priorities, Built: j.Built, Trim: j.Trim, Finish: j.Finish,
	}
	if j.Snap != plan.DefaultSnap(j.Mark) {
		f.Snap = &j.Snap
	}
	for gangs := range wall.MaxGangs + 1 {
		if p, ok := j.Plates[gangs]; ok {
			f.Plates = append(f.Plates, plate{gangs, p.Width, p.Height})
		}
	}
	for _, r := range j.Runs {
		f.Runs = append(f.Runs, run{Name: r.Name, Width: r.Width, Left: r.Left, Right: r.Right, Focal: r.Focal, Breaks: r.Breaks, Keep: r.Keep, Trim: r.Trim,
			Heights:  each(r.Heights, func(h wall.Height) height { return height{At: &h.At, Bottom: h.Bottom, Top: &h.Top} }),
			Openings: each(r.Openings, openingOf),
		})
	}
	for _, c := range j.Cooking {
		f.Runs[c.Run].Cooking = append(f.Runs[c.Run].Cooking, stretch{c.From, c.To, c.Manual})
	}
	for _, t := range j.Taped {
		c := corner{Bases: each(t.From, func(d cutout.Taped) pair { return pair{d.From.X, d.From.Y} }), Side: &t.Side,
			Distances: each(t.From, func(d cutout.Taped) fraction.Length { return d.Distance })}
		if t.Opening < 0 {
			h := &f.Runs[t.Run].Heights[t.Index]
			h.At, h.Top, h.Taped = nil, nil, &c
			continue
		}
		o := &f.Runs[t.Run].Openings[t.Opening]
		if t.Index == 0 {
			*o = opening{Name: o.Name, Kind: o.Kind, Gangs: o.Gangs, Rise: o.Rise, Points: &points{Bases: c.Bases, Side: c.Side}}
		}
		if *o.Points.Side == *c.Side && slices.Equal(o.Points.Bases, c.Bases) {
			c.Bases, c.Side = nil, nil
		}
		o.Points.Corners = append(o.Points.Corners, c)
	}
	return f
}

// profileOf returns a profile by its name where it is a builtin one.
func profileOf(p groove.Profile) profile {
	if ready, ok := groove.Find(p.Name); ok && reflect.DeepEqual(ready, p) {
		return profile{Form: 1, Ready: p.Name}
	}
	return profile{Form: 2, Own: p}
}

// openingOf returns an opening as a rectangle, where it is one below an arched head, or an outline.
func openingOf(o wall.Opening) opening {
	f := opening{Name: o.Name, Kind: o.Kind, Gangs: o.Gangs}
	if o.Arch != nil {
		f.Rise = &o.Arch.Rise
	}
	o.Outline = o.Corners()
	lo, hi := o.Bounds()
	width, height := hi.X.Sub(lo.X), hi.Y.Sub(lo.Y)
	if f.Left, f.Bottom = &lo.X, &lo.Y; slices.Equal(o.Outline, cutout.Rectangle(lo.X, lo.Y, width, height)) {
		f.Width, f.Height = &width, &height
	} else {
		f.Outline = each(o.Outline, func(p cutout.Point) pair { return pair{p.X.Sub(lo.X), p.Y.Sub(lo.Y)} })
	}
	return f
}
