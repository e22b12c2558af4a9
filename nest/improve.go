package nest

import (
	"cmp"
	"context"
	"math/rand/v2"
	"slices"
)

// Improving a nest bit by bit: a few sheets are emptied and filled again in many ways; the new ones
// are kept if they are no worse. Between nests with as many sheets the one is better whose sheets
// are filled more unequally, for then one of them is nearly empty, and soon another try saves it.
// (The measure is that of E. Falkenauer, "A hybrid grouping genetic algorithm for bin packing",
// Journal of Heuristics 2 (1996); emptying and filling again is the ruin and recreate of G.
// Schrimpf and others, J. Computational Physics 159 (2000).)

// improver is one run of improvement.
type improver struct {
	ctx        context.Context
	job        *job
	filler     filler
	rand       *rand.Rand
	now        plan
	least      objective // no nest is better: stop there
	size       []int64
	order      []int
	keys       []int64
	stockOrder []int // kinds of stock
	spots      []spot
	rest       []int
	pool       [][]int // pieces of sheets that were filled well
}

// mostPool is how many sheets an improver remembers.
const mostPool = 4000

// tries is how often each sheet is filled before the best filling is taken.
const tries = 12

// fullness is the square of the part of a sheet that is filled, in 1/2^20.
func (m *improver) fullness(l *layout) int64 {
	var filled int64
	for _, s := range l.spots {
		filled += m.size[s.piece]
	}
	k := &m.job.kinds[l.kind]
	f := filled / ((k.w*k.h)>>10 + 1)
	return f * f
}

// run improves until so many steps are made or nothing can be better.
func (m *improver) run(steps int) {
	j, limit := m.job, m.filler.steps+steps
	m.filler.job, m.stockOrder = j, j.stockOrder()
	m.size, m.keys = make([]int64, len(j.pieces)), make([]int64, len(j.pieces))
	for i, q := range j.pieces {
		m.size[i] = q.w * q.h
	}
	for round := 0; m.filler.steps < limit; round++ {
		if round&15 == 0 && m.ctx.Err() != nil {
			return
		}
		if j.objective(&m.now).compare(m.least) <= 0 || len(m.now.sheets) == 0 {
			return
		}
		m.round()
	}
}

// round empties some sheets and fills them again.
func (m *improver) round() {
	sheets := m.now.sheets
	n := min(len(sheets), 2+m.rand.IntN(3))
	chosen := m.choose(n)
	var pool []int
	var kinds []int
	before, full := objective{left: len(m.now.left)}, int64(0)
	for _, c := range chosen {
		for _, s := range sheets[c].spots {
			pool = append(pool, s.piece)
		}
		kinds = append(kinds, sheets[c].kind)
		before = before.plus(m.job.kinds[sheets[c].kind].objective())
		full += m.fullness(&sheets[c])
	}
	pool = append(pool, m.now.left...)
	m.rand.Shuffle(len(kinds), func(a, b int) { kinds[a], kinds[b] = kinds[b], kinds[a] })
	if extra := m.extra(); extra >= 0 {
		kinds = slices.Insert(kinds, 0, extra)
	}
	refilled, left := m.refill(kinds, pool)
	after, fullAfter := objective{left: len(left)}, int64(0)
	for i := range refilled {
		after = after.plus(m.job.kinds[refilled[i].kind].objective())
		fullAfter += m.fullness(&refilled[i])
	}
	if c := after.compare(before); c > 0 || c == 0 && fullAfter < full {
		m.filler.steps++
		return
	}
	for i := range refilled {
		if len(m.pool) < mostPool {
			var on []int
			for _, s := range refilled[i].spots {
				on = append(on, s.piece)
			}
			m.pool = append(m.pool, on)
		}
	}
	m.now.left = left
	slices.Sort(chosen)
	for i := len(chosen) - 1; i >= 0; i-- {
		m.now.sheets = slices.Delete(m.now.sheets, chosen[i], chosen[i]+1)
	}
	m.now.sheets = append(m.now.sheets, refilled...)
}

// extra returns, half of the time, a kind of which a sheet more could be used, if there is more
// than one kind.
func (m *improver) extra() int {
	if len(m.stockOrder) < 2 || m.rand.IntN(2) == 0 {
		return -1
	}
	kind := m.stockOrder[m.rand.IntN(len(m.stockOrder))]
	n := m.job.kinds[kind].count
	for _, l := range m.now.sheets {
		if l.kind == kind {
			n--
		}
	}
	if n <= 0 {
		return -1
	}
	return kind
}

// choose picks n sheets, the first of them the least filled of two.
func (m *improver) choose(n int) []int {
	sheets := m.now.sheets
	chosen := m.rand.Perm(len(sheets))
	if last := len(chosen) - 1; last > 0 && m.fullness(&sheets[chosen[last]]) < m.fullness(&sheets[chosen[0]]) {
		chosen[0], chosen[last] = chosen[last], chosen[0]
	}
	return chosen[:n]
}

// refill fills sheets of the given kinds with the pool, one after another, each as full as some
// tries can make it; left is what does not go in.
func (m *improver) refill(kinds, pool []int) (sheets []layout, left []int) {
	for _, kind := range kinds {
		if len(pool) == 0 {
			break
		}
		l, rest := m.fullest(kind, pool)
		if len(l.spots) > 0 {
			sheets = append(sheets, l)
		}
		pool = rest
	}
	return sheets, pool
}

// fullest fills one sheet in several ways and returns the fullest.
func (m *improver) fullest(kind int, pool []int) (l layout, rest []int) {
	most := int64(-1)
	l.kind = kind
	for range tries {
		m.shuffle(pool)
		how := manner{m.rand.IntN(ranks), m.rand.IntN(splits)}
		m.spots, m.rest = m.filler.fill(kind, m.order, how, m.spots[:0], m.rest[:0])
		var filled int64
		for _, s := range m.spots {
			filled += m.size[s.piece]
		}
		if filled > most {
			most = filled
			l.spots = slices.Clone(m.spots)
			rest = slices.Clone(m.rest)
		}
		if len(m.rest) == 0 {
			break
		}
	}
	return l, rest
}

// shuffle puts the pool into m.order by falling area, width or height, each piece's measure taken
// with some chance.
func (m *improver) shuffle(pool []int) {
	m.order = append(m.order[:0], pool...)
	measure := m.rand.IntN(4)
	noise := []int64{0, 16, 64, 256}[m.rand.IntN(4)]
	keys := m.keys
	for _, i := range pool {
		q := &m.job.pieces[i]
		var key int64
		switch measure {
		case 0:
			key = m.size[i] >> 8
		case 1:
			key = q.w
		case 2:
			key = q.h
		default:
			key = q.w + q.h
		}
		keys[i] = key*256 + key*(m.rand.Int64N(2*noise+1)-noise)
	}
	slices.SortStableFunc(m.order, func(a, b int) int { return cmp.Compare(keys[b], keys[a]) })
}
