package groove

import "example.com/groovewright/fraction"

// Side says which side of a cut stays on the wall.
type Side int

const (
	KeepLeft  Side = iota // the cut is the right edge of what stays
	KeepRight             // the cut is the left edge of what stays
)

// String returns "keep left" or "keep right".
func (s Side) String() string {
	if s == KeepLeft {
		return "keep left"
	}
	return "keep right"
}

// Phase returns how far x lies past the start of its repeat of the pattern.
//
// origin is a point where a repeat starts; x may lie to the left of it. The phase r satisfies
// 0 <= r < p.Pitch(), and is 0 where one repeat ends and the next begins.
//
// It panics with a *[fraction.ZeroDivisorError] if p has no features; a valid profile has.
func (p Profile) Phase(x, origin fraction.Length) fraction.Length {
	return x.Sub(origin).Mod(p.Pitch())
}

// At returns which feature lies at a phase and how far into it the phase is, 0 <= into < its width.
// On a boundary that is the feature to the right. Any phase is taken modulo the pitch. The profile is valid.
func (p Profile) At(phase fraction.Length) (index int, into fraction.Length) {
	into = phase.Mod(p.Pitch())
	for last := len(p.Features) - 1; index < last && !into.Less(p.Features[index].Width); index++ {
		into = into.Sub(p.Features[index].Width)
	}
	return index, into
}

// DistanceToBoundary returns how far the nearest feature boundary is from a phase, on either side.
func (p Profile) DistanceToBoundary(phase fraction.Length) fraction.Length {
	i, into := p.At(phase)
	return fraction.Min(into, p.Features[i].Width.Sub(into))
}

// DistanceToSeamLine returns how far the nearest of [Profile.SeamLines] is from a phase, going round the repeat
// either way, and false if there is none. It does not allocate.
func (p Profile) DistanceToSeamLine(phase fraction.Length) (distance fraction.Length, ok bool) {
	pitch := p.Pitch()
	var start fraction.Length
	for i, f := range p.Features {
		if p.hides(i) {
			if d := fraction.Circular(phase, start, pitch); !ok || d.Less(distance) {
				distance, ok = d, true
			}
		}
		start = start.Add(f.Width)
	}
	return distance, ok
}

// Shown returns the feature that ends at a cut at the phase, on the side that stays, and how wide it is left: its whole
// width where the cut is on a boundary.
func (p Profile) Shown(phase fraction.Length, keep Side) (f Feature, width fraction.Length) {
	i, into := p.At(phase)
	if keep == KeepRight {
		return p.Features[i], p.Features[i].Width.Sub(into)
	}
	if into.IsZero() {
		f = p.before(i)
		return f, f.Width
	}
	return p.Features[i], into
}

// CutDistance measures how much a cut at the phase looks cut: 0 on a boundary, where every feature is whole.
//
// Elsewhere it is the distance to the nearest boundary, whatever side is kept. For a profile with wide flats a cut through
// a flat is measured instead by how far what is left of it falls short of half its width, 0 if half or more is left.
func (p Profile) CutDistance(phase fraction.Length, keep Side) fraction.Length {
	f, width := p.Shown(phase, keep)
	if p.WideFlats && f.Kind == Flat {
		return fraction.Max(fraction.Length{}, f.Width.Div(2).Sub(width))
	}
	return fraction.Min(width, f.Width.Sub(width))
}

// Describe says what a cut at the phase leaves at the edge: "whole flat", or "flat cut to 3/8 of 1 1/4", exactly.
// [Profile.Shown] has the same as values.
func (p Profile) Describe(phase fraction.Length, keep Side) string {
	f, width := p.Shown(phase, keep)
	if width == f.Width {
		return "whole " + f.Kind.String()
	}
	return f.Kind.String() + " cut to " + width.String() + " of " + f.Width.String()
}
