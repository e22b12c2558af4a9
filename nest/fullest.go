package nest

import "slices"

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

// fullest returns the set of greatest value that can be cut from a sheet of the kind, if that is
// above the given value, one group of pieces after another; ok is false if the search had to end
// before it was sure.
func (e *exact) fullest(value []int64, kind int, above int64, nodes int) (s set, most int64, ok bool) {
	e.limit, e.stopped = e.nodes+nodes, false
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
