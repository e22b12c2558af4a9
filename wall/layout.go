package wall

import (
	"container/heap"
	"context"
	"iter"
	"slices"

	"example.com/groovewright/fraction/enum"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

// Layout is one way to panel a room. It is not changed after it is made.
type Layout struct {
	Runs      []RunLayout // as in the room
	Pieces    []Piece     // in order of fitting; number n is at index n-1
	Blemishes []Blemish   // every term with a weight
	Total     fraction.Ratio
	Joints    []Joint // run by run, the seams last

	// Broken counts the hard rules that had to be broken: seams too near a
	// box, panels narrower than the least, a run's only exposed end cut.
	Broken int

	// Cost is what the pieces cost by an [Objective]; 0 but for LayoutsByCost.
	Cost fraction.Length
}

// RunLayout is the layout of one run, in run coordinates.
type RunLayout struct {
	Limits [2]fraction.Length // leftmost and rightmost x that panels reach

	// EndPhases are the phases at the left and right end; a leaning end counts
	// at its middle height.
	EndPhases [2]fraction.Length

	SetOut   SetOut
	Corner   *Corner   // at the right end, where the run shares it
	Restarts []Restart // in the direction of work
	Panels   []Panel   // from left to right
}

// SetOut says where the pattern of a run starts: measure from From in Direction; a repeat starts
// at Origin.
type SetOut struct {
	From, Origin fraction.Length
	Direction    Direction
}

// Direction is the way to work along a run.
type Direction uint8

// The directions.
const (
	Right Direction = iota
	Left
)

var directions = enum.Of[Direction]("right", "left")

// String returns the word of the direction.
func (d Direction) String() string { return directions.String(d) }

// MarshalText returns the word of the direction.
func (d Direction) MarshalText() ([]byte, error) { return directions.Marshal(d) }

// UnmarshalText reads the word of a direction.
func (d *Direction) UnmarshalText(text []byte) error { return directions.Unmarshal(text, d) }

// Corner is the corner at the right end of a run. At an inside corner Passes
// and Butts are the numbers of the runs, at an outside corner both are -1.
type Corner struct {
	Next          int
	Passes, Butts int
	Mismatch      fraction.Length
}

// Restart is a break at which the pattern starts afresh: beyond it, in the
// direction of work, a repeat starts at Origin.
type Restart struct {
	At, Origin, Mismatch fraction.Length
}

// Panel is one sheet's width of a run. Its edges are its own; between
// neighbours lies the seam gap. Pieces are the numbers of the pieces into which
// openings cut it, from the top down.
type Panel struct {
	Number                int // in order of fitting, from 1
	Left, Right           fraction.Length
	LeftPhase, RightPhase fraction.Length
	Pieces                []int
}

// Piece is one piece of panelling, face on, its origin at the lower left of its
// bounding box, which stands at At on the run.
type Piece struct {
	Number    int
	Label     string // the panel's number, with a letter where it is in several pieces
	Run       int
	Panel     int // number
	At        cutout.Point
	Shape     cutout.Shape
	LeftPhase fraction.Length
	Holes     []string // by hole of the shape, the opening's name
	Closing   bool     // the last of its run: measured again on the wall before it is cut
}

// Layouts yields the layouts of the room in order: the fewest hard rules
// broken (and only those layouts which break no more than they must), then
// blemish from least up, then fewer pieces, cuts more alike at both ends of
// runs, a wider narrowest panel; what ties still is in a fixed order. Each
// layout comes once. The room must not be changed while it runs.
//
// Where there is an error it comes alone and last: [*FieldError] values joined for
// a room that makes no sense, a [*NoLayoutError] for one that cannot be covered,
// a *fraction.OverflowError for numbers that are too fine, and the context's own
// error, within a second, once it has ended.
//
// The first layout costs time in proportion to the runs, to the square of the
// origins tried, and to the seam lines times those within one sheet; each
// further one little.
func Layouts(ctx context.Context, room Room) iter.Seq2[Layout, error] { return layouts(ctx, room, nil) }

func layouts(ctx context.Context, room Room, objective *Objective) iter.Seq2[Layout, error] {
	if ctx == nil {
		ctx = context.Background()
	}
	return func(yield func(Layout, error) bool) {
		s, err := newSearch(ctx, &room, objective)
		if err != nil {
			yield(Layout{}, err)
			return
		}
		for {
			layout, more, err := s.next()
			if err != nil {
				yield(Layout{}, err)
				return
			}
			if !more || !yield(layout, nil) {
				return
			}
		}
	}
}

// search is a best-first search over the paths of a room.
type search struct {
	m        *model
	frontier frontier
	closing  bool // the room closes at an inside corner
	least    int  // hard rules that the first layout had to break; -1 before it
}

func newSearch(ctx context.Context, room *Room, objective *Objective) (s *search, err error) {
	defer fraction.Catch(&err)
	defer catchStop(&err)
	if err := room.Validate(); err != nil {
		return nil, err
	}
	m, err := newModel(ctx, room)
	if err != nil {
		return nil, err
	}
	m.objective = objective
	s = &search{m: m, least: -1, closing: room.Closed && m.sharesInside(len(room.Runs)-1)}
	for k, ends := range m.leftEnds() {
		for _, start := range []bool{false, true} {
			if start && !s.closing || slices.Contains(m.varying, 0) && ends[0] != start {
				continue
			}
			s.begin(newChain(m, start, -1, ends), k)
		}
	}
	heap.Init(&s.frontier)
	if len(s.frontier) == 0 {
		return nil, m.whyNone()
	}
	return s, nil
}

// leftEnds returns each way to make the left ends of the varying runs: by run,
// whether it butts there. If there are none, that is nil alone.
func (m *model) leftEnds() [][]bool {
	if len(m.varying) == 0 {
		return [][]bool{nil}
	}
	var ends [][]bool
	for choice := range 1 << len(m.varying) {
		butts := make([]bool, len(m.room.Runs))
		for k, r := range m.varying {
			butts[r] = choice>>k&1 == 1
		}
		ends = append(ends, butts)
	}
	return ends
}

// begin puts the beginnings of the layouts of a chain on the frontier; number is
// that of its way to make the left ends, for ties.
func (s *search) begin(c *chain, number int) {
	w := c.solve(c.start)
	if !s.closing {
		if w.afterOK[0] {
			s.frontier = append(s.frontier, &path{chain: c, bound: w.after[0], sofar: noRank, j: c.start, choice: number})
		}
		return
	}
	for i, ok := range w.onOK {
		if !ok {
			continue
		}
		choice := 2 * (number*len(w.onOK) + i)
		if c.start.butts {
			choice++
		}
		// The bound leaves out the corner where the room closes.
		s.frontier = append(s.frontier, &path{chain: c, bound: w.on[i], sofar: noRank, j: c.start, residue: i, choice: choice})
	}
}

// next returns the next layout, or false if there is none.
func (s *search) next() (layout Layout, more bool, err error) {
	defer fraction.Catch(&err)
	defer catchStop(&err)
	for len(s.frontier) > 0 {
		check(s.m.ctx)
		p := heap.Pop(&s.frontier).(*path)
		switch {
		case s.least >= 0 && p.bound.broken > s.least:
			return Layout{}, false, nil
		case s.closing && p.chain.residue < 0:
			c := newChain(s.m, p.j.butts, p.residue, p.chain.butts)
			if r, ok := c.rest(c.start, 0); ok {
				q := *p
				q.chain, q.bound = c, r
				heap.Push(&s.frontier, &q)
			}
		case p.sol == nil && p.j.run == len(s.m.room.Runs):
			s.least = p.bound.broken
			layout, err := s.m.build(p)
			return layout, err == nil, err
		default:
			p.grow(&s.frontier)
		}
	}
	if s.least < 0 {
		return Layout{}, false, s.m.whyNone()
	}
	return Layout{}, false, nil
}

// stopped is what a search panics with when its context has ended.
type stopped struct{ cause error }

// check stops the search that runs under ctx when ctx has ended. It stands in each
// loop that may run long.
func check(ctx context.Context) {
	if err := ctx.Err(); err != nil {
		panic(stopped{err})
	}
}

// catchStop makes an error of what check panics with.
func catchStop(err *error) {
	switch caught := recover().(type) {
	case nil:
	case stopped:
		*err = caught.cause
	default:
		panic(caught)
	}
}

// leg is one stretch of a finished path with the places of its seams by bay.
type leg struct {
	sol   *solution
	nodes [][]int
	chain *chain
	index int // residue
	next  junction
}

// legs returns the stretches of a finished path in order.
func (p *path) legs() []leg {
	var steps []*path
	for ; p.parent != nil; p = p.parent {
		steps = append(steps, p)
	}
	slices.Reverse(steps)
	var legs []leg
	for _, q := range steps {
		from := q.parent
		if from.sol == nil { // q chose a stretch
			option := q.chain.from(from.j)[q.choice]
			legs = append(legs, leg{sol: option.sol, nodes: make([][]int, len(option.sol.bays)), chain: q.chain, index: option.residue, next: option.next})
			continue
		}
		last := &legs[len(legs)-1]
		last.nodes[from.bay] = append(last.nodes[from.bay], q.choice)
	}
	return legs
}
