package nest

import (
	"cmp"
	"fmt"
	"slices"
)

var debug bool

// The fullest sheet: of all sets of parts that can be cut from one sheet, the
// one with the greatest sum of values. With it any values of the parts become a
// bound: no sheet holds more than the fullest one.

// fullest is one search for the fullest sheet of a kind.
type fullest struct {
	*exact
	kind  int
	value []int64 // by group
	order []int   // groups, most value for their area first
	rank  [][]int // the same by each weight that is used as a bound
	most  int64   // the greatest value so far
	set   set     // with that value
	limit int     // of nodes
}

// boundsUsed is how many of the weights bound a branch of fullest.
const boundsUsed = 4

// fullest returns the set of greatest value that can be cut from a sheet of the
// kind, if that value is above the given one; ok is false if the search had to
// end before it was sure.
func (e *exact) fullest(value []int64, kind int, above int64, nodes int) (s set, most int64, ok bool) {
	f := fullest{exact: e, kind: kind, value: value, most: above, limit: e.nodes + nodes}
	k := &e.job.kinds[kind]
	var all []int
	for g := range e.groups {
		if value[g] > 0 && e.job.fits(k, &e.groups[g].piece) {
			all = append(all, g)
		}
	}
	for i := range min(boundsUsed, len(e.weigh.all)) {
		rank := slices.Clone(all)
		slices.SortStableFunc(rank, func(a, b int) int {
			return compareProducts(value[b], f.weightOf(i, a), value[a], f.weightOf(i, b))
		})
		f.rank = append(f.rank, rank)
	}
	if f.order = all; len(f.rank) > 0 {
		f.order = f.rank[0]
	}
	doubtful := e.doubtful
	e.doubtful = false
	f.extend(set{}, 0, 0)
	ok = !e.doubtful && e.nodes <= f.limit
	e.doubtful = doubtful
	return f.set, f.most, ok
}

// weightOf returns the weight of one piece of a group.
func (f *fullest) weightOf(i, g int) int64 { return int64(f.weigh.all[i].each[f.groups[g].start]) }

func (f *fullest) extend(s set, from int, value int64) {
	if value > f.most {
		f.most, f.set = value, s
	}
	if from == len(f.order) || f.nodes > f.limit || value+f.atMost(s, from) <= f.most {
		return
	}
	g := &f.groups[f.order[from]]
	sets := []set{s}
	for n := 1; n <= len(g.pieces); n++ {
		more := s.plus(g.lowest(n))
		if !f.fits(more, f.kind) {
			break
		}
		sets = append(sets, more)
	}
	for n := len(sets) - 1; n >= 0; n-- {
		f.extend(sets[n], from+1, value+int64(n)*f.value[f.order[from]])
	}
}

// atMost returns more value than groups from the given place on can add.
func (f *fullest) atMost(s set, from int) int64 {
	var open int64
	for _, g := range f.order[from:] {
		open += f.value[g] * int64(len(f.groups[g].pieces))
	}
	for i, rank := range f.rank {
		if open > 0 {
			open = min(open, f.byWeight(i, rank, s, from))
		}
	}
	return open
}

// byWeight fills the weight that is left with the groups that give most value
// for it, the last by the fraction.
func (f *fullest) byWeight(i int, rank []int, s set, from int) (value int64) {
	room := int64(f.weigh.all[i].whole[f.kind]) - int64(f.weigh.all[i].of(s))
	for _, g := range rank {
		if slices.Index(f.order, g) < from {
			continue
		}
		w, n := f.weightOf(i, g), int64(len(f.groups[g].pieces))
		if n*w <= room {
			value += n * f.value[g]
			room -= n * w
			continue
		}
		n = room / w
		value += n * f.value[g]
		room -= n * w
		return value + scaled(f.value[g], uint64(room), uint64(w)) + 1
	}
	return value
}

// sheetOfPrices is what a sheet should hold at prices that the linear programme
// sets; finer ones gain nothing.
const sheetOfPrices = 1 << 20

// learn finds weights that suit just this job: prices of the groups by column
// generation, for sheets of the first kind that is not limited. They are added
// to the weights.
func (e *exact) learn(pool []set, nodes int) {
	kind := e.shelf[0]
	for _, k := range e.shelf {
		if !e.limited[k] {
			kind = k
			break
		}
	}
	end := e.nodes + nodes
	need, most := make([]int, len(e.groups)), make([]int, len(e.groups))
	for g := range e.groups {
		need[g] = len(e.groups[g].pieces)
		for most[g] < need[g] && e.fits(e.groups[g].lowest(most[g]+1), kind) {
			most[g]++
		}
		most[g] = max(1, most[g])
	}
	e.columns = append(e.columns, pool...)
	lp := newCovering(need, most)
	e.enterAll(lp, e.columns)
	var best prices
	for e.nodes < end {
		p := prices{value: lp.wholePrices(sheetOfPrices)}
		above := int64(sheetOfPrices + len(e.groups))
		s, holds, sure := e.tryFillings(p.value, kind, above)
		if debug {
			fmt.Println("try", e.nodes, float64(dot(p.value, need))/sheetOfPrices, float64(dot(p.value, need))/float64(holds), sure, s.size())
		}
		if holds == above {
			s, holds, sure = e.fullest(p.value, kind, above, min(end-e.nodes, mostPricing))
			if debug {
				fmt.Println("price", e.nodes, float64(dot(p.value, need))/sheetOfPrices, float64(dot(p.value, need))/float64(holds), sure, s.size())
			}
		}
		if !sure && holds == above {
			s, holds, sure = e.fullest(p.value, kind, above, end-e.nodes)
		}
		if sure {
			p.holds, p.total = holds, dot(p.value, need)
			if best.value == nil || compareProducts(p.total, best.holds, best.total, p.holds) > 0 {
				best = p
			}
		}
		e.learned = sure && holds == above
		if holds == above || sure && e.solved(best) || !lp.enter(e.count(s)) {
			break
		}
		e.columns = append(e.columns, s)
	}
	if best.value != nil {
		e.weighBy(best, kind, end)
	}
}

// mostPricing is how many nodes are spent on a set to enter the linear programme
// before any that improves it will do.
const mostPricing = 2000

// tryFillings looks quickly for a set worth more than above at the values.
func (e *exact) tryFillings(value []int64, kind int, above int64) (s set, holds int64, sure bool) {
	holds = above
	key := make([]int64, len(e.groups))
	order := make([]int, 0, len(e.one.groupOf))
	for n := range ranks * splits * 3 {
		for g := range key {
			q := &e.groups[g]
			key[g] = value[g] << 20 / (q.w * q.h)
			if n >= ranks*splits {
				key[g] += key[g] * (e.rand.Int64N(129) - 64) / 256
			}
		}
		byKey := slices.Clone(e.byArea)
		slices.SortStableFunc(byKey, func(a, b int) int { return cmp.Compare(key[b], key[a]) })
		order = order[:0]
		for _, g := range byKey {
			if value[g] > 0 {
				order = append(order, e.groups[g].pieces...)
			}
		}
		from := e.filler.steps
		spots, _ := e.filler.fill(kind, order, manner{n % ranks, n / ranks % splits}, nil, nil)
		e.nodes += (e.filler.steps - from) / 8
		var t set
		var worth int64
		for _, at := range spots {
			g := e.groupOfPiece[at.piece]
			t = t.with(e.groups[g].start + e.groups[g].of(t))
			worth += value[g]
		}
		if worth > holds {
			s, holds = t, worth
		}
	}
	return s, holds, false
}

// enterAll enters the sets of a pool until none improves the linear programme.
func (e *exact) enterAll(lp *covering, pool []set) {
	for again := true; again; {
		again = false
		for _, s := range pool {
			count := e.count(s)
			worth := 0.0
			for g, n := range count {
				worth += float64(lp.price[g] * float64(n))
			}
			if worth > 1+1e-6 && lp.enter(count) {
				again = true
			}
		}
	}
}

// count returns how many pieces of each group are in the set.
func (e *exact) count(s set) []int {
	count := make([]int, len(e.groups))
	for g := range count {
		count[g] = e.groups[g].of(s)
	}
	return count
}

func dot(value []int64, count []int) (total int64) {
	for g, v := range value {
		total += v * int64(count[g])
	}
	return total
}

// prices are values of the groups, what the fullest sheet holds of them and what
// the whole job is worth.
type prices struct {
	value        []int64
	holds, total int64
}

// solved reports whether the prices prove the best nest known to be best.
func (e *exact) solved(p prices) bool {
	return len(e.weigh.kinds) == 1 && (p.total+p.holds-1)/p.holds >= int64(e.best.sheets)
}

// weighBy makes weights of prices found for sheets of one kind; for each other
// kind the fullest sheet has to be found too.
func (e *exact) weighBy(p prices, kind, end int) {
	whole := make([]uint64, len(e.job.kinds))
	for _, k := range e.weigh.kinds {
		holds, ok := p.holds, true
		if k != kind {
			_, holds, ok = e.fullest(p.value, k, 0, end-e.nodes)
		}
		if !ok {
			return
		}
		whole[k] = uint64(holds)
	}
	var each []uint64
	for g := range e.groups {
		for range e.groups[g].pieces {
			each = append(each, uint64(p.value[g]))
		}
	}
	e.weigh.learn("prices of the parts from a linear programme, and the fullest sheet at them", each, whole)
}
