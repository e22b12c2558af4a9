package verify

import "fmt"

type feature struct {
	kind         string // flat, bead or groove
	width, depth rat
}

// pattern is one repeat of the panelling with what follows from its features.
type pattern struct {
	features   []feature
	pitch      rat
	boundaries []rat // where features start, from 0
	lines      []rat // boundaries beside a groove or bead: where a seam may fall
	turns      []rat // each t in [0, pitch) for which phase p shows t-p when turned; none: no mirror image
	thickness  rat
	wideFlats  bool
	boards     bool
}

func newPattern(features []feature, thickness rat, wideFlats, boards bool) (*pattern, error) {
	p := &pattern{features: features, thickness: thickness, wideFlats: wideFlats, boards: boards, pitch: zero()}
	for _, f := range features {
		p.boundaries = append(p.boundaries, p.pitch)
		p.pitch = sum(p.pitch, f.width)
	}
	if p.pitch.Sign() <= 0 {
		return nil, fmt.Errorf("the repeat has no width")
	}
	for i, f := range features {
		before := features[(i+len(features)-1)%len(features)]
		if f.kind != "flat" || before.kind != "flat" {
			p.lines = append(p.lines, p.boundaries[i])
		}
	}
	for j := range features {
		// The mirror that lays feature 0 on feature j sends phase p to turn - p.
		turn := mod(sum(p.boundaries[j], features[0].width), p.pitch)
		if p.mirrors(turn) {
			p.turns = append(p.turns, turn)
		}
	}
	return p, nil
}

// mirrors says whether each feature, read backwards about turn/2, lies on its like.
func (p *pattern) mirrors(turn rat) bool {
	for i, f := range p.features {
		start := mod(diff(turn, sum(p.boundaries[i], f.width)), p.pitch)
		found := false
		for j, g := range p.features {
			if same(start, p.boundaries[j]) {
				found = g.kind == f.kind && same(g.width, f.width) && same(g.depth, f.depth)
				break
			}
		}
		if !found {
			return false
		}
	}
	return true
}

// phase returns the phase of x where a repeat starts at origin.
func (p *pattern) phase(x, origin rat) rat { return mod(diff(x, origin), p.pitch) }

// at returns the feature in which a phase lies and the way into it, in [0, width).
func (p *pattern) at(phase rat) (index int, into rat) {
	for i := len(p.features) - 1; i > 0; i-- {
		if !less(phase, p.boundaries[i]) {
			return i, diff(phase, p.boundaries[i])
		}
	}
	return 0, phase
}

// cut returns how much a cut at the given phase spoils the feature it falls in:
// its distance to the nearest feature boundary, or for a cut flat of a profile
// with wide flats, how far what stays on the wall falls short of half the flat.
// right says that the part right of the cut stays on the wall.
func (p *pattern) cut(phase rat, right bool) rat {
	i, into := p.at(phase)
	if into.Sign() == 0 {
		return zero()
	}
	f := p.features[i]
	rest := diff(f.width, into)
	if !p.wideFlats || f.kind != "flat" {
		return least(into, rest)
	}
	kept := into
	if right {
		kept = rest
	}
	return most(zero(), diff(half(f.width), kept))
}

// offLine returns the distance from a phase to the nearest line where a seam may
// fall; 0 for a profile without any.
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

// fits returns whether a part of the given width and left phase can be sawn from
// a sheet as regards the width.
func (p *pattern) fits(width, leftPhase rat, s stock) bool {
	x := mod(diff(leftPhase, s.leftPhase), p.pitch)
	if !less(s.width, sum(x, width)) {
		return true
	}
	for _, turn := range p.turns {
		x = mod(diff(turn, sum(s.leftPhase, width, leftPhase)), p.pitch)
		if !less(s.width, sum(x, width)) {
			return true
		}
	}
	return false
}

// shows returns whether a part placed at x on a sheet shows its left phase.
func (p *pattern) shows(leftPhase, width, x rat, s stock, turned bool) bool {
	if !turned {
		return same(mod(sum(s.leftPhase, x), p.pitch), leftPhase)
	}
	for _, turn := range p.turns {
		if same(mod(diff(turn, sum(s.leftPhase, x, width)), p.pitch), leftPhase) {
			return true
		}
	}
	return false
}
