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
	TopOff        warning.Kind = "top off"        // Lengths: how far off the line of the stations beside it
	BottomOff     warning.Kind = "bottom off"     // Lengths: how far off the line of the stations beside it
	CornerHeights warning.Kind = "corner heights" // Names: the run before; Lengths: the change round the corner, the most not doubted
	// Names: the longest run; Lengths: its width, that of all others together.
	WallsTooShort warning.Kind = "walls too short"
	// Names: the first run; Lengths: by how much the walls miss along it and across it, the most not
	// doubted.
	WallsApart warning.Kind = "walls apart"
	// Counts: how many inside corners a closed room has more than outside ones, which is 4 where all are square,
	// and -4 round a pier that stands in the room.
	TurnsOff warning.Kind = "turns off"
	// Openings and gaps leave nothing of a run to panel.
	RunBare warning.Kind = "run bare"

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
// heights that jump without a step, off the line of those beside them or round an inside corner, boxes
// of one kind that differ in size, ends out of plumb, stations too far apart, narrow strips between an
// opening and an edge, each by the room's priorities, walls that do not close, and runs that stay bare.
// A slope is no mistake. It fails as [Room.Validate] does.
func (room *Room) Survey() (doubts []warning.Warning, err error) {
	defer fraction.Catch(&err)
	if err := room.Validate(); err != nil {
		return nil, err
	}
	s := surveyor{Room: room}
	for r, run := range room.Runs {
		if room.staysBare(r) {
			s.doubt(RunBare, fault.Of("Runs", r), nil)
		}
		s.heights(r)
		s.end(r, "Left", run.Left.Lean)
		s.end(r, "Right", run.Right.Lean)
		s.strips(r)
		s.corner(r)
	}
	s.boxes()
	s.closes()
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

// stepSlope is the rise over the run beyond which a slope is taken for a step that was taped at two
// places: steeper than stairs and most roofs. Judgment.
const stepSlope = 2

func (s *surveyor) heights(r int) {
	heights := s.Runs[r].Heights
	most := s.Priorities.HeightJump
	for i, b := range heights {
		path := func(field string) fault.Path { return fault.Of("Runs", r, "Heights", i, field) }
		if i == 0 || heights[i-1].At == b.At {
			continue
		}
		a := heights[i-1]
		d := b.At.Sub(a.At)
		if apart := s.Priorities.StationDistance; apart.Less(d) {
			s.doubt(StationsApart, path("At"), nil, d, apart)
		}
		for _, line := range []struct {
			field     string
			jump, off warning.Kind
			height    func(st Height) fraction.Length
		}{
			{"Top", TopJump, TopOff, func(st Height) fraction.Length { return st.Top }},
			{"Bottom", BottomJump, BottomOff, func(st Height) fraction.Length { return st.Bottom }},
		} {
			change := line.height(b).Sub(line.height(a)).Abs()
			if most.Less(change) && d.Mul(stepSlope).Less(change) {
				s.doubt(line.jump, path(line.field), nil, change)
			} else if off := offLine(heights, i, most, line.height); most.Less(off) {
				s.doubt(line.off, path(line.field), nil, off)
			}
		}
	}
}

// offLine returns how far station i lies off the line through those beside it, where one more station
// on either side lies on that line within most and no step is between; else 0. Of three stations alone
// nothing tells a mistake from the ridge of a roof.
func offLine(heights []Height, i int, most fraction.Length, height func(st Height) fraction.Length) fraction.Length {
	if i+1 >= len(heights) || heights[i].At == heights[i+1].At {
		return fraction.Length{}
	}
	point := func(k int) cutout.Point { return cutout.Point{X: heights[k].At, Y: height(heights[k])} }
	off := func(k int) fraction.Length {
		return heightOn(point(i-1), point(i+1), heights[k].At).Sub(height(heights[k])).Abs()
	}
	for _, pair := range [2][2]int{{i - 2, i - 1}, {i + 1, i + 2}} {
		if pair[0] < 0 || pair[1] >= len(heights) || heights[pair[0]].At == heights[pair[1]].At {
			continue
		}
		if !most.Less(off(pair[0])) && !most.Less(off(pair[1])) { // one of the two is on the line anyway
			return off(i)
		}
	}
	return fraction.Length{}
}

// corner compares the heights on both sides of the inside corner at the right end of a run.
func (s *surveyor) corner(r int) {
	next := (r + 1) % len(s.Runs)
	if s.Runs[r].Right.Kind != InsideCorner || s.Runs[next].Left.Kind != InsideCorner || next == 0 && !s.Closed {
		return
	}
	before, after := s.Runs[r].Heights[len(s.Runs[r].Heights)-1], s.Runs[next].Heights[0]
	doubt := func(field string, change fraction.Length) {
		if most := s.Priorities.HeightJump; most.Less(change) {
			s.doubt(CornerHeights, fault.Of("Runs", next, "Heights", 0, field), []string{s.Runs[r].Name}, change, most)
		}
	}
	doubt("Top", after.Top.Sub(before.Top).Abs())
	doubt("Bottom", after.Bottom.Sub(before.Bottom).Abs())
}

// closesWithin is the share of all walls together by which square walls may miss each other before
// they are doubted. Judgment.
func closesWithin() fraction.Ratio { return fraction.Of(1, 100).Over(fraction.Inches(1)) }

// closes asks whether the walls of a closed room can meet: no wall is longer than all others, the corners
// can all be square, as they are taken, and so the walls lead back to where they begin.
func (s *surveyor) closes() {
	if !s.Closed {
		return
	}
	var all, along, across fraction.Length
	longest, turns := 0, 0
	for r, run := range s.Runs {
		if !run.Right.Kind.IsCorner() {
			return // part of the room is not taped
		}
		all = all.Add(run.Width)
		if s.Runs[longest].Width.Less(run.Width) {
			longest = r
		}
		switch turns & 3 {
		case 0:
			along = along.Add(run.Width)
		case 1:
			across = across.Add(run.Width)
		case 2:
			along = along.Sub(run.Width)
		case 3:
			across = across.Sub(run.Width)
		}
		if turns--; run.Right.Kind == InsideCorner {
			turns += 2
		}
	}
	most := all.Scale(closesWithin())
	switch longer := s.Runs[longest].Width; {
	case all.Sub(longer).Less(longer):
		s.doubt(WallsTooShort, fault.Of("Closed"), []string{s.Runs[longest].Name}, longer, all.Sub(longer))
	case turns != 4 && turns != -4:
		s.doubts = append(s.doubts, warning.Warning{Path: fault.Of("Closed"), Kind: TurnsOff, Counts: []int{turns}})
	case most.Less(fraction.Max(along.Abs(), across.Abs())):
		s.doubt(WallsApart, fault.Of("Closed"), []string{s.Runs[0].Name}, along.Abs(), across.Abs(), most)
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
		tops, bottoms := run.spaceOver(lo.X, hi.X)
		top, bottom := tops[0], bottoms[1]
		if !hi.Y.Add(gap).Less(top.Sub(s.Gaps.Top)) {
			top = tops[1] // a wedge over a part of it
		}
		if !bottom.Add(s.Gaps.Bottom).Less(lo.Y.Sub(gap)) {
			bottom = bottoms[0]
		}
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

// spaceOver returns the lowest and the highest top and bottom between left and right, as taped.
func (run *Run) spaceOver(left, right fraction.Length) (top, bottom [2]fraction.Length) {
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
	ends := func(all []fraction.Length) [2]fraction.Length {
		return [2]fraction.Length{fraction.Min(all[0], all...), fraction.Max(all[0], all...)}
	}
	return ends(tops), ends(bottoms)
}
