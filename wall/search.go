package wall

import (
	"container/heap"
	"context"
	"iter"
	"slices"

	"example.com/groovewright/fraction"
)

// A layout is a path: at each junction it chooses how far the pattern runs on unbroken, how the run
// is made at its right end and where its origin lies; in each bay it chooses seam after seam. The
// best way to go on from every place is known exactly by dynamic programming from the end, so that
// best-first search over paths meets the layouts in order and each only once.

// Layouts yields the layouts of the room in order: the fewest hard rules broken (and only those
// layouts which break no more than they must), then blemish from least up, then fewer pieces, cuts
// more alike at both ends of runs, a wider narrowest panel; what ties still is in a fixed order.
// Each layout comes once. The room must not be changed while it runs.
//
// Where there is an error it comes alone and last: *fault.Fault values joined for a room that makes
// no sense, a [*NoLayoutError] for one that cannot be covered, a *fraction.OverflowError for
// numbers that are too fine, and the context's own error, within a second, once it has ended.
//
// The first layout costs time in proportion to the runs, to the square of the origins tried, and to
// the seam lines times those within one sheet; each further one little.
func Layouts(ctx context.Context, room Room) iter.Seq2[Layout, error] { return layouts(ctx, room, nil) }

func layouts(ctx context.Context, room Room, objective *Objective) iter.Seq2[Layout, error] {
	if ctx == nil {
		ctx = context.Background()
	}
	return func(yield func(Layout, error) bool) {
		s, err := newSearch(ctx, &room, objective)
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

// search is a best-first search over the paths of a room.
type search struct {
	m        *model
	frontier frontier
	closing  bool // the room closes at an inside corner
	least    int  // hard rules that the first layout had to break; -1 before it
}

func newSearch(ctx context.Context, room *Room, objective *Objective) (s *search, err error) {
	defer fraction.Catch(&err)
	if err := room.Validate(); err != nil {
		return nil, err
	}
	m := newModel(ctx, room)
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

// leftEnds returns each way to make the left ends of the varying runs: by run, whether it butts
// there. If there are none, that is nil alone.
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

// begin puts the beginnings of a chain's layouts on the frontier; ties go by its number.
func (s *search) begin(c *chain, number int) {
	add := func(bound cost, residue, choice int) {
		if bound.feasible() {
			s.frontier = append(s.frontier, &path{chain: c, bound: bound, soFar: zeroCost, j: c.start, option: option{residue: residue}, choice: choice})
		}
	}
	w := c.solve(c.start)
	if !s.closing {
		add(w.after[0], 0, number)
		return
	}
	for i := range w.on {
		choice := 2 * (number*len(w.on) + i)
		if c.start.butts {
			choice++
		}
		add(w.on[i], i, choice) // the bound leaves out the corner where the room closes
	}
}

// next returns the next layout, or false if there is none.
func (s *search) next() (layout Layout, more bool, err error) {
	defer fraction.Catch(&err)
	for len(s.frontier) > 0 {
		check(s.m.ctx)
		p := heap.Pop(&s.frontier).(*path)
		switch {
		case s.least >= 0 && p.bound.broken > s.least:
			return Layout{}, false, nil
		case s.closing && p.chain.residue < 0:
			c := newChain(s.m, p.j.butts, p.residue, p.chain.butts)
			if bound := c.rest(c.start, 0); bound.feasible() {
				q := *p
				q.chain, q.bound = c, bound
				heap.Push(&s.frontier, &q)
			}
		case p.sol == nil && p.j.run == len(s.m.room.Runs):
			s.least = p.bound.broken
			return s.m.build(p), true, nil
		default:
			p.grow(&s.frontier)
		}
	}
	if s.least < 0 {
		return Layout{}, false, s.m.whyNone()
	}
	return Layout{}, false, nil
}

// check stops the search that runs under ctx when ctx has ended: [fraction.Catch] makes an error of
// it. It stands in each loop that may run long.
func check(ctx context.Context) { fraction.Must(ctx, ctx.Err()) }

// leg is one stretch of a finished path with the places of its seams by bay.
type leg struct {
	option
	nodes [][]int
	chain *chain
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
			o := q.chain.from(from.j)[q.choice]
			legs = append(legs, leg{o, make([][]int, len(o.sol.bays)), q.chain})
			continue
		}
		last := &legs[len(legs)-1]
		last.nodes[from.bay] = append(last.nodes[from.bay], q.choice)
	}
	return legs
}

// path is the beginning of a layout.
type path struct {
	parent *path
	choice int // among the ways to go on from the parent; breaks ties
	depth  int
	chain  *chain
	soFar  cost // of what is chosen
	bound  cost // of the best layout that begins so

	j      junction // where the path stands, if sol is nil
	option          // that is being gone along; its residue is that of the last stretch
	bay    int
	node   int
}

// frontier is a heap of paths by bound, and of equal bounds by the order of their choices.
type frontier []*path

func (f frontier) Len() int           { return len(f) }
func (f frontier) Swap(i, j int)      { f[i], f[j] = f[j], f[i] }
func (f *frontier) Push(x any)        { *f = append(*f, x.(*path)) }
func (f frontier) Less(i, j int) bool { return f[i].before(f[j]) }
func (f *frontier) Pop() any {
	last := len(*f) - 1
	p := (*f)[last]
	(*f)[last] = nil
	*f = (*f)[:last]
	return p
}

func (p *path) before(q *path) bool {
	if c := p.bound.compare(&q.bound); c != 0 {
		return c < 0
	}
	for p.depth > q.depth && p.parent != q {
		p = p.parent
	}
	for q.depth > p.depth && q.parent != p {
		q = q.parent
	}
	for p.parent != q.parent {
		p, q = p.parent, q.parent
	}
	return p.choice < q.choice
}

// grow adds to the frontier every way to go on from p.
func (p *path) grow(f *frontier) {
	if p.sol == nil {
		p.growJunction(f)
		return
	}
	c, s := &p.sol.bays[p.bay], p.sol.stretch
	rest := p.chain.rest(p.next, p.residue)
	upright := s.widestAt(p.sol.origin, c.left[p.node])
	for j := s.reach(c, p.node); j > p.node; j-- {
		width, ok := s.panelWidth(p.sol.origin, c, p.node, j, upright)
		if !ok {
			continue
		}
		q := *p
		q.parent, q.choice, q.depth, q.node = p, j, p.depth+1, j
		q.soFar = s.panelCost(c, p.node, j, width, p.soFar).plus(c.seam[j])
		q.bound = q.soFar.plus(c.rest[j]).plus(rest)
		if j == len(c.at)-1 {
			q.bay, q.node = p.bay+1, 0
			q.arrive()
		}
		heap.Push(f, &q)
	}
}

// arrive moves a path that has covered all bays of its stretch on to the next junction.
func (p *path) arrive() {
	if p.bay == len(p.sol.bays) {
		p.j, p.sol = p.next, nil
	}
}

func (p *path) growJunction(f *frontier) {
	c := p.chain
	for i, o := range c.from(p.j) {
		met := p.soFar.plus(c.meet(p.j, p.residue, o.residue))
		bound := met.plus(o.sol.best).plus(c.rest(o.next, o.residue))
		if bound.feasible() {
			q := &path{parent: p, choice: i, depth: p.depth + 1, chain: c, option: o, soFar: met.plus(o.sol.base), bound: bound}
			q.arrive()
			heap.Push(f, q)
		}
	}
}
