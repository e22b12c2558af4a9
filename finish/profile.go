package finish

import (
	"math/big"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
)

// developed returns how much wider the face is than it looks, at least 1. Grooves count by their
// shape. A bead is an arc over its width that rises by its depth, or a half circle on two uprights
// where it rises by more than half its width. Circles and slopes are rounded up in the ninth
// decimal of an inch.
func developed(p groove.Profile, shape GrooveShape) *big.Rat {
	if len(p.Features) == 0 {
		return whole(1)
	}
	width := new(big.Rat)
	for _, f := range p.Features {
		width = add(width, surface(f, shape))
	}
	return quo(width, p.Pitch().Rat())
}

// surface is the developed width of one feature.
func surface(f groove.Feature, shape GrooveShape) *big.Rat {
	w, d := f.Width.Rat(), f.Depth.Rat()
	half := quo(w, whole(2))
	switch {
	case d.Sign() == 0 || f.Kind == groove.Flat:
		return w
	case f.Kind == groove.Groove && shape == VGroove:
		return mul(whole(2), rootAbove(add(mul(half, half), mul(d, d))))
	case f.Kind == groove.Groove:
		return add(w, mul(whole(2), d))
	case d.Cmp(half) > 0:
		return add(roundUp(mul(piAbove, half), billionths), mul(whole(2), sub(d, half)))
	}
	return fraction.Must(cutout.ArcLength(f.Width, f.Depth, fraction.Of(1, billionths))).Rat()
}

// hollow returns the cross-section in square inches that one repeat leaves open where it ends on a
// flat surface: of a groove its own; of a bead at most a third of the rectangle about it, on both
// sides together, as a circular segment is never less than the parabola in it.
func hollow(p groove.Profile, shape GrooveShape) *big.Rat {
	open := new(big.Rat)
	for _, f := range p.Features {
		section := mul(f.Width.Rat(), f.Depth.Rat())
		switch {
		case f.Kind == groove.Bead:
			section = quo(section, whole(3))
		case f.Kind == groove.Groove && shape == VGroove:
			section = quo(section, whole(2))
		}
		open = add(open, section)
	}
	return open
}
