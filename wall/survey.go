package wall

import (
	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/warning"
)

// What the survey doubts. The path leads to the measurement.
const (
	StationsApart warning.Kind = "stations apart" // Lengths: the distance, the most not doubted
	TopJump       warning.Kind = "top jump"       // Lengths: the change since the station before
	BottomJump    warning.Kind = "bottom jump"    // Lengths: the change since the station before

	// Lengths: the lean without its sign, the most not doubted.
	OutOfPlumb warning.Kind = "out of plumb"
	// Names: the box, one before it; Lengths: width and height of each, the most not doubted.
	BoxesDiffer warning.Kind = "boxes differ"

	// Too little panelling is left beside an opening. Names: the opening; Lengths: the strip, the
	// least that is not doubted.
	StripLeft    warning.Kind = "narrow strip left"
	StripRight   warning.Kind = "narrow strip right"
	StripAbove   warning.Kind = "narrow strip above"
	StripBelow   warning.Kind = "narrow strip below"
	StripBetween warning.Kind = "narrow strip between" // Names: the opening, the one before
)

// Survey returns the measurements of the room that should be taken again before anything is cut:
// heights that jump without a step, boxes of one kind that differ in size, ends out of plumb,
// stations too far apart, narrow strips between an opening and an edge, each by the room's
// priorities. It fails as [Room.Validate] does.
func (room *Room) Survey() (doubts []warning.Warning, err error) {
	defer fraction.Catch(&err)
	if err := room.Validate(); err != nil {
		return nil, err
	}
	s := surveyor{Room: room}
	for r, run := range room.Runs {
		s.heights(r)
		s.end(r, "Left", run.Left.Lean)
		s.end(r, "Right", run.Right.Lean)
		s.strips(r)
	}
	s.boxes()
	return s.doubts, nil
}

// surveyor questions the measurements of a room.
type surveyor struct {
	*Room
	doubts []warning.Warning
}

func (s *surveyor) doubt(kind warning.Kind, path fault.Path, names []string, lengths ...fraction.Length) {
	s.doubts = append(s.doubts, warning.Warning{Path: path, Kind: kind, Names: names, Lengths: lengths})
}

func (s *surveyor) heights(r int) {
	heights := s.Runs[r].Heights
	for i := 1; i < len(heights); i++ {
		a, b := heights[i-1], heights[i]
		if a.At == b.At {
			continue
		}
		if d, most := b.At.Sub(a.At), s.Priorities.StationDistance; most.Less(d) {
			s.doubt(StationsApart, fault.Of("Runs", r, "Heights", i, "At"), nil, d, most)
		}
		if d := b.Top.Sub(a.Top).Abs(); s.Priorities.HeightJump.Less(d) {
			s.doubt(TopJump, fault.Of("Runs", r, "Heights", i, "Top"), nil, d)
		}
		if d := b.Bottom.Sub(a.Bottom).Abs(); s.Priorities.HeightJump.Less(d) {
			s.doubt(BottomJump, fault.Of("Runs", r, "Heights", i, "Bottom"), nil, d)
		}
	}
}

func (s *surveyor) end(r int, side string, lean fraction.Length) {
	if most := s.Priorities.OutOfPlumb; most.Less(lean.Abs()) {
		s.doubt(OutOfPlumb, fault.Of("Runs", r, side, "Lean"), nil, lean.Abs(), most)
	}
}

// boxes compares boxes of as many gangs; those without gangs are compared if they differ in width
// by less than half of the smaller one.
func (s *surveyor) boxes() {
	type box struct {
		path          fault.Path
		opening       *Opening
		width, height fraction.Length
	}
	var boxes []box
	for r := range s.Runs {
		for i := range s.Runs[r].Openings {
			if o := &s.Runs[r].Openings[i]; o.Kind == Box {
				lo, hi := o.Bounds()
				boxes = append(boxes, box{fault.Of("Runs", r, "Openings", i), o, hi.X.Sub(lo.X), hi.Y.Sub(lo.Y)})
			}
		}
	}
	alike := func(a, b box) bool {
		if a.opening.Gangs != 0 && b.opening.Gangs != 0 {
			return a.opening.Gangs == b.opening.Gangs
		}
		return a.width.Sub(b.width).Abs().Mul(2).Less(fraction.Min(a.width, b.width))
	}
	most := s.Priorities.BoxDifference
	for i, b := range boxes {
		for _, a := range boxes[:i] {
			if alike(a, b) && most.Less(fraction.Max(b.width.Sub(a.width).Abs(), b.height.Sub(a.height).Abs())) {
				s.doubt(BoxesDiffer, b.path, []string{b.opening.Name, a.opening.Name}, b.width, b.height, a.width, a.height, most)
				break
			}
		}
	}
}

// strips looks for narrow strips between an opening and the edges of the wall, after gaps, and
// between an opening and those before it.
func (s *surveyor) strips(r int) {
	run := &s.Runs[r]
	for i, o := range run.Openings {
		lo, hi := o.Bounds()
		gap := s.Gaps.Around(o.Kind)
		measure := func(kind warning.Kind, strip fraction.Length, names ...string) {
			if strip.Sign() > 0 && strip.Less(s.Priorities.LeastStrip) {
				s.doubt(kind, fault.Of("Runs", r, "Openings", i), append([]string{o.Name}, names...), strip, s.Priorities.LeastStrip)
			}
		}
		top, bottom := run.spaceOver(lo.X, hi.X)
		measure(StripLeft, lo.X.Sub(gap).Sub(s.Gaps.Side))
		measure(StripRight, run.Width.Sub(s.Gaps.Side).Sub(hi.X.Add(gap)))
		measure(StripAbove, top.Sub(s.Gaps.Top).Sub(hi.Y.Add(gap)))
		measure(StripBelow, lo.Y.Sub(gap).Sub(bottom.Add(s.Gaps.Bottom)))
		for _, other := range run.Openings[:i] {
			lo2, hi2 := other.Bounds()
			if lo.Y.Less(hi2.Y) && lo2.Y.Less(hi.Y) {
				between := fraction.Max(lo.X.Sub(hi2.X), lo2.X.Sub(hi.X))
				measure(StripBetween, between.Sub(gap).Sub(s.Gaps.Around(other.Kind)), other.Name)
			}
		}
	}
}

// spaceOver returns the lowest top and the highest bottom between left and right, as taped.
func (run *Run) spaceOver(left, right fraction.Length) (top, bottom fraction.Length) {
	var tops, bottoms []fraction.Length
	for i := 0; i+1 < len(run.Heights); i++ {
		a, b := run.Heights[i], run.Heights[i+1]
		from, to := fraction.Max(a.At, left), fraction.Min(b.At, right)
		for _, x := range [2]fraction.Length{from, to} {
			if from.Less(to) {
				tops = append(tops, heightOn(cutout.Point{X: a.At, Y: a.Top}, cutout.Point{X: b.At, Y: b.Top}, x))
				bottoms = append(bottoms, heightOn(cutout.Point{X: a.At, Y: a.Bottom}, cutout.Point{X: b.At, Y: b.Bottom}, x))
			}
		}
	}
	if len(tops) == 0 {
		return top, bottom
	}
	return fraction.Min(tops[0], tops...), fraction.Max(bottoms[0], bottoms...)
}
