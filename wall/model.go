package wall

import (
	"context"

	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
)

// model is a room with what has been worked out about it so far. Its origins are kept as residues:
// a residue u stands for the origin shift[r] + u on run r, where the shifts are such that equal
// residues on neighbouring runs carry the pattern round their corner unbroken.
type model struct {
	ctx       context.Context
	room      *Room
	sheets    []nest.Stock      // each as long as it is with its ends squared up
	shift     []fraction.Length // by run; one more at the end for going round a closed room
	group     []int             // by run: runs coupled by shared corners have one number
	residues  [][]fraction.Length
	limits    [][][]limit // by run and residue: the left limits that ask for it
	varying   []int       // runs whose left limit asks for a residue and depends on who passes
	regions   map[regionKey]*region
	stretches map[stretchKey]*stretch
	objective *Objective // nil for Layouts
}

type regionKey struct {
	run int
	fit fitting
}

type stretchKey struct {
	run, from, to int
	fit           fitting
}

// memo returns the value of a key, made once and kept unless that fails.
func memo[K comparable, V any](kept map[K]V, key K, make func() (V, error)) (v V, err error) {
	v, ok := kept[key]
	if !ok {
		if v, err = make(); err == nil {
			kept[key] = v
		}
	}
	return v, err
}

func (m *model) region(r int, f fitting) (*region, error) {
	return memo(m.regions, regionKey{r, f}, func() (*region, error) { return newRegion(m.ctx, m.room, r, f) })
}

func (m *model) stretch(r, from, to int, f fitting) (*stretch, error) {
	// What lies beyond a used break does not matter here.
	f.buttsLeft = f.buttsLeft && from < 0
	f.buttsRight = f.buttsRight && to == len(m.room.Runs[r].Breaks)
	return memo(m.stretches, stretchKey{r, from, to, f}, func() (*stretch, error) { return m.newStretch(r, from, to, f) })
}

// newModel works out how runs are joined and which residues are tried.
func newModel(ctx context.Context, room *Room) *model {
	n := len(room.Runs)
	m := &model{ctx: ctx, room: room, shift: make([]fraction.Length, n+1), group: make([]int, n),
		regions: map[regionKey]*region{}, stretches: map[stretchKey]*stretch{}}
	for _, s := range room.Stock {
		s.Length = s.Usable(room.Saw)
		m.sheets = append(m.sheets, s)
	}
	pitch := room.Profile.Pitch()
	for r := range n {
		next := m.shift[r].Sub(room.Runs[r].Width)
		switch thickness := room.Profile.Thickness.Mul(2); room.Runs[r].Right.Kind {
		case InsideCorner:
			next = next.Add(thickness)
		case OutsideCorner:
			next = next.Sub(thickness)
		}
		m.shift[r+1] = groove.Modulo(next, pitch)
		if r > 0 && m.coupled(r-1) {
			m.group[r] = m.group[r-1]
		} else if r > 0 {
			m.group[r] = m.group[r-1] + 1
		}
	}
	if last := m.group[n-1]; room.Closed && m.coupled(n-1) { // going round joins the last group to the first
		for r := n - 1; r >= 0 && m.group[r] == last; r-- {
			m.group[r] = 0
		}
	}
	m.findResidues()
	return m
}

// coupled reports whether run r and the next one share a corner, round which the pattern can go.
func (m *model) coupled(r int) bool {
	n := len(m.room.Runs)
	if r == n-1 && !m.room.Closed {
		return false
	}
	kind := m.room.Runs[r].Right.Kind
	return kind.IsCorner() && m.room.Runs[(r+1)%n].Left.Kind == kind
}

// sharesInside reports whether run r shares an inside corner with the next run: then one passes and
// the other butts, and a mismatch is seen.
func (m *model) sharesInside(r int) bool {
	return m.coupled(r) && m.room.Runs[r].Right.Kind == InsideCorner
}

// origin returns the origin on run r that residue number i stands for, in [0, pitch).
func (m *model) origin(r, i int) fraction.Length {
	return groove.Modulo(m.residues[r][i].Add(m.shift[r]), m.room.Profile.Pitch())
}
