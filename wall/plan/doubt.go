package plan

import (
	"slices"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/warning"
	"example.com/groovewright/wall"
)

// What a job or a plan is doubted for, beside what [wall.Room.Survey] doubts.
const (
	BoxSticksOut  warning.Kind = "box sticks out"  // Names: box, run
	CoverTooSmall warning.Kind = "cover too small" // Names: box; Lengths: the plate's width and height, its overlap at the sides, above and below, the least that is wanted; Counts: gangs
	NarrowPanel   warning.Kind = "narrow panel"    // Lengths: its width; Counts: its number
	RulesBroken   warning.Kind = "rules broken"    // Counts: hard rules
	WeakSpot      warning.Kind = "weak spot"       // Names: the piece's label, kind, way out; Lengths: width, then place on the piece, across and up
	Sentence      warning.Kind = "sentence"        // Names: what it says
)

// Doubts returns everything in a job that is sound and yet looks like a mistake: what its reader
// noted, what the survey questions, boxes that stick out of their wall, and cover plates that hide
// too little.
func Doubts(j Job) (doubts []warning.Warning, err error) {
	defer fraction.Catch(&err)
	survey, err := j.Room.Survey()
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
func boxDoubts(j *Job) ([]warning.Warning, error) {
	var out []warning.Warning
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
				out = append(out, warning.Warning{Path: fault.Of("Runs", r, "Openings", i), Kind: BoxSticksOut, Names: []string{o.Name, run.Name}})
			}
		}
	}
	return out, nil
}

// coverDoubts questions the boxes whose cutouts their cover plates do not hide
// by enough on every side.
func coverDoubts(j *Job) ([]warning.Warning, error) {
	var out []warning.Warning
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
				out = append(out, warning.Warning{Path: fault.Of("Runs", r, "Openings", i), Kind: CoverTooSmall, Names: []string{o.Name},
					Lengths: []fraction.Length{plate.Width, plate.Height, side, above, least}, Counts: []int{gangs}})
			}
		}
	}
	return out, nil
}
