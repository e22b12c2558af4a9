package plan

import (
	"fmt"
	"slices"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/wall"
)

// Doubts returns everything in a job that is sound and yet looks like a mistake:
// what its reader noted, what the survey questions, boxes that stick out of their
// wall, and cover plates that hide too little.
func Doubts(j Job) (doubts []wall.Doubt, err error) {
	defer fraction.Catch(&err)
	survey, err := j.Room.Survey(fraction.Tape{Mark: j.Room.Mark, Unit: j.Units})
	if err != nil {
		return nil, err
	}
	boxes, err := boxDoubts(&j)
	if err != nil {
		return nil, err
	}
	covers, err := coverDoubts(&j)
	return slices.Concat(j.Doubts, survey, boxes, covers), err
}

// boxDoubts questions the boxes that reach past the top or the bottom of their
// wall: a window may do so, a box is fixed in the wall that is to be panelled.
func boxDoubts(j *Job) ([]wall.Doubt, error) {
	var out []wall.Doubt
	for r, run := range j.Room.Runs {
		ring := make([]cutout.Point, 0, 2*len(run.Heights))
		for _, p := range wallOutline(&run) {
			ring = append(ring, cutout.Point{X: p[0], Y: p[1]})
		}
		shape, err := cutout.NewShape(ring)
		if err != nil {
			return nil, err
		}
		for i, o := range run.Openings {
			if o.Kind != wall.Box {
				continue
			}
			whole, err := cutout.NewShape(o.Outline)
			if err != nil {
				return nil, err
			}
			var inside fraction.Area
			for _, part := range shape.Within(o.Outline, fraction.Length{}) {
				inside = inside.Add(part.Area())
			}
			if inside.Compare(whole.Area()) < 0 {
				out = append(out, wall.Doubt{Path: fmt.Sprintf("runs[%d].openings[%d]", r, i), Text: fmt.Sprintf(
					"the box %q sticks out of the wall of %s; look at its place and size and at the heights beside it", o.Name, run.Name)})
			}
		}
	}
	return out, nil
}

// coverDoubts questions the boxes whose cutouts their cover plates do not hide
// by enough on every side.
func coverDoubts(j *Job) ([]wall.Doubt, error) {
	var out []wall.Doubt
	tape := fraction.Tape{Mark: j.Room.Mark, Unit: j.Units}
	gap := j.Room.Gaps.Box
	least := j.Room.Priorities.LeastCover
	for r, run := range j.Room.Runs {
		for i, o := range run.Openings {
			if o.Kind != wall.Box {
				continue
			}
			lo, hi := o.Bounds()
			gangs := o.DeviceGangs()
			plate, ok := j.Plates[gangs]
			if !ok {
				var err error
				if plate, err = wall.StandardPlate(gangs); err != nil {
					continue
				}
			}
			side, above, err := plate.Overlap(hi.X.Sub(lo.X), hi.Y.Sub(lo.Y), gap)
			if err != nil {
				return nil, err
			}
			if side.Less(least) || above.Less(least) {
				out = append(out, wall.Doubt{Path: fmt.Sprintf("runs[%d].openings[%d]", r, i), Text: fmt.Sprintf(
					"over the cutout of %q the cover plate %s x %s for %s %s at the sides and %s above and below; want an overlap of %s at least: take a larger plate or a smaller box gap",
					o.Name, tape.Format(plate.Width), tape.Format(plate.Height), count(gangs, "gang"), overlap(tape, side), overlap(tape, above), tape.Format(least))})
			}
		}
	}
	return out, nil
}

// overlap says by how much a plate overlaps one side of a cutout, or what it
// leaves bare.
func overlap(tape fraction.Tape, by fraction.Length) string {
	if by.Sign() < 0 {
		return "leaves " + tape.Format(by.Neg()) + " bare"
	}
	return "overlaps by " + tape.Format(by)
}
