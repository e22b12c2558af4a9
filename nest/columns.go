package nest

import (
	"cmp"
	"context"
	"math"
	"math/rand/v2"
	"slices"

	"example.com/groovewright/nest/internal/line"
)

// generator solves the linear programme of the job by column generation: the least number of sheets
// of one kind such that their fillings, in any shares, hold all pieces (P. C. Gilmore and R. E.
// Gomory, "Multistage cutting stock problems of two and more dimensions", Operations Research 13
// (1965)). Its prices of the pieces bound every nest, whatever fillings are known, if no sheet is
// worth more than a certain sum: J. M. Farley, "A note on bounding a class of linear programming
// problems", Operations Research 38 (1990). That sum may be any upper bound. So once the programme
// needs fewer sheets than the bound to be proved, it can prove nothing and the search ends; and
// before that only fillings matter that are worth more than the proof allows.
type generator struct {
	ctx       context.Context
	job       *job
	relax     *relaxed
	groups    []group
	groupOf   []int // of each piece
	weigh     *weights
	exact     *exact // nil where there are too many pieces for it
	kind      int    // stock of the fillings: the first in order that is not limited
	boards    bool   // sheets of that kind are boards, see [boards]
	need      []int
	lp        *line.Master
	columns   [][]spot // fillings, groups in place of pieces, as the programme numbers them
	filler    filler
	counts    []int // memory of add
	rand      *rand.Rand
	nodes     int
	limit     int
	best      prices
	exhausted bool // no more can be proved
}

// prices are values of the groups, what a sheet holds at most and what the whole job is worth.
type prices struct {
	value        []int64
	holds, total uint64
}

// mostRows bounds the different pieces of the programme, whose memory and pivots grow with their
// square.
const mostRows = 500

// sheetOfPrices is what a sheet should hold at the prices of the programme; finer ones gain nothing.
const sheetOfPrices = 1 << 20

// So many simple steps of a grid or of the programme, or joins of builds, or steps of a filler take
// as long as a node.
const gridStepsPerNode, joinsPerNode, fillStepsPerNode = 128, 2, 16

// mostGrid bounds the nodes of one grid.
const mostGrid = 200_000

// enoughColumns is how many fillings are added before prices are calculated anew.
const enoughColumns = 60

func newGenerator(ctx context.Context, j *job, relax *relaxed, groups []group, weigh *weights, e *exact) *generator {
	c := &generator{ctx: ctx, job: j, relax: relax, groups: groups, weigh: weigh, exact: e, rand: dice(), groupOf: make([]int, len(j.pieces)), counts: make([]int, len(groups))}
	c.filler.job = j
	order := j.stockOrder()
	c.kind = order[max(0, slices.IndexFunc(order, func(k int) bool { return !j.kinds[k].limited }))]
	for g := range groups {
		c.need = append(c.need, len(groups[g].pieces))
		for _, i := range groups[g].pieces {
			c.groupOf[i] = g
		}
	}
	c.lp = line.NewMaster(c.need, slices.Repeat([]int{1}, len(groups)))
	if c.boards = c.onBoards(c.kind); c.boards {
		c.lp.Loosen()
	}
	for g := range groups {
		c.columns = append(c.columns, []spot{{piece: g, x: j.next(j.kinds[c.kind].phase, 0, &groups[g].piece)}})
	}
	return c
}

// add adds a filling and reports whether it was new.
func (c *generator) add(spots []spot) bool {
	clear(c.counts)
	for _, at := range spots {
		c.counts[c.groupOf[at.piece]]++
	}
	if len(spots) == 0 || !c.lp.Add(c.counts) {
		return false
	}
	filling := slices.Clone(spots)
	for i, at := range spots {
		filling[i].piece = c.groupOf[at.piece]
	}
	c.columns = append(c.columns, filling)
	return true
}

// least returns for how many nodes a run is worth its while: some pivots for each piece.
func (c *generator) least() int {
	n := len(c.groups)
	return n * n * n / (8 * gridStepsPerNode)
}

// over reports whether the search has to end.
func (c *generator) over() bool { return c.nodes >= c.limit || c.ctx.Err() != nil }

// optimize solves the programme of the fillings known.
func (c *generator) optimize() float64 {
	value, pivots := c.lp.Optimize()
	n := len(c.groups)
	c.nodes += 1 + (pivots+1)*(4*len(c.columns)+n*n)/gridStepsPerNode
	return value
}

// run generates columns for so many nodes, to prove that more than the given number of sheets are
// needed, or with 0 as many as can be.
func (c *generator) run(sheets int, nodes int) {
	c.limit = c.nodes + nodes
	for !c.exhausted && !c.over() {
		if value := c.optimize(); sheets > 0 && value <= float64(sheets) {
			return
		}
		now := c.lp.Prices(sheetOfPrices)
		above := int64(sheetOfPrices + len(c.groups))
		if c.boards && c.near(now, above) {
			continue
		}
		if (c.boards || c.fillings(now, above, c.need) == 0) && !c.price(now, sheets) {
			c.exhausted = !c.over()
		}
	}
}

// pricesOf returns values of the groups with what the whole job is worth by them.
func (c *generator) pricesOf(value []int64) prices {
	p := prices{value: value}
	for g, v := range value {
		p.total += uint64(v) * uint64(c.need[g])
	}
	return p
}

// price looks thoroughly for fillings that are worth more than a sheet at the prices, and bounds the
// job by them.
func (c *generator) price(value []int64, sheets int) (more bool) {
	p := c.pricesOf(slices.Clone(value))
	above := int64(sheetOfPrices + len(c.groups))
	if sheets > 0 {
		above = max(above, int64(p.total-1)/int64(sheets))
	}
	enough := enoughColumns
	if c.job.pitch > 0 {
		enough = 0 // fillings may not be real, so the most they are worth is wanted
	}
	most, more := c.fullest(c.kind, value, above, enough)
	c.raise(p, most)
	return more
}

// fillings looks quickly for fillings worth more than above, of the pieces needed, and adds them.
func (c *generator) fillings(value []int64, above int64, need []int) (added int) {
	key := make([]int64, len(c.groups))
	var byKey, order []int
	var spots []spot
	var rest []int
	for n := range 4 {
		byKey, order = byKey[:0], order[:0]
		for g := range key {
			if value[g] <= 0 || need[g] == 0 {
				continue
			}
			q := &c.groups[g]
			key[g] = value[g] << 20 / (q.w * q.h)
			if n == 1 {
				key[g] = value[g]
			} else if n > 1 {
				key[g] += key[g] * (c.rand.Int64N(129) - 64) / 256
			}
			byKey = append(byKey, g)
		}
		slices.SortStableFunc(byKey, func(a, b int) int { return cmp.Compare(key[b], key[a]) })
		for _, g := range byKey {
			order = append(order, c.groups[g].pieces[:need[g]]...)
		}
		for m := range ranks * splits {
			from := c.filler.steps
			spots, rest = c.filler.fill(c.kind, order, manner{m % ranks, m / ranks}, spots[:0], rest[:0])
			c.nodes += (c.filler.steps - from) / fillStepsPerNode
			var worth int64
			for _, at := range spots {
				worth += value[c.groupOf[at.piece]]
			}
			if worth > above && c.add(spots) {
				added++
			}
		}
	}
	return added
}

// fullest bounds what a sheet of the kind is worth: none is worth more than most, which is beyond
// mostWhole where nothing is known. It adds fillings worth more than above, if there are any, until
// they are enough; more reports whether it did.
func (c *generator) fullest(kind int, value []int64, above int64, enough int) (most int64, more bool) {
	if c.onBoards(kind) {
		most, filling := c.fullestBoard(kind, value, c.need, above)
		return most, kind == c.kind && c.add(filling)
	}
	if e := c.exact; e != nil && c.job.pitch > 0 {
		from := e.nodes
		s, most, sure := e.fullest(value, kind, above, c.limit-c.nodes)
		e.nodes, c.nodes = from, c.nodes+e.nodes-from
		if most > above && kind == c.kind {
			k := &e.job.kinds[kind]
			e.one.limit, e.one.spent = math.MaxInt, false
			more = c.add(name(c.groups, e.one.place(nil, s, k.phase, 0, 0, e.one.fit(s, k))))
		}
		if sure {
			return most, more
		}
		if more {
			return math.MaxInt64, true
		}
	}
	var in []int
	var items []item
	i := slices.Index(c.relax.kinds, kind)
	w, h := c.relax.span[i], c.relax.tall[i]
	for g := range c.groups {
		if value[g] > 0 && c.job.fits(&c.job.kinds[kind], &c.groups[g].piece) {
			n, _ := slices.BinarySearch(c.relax.pieces, c.groups[g].pieces[0])
			in = append(in, g)
			items = append(items, item{c.relax.pace[n], c.relax.height[n], value[g], c.need[g]})
		}
	}
	grid := newGrid(items, w, h, min(c.limit-c.nodes, mostGrid)/2*gridStepsPerNode)
	if grid == nil {
		return math.MaxInt64, false
	}
	c.nodes += grid.cost() / gridStepsPerNode
	var weighings []knapsack
	for n := 1; n < min(boundsUsed, len(c.weigh.all)); n++ {
		k := knapsack{whole: c.weigh.all[n].holds[kind]}
		for _, g := range in {
			k.each = append(k.each, c.weigh.each[g][n])
		}
		weighings = append(weighings, k)
	}
	b := newBuilds(grid, items, w, h, weighings...)
	most = b.run(above, enough, grid.cost()/gridStepsPerNode*joinsPerNode, (c.limit-c.nodes)*joinsPerNode, func() bool { return c.ctx.Err() != nil })
	c.nodes += b.steps / joinsPerNode
	if kind == c.kind {
		for _, f := range b.found {
			spots, wide := c.locate(nil, f, in, 0, 0)
			more = wide <= c.job.kinds[kind].w && c.add(spots) || more
		}
	}
	return most, more
}

// locate adds where the pieces of a build lie on a sheet, and returns where they end: there may be
// no room for the pattern that they need.
func (c *generator) locate(out []spot, b *build, in []int, x, y int64) (all []spot, end int64) {
	if b.item >= 0 {
		g := &c.groups[in[b.item]]
		x = c.job.next(c.job.kinds[c.kind].phase, x, &g.piece)
		return append(out, spot{g.pieces[0], x, y}), x + g.w
	}
	out, end = c.locate(out, b.near, in, x, y)
	if b.kind == Rip {
		return c.locate(out, b.far, in, end+c.job.kerf, y)
	}
	out, beside := c.locate(out, b.far, in, x, y+b.near.h)
	return out, max(end, beside)
}

// raise makes weights of prices by which a sheet is worth no more than most, if they bound the job better than those before and
// it is known what sheets of the other kinds hold.
func (c *generator) raise(p prices, most int64) {
	if p.holds = uint64(most); most <= 0 || p.holds >= mostWhole || c.best.value != nil && compareProducts(p.total, c.best.holds, c.best.total, p.holds) <= 0 {
		return
	}
	each, whole := make([]uint64, len(c.groups)), make([]uint64, len(c.job.kinds))
	for _, k := range c.weigh.kinds {
		whole[k] = p.holds
		if k != c.kind {
			most, _ := c.fullest(k, p.value, 0, 0)
			if whole[k] = uint64(most); whole[k] >= mostWhole {
				return
			}
		}
	}
	for g, v := range p.value {
		each[g] = uint64(v)
	}
	if w := c.weigh; w.generated { // in the place of the one before
		w.all = w.all[:len(w.all)-1]
	}
	c.best, c.weigh.generated = p, true
	c.weigh.add(LinearProgram, each, whole)
}
