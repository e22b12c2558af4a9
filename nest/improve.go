package nest

import (
	"context"
	"math/rand/v2"
	"slices"
)

// improver is one run of improvement: a few sheets are emptied and filled again in many ways, and
// the new ones kept if they are no worse (the ruin and recreate of G. Schrimpf and others, J.
// Computational Physics 159 (2000)). Between nests with as many sheets the one is better whose
// sheets are filled more unequally: one of them is nearly empty, and soon another try saves it (the
// measure of E. Falkenauer, "A hybrid grouping genetic algorithm for bin packing", Journal of
// Heuristics 2 (1996)).
type improver struct {
	ctx         context.Context
	job         *job
	filler      filler
	rand        *rand.Rand
	now         plan
	least       objective // no nest is better: stop there
	stockOrder  []int     // kinds of stock
	keys        []int64   // of order
	order       []int
	spots, full []spot // of a try, and of the fullest
	rest, over  []int  // what these leave over
	chosen      []int
	pool        []layout // sheets that were filled well
}

// mostPool is how many sheets an improver remembers, and tries how often each sheet is filled
// before the best filling is taken.
const mostPool, tries = 4000, 12

// area is what pieces take of a sheet.
func (j *job) area(spots []spot) (area int64) {
	for _, s := range spots {
		area += j.pieces[s.piece].w * j.pieces[s.piece].h
	}
	return area
}

// fullness is the square of the part of a sheet that is filled, in 1/2^20.
func (j *job) fullness(l *layout) int64 {
	k := &j.kinds[l.kind]
	f := j.area(l.spots) / ((k.w*k.h)>>10 + 1)
	return f * f
}

// newImprover prepares the improvement of a plan.
func (j *job) newImprover(ctx context.Context, p *plan, least objective) improver {
	return improver{
		ctx: ctx, job: j, filler: filler{job: j}, rand: dice(), now: p.clone(), least: least,
		stockOrder: j.stockOrder(),
	}
}

// run improves for so many nodes or until nothing can be better.
func (m *improver) run(nodes int) {
	limit := m.filler.steps + nodes*fillStepsPerNode
	for round := 0; m.filler.steps < limit; round++ {
		if round&15 == 0 && m.ctx.Err() != nil || m.job.objective(&m.now).compare(m.least) <= 0 || len(m.now.sheets) == 0 {
			return
		}
		m.round()
	}
}

// round empties some sheets and fills them again.
func (m *improver) round() {
	j, sheets := m.job, m.now.sheets
	spare := j.spare(sheets)
	chosen := m.choose(min(len(sheets), 2+m.rand.IntN(3)))
	var pool, kinds []int
	var emptied []layout
	full := int64(0)
	for _, c := range chosen {
		for _, s := range sheets[c].spots {
			pool = append(pool, s.piece)
		}
		kinds, emptied = append(kinds, sheets[c].kind), append(emptied, sheets[c])
		full += j.fullness(&sheets[c])
	}
	pool = append(pool, m.now.left...)
	m.rand.Shuffle(len(kinds), func(a, b int) { kinds[a], kinds[b] = kinds[b], kinds[a] })
	// Half of the time a sheet more is tried, if there are several kinds.
	if len(m.stockOrder) > 1 && m.rand.IntN(2) > 0 {
		if extra := m.stockOrder[m.rand.IntN(len(m.stockOrder))]; spare[extra] > 0 {
			kinds = slices.Insert(kinds, 0, extra)
		}
	}
	var refilled []layout
	left := pool
	for _, kind := range kinds {
		if len(left) == 0 {
			break
		}
		var l layout
		if l, left = m.fullest(kind, left); len(l.spots) > 0 {
			refilled = append(refilled, l)
		}
	}
	for _, l := range emptied {
		spare[l.kind]++
	}
	for _, l := range refilled {
		spare[l.kind]--
	}
	j.downsize(refilled, spare)
	for i := range refilled {
		full -= j.fullness(&refilled[i])
	}
	before, after := plan{emptied, m.now.left}, plan{refilled, left}
	if c := j.objective(&after).compare(j.objective(&before)); c > 0 || c == 0 && full > 0 {
		m.filler.steps++
		return
	}
	for i := range refilled {
		if len(m.pool) < mostPool {
			m.pool = append(m.pool, refilled[i])
		}
	}
	m.now.left = left
	slices.Sort(chosen)
	for i := len(chosen) - 1; i >= 0; i-- {
		m.now.sheets = slices.Delete(m.now.sheets, chosen[i], chosen[i]+1)
	}
	m.now.sheets = append(m.now.sheets, refilled...)
}

// choose picks n sheets, the first of them the least filled of two.
func (m *improver) choose(n int) []int {
	sheets := m.now.sheets
	chosen := m.chosen[:0]
	for i := range sheets {
		chosen = append(chosen, i)
	}
	m.rand.Shuffle(len(chosen), func(a, b int) { chosen[a], chosen[b] = chosen[b], chosen[a] })
	m.chosen = chosen
	if last := len(chosen) - 1; last > 0 && m.job.fullness(&sheets[chosen[last]]) < m.job.fullness(&sheets[chosen[0]]) {
		chosen[0], chosen[last] = chosen[last], chosen[0]
	}
	return chosen[:n]
}

// fullest fills one sheet in several ways and returns the fullest; rest is what does not go in.
func (m *improver) fullest(kind int, pool []int) (l layout, rest []int) {
	most := int64(-1)
	l.kind = kind
	for range tries {
		m.shuffle(pool)
		how := manner{m.rand.IntN(ranks), m.rand.IntN(splits)}
		m.spots, m.rest = m.filler.fill(kind, m.order, how, m.spots[:0], m.rest[:0])
		all := len(m.rest) == 0
		if filled := m.job.area(m.spots); filled > most {
			most, m.spots, m.full, m.rest, m.over = filled, m.full, m.spots, m.over, m.rest
		}
		if all {
			break
		}
	}
	l.spots = slices.Clone(m.full)
	return l, slices.Clone(m.over)
}

// shuffle puts the pool into m.order by falling area, width or height, altered by chance.
func (m *improver) shuffle(pool []int) {
	m.order, m.keys = append(m.order[:0], pool...), slices.Grow(m.keys[:0], len(pool))[:len(pool)]
	order, keys := m.order, m.keys
	measure := m.rand.IntN(4)
	noise := []int64{0, 16, 64, 256}[m.rand.IntN(4)]
	for at, i := range pool {
		q := &m.job.pieces[i]
		key := [...]int64{q.w * q.h >> 8, q.w, q.h, q.w + q.h}[measure]
		key = key*256 + key*(m.rand.Int64N(2*noise+1)-noise)
		for ; at > 0 && keys[at-1] < key; at-- { // the pool is nearly in order
			order[at], keys[at] = order[at-1], keys[at-1]
		}
		order[at], keys[at] = i, key
	}
}
