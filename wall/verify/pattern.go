package verify

import (
	"errors"
	"slices"
)

type feature struct {
	Kind         string // flat, bead or groove
	Width, Depth rat
}

// pattern is one repeat of the panelling with what follows from its features.
type pattern struct {
	profile
	pitch      rat
	boundaries []rat // where features start, from 0
	lines      []rat // boundaries beside a groove or bead: where a seam may fall
	turns      []rat // each t in [0, pitch) for which phase p shows t-p when turned; none: no mirror image
}

func newPattern(from profile) (*pattern, error) {
	p := &pattern{profile: from, pitch: zero()}
	features := from.Features
	for _, f := range features {
		p.boundaries = append(p.boundaries, p.pitch)
		if p.pitch = sum(p.pitch, f.Width); f.Width.Sign() < 0 {
			return nil, errors.New("a feature of negative width")
		}
	}
	switch {
	case len(features) == 0: // plain: the same everywhere, turned or not
		p.turns = []rat{zero()}
	case p.pitch.Sign() == 0 || len(features) > 100:
		return nil, errors.New("the repeat has no width, or too many features")
	}
	for i, f := range features {
		before := features[(i+len(features)-1)%len(features)]
		if f.Kind != "flat" || before.Kind != "flat" {
			p.lines = append(p.lines, p.boundaries[i])
		}
	}
	for j := range features {
		// The mirror that lays feature 0 on feature j sends phase p to turn - p.
		turn := mod(sum(p.boundaries[j], features[0].Width), p.pitch)
		if p.mirrors(turn) {
			p.turns = append(p.turns, turn)
		}
	}
	slices.SortFunc(p.turns, rat.Cmp)
	return p, nil
}

// mirrors says whether each feature, read backwards about turn/2, lies on its like.
func (p *pattern) mirrors(turn rat) bool {
	for i, f := range p.Features {
		start := mod(diff(turn, sum(p.boundaries[i], f.Width)), p.pitch)
		j := slices.IndexFunc(p.boundaries, func(b rat) bool { return same(b, start) })
		if j < 0 || p.Features[j].Kind != f.Kind || !same(p.Features[j].Width, f.Width) || !same(p.Features[j].Depth, f.Depth) {
			return false
		}
	}
	return true
}

// narrowest returns the least width of a panel that is not forced.
func (p *pattern) narrowest(weights map[string]rat) rat {
	if p.pitch.Sign() == 0 {
		return times(weights["least_panel"], weights["least_strip"])
	}
	return times(weights["least_panel"], p.pitch)
}

// phase returns the phase of x where a repeat starts at origin.
func (p *pattern) phase(x, origin rat) rat { return mod(diff(x, origin), p.pitch) }

// beside returns the feature beside a cut at the given phase, and how much of it stays on the wall.
// right says that the part right of the cut does.
func (p *pattern) beside(phase rat, right bool) (feature, rat) {
	n := len(p.Features)
	if n == 0 {
		return feature{"flat", zero(), zero()}, zero()
	}
	i := n - 1
	for ; i > 0 && less(phase, p.boundaries[i]); i-- {
	}
	f, into := p.Features[i], diff(phase, p.boundaries[i])
	switch {
	case right:
		return f, diff(f.Width, into)
	case into.Sign() == 0:
		f = p.Features[(i+n-1)%n]
		return f, f.Width
	}
	return f, into
}

// cut returns how much an upright cut at the phase spoils its feature: the distance to the nearest
// sound boundary, or for a wide flat how far what stays on the wall falls short of half of it.
func (p *pattern) cut(phase rat, right bool) rat {
	if f, kept := p.beside(phase, right); p.WideFlats && f.Kind == "flat" {
		return most(zero(), diff(half(f.Width), kept))
	}
	nearest, found := p.pitch, false
	for _, b := range p.boundaries {
		d := circular(phase, b, p.pitch)
		f, _ := p.beside(b, right)
		if sound := f.Kind != "groove"; sound && !found || sound == found && less(d, nearest) {
			nearest, found = d, sound
		}
	}
	return nearest
}

// leaning returns what an edge between two places across the pattern spoils, and whether it is whole:
// crosses no bead or groove.
func (j *room) leaning(from, to, origin rat, right bool) (amount rat, whole bool) {
	p := j.pattern
	low, high := least(from, to), most(from, to)
	amount, whole = most(p.cut(p.phase(low, origin), right), p.cut(p.phase(high, origin), right)), true
	if same(low, high) { // rounded, it stands upright
		return amount, amount.Sign() == 0
	}
	for start := diff(low, p.phase(low, origin)); p.pitch.Sign() > 0 && less(start, high); start = sum(start, p.pitch) {
		j.sweep.spend(len(p.boundaries))
		for i, b := range p.boundaries {
			f, x := p.Features[i], sum(start, b)
			if less(low, x) && less(x, high) {
				amount = most(amount, p.cut(b, right))
			}
			if f.Kind != "flat" && less(x, high) && less(low, sum(x, f.Width)) && f.Width.Sign() > 0 {
				amount, whole = most(amount, f.Width), false
			}
		}
	}
	return amount, whole
}

// slanted returns the feature that a leaning cut crosses first from its foot, and what stays of it where
// that is least.
func (p *pattern) slanted(foot, lean rat, right bool) (feature, rat) {
	toRight := lean.Sign() > 0 || lean.Sign() == 0 && right // rounded, it may stand upright
	f, ahead := p.beside(foot, toRight)                     // so much of it lies on the side to which the cut leans
	start := diff(foot, ahead)
	if toRight {
		start = diff(sum(foot, ahead), f.Width)
	}
	if right {
		return f, most(zero(), diff(sum(start, f.Width), most(foot, sum(foot, lean))))
	}
	return f, most(zero(), diff(least(foot, sum(foot, lean)), start))
}

// offLine returns the distance from a phase to the nearest line for a seam; 0 where there is none.
func (p *pattern) offLine(phase rat) rat {
	if len(p.lines) == 0 {
		return zero()
	}
	nearest := p.pitch
	for _, line := range p.lines {
		nearest = least(nearest, circular(phase, line, p.pitch))
	}
	return nearest
}

// starts returns each place below one pitch from a sheet's left where a part shows its left phase. A board
// turned would have its tongue on the groove's side.
func (p *pattern) starts(leftPhase, width rat, s stock, turned bool) []rat {
	if !turned {
		return []rat{mod(diff(leftPhase, s.LeftPhase), p.pitch)}
	}
	var out []rat
	if p.Boards {
		return out
	}
	for _, turn := range p.turns {
		out = append(out, mod(diff(turn, sum(s.LeftPhase, width, leftPhase)), p.pitch))
	}
	return out
}

// sheetFor says whether some sheet is wide enough for a part at its phase, upright or turned.
func (p *pattern) sheetFor(sheets []stock, width, leftPhase rat) bool {
	return slices.ContainsFunc(sheets, func(s stock) bool {
		starts := append(p.starts(leftPhase, width, s, false), p.starts(leftPhase, width, s, true)...)
		return slices.ContainsFunc(starts, func(x rat) bool { return !less(s.Width, sum(x, width)) })
	})
}

// shows says whether a part placed at x on a sheet shows its left phase.
func (p *pattern) shows(leftPhase, width, x rat, s stock, turned bool) bool {
	return slices.ContainsFunc(p.starts(leftPhase, width, s, turned), func(start rat) bool { return same(start, mod(x, p.pitch)) })
}
