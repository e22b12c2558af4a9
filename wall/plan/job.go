package plan

import (
	"cmp"
	"fmt"

	"example.com/groovewright/cutout"
	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall"
)

// Job is everything that a plan is made from: what was taped, what is bought, and what is best.
// Begin with [NewJob], which fills in the defaults, and set Runs and Stock. [Job.Validate] says
// what is wrong with a job, [Job.Doubts] what looks like a mistake.
//
// The fields of the room are fields of the job: j.Runs, j.Stock, j.Saw, j.Gaps, j.Mark.
type Job struct {
	Title string        // what the plan is called; may be empty
	Units fraction.Unit // what people read, and the unit of bare numbers in Finish
	wall.Room

	Sawing  Sawing             // of sheets
	Bit     fraction.Length    // diameter of the starter holes for the jigsaw, above 0
	Plates  map[int]wall.Plate // cover plates by gangs, where they are not [wall.StandardPlate]
	Built   int                // the year of the house, from 1000 to 9999; 0 where it is not known
	Cooking []Cooking          // by run; behind or beside cooking appliances
	Taped   []TapedPoint       // places found from taped distances, by run and opening
	Finish  finish.Materials   // the zero value has the defaults of [finish.Defaults]
}

// NewJob returns a job in these units with every default filled in: the tape, the bit and the
// priorities are those of the units, the kerf is 1/8 in for all. Runs and Stock are still to be set.
func NewJob(units fraction.Unit, profile groove.Profile) Job {
	j := Job{Units: units, Bit: fraction.Of(3, 8)} // common practice, no source: lets the blade of a jigsaw in and turn
	j.Profile, j.Mark, j.Priorities = profile, fraction.Of(1, 16), wall.DefaultPriorities(units)
	j.Saw.Kerf = fraction.Of(1, 8)     // a common circular saw blade; common practice, no source
	j.Saw.LeastRip = fraction.Of(1, 8) // the width of that blade: less is no full cut; common practice, no source
	j.Scribe = fraction.Of(1, 4)       // what a plane or a saw follows a wall with; common practice, no source
	if units != fraction.Inch {
		j.Scribe = fraction.Millimetres(6, 1)
		j.Saw.LeastRip = fraction.Millimetres(3, 1)
		j.Mark, j.Bit = fraction.Millimetres(1, 1), fraction.Millimetres(10, 1)
	}
	j.Snap = DefaultSnap(j.Mark)
	return j
}

// DefaultSnap returns how far from a mark of this tape a computed place may lie to go to it: a
// quarter of the mark, which no saw keeps; judgment.
func DefaultSnap(mark fraction.Length) (snap fraction.Length) {
	var fine error
	defer fraction.Catch(&fine)
	return mark.Div(4)
}

// Tape writes lengths as the people of the job read them.
func (j *Job) Tape() fraction.Tape { return fraction.Tape{Mark: j.Mark, Unit: j.Units} }

// Cooking is a stretch of a run behind or beside a cooking appliance.
type Cooking struct {
	Run      int             // index of the run
	From, To fraction.Length // x on the run
	Manual   string          // what the appliance's manual asks at the panels; empty: not looked up
}

// TapedPoint is a place that was found from its distances to known points: a corner of an opening,
// or the top of a height. The list of them is in order: by run, heights before openings, each in
// the order of the room; of an opening all corners are there or none. [Job.Locate] puts the places
// into the room.
type TapedPoint struct {
	Run     int            // index of the run
	Opening int            // index of the opening that it is a corner of; -1 for a height
	Index   int            // of the corner or the height, from 0
	From    []cutout.Taped // distances from 2 to [MaxBases] points of the run
	Side    cutout.Side    // of the line from the first of these points to the second
}

// MaxBases is the most points that one place is taped from.
const MaxBases = 8

// Path returns where the place stands, as a job file spells it.
func (t TapedPoint) Path() fault.Path {
	if t.Opening < 0 {
		return fault.Of("Runs", t.Run, "Heights", t.Index, "Taped")
	}
	return fault.Of("Runs", t.Run, "Openings", t.Opening, "Points", "Corners", t.Index)
}

// Locate puts the places that were taped into the room: the corners of openings, which have no
// arched head then, and where heights stand and how high they are. It fails where distances do not
// make a point.
func (j *Job) Locate() error {
	places, err := j.places()
	if err != nil {
		return err
	}
	for at, p := range places.heights {
		h := &j.Runs[at.run].Heights[at.index]
		h.At, h.Top = p.X, p.Y
	}
	for at, outline := range places.corners {
		o := &j.Runs[at.run].Openings[at.index]
		o.Outline, o.Arch = outline, nil
	}
	return nil
}

// Located returns the taped places of a valid job as a plan lists them.
func (j Job) Located() ([]Taped, error) {
	places, err := j.places()
	if err != nil {
		return nil, err
	}
	var all []Taped
	for i, t := range j.Taped {
		found, run := places.all[i], &j.Runs[t.Run]
		_, off := found.Worst()
		all = append(all, Taped{Path: t.Path(), Run: run.Name, Number: t.Index + 1, At: found.At,
			Exact: found.Exact, Within: found.Within, Closing: off})
		if t.Opening >= 0 {
			all[i].Opening = run.Openings[t.Opening].Name
		}
	}
	return all, nil
}

// spot is a height or an opening of a run.
type spot struct{ run, index int }

// places are what the taped distances give.
type places struct {
	all     []cutout.Located
	heights map[spot]cutout.Point   // by height
	corners map[spot][]cutout.Point // by opening
}

// places finds the taped places.
func (j *Job) places() (p places, err error) {
	defer fraction.Catch(&err)
	p.heights, p.corners = map[spot]cutout.Point{}, map[spot][]cutout.Point{}
	var f faults
	for i, t := range j.Taped {
		if len(t.From) > MaxBases {
			f.Add(len(t.From), fmt.Sprintf("2 to %d distances", MaxBases), "Taped", i, "From")
			continue
		}
		found, err := cutout.Locate(t.From, t.Side, j.Mark)
		f.Join(err, "Taped", i, "From")
		p.all = append(p.all, found)
		height, corner := spot{t.Run, t.Index}, spot{t.Run, t.Opening}
		there := t.Run >= 0 && t.Run < len(j.Runs) && t.Index >= 0
		if i > 0 {
			before := j.Taped[i-1]
			there = there && cmp.Or(cmp.Compare(before.Run, t.Run), cmp.Compare(before.Opening, t.Opening), cmp.Compare(before.Index, t.Index)) < 0
		}
		switch {
		case there && t.Opening == -1 && t.Index < len(j.Runs[t.Run].Heights):
			p.heights[height] = found.At
		case there && t.Opening >= 0 && t.Opening < len(j.Runs[t.Run].Openings) && t.Index == len(p.corners[corner]):
			p.corners[corner] = append(p.corners[corner], found.At)
		default:
			f.Add(t.Path(), "a height, or the next corner of an opening, in order", "Taped", i)
		}
	}
	return p, f.Err()
}
