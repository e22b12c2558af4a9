package groove

import (
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/enum"
)

// Side says which side of a cut stays on the wall.
type Side uint8

// The sides of a cut.
const (
	KeepLeft  Side = iota // the cut is the right edge of what stays
	KeepRight             // the cut is the left edge of what stays
)

var sides = enum.Of[Side]("keep left", "keep right")

// String returns "keep left" or "keep right".
func (s Side) String() string { return sides.String(s) }

// MarshalText writes the word of the side, and fails where it has none.
func (s Side) MarshalText() ([]byte, error) { return sides.Marshal(s) }

// UnmarshalText reads "keep left" or "keep right".
func (s *Side) UnmarshalText(text []byte) error { return sides.Unmarshal(text, s) }

// Phase returns how far x lies past the start of its repeat, at least 0 and less than the pitch; 0
// on a plain sheet. A repeat starts at origin; x may lie to the left of it.
func (p Profile) Phase(x, origin fraction.Length) (phase fraction.Length, err error) {
	defer fraction.Catch(&err)
	return Modulo(x.Sub(origin), p.pitch()), nil
}

// Modulo returns x modulo a pitch, at least 0 and less than the pitch, and 0 where that is 0: where
// there is no pattern every place looks the same. It panics as the arithmetic of package fraction
// does, for [fraction.Catch].
func Modulo(x, pitch fraction.Length) fraction.Length {
	if pitch.IsZero() {
		return pitch
	}
	return x.Mod(pitch)
}

// at returns which feature lies at a phase and how far into it the phase is, 0 <= into < its width.
// On a boundary that is the feature to the right.
func (p Profile) at(phase fraction.Length) (index int, into fraction.Length) {
	into = Modulo(phase, p.pitch())
	for last := len(p.Features) - 1; index < last && !into.Less(p.Features[index].Width); index++ {
		into = into.Sub(p.Features[index].Width)
	}
	return index, into
}

// DistanceToBoundary returns how far the nearest feature boundary is from a phase, on either side,
// and 0 if there is none.
func (p Profile) DistanceToBoundary(phase fraction.Length) (distance fraction.Length, err error) {
	defer fraction.Catch(&err)
	return p.nearest(phase, func(int) bool { return true }), nil
}

// DistanceToSeamLine returns how far the nearest of [Profile.SeamLines] is from a phase, going
// round the repeat either way, and 0 if there is none. It does not allocate.
func (p Profile) DistanceToSeamLine(phase fraction.Length) (distance fraction.Length, err error) {
	defer fraction.Catch(&err)
	return p.nearest(phase, p.hides), nil
}

// nearest returns how far the nearest boundary that counts is from a phase, going round the repeat
// either way, and 0 if none does. A boundary has the number of the feature that starts there.
func (p Profile) nearest(phase fraction.Length, counts func(i int) bool) (least fraction.Length) {
	pitch := p.pitch()
	phase = Modulo(phase, pitch)
	var start fraction.Length
	found := false
	for i, f := range p.Features {
		if counts(i) {
			if d := fraction.Circular(phase, start, pitch); !found || d.Less(least) {
				least, found = d, true
			}
		}
		start = start.Add(f.Width)
	}
	return least
}

// Shown returns the feature that ends at a cut at the phase, on the side that stays, and how wide
// it is left: its whole width where the cut is on a boundary. Of a plain sheet it is a flat without
// a width.
func (p Profile) Shown(phase fraction.Length, keep Side) (f Feature, width fraction.Length, err error) {
	defer fraction.Catch(&err)
	if len(p.Features) == 0 {
		return f, width, nil
	}
	i, into := p.at(phase)
	if keep == KeepRight {
		return p.Features[i], p.Features[i].Width.Sub(into), nil
	}
	if into.IsZero() {
		f = p.before(i)
		return f, f.Width, nil
	}
	return p.Features[i], into, nil
}

// CutDistance measures how much an upright edge at the phase looks cut: how far it is from the
// nearest sound boundary, going round the repeat either way. A boundary is sound where a panel that
// stops there shows a whole flat or bead; in a groove the edge would stand open. Where a profile is
// all grooves every boundary counts. For a profile with wide flats an edge that shows a flat is
// measured by how far what is left falls short of half its width, if at all.
func (p Profile) CutDistance(phase fraction.Length, keep Side) (distance fraction.Length, err error) {
	defer fraction.Catch(&err)
	f, width, err := p.Shown(phase, keep)
	if err != nil {
		return distance, err
	}
	if p.WideFlats && f.Kind == Flat {
		return fraction.Max(fraction.Length{}, f.Width.Div(2).Sub(width)), nil
	}
	grooves := !slices.ContainsFunc(p.Features, func(f Feature) bool { return f.Kind != Groove })
	return p.nearest(phase, func(i int) bool {
		if keep == KeepRight {
			return grooves || p.Features[i].Kind != Groove
		}
		return grooves || p.before(i).Kind != Groove
	}), nil
}

// Crossing is a feature that a leaning edge crosses. Width is what stays of it where that is least.
type Crossing struct {
	Feature Feature
	Width   fraction.Length
}

// Crossed returns what an edge crosses whose foot stands at the phase and whose top stands lean to
// the right of it, from the foot up: the features of which more than one point lies below or above
// the edge. It returns none of an upright edge, and each once of one that leans over a whole repeat.
func (p Profile) Crossed(phase, lean fraction.Length, keep Side) (crossings []Crossing, err error) {
	defer fraction.Catch(&err)
	from, to := fraction.Min(phase, phase.Add(lean)), fraction.Max(phase, phase.Add(lean))
	p.crossed(phase, lean, func(i int, start fraction.Length) {
		c, end := Crossing{Feature: p.Features[i]}, start.Add(p.Features[i].Width)
		if keep == KeepRight {
			c.Width = fraction.Max(c.Width, end.Sub(to))
		} else {
			c.Width = fraction.Max(c.Width, from.Sub(start))
		}
		crossings = append(crossings, c)
	})
	if lean.Sign() < 0 {
		slices.Reverse(crossings)
	}
	return crossings, nil
}

// crossed hands on the features that a leaning edge crosses, from left to right, with the phase at
// which each starts, counted on from the edge's left end.
func (p Profile) crossed(phase, lean fraction.Length, visit func(i int, start fraction.Length)) {
	if lean.IsZero() || len(p.Features) == 0 {
		return
	}
	from, to := fraction.Min(phase, phase.Add(lean)), fraction.Max(phase, phase.Add(lean))
	to = fraction.Min(to, from.Add(p.pitch()))
	i, into := p.at(from)
	start := from.Sub(into)
	for n := 0; n <= len(p.Features) && start.Less(to); n++ { // the first may be met again at the end
		visit(i, start)
		start = start.Add(p.Features[i].Width)
		i = (i + 1) % len(p.Features)
	}
}

// SlantDistance measures how much an edge looks cut whose foot stands at the phase and whose top
// stands lean to the right of it: the greatest [Profile.CutDistance] at its foot, at its top and at
// each boundary between them, or the whole width of a bead or groove that it crosses.
func (p Profile) SlantDistance(phase, lean fraction.Length, keep Side) (distance fraction.Length, err error) {
	defer fraction.Catch(&err)
	if lean.IsZero() {
		return p.CutDistance(phase, keep)
	}
	at := func(x fraction.Length) fraction.Length { return fraction.Must(p.CutDistance(x, keep)) }
	distance = fraction.Max(at(phase), at(phase.Add(lean)))
	from := fraction.Min(phase, phase.Add(lean))
	p.crossed(phase, lean, func(i int, start fraction.Length) {
		if from.Less(start) {
			distance = fraction.Max(distance, at(start))
		}
		if f := p.Features[i]; f.Kind != Flat {
			distance = fraction.Max(distance, f.Width)
		}
	})
	return distance, nil
}
