package wall

import (
	"maps"
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
)

// model is a room with what has been worked out about it so far. Its origins
// are kept as residues: a residue u stands for the origin shift[r] + u on run
// r, where the shifts are such that equal residues on neighbouring runs carry
// the pattern round their corner unbroken.
type model struct {
	room      *Room
	shift     []fraction.Length // by run; one more at the end for going round a closed room
	group     []int             // by run: runs coupled by shared corners have one number
	residues  [][]fraction.Length
	regions   map[regionKey]*region
	stretches map[stretchKey]*stretch
	thrift    *Thrift // nil for Layouts
}

type regionKey struct {
	run int
	fit fitting
}

type stretchKey struct {
	run, from, to int
	fit           fitting
}

func (m *model) region(r int, f fitting) (*region, error) {
	key := regionKey{r, f}
	if g, ok := m.regions[key]; ok {
		return g, nil
	}
	g, err := newRegion(m.room, r, f)
	if err == nil {
		m.regions[key] = g
	}
	return g, err
}

func (m *model) stretch(r, from, to int, f fitting) (*stretch, error) {
	// What lies beyond a used break does not matter here.
	f.buttsLeft = f.buttsLeft && from < 0
	f.buttsRight = f.buttsRight && to == len(m.room.Runs[r].Breaks)
	key := stretchKey{r, from, to, f}
	if s, ok := m.stretches[key]; ok {
		return s, nil
	}
	s, err := m.newStretch(r, from, to, f)
	if err == nil {
		m.stretches[key] = s
	}
	return s, err
}

// newModel works out the residues that are tried: a finite set, so that "least
// blemish" has a meaning. They are, for every run, each origin that puts a
// feature boundary on a seen edge, leaves equal cuts at two seen ends, or goes
// on from an installed panel; each of these carried round the shared corners;
// and where a group of runs has none at all, phase 0 at each left limit.
func newModel(room *Room) (*model, error) {
	n := len(room.Runs)
	m := &model{room: room, shift: make([]fraction.Length, n+1), group: make([]int, n),
		regions: map[regionKey]*region{}, stretches: map[stretchKey]*stretch{}}
	pitch := room.Profile.Pitch()
	for r := range n {
		next := m.shift[r].Sub(room.Runs[r].Width)
		switch thickness := room.Profile.Thickness.Mul(2); room.Runs[r].Right.Kind {
		case InsideCorner:
			next = next.Add(thickness)
		case OutsideCorner:
			next = next.Sub(thickness)
		}
		m.shift[r+1] = next.Mod(pitch)
		if r+1 < n {
			m.group[r+1] = m.group[r]
			if !m.coupled(r) {
				m.group[r+1]++
			}
		}
	}
	if room.Closed && m.coupled(n-1) {
		// Going round joins the last group to the first.
		last := m.group[n-1]
		for r := range n {
			if m.group[r] == last {
				m.group[r] = 0
			}
		}
	}
	type candidate struct {
		run     int // that asks for it
		residue fraction.Length
	}
	groups := map[int][]candidate{}
	gather := func(origins func(r int) ([]fraction.Length, error), wanted func(group int) bool) error {
		for r := range n {
			if !wanted(m.group[r]) {
				continue
			}
			own, err := origins(r)
			if err != nil {
				return err
			}
			for _, o := range own {
				groups[m.group[r]] = append(groups[m.group[r]], candidate{r, o.Sub(m.shift[r])})
			}
		}
		return nil
	}
	every := func(int) bool { return true }
	if err := gather(m.seenOrigins, every); err != nil {
		return nil, err
	}
	seen := maps.Clone(groups)
	if err := gather(m.leftLimits, func(group int) bool { return len(seen[group]) == 0 }); err != nil {
		return nil, err
	}
	if err := gather(m.installedOrigins, every); err != nil {
		return nil, err
	}
	m.residues = make([][]fraction.Length, n)
	for r := range n {
		var u []fraction.Length
		for _, c := range groups[m.group[r]] {
			u = append(u, c.residue.Mod(pitch))
			// In a closed room the pattern is carried the other way round too.
			switch round := m.shift[n]; {
			case !room.Closed || !m.coupled(n-1) || m.group[r] != 0:
			case r > c.run:
				u = append(u, c.residue.Sub(round).Mod(pitch))
			case r < c.run:
				u = append(u, c.residue.Add(round).Mod(pitch))
			}
		}
		slices.SortFunc(u, fraction.Length.Compare)
		m.residues[r] = slices.Compact(u)
	}
	return m, nil
}

// coupled reports whether run r shares the corner at its right end with the
// next run, so that the pattern can be carried round it.
func (m *model) coupled(r int) bool {
	n := len(m.room.Runs)
	if r == n-1 && !m.room.Closed {
		return false
	}
	kind := m.room.Runs[r].Right.Kind
	return (kind == InsideCorner || kind == OutsideCorner) && m.room.Runs[(r+1)%n].Left.Kind == kind
}

// sharesInside reports whether run r shares an inside corner with the next run:
// then one passes and the other butts, and a mismatch is seen.
func (m *model) sharesInside(r int) bool {
	return m.coupled(r) && m.room.Runs[r].Right.Kind == InsideCorner
}

// origin returns the origin on run r that residue number i stands for, in
// [0, pitch).
func (m *model) origin(r, i int) fraction.Length {
	return m.residues[r][i].Add(m.shift[r]).Mod(m.room.Profile.Pitch())
}

// seenOrigins returns the origins that the seen edges of run r ask for.
func (m *model) seenOrigins(r int) ([]fraction.Length, error) {
	g, err := m.region(r, fitting{})
	if err != nil {
		return nil, err
	}
	p := &m.room.Profile
	boundaries := p.Boundaries()
	var own []fraction.Length
	var lefts, rights []fraction.Length // seen ends of the run
	for _, e := range g.edges {
		if e.weight.Sign() <= 0 {
			continue
		}
		for _, b := range boundaries {
			own = append(own, e.x.Sub(b))
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
	return own, nil
}

// installedOrigins returns the origins that go on from the installed panels.
func (m *model) installedOrigins(r int) (own []fraction.Length, err error) {
	for _, in := range m.room.Installed {
		if in.Run == r {
			own = append(own, in.Left.Sub(in.LeftPhase))
		}
	}
	return own, nil
}

// equalCuts returns the origins that leave equally much of like features at both
// ends. With the cut c, the phases at left + c, where the first feature ends, and
// at right - c, where the last one starts, are both boundaries, so twice c is
// known up to a pitch.
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

// leftLimits returns the leftmost x that panels of run r can reach, for each
// way to make its left end.
func (m *model) leftLimits(r int) ([]fraction.Length, error) {
	var xs []fraction.Length
	for _, butts := range []bool{false, true} {
		g, err := m.region(r, fitting{buttsLeft: butts})
		if err != nil {
			return nil, err
		}
		xs = append(xs, g.left)
	}
	return xs, nil
}
