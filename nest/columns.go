package nest

import (
	"cmp"
	"slices"

	"example.com/groovewright/nest/internal/line"
)

// fullest is one search for the fullest sheet of a kind: of all sets of parts that can be cut from
// it, the one with the greatest sum of values. With it any values of the parts become a bound.
type fullest struct {
	*exact
	kind  int
	value []int64 // by group
	order []int   // groups, most value for their area first
	place []int   // of each group in order
	rank  [][]int // the groups by value for each weight that is used as a bound
	most  int64   // the greatest value so far
	set   set     // with that value
	limit int     // of nodes
}

// boundsUsed is how many of the weights bound a branch of fullest.
const boundsUsed = 4

// fullest returns the set of greatest value that can be cut from a sheet of the kind, if that is
// above the given value; ok is false if the search had to end before it was sure.
func (e *exact) fullest(value []int64, kind int, above int64, nodes int) (s set, most int64, ok bool) {
	if e.one.pitch == 0 {
		if s, most, sure, tried := e.fullestByBuilds(value, kind, above, nodes); tried {
			return s, most, sure
		}
	}
	return e.fullestBySets(value, kind, above, nodes)
}

// fullestBySets is fullest, one group of pieces after another.
func (e *exact) fullestBySets(value []int64, kind int, above int64, nodes int) (s set, most int64, ok bool) {
	f := fullest{exact: e, kind: kind, value: value, most: above, limit: e.nodes + nodes}
	k := &e.job.kinds[kind]
	for g := range e.groups {
		if value[g] > 0 && e.job.fits(k, &e.groups[g].piece) {
			f.order = append(f.order, g)
		}
	}
	for i := range min(boundsUsed, len(e.weigh.all)) {
		rank := slices.Clone(f.order)
		slices.SortStableFunc(rank, func(a, b int) int {
			return compareProducts(uint64(value[b]), e.weigh.each[a][i], uint64(value[a]), e.weigh.each[b][i])
		})
		f.rank = append(f.rank, rank)
	}
	if len(f.rank) > 0 {
		f.order = f.rank[0]
	}
	f.place = make([]int, len(e.groups))
	for n, g := range f.order {
		f.place[g] = n
	}
	inconclusive := e.inconclusive
	e.inconclusive = false
	f.extend(set{}, 0, 0, tally{})
	ok = !e.inconclusive && e.nodes <= f.limit && !e.stopped
	e.inconclusive = inconclusive
	return f.set, f.most, ok
}

func (f *fullest) extend(s set, from int, value int64, in tally) {
	if value > f.most {
		f.most, f.set = value, s
	}
	if from == len(f.order) || f.nodes > f.limit || f.over() || value+f.atMost(&in, from) <= f.most {
		return
	}
	at := f.order[from]
	g := &f.groups[at]
	n := 0
	for n < len(g.pieces) {
		sum := in.plus(f.weigh.each[at].times(n + 1))
		if !f.fits(s.plus(g.lowest(n+1)), &sum, f.kind) {
			break
		}
		n++
	}
	for ; n >= 0; n-- {
		f.extend(s.plus(g.lowest(n)), from+1, value+int64(n)*f.value[at], in.plus(f.weigh.each[at].times(n)))
	}
}

// atMost returns no less value than the groups from the given place on can add.
func (f *fullest) atMost(in *tally, from int) int64 {
	f.nodes++
	var open int64
	for _, g := range f.order[from:] {
		open += f.value[g] * int64(len(f.groups[g].pieces))
	}
	for i, rank := range f.rank {
		open = min(open, f.byWeight(i, rank, f.weigh.whole[f.kind][i]-in[i], from))
	}
	return open
}

// byWeight fills the room with the groups that give most value for a weight, the last in part.
func (f *fullest) byWeight(i int, rank []int, room uint64, from int) (value int64) {
	for _, g := range rank {
		if f.place[g] < from {
			continue
		}
		w, n := f.weigh.each[g][i], uint64(len(f.groups[g].pieces))
		if n*w <= room {
			value += int64(n) * f.value[g]
			room -= n * w
			continue
		}
		n = room / w
		return value + int64(n)*f.value[g] + scaled(f.value[g], room-n*w, w)
	}
	return value
}

// sheetOfPrices is what a sheet should hold at the prices of the linear programme (finer ones gain
// nothing), and mostPricing the nodes spent on the best set to enter it before any better will do.
const sheetOfPrices, mostPricing = 1 << 20, 2000

// generateColumns finds weights that suit just this job: prices of the groups by column generation,
// for sheets of the first kind that is not limited. They are added to the weights.
func (e *exact) generateColumns(nodes int) {
	unlimited := slices.IndexFunc(e.stockOrder, func(k int) bool { return !e.job.kinds[k].limited })
	end, kind := e.nodes+nodes, e.stockOrder[max(0, unlimited)]
	need, most := e.count(setOf(e.groups)), make([]int, len(e.groups))
	for g := range e.groups {
		for most[g] < need[g] && e.comesFrom(e.groups[g].lowest(most[g]+1), kind) {
			most[g]++
		}
		most[g] = max(1, most[g])
	}
	lp := line.NewMaster(need, most)
	for _, s := range e.columns {
		lp.Add(e.count(s))
	}
	var best prices
	for e.nodes < end && !e.over() {
		lp.Optimize()
		p := prices{value: lp.Prices(sheetOfPrices)}
		above := int64(sheetOfPrices + len(e.groups))
		s, holds := e.tryFillings(p.value, kind, above)
		sure := false
		if holds == above {
			s, holds, sure = e.fullest(p.value, kind, above, min(end-e.nodes, mostPricing))
		}
		if !sure && holds == above {
			s, holds, sure = e.fullest(p.value, kind, above, end-e.nodes)
		}
		solved := false // the prices prove the best nest known to be best
		if sure {
			p.holds = uint64(holds)
			for g, v := range p.value {
				p.total += uint64(v) * uint64(need[g])
			}
			if best.value == nil || compareProducts(p.total, best.holds, best.total, p.holds) > 0 {
				best = p
			}
			solved = len(e.weigh.kinds) == 1 && (best.total+best.holds-1)/best.holds >= uint64(e.best.sheets)
		}
		e.generated = sure && holds == above
		if holds == above || solved || !lp.Add(e.count(s)) {
			break
		}
		e.columns = append(e.columns, s)
	}
	if best.value != nil {
		e.weighBy(best, kind, end)
	}
}

// tryFillings looks quickly for a set worth more than above at the values.
func (e *exact) tryFillings(value []int64, kind int, above int64) (s set, holds int64) {
	holds = above
	key := make([]int64, len(e.groups))
	var byKey, order []int
	for n := range ranks * splits * 3 {
		byKey, order = byKey[:0], order[:0]
		for g := range key {
			q := &e.groups[g]
			key[g] = value[g] << 20 / (q.w * q.h)
			if n >= ranks*splits {
				key[g] += key[g] * (e.rand.Int64N(129) - 64) / 256
			}
			byKey = append(byKey, g)
		}
		slices.SortStableFunc(byKey, func(a, b int) int { return cmp.Compare(key[b], key[a]) })
		for _, g := range byKey {
			if value[g] > 0 {
				order = append(order, e.groups[g].pieces...)
			}
		}
		from := e.filler.steps
		spots, _ := e.filler.fill(kind, order, manner{n % ranks, n / ranks % splits}, nil, nil)
		e.nodes += (e.filler.steps - from) / 8
		var worth int64
		for _, at := range spots {
			worth += value[e.groupOfPiece[at.piece]]
		}
		if worth > holds {
			s, holds = e.setOn(spots), worth
		}
	}
	return s, holds
}

// count returns how many pieces of each group are in the set.
func (e *exact) count(s set) []int {
	count := make([]int, len(e.groups))
	for g := range count {
		count[g] = e.groups[g].of(s)
	}
	return count
}

// prices are values of the groups, what the fullest sheet holds and what the whole job is worth.
type prices struct {
	value        []int64
	holds, total uint64
}

// weighBy makes weights of prices for sheets of one kind, once it has the fullest of each other
// kind.
func (e *exact) weighBy(p prices, kind, end int) {
	each, whole := make([]uint64, len(e.groups)), make([]uint64, len(e.job.kinds))
	for _, k := range e.weigh.kinds {
		whole[k] = p.holds
		if k != kind {
			_, holds, ok := e.fullest(p.value, k, 0, end-e.nodes)
			if !ok {
				return
			}
			whole[k] = uint64(holds)
		}
	}
	for g, v := range p.value {
		each[g] = uint64(v)
	}
	if w := &e.weigh; w.generated { // in the place of the one before
		w.all = w.all[:len(w.all)-1]
	}
	e.weigh.generated = true
	e.weigh.add(LinearProgram, each, whole)
}
