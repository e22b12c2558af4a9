package nest

import (
	"context"
	"math"
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest/internal/line"
)

// Budget is how long a search may take, in steps and not in time, so that the same problem always
// gives the same answer. A context may end it sooner.
type Budget struct {
	Nodes int // steps, [DefaultNodes] if 0 or less; some five million take a second
	// Draft leaves out [PostOptimize] and saws in any order that serves, for nests on trial.
	Draft bool
	// Enough, where it is not nil, says of a bound that no nest within it is of use. The search ends as
	// soon as one is enough, and its result has no nest but the bound alone.
	Enough func(Bound) bool
	// Memory, where it is not nil, spares searches of similar problems what they have in common. What
	// can be proved within the budget may depend on the searches before, so it is the same in the same order of them.
	Memory *Memory
}

// Memory holds what searches found that others may ask for again: packings, and prices that bound. The zero Memory is empty; it
// serves one search at a time.
type Memory struct {
	line   line.Memory
	duals  map[string][]dual // of heights
	boards [][]standard      // prices, the last first
}

// DefaultNodes is the number of steps where a [Budget] gives none.
const DefaultNodes = 10_000_000

// Search looks for the best nest: of those that place most parts the one that costs least, then
// buys fewest sheets (those of stock that is not limited), then takes fewest in all. That order is
// proved where Bound.Proved says so; of nests alike in it Search prefers, without proof, the one
// that leaves the largest rectangle and then the one with the fewest cuts.
//
// It starts from what FirstFit and its like find, where sheets are stacks from shelves packed in one
// dimension, improves that, bounds it by linear programming, rounds the programme's solution, and
// searches exactly, with any number of stages of cutting; for jobs of kitchen size that ends with a
// proof. More than 128 parts are not searched exactly, unless they are boards of one width and
// length, but all else is done for them too. When a budget or a context ends, the result is the best
// found, its Status says why, and its Bound holds all the same; a nil context never ends. The errors
// are those of [LowerBound].
func Search(ctx context.Context, p Problem, b Budget) (r Result, err error) {
	defer fraction.Catch(&err)
	j, err := prepare(&p)
	if err != nil {
		return Result{}, err
	}
	if ctx == nil {
		ctx = context.Background()
	}
	if b.Memory != nil {
		j.memory = b.Memory
	}
	if b.Nodes <= 0 {
		b.Nodes = DefaultNodes
	}
	s := searcher{ctx: ctx, job: j, budget: min(b.Nodes, math.MaxInt/64), best: plan{left: j.except(nil)}}
	s.start()
	known := math.MaxInt
	if only := len(j.kinds) == 1 && !j.kinds[0].limited; only && len(s.best.left) == 0 {
		known = len(s.best.sheets)
	}
	if s.enough = b.Enough; s.enough == nil {
		s.enough = never
	}
	s.bound, s.relax = j.lower(func(b Bound) bool { return b.Sheets >= known || s.enough(b) })
	if s.run(); s.enough(s.bound) {
		return Result{Bound: s.bound, Status: Spent, Nodes: s.nodes}, nil
	}
	most := draftNodes
	if !b.Draft {
		j.postOptimize(ctx, &s.best)
		most = maxNodes
	}
	if r, err = j.result(s.best, most); err != nil {
		return Result{}, err
	}
	r.Bound, r.Nodes = s.bound, s.nodes
	if j.settle(&r, &s.best); r.Status != Proved {
		r.Status = Spent
		if ctx.Err() != nil {
			r.Status = Stopped
		}
	}
	return r, nil
}

// searcher is one run of Search.
type searcher struct {
	ctx    context.Context
	job    *job
	budget int
	enough func(Bound) bool
	nodes  int
	bound  Bound
	relax  *relaxed  // for the pieces that some stock can give
	least  objective // from bound: no nest is better
	best   plan
}

// shares are the parts of the budget, in 1/4096, which the search spends in turn on improving the
// best nest, on the linear programme and on the exact search: so easy jobs are proved at once, and
// hard ones improved first.
var shares = [...]struct{ improve, generate, exact int }{{1, 2, 4}, {4, 8, 24}, {32, 64, 96}, {200, 500, 500}, {840, 900, 921}}

// fewShares are those for jobs of up to mostFew pieces, where the exact search is soon at its end.
var fewShares = [...]struct{ improve, generate, exact int }{{1, 1, 8}, {2, 2, 32}, {4, 4, 120}, {16, 256, 512}, {200, 600, 2338}}

const mostFew = 30

// boardShares are those for boards, of which the linear programme knows most.
var boardShares = [...]struct{ improve, generate, exact int }{{1, 64, 4}, {4, 256, 24}, {16, 768, 96}, {64, 1200, 500}, {128, 400, 571}}

// share returns so many parts of the budget.
func (s *searcher) share(n int) int { return s.budget/4096*n + s.budget%4096*n/4096 }

func (s *searcher) run() {
	j := s.job
	possible := s.relax.pieces
	s.least = objective{len(j.pieces) - len(possible), j.coins(s.bound.Cost), s.bound.Bought, s.bound.Sheets}
	if len(possible) == 0 || s.done() {
		return
	}
	groups := j.groups(possible)
	weigh := newWeights(j, groups, s.relax)
	var e *exact
	if len(possible) <= mostInSet {
		e = newExact(s.ctx, j, groups, weigh, s.least)
	}
	var c *generator
	if len(groups) <= mostRows {
		c = newGenerator(s.ctx, j, s.relax, groups, weigh, e)
	}
	boards := c != nil && c.boards
	if boards {
		c.recall()
		defer c.remember()
	}
	s.raise(weigh.atLeast(groups))
	if !s.done() && j.stacked(possible) {
		s.stack(possible)
	}
	if s.done() {
		return
	}
	m := j.newImprover(s.ctx, &s.best, s.least)
	turns := shares
	switch {
	case boards:
		turns = boardShares
	case len(possible) <= mostFew:
		turns = fewShares
	}
	for _, share := range turns {
		m.run(s.share(share.improve))
		s.take(m.now.clone())
		if c != nil && s.share(share.generate) >= c.least() && !s.done() {
			s.generate(c, &m, s.share(share.generate))
		}
		if e != nil && !s.done() {
			s.exact(e, &m, s.share(share.exact))
		}
		if s.done() {
			break
		}
	}
	if s.nodes += m.filler.steps / fillStepsPerNode; c != nil {
		s.nodes += c.nodes
	}
	if e != nil {
		s.nodes += e.nodes
	}
}

// generate runs the linear programme: it may raise the bound, and where it cannot, its solution may
// be rounded to a better nest.
func (s *searcher) generate(c *generator, m *improver, nodes int) {
	for _, l := range slices.Concat(s.best.sheets, m.pool) {
		if l.kind == c.kind {
			c.add(l.spots)
		}
	}
	m.pool = m.pool[:0]
	end := c.nodes + nodes
	aim := 0
	if only := len(s.relax.kinds) == 1 && !s.job.kinds[c.kind].limited; only {
		aim = len(s.best.sheets) - 1
	}
	c.run(aim, nodes)
	s.raise(c.weigh.atLeast(c.groups))
	for aim > 0 && !s.done() && c.nodes < end && s.ctx.Err() == nil {
		from := c.nodes
		p := c.dive(aim, end-c.nodes)
		near := s.job.newImprover(s.ctx, &p, s.least)
		near.rand = c.rand
		near.run(c.nodes - from)
		c.nodes += near.filler.steps / fillStepsPerNode
		if s.take(near.now) {
			m.now = s.best.clone()
			aim = len(s.best.sheets) - 1
		}
	}
	m.least = s.least
}

// start packs by levels, sheets taken in the usual order, and with each kind of stock as the
// favourite; then sheets are changed for cheaper ones that will do.
func (s *searcher) start() {
	j := s.job
	stock := j.stockOrder()
	orders := [][]int{stock}
	for i := range stock {
		if len(stock) > 1 {
			orders = append(orders, slices.Concat(stock[i:i+1], stock[:i], stock[i+1:]))
		}
	}
	pieces := j.except(nil)
	ways := [][]int{Crosscut: j.order(pieces, tallFirst), Rip: j.order(pieces, wideFirst)}
	for _, stock := range orders {
		for way, pieces := range ways {
			for _, best := range []bool{false, true} {
				p := j.levels(pieces, CutKind(way), best, stock)
				j.downsize(p.sheets, j.spare(p.sheets))
				s.take(p)
			}
		}
	}
}

func (s *searcher) done() bool {
	return s.bound.Proved || s.job.objective(&s.best).compare(s.least) <= 0 || s.enough(s.bound)
}

// take keeps a plan if it is better than the best so far.
func (s *searcher) take(p plan) bool {
	better := s.job.objective(&p).compare(s.job.objective(&s.best)) < 0
	if better {
		s.best = p
	}
	return better
}

// raise raises the bound, if the new one is higher.
func (s *searcher) raise(sheets int, coins int64, how Argument) {
	if sheets > s.bound.Sheets || coins > s.least.cost {
		s.bound.How = how
	}
	s.least.sheets = max(s.least.sheets, sheets)
	s.least.cost = max(s.least.cost, coins)
	s.least.bought = s.job.leastBought(s.least.sheets)
	s.bound.Sheets, s.bound.Bought, s.bound.Cost = s.least.sheets, s.least.bought, s.job.money(s.least.cost)
}

// exact runs the exact search and keeps what it finds and proves.
func (s *searcher) exact(e *exact, m *improver, nodes int) {
	e.best, e.found, e.least = s.job.objective(&s.best), nil, s.least
	sure := e.run(nodes)
	if e.found != nil {
		s.best = e.plan()
		m.now = s.best.clone()
	}
	if !sure || s.done() {
		return
	}
	s.prove()
}

// prove notes that an exact search found no better nest.
func (s *searcher) prove() {
	s.bound.Proved, s.bound.How = true, ExactSearch
	if best := s.job.objective(&s.best); best.left == s.least.left {
		s.bound.Cost = s.job.money(best.cost)
		if len(s.job.kinds) == 1 {
			s.bound.Sheets, s.bound.Bought = best.sheets, best.bought
		}
	}
}

// plan turns the sets found into places.
func (e *exact) plan() (p plan) {
	var spots []spot
	for _, c := range e.found {
		k := &e.job.kinds[c.kind]
		e.one.limit, e.one.spent = math.MaxInt, false // it fits: that was found before
		spots = e.one.place(spots, c.set, k.phase, 0, 0, e.one.fit(c.set, k))
	}
	spots = name(e.groups, spots)
	var placed []int
	for _, s := range spots {
		placed = append(placed, s.piece)
	}
	slices.Sort(placed)
	p.left = e.job.except(placed)
	for _, c := range e.found {
		n := c.set.size()
		p.sheets = append(p.sheets, layout{c.kind, spots[:n:n]})
		spots = spots[n:]
	}
	return p
}
