package wall

import (
	"container/heap"
	"context"
	"iter"
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
)

// A layout is a path: at each junction it chooses how far the pattern runs on unbroken, how the run
// is made at its right end and where its origin lies; in each bay it chooses seam after seam. The
// best way to go on from every place is known exactly by dynamic programming from the end, so that
// best-first search over paths meets the layouts in order and each only once.

// Layouts yields the layouts of the room in order: the fewest hard rules broken (and only those
// layouts which break no more than they must), then blemish from least up, then fewer pieces, cuts
// more alike at both ends of runs, more panels that are whole sheets, a wider narrowest panel; what ties
// still is in a fixed order.
// Each layout comes once. The room must not be changed while it runs. Blemishes that differ by less
// than they are rounded count as equal: see Layout.Floor.
//
// Where there is an error it comes alone and last: *fault.Fault values joined for a room that makes
// no sense, a [*NoLayoutError] for one that cannot be covered, a *fraction.OverflowError for
// numbers that are too fine, and the context's own error, within a second, once it has ended.
//
// The first layout costs time in proportion to the runs, to the square of the origins tried, and to
// the seam lines times those within one sheet; each further one little. Whoever wants layouts of a
// room in several orders makes a [Model] first.
func Layouts(ctx context.Context, room Room) iter.Seq2[Layout, error] { return layouts(ctx, room, nil) }

func layouts(ctx context.Context, room Room, objective *Objective) iter.Seq2[Layout, error] {
	return func(yield func(Layout, error) bool) {
		m, err := NewModel(ctx, room)
		if err != nil {
			yield(Layout{}, err)
			return
		}
		m.layouts(ctx, objective)(yield)
	}
}

// search is a best-first search over the paths of a room.
type search struct {
	ctx       context.Context
	m         *Model
	objective *Objective // nil for Layouts
	units     int64      // that go to an inch of what the objective measures
	frontier  frontier
	closing   bool  // the room closes at an inside corner
	least     int32 // hard rules that the first layout had to break; -1 before it
	programs  map[*stretch]*program
	priced    map[*region][][][]pricedPart // by slots; nil before the first program
	scratch   cover
	count     func(from, to int64) int64 // in steps, by the measure of the objective
}

func (m *Model) newSearch(ctx context.Context, objective *Objective) (s *search, err error) {
	defer fraction.Catch(&err)
	if m == nil || m.room == nil {
		return nil, noModel()
	}
	if err := m.tooTall(); err != nil {
		return nil, err
	}
	s = &search{ctx: ctx, m: m, least: -1, closing: m.room.Closed && m.sharesInside(len(m.room.Runs)-1),
		programs: map[*stretch]*program{}}
	if objective != nil {
		if objective.Of == nil {
			return nil, &fault.Fault{Path: fault.Of("Of"), Want: "a function that says what an inch of a piece costs"}
		}
		s.setObjective(objective)
	}
	for k, ends := range m.leftEnds() {
		for _, start := range []bool{false, true} {
			if start && !s.closing || slices.Contains(m.varying, 0) && ends[0] != start {
				continue
			}
			s.begin(newChain(s, start, -1, ends), k)
		}
	}
	heap.Init(&s.frontier)
	if len(s.frontier) == 0 {
		return nil, s.whyNone()
	}
	return s, nil
}

// leftEnds returns each way to make the left ends of the varying runs: by run, whether it butts
// there. If there are none, that is nil alone.
func (m *Model) leftEnds() [][]bool {
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
			s.frontier = append(s.frontier, &path{chain: c, bound: bound, soFar: zeroCost, j: c.start, residue: residue, choice: choice})
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
		check(s.ctx)
		p := heap.Pop(&s.frontier).(*path)
		switch {
		case s.least >= 0 && p.bound.broken > s.least:
			return Layout{}, false, nil
		case s.closing && p.chain.residue < 0:
			c := newChain(s, p.j.butts, p.residue, p.chain.butts)
			if bound := c.rest(c.start, 0); bound.feasible() {
				q := *p
				q.chain, q.bound = c, bound
				heap.Push(&s.frontier, &q)
			}
		case p.program == nil && p.j.run == len(s.m.room.Runs):
			s.least = p.bound.broken
			return s.build(p), true, nil
		default:
			p.grow(&s.frontier)
		}
	}
	if s.least < 0 {
		return Layout{}, false, s.whyNone()
	}
	return Layout{}, false, nil
}

// check stops the search that runs under ctx when ctx has ended: [fraction.Catch] makes an error of
// it. It stands in each loop that may run long.
func check(ctx context.Context) { fraction.Must(ctx, ctx.Err()) }

// leg is one stretch of a finished path with the places of its seams by bay.
type leg struct {
	sol     *solution
	residue int
	next    junction
	nodes   [][]int
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
		if from := q.parent; from.program != nil {
			last := &legs[len(legs)-1]
			last.nodes[from.bay] = append(last.nodes[from.bay], q.choice)
		} else { // q chose a stretch
			o := q.chain.solve(from.j).all[q.choice/q.chain.width(from.j)]
			legs = append(legs, leg{o.solution(q.residue), q.residue, o.next, make([][]int, len(o.bays))})
		}
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

	j         junction // where the path stands, if no program is gone along
	way                // that is being gone along
	residue   int      // of the last stretch
	bay, node int
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
	if p.program == nil {
		p.growJunction(f)
		return
	}
	sol := p.solution(p.residue)
	c := &sol.bays[p.bay]
	rest := p.chain.rest(p.next, p.residue)
	s := p.stops(c, p.node, len(c.at)-1)
	for j := s.far; j >= s.near; j-- {
		if !c.rest[j].feasible() || j > s.upright && !p.gives(c, sol.origin, p.node, j) {
			continue
		}
		q := *p
		q.parent, q.choice, q.depth, q.node = p, j, p.depth+1, j
		p.sheetCost(c, &s, p.node, j, &p.soFar, &q.soFar)
		q.soFar = q.soFar.plus(c.seam[j])
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
	if p.bay == len(p.bays) {
		p.j, p.program = p.next, nil
	}
}

func (p *path) growJunction(f *frontier) {
	c := p.chain
	w, coupler := c.solve(p.j), c.coupler(p.j)
	width := c.width(p.j)
	for k, o := range w.all {
		for i := range width {
			if !c.tries(p.j, i) || !o.best(i).feasible() {
				continue
			}
			met := p.soFar.plus(coupler.meet(p.residue, i))
			bound := met.plus(*o.best(i)).plus(c.rest(o.next, i))
			if bound.feasible() {
				q := &path{parent: p, choice: k*width + i, depth: p.depth + 1, chain: c, way: o, residue: i,
					soFar: met.plus(o.edgeCost(i)), bound: bound}
				q.arrive()
				heap.Push(f, q)
			}
		}
	}
}
