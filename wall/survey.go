package wall

import (
	"fmt"

	"example.com/groovewright/fraction"
)

// Doubt is a measurement that should be taken again before anything is cut.
type Doubt struct {
	Path string // of the field, such as runs[1].heights[2].top
	Text string
}

// Survey returns the measurements of a valid room that look doubtful: heights
// that jump without a step, boxes of one kind that differ in size, ends out of
// plumb, stations too far apart, narrow strips between an opening and an edge.
// The sizes that count are in the room's priorities; lengths in the texts are
// written as tape does. None is an error.
func (room *Room) Survey(tape fraction.Tape) (doubts []Doubt, err error) {
	defer fraction.Catch(&err)
	s := surveyor{room, tape}
	for r := range room.Runs {
		doubts = append(doubts, s.doubtHeights(r)...)
		doubts = append(doubts, s.doubtEnds(r)...)
		doubts = append(doubts, s.doubtStrips(r)...)
	}
	return append(doubts, s.doubtBoxes()...), nil
}

// surveyor questions the measurements of a room.
type surveyor struct {
	*Room
	tape fraction.Tape
}

func (room surveyor) doubtHeights(r int) []Doubt {
	var doubts []Doubt
	say := func(i int, field, format string, args ...any) {
		doubts = append(doubts, Doubt{fmt.Sprintf("runs[%d].heights[%d].%s", r, i, field), fmt.Sprintf(format, args...)})
	}
	heights := room.Runs[r].Heights
	jump, apart := room.Priorities.HeightJump, room.Priorities.StationDistance
	for i := 1; i < len(heights); i++ {
		a, b := heights[i-1], heights[i]
		if a.At == b.At {
			continue
		}
		if apart.Less(b.At.Sub(a.At)) {
			say(i, "at", "no height was taped over %s (more than %s): tape one between", room.tape.Format(b.At.Sub(a.At)), room.tape.Format(apart))
		}
		if d := b.Top.Sub(a.Top).Abs(); jump.Less(d) {
			say(i, "top", "the top changes by %s since the station before, without a step: tape both again, or give a step as two stations at one place", room.tape.Format(d))
		}
		if d := b.Bottom.Sub(a.Bottom).Abs(); jump.Less(d) {
			say(i, "bottom", "the bottom changes by %s since the station before, without a step: tape both again, or give a step as two stations at one place", room.tape.Format(d))
		}
	}
	return doubts
}

func (room surveyor) doubtEnds(r int) []Doubt {
	var doubts []Doubt
	for _, e := range []struct {
		name string
		lean fraction.Length
	}{{"left", room.Runs[r].Left.Lean}, {"right", room.Runs[r].Right.Lean}} {
		if room.Priorities.OutOfPlumb.Less(e.lean.Abs()) {
			doubts = append(doubts, Doubt{fmt.Sprintf("runs[%d].%s.lean", r, e.name),
				fmt.Sprintf("the end leans by %s (more than %s): check it with a level", room.tape.Format(e.lean.Abs()), room.tape.Format(room.Priorities.OutOfPlumb))})
		}
	}
	return doubts
}

// doubtBoxes compares boxes of as many gangs; those without gangs are compared
// if they are closer in width than half of the smaller one.
func (room surveyor) doubtBoxes() []Doubt {
	type box struct {
		path          string
		opening       *Opening
		width, height fraction.Length
	}
	var boxes []box
	for r := range room.Runs {
		for i := range room.Runs[r].Openings {
			if o := &room.Runs[r].Openings[i]; o.Kind == Box {
				lo, hi := bounds(o.Outline)
				boxes = append(boxes, box{fmt.Sprintf("runs[%d].openings[%d]", r, i), o, hi.X.Sub(lo.X), hi.Y.Sub(lo.Y)})
			}
		}
	}
	alike := func(a, b box) bool {
		if a.opening.Gangs != 0 && b.opening.Gangs != 0 {
			return a.opening.Gangs == b.opening.Gangs
		}
		return a.width.Sub(b.width).Abs().Mul(2).Less(fraction.Min(a.width, b.width))
	}
	var doubts []Doubt
	most := room.Priorities.BoxDifference
	for i, b := range boxes {
		for _, a := range boxes[:i] {
			if !alike(a, b) {
				continue
			}
			if d := fraction.Max(b.width.Sub(a.width).Abs(), b.height.Sub(a.height).Abs()); most.Less(d) {
				doubts = append(doubts, Doubt{b.path, fmt.Sprintf("box %q is %s x %s but %q is %s x %s: boxes of one kind that differ by more than %s; tape both again",
					b.opening.Name, room.tape.Format(b.width), room.tape.Format(b.height), a.opening.Name, room.tape.Format(a.width), room.tape.Format(a.height), room.tape.Format(most))})
				break
			}
		}
	}
	return doubts
}

// doubtStrips looks for narrow strips between an opening and the edges of the
// wall: left, right, above and below it, after gaps.
func (room surveyor) doubtStrips(r int) []Doubt {
	run := &room.Runs[r]
	least := room.Priorities.LeastStrip
	var doubts []Doubt
	for i, o := range run.Openings {
		lo, hi := bounds(o.Outline)
		gap := room.Gaps.around(o.Kind)
		say := func(where string, strip fraction.Length) {
			if strip.Sign() > 0 && strip.Less(least) {
				doubts = append(doubts, Doubt{fmt.Sprintf("runs[%d].openings[%d]", r, i),
					fmt.Sprintf("only %s of panelling is left %s %q (less than %s): tape it again, or cover the place with trim", room.tape.Format(strip), where, o.Name, room.tape.Format(least))})
			}
		}
		say("between the left end and", lo.X.Sub(gap).Sub(room.Gaps.Side))
		say("between the right end and", run.Width.Sub(room.Gaps.Side).Sub(hi.X.Add(gap)))
		top, bottom := run.spaceOver(lo.X, hi.X)
		say("above", top.Sub(room.Gaps.Top).Sub(hi.Y.Add(gap)))
		say("below", lo.Y.Sub(gap).Sub(bottom.Add(room.Gaps.Bottom)))
		for k, other := range run.Openings[:i] {
			lo2, hi2 := bounds(other.Outline)
			gaps := gap.Add(room.Gaps.around(other.Kind))
			if lo.Y.Less(hi2.Y) && lo2.Y.Less(hi.Y) {
				between := fraction.Max(lo.X.Sub(hi2.X), lo2.X.Sub(hi.X)).Sub(gaps)
				say(fmt.Sprintf("between %q and", run.Openings[k].Name), between)
			}
		}
	}
	return doubts
}

// spaceOver returns the lowest top and the highest bottom between left and
// right, as taped.
func (run *Run) spaceOver(left, right fraction.Length) (top, bottom fraction.Length) {
	first := true
	at := func(h Height) {
		if first || h.Top.Less(top) {
			top = h.Top
		}
		if first || bottom.Less(h.Bottom) {
			bottom = h.Bottom
		}
		first = false
	}
	for i := 0; i+1 < len(run.Heights); i++ {
		a, b := run.Heights[i], run.Heights[i+1]
		from, to := fraction.Max(a.At, left), fraction.Min(b.At, right)
		if !from.Less(to) {
			continue
		}
		for _, x := range [2]fraction.Length{from, to} {
			share := x.Sub(a.At).Over(b.At.Sub(a.At))
			at(Height{
				Top:    a.Top.Add(b.Top.Sub(a.Top).Scale(share)),
				Bottom: a.Bottom.Add(b.Bottom.Sub(a.Bottom).Scale(share)),
			})
		}
	}
	return top, bottom
}
