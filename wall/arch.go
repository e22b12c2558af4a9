package wall

import (
	"fmt"
	"slices"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
)

// Arch is the true arc of an arched head, which the outline of its opening only comes near. It
// stands on a level chord.
type Arch struct {
	Springing cutout.Point    // the left end of the arc, in run coordinates
	Chord     fraction.Length // from there to the right end, above 0
	Rise      fraction.Length // over the chord, above 0 and at most half of it
}

// Circle returns the centre and the radius of the arc. It fails with [cutout.ErrNoArc].
func (a Arch) Circle() (centre cutout.Point, radius fraction.Length, err error) {
	defer fraction.Catch(&err)
	if radius, err = cutout.Radius(a.Chord, a.Rise); err != nil {
		return centre, radius, err
	}
	return cutout.Point{X: a.Springing.X.Add(a.Chord.Div(2)), Y: a.Springing.Y.Add(a.Rise).Sub(radius)}, radius, nil
}

// archMarks is how many marks of the tape the corners of an arch may lie outside the true arc;
// [cutout.Arc] needs two at least.
const archMarks = 2

// mostArch is the most marks of the tape in the chord of an arch: 85 ft of sixteenths. Its corners
// are found within some hundredths of a second.
const mostArch = 1 << 14

// Arched returns the outline and the arch of an opening with these corners, in order round it, and
// an arched head of that rise over the two highest, which are neighbours. Where they are not at one
// height the higher counts for both. The corners of the head stand on marks of the tape, on or
// outside the true arc, so that what stands in the opening has room.
//
// It fails with a *fault.Fault: at Outline for fewer than three corners and for a head of more than
// 16384 marks, at Arch.Rise where no arc of this rise stands on the corners.
func Arched(corners []cutout.Point, rise, mark fraction.Length) (outline []cutout.Point, arch *Arch, err error) {
	defer fraction.Catch(&err)
	if len(corners) < 3 {
		return nil, nil, &fault.Fault{Path: fault.Of("Outline"), Want: "three corners at least"}
	}
	at := Head(corners)
	p, q := corners[at], corners[(at+1)%len(corners)]
	arch = &Arch{Springing: cutout.Point{X: fraction.Min(p.X, q.X), Y: fraction.Max(p.Y, q.Y)}, Chord: p.X.Sub(q.X).Abs(), Rise: rise}
	if mark.Sign() > 0 && mark.Mul(mostArch).Less(arch.Chord) {
		return nil, nil, &fault.Fault{Path: fault.Of("Outline"), Want: fmt.Sprintf("an arched head of at most %d marks of the tape", mostArch)}
	}
	head, err := cutout.Arc(arch.Springing, arch.Chord, rise, mark.Mul(archMarks), mark)
	if err != nil {
		return nil, nil, &fault.Fault{Path: fault.Of("Arch", "Rise"), Value: rise.String(), Cause: err, Want: "a rise of at most half the width"}
	}
	if q.X.Less(p.X) {
		slices.Reverse(head)
	}
	if at == len(corners)-1 {
		return slices.Concat(head, corners[1:at]), arch, nil
	}
	return slices.Concat(corners[:at], head, corners[at+2:]), arch, nil
}

// Head returns the index of the corner from which the highest edge of an outline goes to the next
// corner: the edge with the highest lower end. It is 0 for no corners.
func Head(corners []cutout.Point) (at int) {
	lower := func(i int) fraction.Length { return fraction.Min(corners[i].Y, corners[(i+1)%len(corners)].Y) }
	for i := range corners {
		if lower(at).Less(lower(i)) {
			at = i
		}
	}
	return at
}

// Corners returns the corners of the opening, without those of an arched head above its springings.
func (o *Opening) Corners() []cutout.Point {
	if o == nil {
		return nil
	}
	if o.Arch == nil {
		return o.Outline
	}
	return slices.DeleteFunc(slices.Clone(o.Outline), func(p cutout.Point) bool { return o.Arch.Springing.Y.Less(p.Y) })
}
