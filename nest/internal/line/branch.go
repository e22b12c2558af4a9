package line

import (
	"cmp"
	"math"
	"math/bits"
	"slices"
)

// branching is the search of [Boards]: board by board, each with the largest item left on it, on a
// board of every kind, completed in every undominated way. The cost of a board is its price times
// weight, plus one: by price, then by number.
type branching struct {
	boards []Board
	job    *job
	meter  *meter
	weight int64
	coin   int64 // greatest common divisor of the prices: every sum of prices is a multiple

	worths []worth
	left   []int // boards left of each kind, plenty if not limited
	state  *completion
	seen   map[string]int64 // least cost that reached each state
	memory int

	chosen   []chosen
	best     []chosen
	bestCost int64
	lower    int64
	how      Argument
}

// worth is a valuation of the items: need items of the values, and a board of a kind holds at most
// most. Any valuation bounds the cost from below.
type worth struct {
	how    Argument
	values []int64 // of each kind of item
	most   []int64 // of each kind of board
	order  []int   // kinds of boards by cost per most, cheapest first
}

// worthsKept is the number of valuations that the search looks at in each node.
const worthsKept = 6

const never = math.MaxInt64

func newBranching(boards []Board, j *job, meter *meter) *branching {
	items := 0
	for _, count := range j.counts {
		items += count
	}
	b := &branching{
		boards: boards, job: j, meter: meter, weight: int64(items) + 1,
		left: make([]int, len(boards)), bestCost: never,
		state: newCompletion(j, j.counts, meter), seen: map[string]int64{},
	}
	for i, board := range boards {
		b.left[i] = items
		if board.Limited {
			b.left[i] = min(items, board.Count)
		}
		b.coin = divisor(b.coin, board.Price)
	}
	b.worths = []worth{b.area()}
	b.lower, b.how = b.round(b.bound(b.worths[0])), Area
	return b
}

// cost is the cost of one board of a kind.
func (b *branching) cost(board int) int64 {
	return b.boards[board].Price*b.weight + 1
}

// divisor is the greatest common divisor, where zero counts as a multiple of everything.
func divisor(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// round raises a bound on a whole cost to the next cost that prices can make: a price that is no
// multiple of coin rises, with one board at least.
func (b *branching) round(bound int64) int64 {
	if b.coin == 0 || bound == never || bound/b.weight%b.coin == 0 {
		return bound
	}
	return ceilDiv(bound/b.weight, b.coin)*b.coin*b.weight + 1
}

// value adds the valuations that bound best at the start: dual feasible functions of each length,
// with the exact greatest value on each board.
func (b *branching) value() {
	k := newKnapsack(b.job)
	if k == nil {
		return
	}
	type rated struct {
		worth worth
		bound int64
	}
	var all []rated
	for i, board := range b.boards {
		if slices.ContainsFunc(b.boards[:i], func(o Board) bool { return o.Length == board.Length }) {
			continue
		}
		for _, d := range Duals(board.Length, b.job.sizes, b.job.counts) {
			if !b.meter.spend(1 + k.cells()/cellsPerNode) {
				return
			}
			w := b.apply(d, board.Length, k)
			all = append(all, rated{w, b.round(b.bound(w))})
		}
	}
	slices.SortStableFunc(all, func(x, y rated) int { return cmp.Compare(y.bound, x.bound) })
	for _, r := range all[:min(len(all), worthsKept)] {
		b.worths = append(b.worths, r.worth)
		if r.bound > b.lower {
			b.lower, b.how = r.bound, r.worth.how
		}
	}
}

// area values items by size and boards by length.
func (b *branching) area() worth {
	w := worth{how: Area, values: b.job.sizes}
	for _, board := range b.boards {
		w.most = append(w.most, board.Length)
	}
	b.rank(&w)
	return w
}

// apply values items by a function of the length of some board.
func (b *branching) apply(d Dual, length int64, k *knapsack) worth {
	w := worth{how: DualFunction}
	for _, size := range b.job.sizes {
		w.values = append(w.values, d.At(min(size, length)))
	}
	k.solve(w.values, b.job.counts, never, 0)
	for _, board := range b.boards {
		w.most = append(w.most, k.upTo(board.Length))
	}
	b.rank(&w)
	return w
}

// rank orders the boards by what a unit of the valuation costs on them.
func (b *branching) rank(w *worth) {
	for i := range b.boards {
		if w.most[i] > 0 {
			w.order = append(w.order, i)
		}
	}
	slices.SortStableFunc(w.order, func(x, y int) int {
		high, low := bits.Mul64(uint64(b.cost(x)), uint64(w.most[y]))
		otherHigh, otherLow := bits.Mul64(uint64(b.cost(y)), uint64(w.most[x]))
		return cmp.Or(cmp.Compare(high, otherHigh), cmp.Compare(low, otherLow))
	})
}

// bound is the least cost, fractions of boards allowed, of boards that together hold the value of
// the needed items; never if the boards left do not.
func (b *branching) bound(w worth) int64 {
	var need, cost int64
	for kind, count := range b.state.need {
		need += int64(count) * w.values[kind]
	}
	for _, board := range w.order {
		if need <= 0 {
			break
		}
		whole := min(int64(b.left[board]), need/w.most[board])
		need -= whole * w.most[board]
		cost += whole * b.cost(board)
		if whole < int64(b.left[board]) && need > 0 { // need < most
			high, low := bits.Mul64(uint64(need), uint64(b.cost(board)))
			part, rest := bits.Div64(high, low, uint64(w.most[board]))
			cost += int64(part)
			if rest > 0 {
				cost++
			}
			need = 0
		}
	}
	if need > 0 {
		return never
	}
	return cost
}

// run searches from the greedy choices.
func (b *branching) run() {
	if b.lower == never {
		return
	}
	b.greedy()
	if b.bestCost == b.lower {
		return
	}
	if b.value(); b.lower == never {
		return
	}
	b.search(0)
	if b.best != nil && b.proved() {
		if b.bestCost > b.lower {
			b.lower, b.how = b.bestCost, Search
		}
	}
}

// proved reports whether the search has left nothing out.
func (b *branching) proved() bool { return b.state.proved() }

// search completes the chosen boards, which cost so much, if that can be better than the best.
func (b *branching) search(cost int64) {
	if !b.meter.spend(1) || b.bestCost == b.lower {
		return
	}
	if b.job.total(b.state.need) == 0 {
		if cost < b.bestCost {
			b.best, b.bestCost = slices.Clone(b.chosen), cost
		}
		return
	}
	for _, w := range b.worths {
		if bound := b.bound(w); bound == never || b.round(cost+bound) >= b.bestCost {
			return
		}
	}
	if b.known(cost) {
		return
	}
	for _, branch := range b.branches() {
		b.cut(branch, 1)
		b.search(cost + b.cost(branch.board))
		b.cut(branch, -1)
	}
}

// cut cuts the board, or with sign -1 takes it back.
func (b *branching) cut(c chosen, sign int) {
	b.state.pack(c.pattern, -sign)
	b.left[c.board] -= sign
	if sign > 0 {
		b.chosen = append(b.chosen, c)
	} else {
		b.chosen = b.chosen[:len(b.chosen)-1]
	}
}

// known reports whether the state was reached before for no more, and notes it.
func (b *branching) known(cost int64) bool {
	key := b.state.key(0)
	for i, left := range b.left {
		if b.boards[i].Limited {
			key += string([]byte{byte(left), byte(left >> 8)})
		}
	}
	if before, ok := b.seen[key]; ok && before <= cost {
		return true
	}
	if b.memory += len(key); b.memory < memory {
		b.seen[key] = cost
	}
	return false
}

// branches lists the ways to cut the largest item, least bound first, then least waste.
func (b *branching) branches() []chosen {
	type way struct {
		chosen
		bound, waste int64
	}
	first := 0
	for b.state.need[first] == 0 {
		first++
	}
	var ways []way
	for board, kind := range b.boards {
		if b.left[board] == 0 || kind.Length < b.job.sizes[first] {
			continue
		}
		for _, c := range b.state.completions(kind.Length, kind.Length) {
			w := way{chosen{board, c.pattern}, 0, c.waste}
			b.cut(w.chosen, 1)
			rest := b.bound(b.worths[len(b.worths)-1])
			b.cut(w.chosen, -1)
			if rest != never {
				w.bound = rest + b.cost(board)
				ways = append(ways, w)
			}
		}
	}
	slices.SortStableFunc(ways, func(x, y way) int {
		return cmp.Or(cmp.Compare(x.bound, y.bound), cmp.Compare(x.waste, y.waste))
	})
	list := make([]chosen, len(ways))
	for i, w := range ways {
		list[i] = w.chosen
	}
	return list
}
