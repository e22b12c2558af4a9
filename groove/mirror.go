package groove

import (
	"slices"

	"example.com/groovewright/fraction"
)

// Mirror reports whether the pattern is its own mirror image from left to right, and about which
// axis: the smallest phase in [0, pitch) such that the features to its right are those to its left.
//
// Every profile that has an axis has another half a pitch on, a repeat that is itself k equal
// repeats 2k. Each turns the pattern into itself, and [Profile.Turned] may use any. Widths, kinds
// and depths count; features are taken to be symmetrical themselves, and neighbours of one kind to
// be two. There is no axis where half the pitch fits no Length, which [Profile.Validate] refuses.
// For edges see [Profile.Turns].
func (p Profile) Mirror() (axis fraction.Length, ok bool) {
	var err error
	defer fraction.Catch(&err)
	return p.mirror()
}

func (p Profile) mirror() (axis fraction.Length, ok bool) {
	if p.pitch().IsZero() {
		return axis, len(p.Features) == 0 // a plain sheet has axes everywhere
	}
	half := p.pitch().Div(2)
	var end fraction.Length // of feature last
	for last := range p.Features {
		end = end.Add(p.Features[last].Width)
		if !p.reflects(last) {
			continue
		}
		// Features 0 to last are a palindrome, and so is the rest: their middles are axes.
		if a := end.Div(2).Mod(half); !ok || a.Less(axis) {
			axis, ok = a, true
		}
	}
	return axis, ok
}

// reflects reports whether the cyclic sequence reads the same backwards, from feature last down.
func (p Profile) reflects(last int) bool {
	n := len(p.Features)
	for i := range n {
		if p.Features[i] != p.Features[(last-i+n)%n] {
			return false
		}
	}
	return true
}

// Turns reports whether a piece turned by 180° in its plane can take the place of one that is not:
// the pattern is its own mirror image, and no boards, whose tongue would come to the groove's side.
func (p Profile) Turns() bool {
	_, ok := p.Mirror()
	return ok && !p.Boards
}

// Turned returns (2*axis - phase) mod pitch: the phase that a point shows after the pattern is
// turned by 180° about it. The left edge of a turned piece shows Turned of its right edge's phase;
// Turned twice is the phase again. Without a mirror axis it returns the phase modulo the pitch.
func (p Profile) Turned(phase fraction.Length) (turned fraction.Length, err error) {
	defer fraction.Catch(&err)
	if axis, ok := p.mirror(); ok {
		phase = axis.Mul(2).Sub(phase)
	}
	return Modulo(phase, p.pitch()), nil
}

// Primitive returns the profile with its shortest repeat: one of k equal ones. All phases modulo
// that pitch look the same on the wall, so a plan made with it has more freedom. Boards stay as
// they are: each is a repeat.
func (p Profile) Primitive() Profile {
	n := len(p.Features)
	if p.Boards {
		return p
	}
	for size := 1; size < n; size++ {
		if n%size == 0 && slices.Equal(p.Features[size:], p.Features[:n-size]) {
			p.Features = p.Features[:size:size]
			break
		}
	}
	return p
}
