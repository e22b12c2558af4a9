package jobfile

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/fraction/warning"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// Read reads a job file. It reports everything that is wrong with it at once,
// as [Faults] in the order of the file; only when the file is no JSON at all
// does it stop at the first.
//
// The cost is linear in the size of the file, which [MaxBytes] bounds, but for
// the pairs of openings and of focal zones of a run.
func Read(r io.Reader) (j plan.Job, err error) {
	defer fraction.Catch(&err)
	data, err := io.ReadAll(io.LimitReader(r, MaxBytes+1)) // one byte more than a file may have
	if err != nil {
		return plan.Job{}, fmt.Errorf("cannot read the job file: %w", err)
	}
	return readBytes(data)
}

func readBytes(data []byte) (plan.Job, error) {
	var j plan.Job
	// A byte order mark, which some editors write, is ignored as RFC 8259, section 8.1, allows.
	root, faults := parse(bytes.TrimPrefix(data, []byte("\ufeff")))
	if root == nil || len(faults) > 0 && root.kind != objectNode {
		return plan.Job{}, faults.err()
	}
	r := &reader{faults: faults}
	j = r.job(root)
	if len(r.faults) == 0 {
		r.judge(root, &j)
	}
	if err := r.faults.err(); err != nil {
		return plan.Job{}, err
	}
	return j, nil
}

// job reads the whole file.
func (r *reader) job(n *node) plan.Job {
	o := r.object(n, "a job")
	var j plan.Job
	read(o, "title", &j.Title, r.text)
	read(o, "units", &j.Units, r.unit)
	r.units = j.Units
	j.Room.Mark, j.Bit, j.Room.Priorities = plan.DefaultTape, plan.DefaultBit, plan.DefaultPriorities(j.Units)
	if j.Units != fraction.Inch {
		j.Room.Mark, j.Bit = plan.DefaultMetricTape, plan.DefaultMetricBit
	}
	read(o, "tape", &j.Room.Mark, r.positive)
	r.mark = j.Room.Mark
	read(o, "closed", &j.Room.Closed, r.yes)
	needed(o, "profile", "the name of a ready profile or an object that describes one", &j.Room.Profile, r.profile)
	needed(o, "stock", "a list of the sheets that can be bought", &j.Room.Stock, r.stock)
	j.Room.Saw.Kerf = plan.DefaultKerf
	read(o, "saw", &j.Room.Saw, func(n *node) nest.Saw { return r.saw(n, &j) })
	read(o, "plates", &j.Plates, r.plates)
	read(o, "gaps", &j.Room.Gaps, r.gaps)
	runs := o.need("runs", "a list of the runs, left to right")
	if runs != nil {
		r.runs(runs, &j)
	}
	if n := o.get("installed"); n != nil {
		j.Room.Installed = r.installed(n, j.Room, runs)
	}
	if n := o.get("priorities"); n != nil {
		r.priorities(n, &j.Room.Priorities)
	}
	read(o, "built", &j.Built, func(n *node) int { return r.integer(n, 1000, 9999) })
	read(o, "finish", &j.Finish, r.finish)
	o.done()
	return j
}

// unit reads the unit of bare numbers.
func (r *reader) unit(n *node) fraction.Unit {
	return word(r, n, "in, mm or cm", func(s string) (fraction.Unit, bool) {
		u, err := fraction.ParseUnit(s)
		return u, err == nil
	})
}

// profile reads the name of a ready profile or a profile of the job's own.
func (r *reader) profile(n *node) groove.Profile {
	if n.kind == stringNode {
		p, ok := groove.Find(n.text)
		if !ok {
			var names []string
			for _, ready := range groove.Ready() {
				names = append(names, ready.Name)
			}
			r.fault(n, ErrValue, "no ready profile has this name", "one of "+strings.Join(names, ", "))
		}
		return p
	}
	o := r.object(n, "a profile")
	var p groove.Profile
	p.Name = "own profile"
	before := len(r.faults)
	read(o, "name", &p.Name, r.text)
	if features := o.need("features", "a list of the flats, beads and grooves of one repeat"); features != nil {
		for _, n := range r.list(features, "a list of features") {
			p.Features = append(p.Features, r.feature(n))
		}
	}
	needed(o, "thickness", wantLength, &p.Thickness, r.positive)
	read(o, "wide_flats", &p.WideFlats, r.yes)
	read(o, "boards", &p.Boards, r.yes)
	o.done()
	if len(r.faults) == before {
		r.check(n, p.Validate())
	}
	return p
}

// feature reads one flat, bead or groove.
func (r *reader) feature(n *node) groove.Feature {
	o := r.object(n, "a flat, bead or groove")
	var f groove.Feature
	const kinds = "flat, bead or groove"
	needed(o, "kind", kinds, &f.Kind, func(n *node) groove.Kind {
		return word(r, n, kinds, named[groove.Kind])
	})
	needed(o, "width", wantLength, &f.Width, r.positive)
	read(o, "depth", &f.Depth, r.nonNegative)
	o.done()
	return f
}

// stock reads the sheets that can be bought or are on hand.
func (r *reader) stock(n *node) []nest.Stock {
	var all []nest.Stock
	names := r.names("stock")
	for _, n := range r.list(n, "a list of sheets") {
		o := r.object(n, "a sheet")
		var s nest.Stock
		if name := o.need("name", "a name for this kind of sheet"); name != nil {
			s.Name = names(name)
		}
		needed(o, "width", wantLength, &s.Width, r.positive)
		needed(o, "length", wantLength, &s.Length, r.positive)
		read(o, "left_phase", &s.LeftPhase, r.nonNegative)
		if count := o.get("count"); count != nil {
			s.Count = new(r.integer(count, 0, maxCount))
		}
		read(o, "squared", &s.Squared, r.yes)
		if price := o.get("price"); price != nil {
			s.Price = money.Of(r.decimal(price))
		}
		o.done()
		all = append(all, s)
	}
	if n.kind == listNode && len(n.items) == 0 {
		r.fault(n, ErrValue, "no sheet at all", "at least one kind of sheet")
	}
	return all
}

// maxCount is the most sheets of one kind on hand.
const maxCount = 100_000

// saw reads the blade and the trim of the factory ends.
func (r *reader) saw(n *node, j *plan.Job) nest.Saw {
	o := r.object(n, "a saw")
	s := nest.Saw{Kerf: plan.DefaultKerf}
	read(o, "kerf", &s.Kerf, r.nonNegative)
	read(o, "square_up", &s.SquareUp, r.nonNegative)
	read(o, "bit", &j.Bit, r.positive)
	o.done()
	return s
}

// plates reads the cover plates by the devices behind them.
func (r *reader) plates(n *node) map[int]wall.Plate {
	plates := map[int]wall.Plate{}
	for _, n := range r.list(n, "a list of cover plates") {
		o := r.object(n, "a cover plate")
		var p wall.Plate
		gangs := 0
		needed(o, "gangs", "the number of devices behind it", &gangs, func(n *node) int { return r.integer(n, 1, wall.MaxGangs) })
		needed(o, "width", wantLength, &p.Width, r.positive)
		needed(o, "height", wantLength, &p.Height, r.positive)
		o.done()
		plates[gangs] = p
	}
	return plates
}

// gaps reads the joints that are left open.
func (r *reader) gaps(n *node) wall.Gaps {
	o := r.object(n, "the gaps")
	var g wall.Gaps
	read(o, "top", &g.Top, r.nonNegative)
	read(o, "bottom", &g.Bottom, r.nonNegative)
	read(o, "side", &g.Side, r.nonNegative)
	read(o, "seam", &g.Seam, r.nonNegative)
	read(o, "box", &g.Box, r.nonNegative)
	read(o, "window", &g.Window, r.nonNegative)
	o.done()
	return g
}

// What a job file is doubted for.
const (
	NoPrice       warning.Kind = "no price"              // of a kind of stock
	PointsApart   warning.Kind = "distances do not meet" // Lengths: by how much one is off; Counts: number of its base from 1
	ArchUneven    warning.Kind = "arch uneven"           // Lengths: by how much its springings differ
	Overlap       warning.Kind = "openings overlap"      // Names: the other opening, the word of its kind
	LonelyAtRight warning.Kind = "corner of a right end" // Names: the next run, which does not begin there
	LonelyAtLeft  warning.Kind = "corner of a left end"  // Names: the run before, which does not end there
)

// doubt records that a field should be looked at again.
func doubt(j *plan.Job, n *node, w warning.Warning) {
	_ = w.Path.UnmarshalText([]byte(n.path)) // takes any text
	j.Doubts = append(j.Doubts, w)
}
