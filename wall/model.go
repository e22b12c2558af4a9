package wall

import (
	"context"
	"iter"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
)

// Model is a room with all that its layouts have in common, whatever they are ordered by. A Model
// serves any number of searches, also at once on several goroutines. The room that it was made of
// must not be changed as long as it is used.
//
// Its origins are kept as residues: a residue u stands for the origin shift[r] + u on run r, where
// the shifts are such that equal residues on neighbouring runs carry the pattern round their corner
// unbroken. But for caches behind locks nothing changes after it is made.
type Model struct {
	room      *Room
	sheets    []nest.Stock      // each as long as it is with its ends squared up
	scribable []nest.Stock      // the sheets of the room that the model was made of
	shift     []fraction.Length // by run; one more at the end for going round a closed room
	group     []int             // by run: runs coupled by shared corners have one number
	residues  [][]fraction.Length
	origins   [][]fraction.Length // by run and residue, in [0, pitch)
	limits    [][][]limit         // by run and residue: the left limits that ask for it
	varying   []int               // runs whose left limit asks for a residue and depends on who passes
	bare      [][2]bool           // by run: whether its left and its right end stay bare, however it is fitted
	regions   map[regionKey]made[*region]
	stretches map[stretchKey]made[*stretch]
	couplers  map[junction]*coupler
}

type regionKey struct {
	run int
	fit fitting
}

type stretchKey struct {
	run, from, to int
	fit           fitting
}

// made is what was made, or why it was not.
type made[T any] struct {
	value T
	err   error
}

func (m *Model) region(r int, f fitting) (*region, error) {
	g := m.regions[regionKey{r, f}]
	return g.value, g.err
}

func (m *Model) stretch(r, from, to int, f fitting) (*stretch, error) {
	// What lies beyond a used break does not matter here.
	f.buttsLeft = f.buttsLeft && from < 0
	f.buttsRight = f.buttsRight && to == len(m.room.Runs[r].Breaks)
	s := m.stretches[stretchKey{r, from, to, f}]
	return s.value, s.err
}

// NewModel works out what the layouts of a room have in common: how runs are joined, which origins
// are tried, and the columns and edges of each run, fitted in each way. It fails as [Layouts] does.
// A nil context never ends.
func NewModel(ctx context.Context, room Room) (m *Model, err error) {
	defer fraction.Catch(&err)
	if ctx == nil {
		ctx = context.Background()
	}
	if err := room.Validate(); err != nil {
		return nil, err
	}
	n := len(room.Runs)
	sheets := squared(&room)
	m = &Model{room: &room, sheets: sheets, scribable: sheets, shift: make([]fraction.Length, n+1), group: make([]int, n), bare: make([][2]bool, n),
		regions: map[regionKey]made[*region]{}, stretches: map[stretchKey]made[*stretch]{}, couplers: map[junction]*coupler{}}
	nothing := true
	for r := range n { // before it is asked which runs are coupled
		g, err := newRegion(ctx, m.room, r, fitting{})
		if leavesNothing(err) {
			g, err = &region{right: room.Runs[r].Width}, nil
		} else {
			nothing = false
		}
		m.regions[regionKey{r, fitting{}}] = made[*region]{g, err}
		if err != nil {
			continue
		}
		if m.bare[r] = g.bareEnds(); m.bare[r] != [2]bool{} {
			if g, err := newRegion(ctx, m.room, r, fitting{true, true}); err == nil {
				butting := g.bareEnds()
				m.bare[r] = [2]bool{m.bare[r][0] && butting[0], m.bare[r][1] && butting[1]}
			}
		}
	}
	if nothing {
		return nil, &NoLayoutError{Run: room.Runs[0].Name, Reason: NothingLeft}
	}
	for r := range n {
		m.shift[r+1] = m.shiftAfter(r)
		if r > 0 && m.coupled(r-1) {
			m.group[r] = m.group[r-1]
		} else if r > 0 {
			m.group[r] = m.group[r-1] + 1
		}
		for _, f := range m.fittings(r)[1:] {
			g, err := newRegion(ctx, m.room, r, f)
			m.regions[regionKey{r, f}] = made[*region]{g, err}
		}
	}
	if last := m.group[n-1]; room.Closed && m.coupled(n-1) { // going round joins the last group to the first
		for r := n - 1; r >= 0 && m.group[r] == last; r-- {
			m.group[r] = 0
		}
	}
	m.findResidues(ctx)
	for r := range n {
		m.makeStretches(ctx, r)
		m.makeCouplers(r)
	}
	m.linkStretches()
	return m, nil
}

// WithStock returns the model of the same room with other stock. It shares what does not depend on
// that; what closing pieces have left to scribe is still what the stock of m allows.
func (m *Model) WithStock(stock []nest.Stock) (*Model, error) {
	if m == nil || m.room == nil {
		return nil, noModel()
	}
	room, other := *m.room, *m
	room.Stock = stock
	var f faults
	if room.checkStock(&f); f.Err() != nil {
		return nil, f.Err()
	}
	other.room, other.sheets = &room, squared(&room)
	return &other, nil
}

// Origins returns how many origins are tried on a run: the time of a programme grows with it.
func (m *Model) Origins(run int) int { return len(m.origins[run]) }

// Layouts yields the layouts of the room as the function [Layouts] does.
func (m *Model) Layouts(ctx context.Context) iter.Seq2[Layout, error] { return m.layouts(ctx, nil) }

// LayoutsByCost yields the layouts of the room as the function [LayoutsByCost] does.
func (m *Model) LayoutsByCost(ctx context.Context, o Objective) iter.Seq2[Layout, error] {
	return m.layouts(ctx, &o)
}

func (m *Model) layouts(ctx context.Context, objective *Objective) iter.Seq2[Layout, error] {
	if ctx == nil {
		ctx = context.Background()
	}
	return func(yield func(Layout, error) bool) {
		s, err := m.newSearch(ctx, objective)
		for err == nil {
			var layout Layout
			var more bool
			if layout, more, err = s.next(); err == nil && (!more || !yield(layout, nil)) {
				return
			}
		}
		yield(Layout{}, err)
	}
}

func noModel() error { return &fault.Fault{Want: "a model made by NewModel"} }

// squared returns the room's stock, each as long as it is with its ends squared up.
func squared(room *Room) (sheets []nest.Stock) {
	for _, s := range room.Stock {
		s.Length = s.Usable(room.Saw)
		sheets = append(sheets, s)
	}
	return sheets
}

// shiftAfter returns the shift of the run after run r, whose own is known.
func (m *Model) shiftAfter(r int) fraction.Length {
	next := m.shift[r].Sub(m.room.Runs[r].Width)
	switch thickness := m.room.Profile.Thickness.Mul(2); m.room.Runs[r].Right.Kind {
	case InsideCorner:
		next = next.Add(thickness)
	case OutsideCorner:
		next = next.Sub(thickness)
	}
	return groove.Modulo(next, m.room.Profile.Pitch())
}

// fittings returns the ways to fit run r.
func (m *Model) fittings(r int) []fitting {
	all := []fitting{{}}
	if m.sharesInside(r) {
		all = append(all, fitting{buttsRight: true})
	}
	if m.sharesInside(m.before(r)) {
		for _, f := range all {
			f.buttsLeft = true
			all = append(all, f)
		}
	}
	return all
}

// makeStretches makes the stretches of run r, fitted in each way, from each break to each later one.
func (m *Model) makeStretches(ctx context.Context, r int) {
	last := len(m.room.Runs[r].Breaks)
	for _, f := range m.fittings(r) {
		for from := -1; from < last; from++ {
			for to := from + 1; to <= last; to++ {
				if f.buttsLeft && from >= 0 || f.buttsRight && to < last {
					continue
				}
				s, err := m.newStretch(ctx, r, from, to, f)
				m.stretches[stretchKey{r, from, to, f}] = made[*stretch]{s, err}
			}
		}
	}
}

// linkStretches lets stretches of a run that are alike share what they can.
func (m *Model) linkStretches() {
	for key, made := range m.stretches {
		s, r := made.value, key.run
		if made.err != nil {
			continue
		}
		if keeper, err := m.stretch(r, -1, len(m.room.Runs[r].Breaks), fitting{}); err == nil && s.seesAsDoes(keeper) {
			s.keeper = keeper
		}
		whole, err := m.stretch(r, key.from, key.to, fitting{buttsRight: key.fit.buttsRight})
		if err == nil && key.fit.buttsLeft && whole.shearsTo(s) {
			whole.shorn, s.whole = s, whole
		}
	}
}

// coupled reports whether run r and the next one share a corner, round which the pattern can go. Round
// one where either stays bare there is none.
func (m *Model) coupled(r int) bool {
	n := len(m.room.Runs)
	if r == n-1 && !m.room.Closed || m.bare[r][1] || m.bare[(r+1)%n][0] {
		return false
	}
	kind := m.room.Runs[r].Right.Kind
	return kind.IsCorner() && m.room.Runs[(r+1)%n].Left.Kind == kind
}

// sharesInside reports whether run r shares an inside corner with the next run: then one passes and
// the other butts, and a mismatch is seen.
func (m *Model) sharesInside(r int) bool {
	return m.coupled(r) && m.room.Runs[r].Right.Kind == InsideCorner
}

// ring reports whether the runs could butt against each other all round, with none to fit first. What is on the wall
// already leaves no choice of that.
func (m *Model) ring() bool {
	for r := range m.room.Runs {
		if !m.sharesInside(r) {
			return false
		}
	}
	return len(m.room.Runs) > 1 && len(m.room.Installed) == 0
}

// origin returns the origin on run r that residue number i stands for, in [0, pitch).
func (m *Model) origin(r, i int) fraction.Length { return m.origins[r][i] }
