package wall

import (
	"context"
	"maps"
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
)

// limit is the left limit of a run that butts at its left end, or of one that does not.
type limit struct {
	run   int // everyLayout: this limit is that of every layout
	butts bool
}

const everyLayout = -1

// mostVarying is the most runs whose left limits distinguish layouts: there is a chain for each way
// to make all of them. In a room of more such runs every limit is tried in every layout.
const mostVarying = 6

// candidate is a residue that a run asks for in the layouts with a left limit.
type candidate struct {
	run     int
	residue fraction.Length
	limit   limit
}

// findResidues finds the residues that are tried, a finite set: on every run each origin that puts a
// feature boundary or the middle of a wide flat on a seen edge (of one that leans on its foot, its
// middle and its top), leaves equal cuts at two seen ends, or goes on from an installed panel; each
// of these carried round the shared corners; and where a group of runs shows no edge at all, phase 0
// at each left limit, in the layouts that have this limit. A run that keeps an origin has that alone;
// what it would ask for otherwise is still carried round its corners.
func (m *Model) findResidues(ctx context.Context) {
	groups := m.candidates()
	if len(m.varying) > mostVarying {
		m.varying = nil
	}
	n := len(m.room.Runs)
	m.residues, m.origins, m.limits = make([][]fraction.Length, n), make([][]fraction.Length, n), make([][][]limit, n)
	for r := range n {
		asked := map[fraction.Length][]limit{}
		for _, c := range groups[m.group[r]] {
			check(ctx)
			for _, u := range m.carried(c, r) {
				asked[u] = append(asked[u], c.limit)
			}
		}
		if o := m.room.Runs[r].Keep.Origin; o != nil {
			asked = map[fraction.Length][]limit{groove.Modulo(o.Sub(m.shift[r]), m.room.Profile.Pitch()): {{run: everyLayout}}}
		}
		m.residues[r] = slices.SortedFunc(maps.Keys(asked), fraction.Length.Compare)
		for _, u := range m.residues[r] {
			m.limits[r] = append(m.limits[r], asked[u])
			m.origins[r] = append(m.origins[r], groove.Modulo(u.Add(m.shift[r]), m.room.Profile.Pitch()))
		}
	}
}

// candidates returns what the runs ask for, by group of runs.
func (m *Model) candidates() map[int][]candidate {
	groups := map[int][]candidate{}
	always := limit{run: everyLayout}
	add := func(r int, l limit, origins ...fraction.Length) {
		for _, o := range origins {
			groups[m.group[r]] = append(groups[m.group[r]], candidate{r, o.Sub(m.shift[r]), l})
		}
	}
	for r := range m.room.Runs {
		add(r, always, m.seenOrigins(r)...)
	}
	shows := maps.Clone(groups)
	for r, run := range m.room.Runs {
		if run.Keep.Origin != nil {
			add(r, always, *run.Keep.Origin)
		}
		if len(shows[m.group[r]]) > 0 {
			continue
		}
		g := fraction.Must(m.region(r, fitting{}))
		if !m.sharesInside(m.before(r)) {
			add(r, always, g.left)
			continue
		}
		m.varying = append(m.varying, r)
		add(r, limit{r, false}, g.left)
		if g, err := m.region(r, fitting{buttsLeft: true}); err == nil { // else no layout has it
			add(r, limit{r, true}, g.left)
		}
	}
	for _, in := range m.room.Installed {
		add(in.Run, always, in.Left.Sub(in.LeftPhase))
	}
	return groups
}

// carried returns the residues of run r that carry on what another run of its group asks for: one,
// or in a closed room one for each way round.
func (m *Model) carried(c candidate, r int) []fraction.Length {
	n, pitch := len(m.room.Runs), m.room.Profile.Pitch()
	out := []fraction.Length{groove.Modulo(c.residue, pitch)}
	switch round := m.shift[n]; {
	case !m.room.Closed || !m.coupled(n-1) || m.group[r] != 0:
	case r > c.run:
		out = append(out, groove.Modulo(c.residue.Sub(round), pitch))
	case r < c.run:
		out = append(out, groove.Modulo(c.residue.Add(round), pitch))
	}
	return out
}

// seenOrigins returns the origins that the seen edges of run r ask for.
func (m *Model) seenOrigins(r int) []fraction.Length {
	p := &m.room.Profile
	places := p.Boundaries() // that may stand on a seen edge
	for i, f := range p.Features {
		if p.WideFlats && f.Kind == groove.Flat {
			places = append(places, places[i].Add(f.Width.Div(2)))
		}
	}
	var own []fraction.Length
	var lefts, rights []fraction.Length // seen ends of the run
	for _, e := range fraction.Must(m.region(r, fitting{})).edges {
		if e.weight.Sign() <= 0 {
			continue
		}
		for _, x := range slices.Compact([]fraction.Length{e.foot, e.x, e.top}) {
			for _, place := range places {
				own = append(own, x.Sub(place))
			}
		}
		if e.end && e.keepsLeft() {
			rights = append(rights, e.x)
		} else if e.end {
			lefts = append(lefts, e.x)
		}
	}
	if len(lefts) > 0 && len(rights) > 0 {
		own = append(own, equalCuts(lefts[0], rights[0], p)...)
	}
	return own
}

// equalCuts returns the origins that leave equally much of like features at both ends: a cut c for
// which left + c, where the first feature ends, and right - c, where the last one starts, are both
// boundaries. So twice c is known up to a pitch.
func equalCuts(left, right fraction.Length, p *groove.Profile) []fraction.Length {
	var origins []fraction.Length
	boundaries, pitch := p.Boundaries(), p.Pitch()
	for i, a := range boundaries {
		first := p.Features[(i+len(boundaries)-1)%len(boundaries)] // ends at a
		for k, b := range boundaries {
			last := p.Features[k] // starts at b
			if first.Kind != last.Kind || first.Width != last.Width {
				continue
			}
			cut := right.Sub(left).Add(a).Sub(b).Mod(pitch).Div(2)
			for _, c := range []fraction.Length{cut, cut.Add(pitch.Div(2))} {
				if c.Less(first.Width) {
					origins = append(origins, left.Add(c).Sub(a))
				}
			}
		}
	}
	return origins
}
