package nest

import "container/heap"

// builds finds the fullest sheet by building up: two builds, each a rectangle with its pieces, side
// by side or one above the other make a larger one. The build that promises most comes next, its
// promise being its value and what the grid says can be cut from the rest of the sheet; when even
// that is no more than the best build found, the best is the fullest sheet. (K. V. Viswanathan and
// A. Bagchi, "Best-first search methods for constrained two-dimensional cutting stock problems",
// Operations Research 41 (1993) 768-776.)
type builds struct {
	counts []uint8 // pieces of each group there are
	sizes  [][2]int64
	values []int64
	w, h   int64
	grid   *grid
	rest   []int64
	xAt    map[int64]int
	yAt    map[int64]int
	open   buildHeap
	closed []*build
	known  map[string][][2]int64 // sizes of the builds with given pieces
	best   *build
	least  int64 // only what is worth more matters
	steps  int
}

// build is a rectangle with its pieces.
type build struct {
	w, h    int64
	value   int64
	promise int64
	count   []uint8
	order   int // of making, which settles ties
}

type buildHeap []*build

func (h buildHeap) Len() int { return len(h) }
func (h buildHeap) Less(i, j int) bool {
	if h[i].promise != h[j].promise {
		return h[i].promise > h[j].promise
	}
	if h[i].value != h[j].value {
		return h[i].value > h[j].value
	}
	return h[i].order < h[j].order
}
func (h buildHeap) Swap(i, j int) { h[i], h[j] = h[j], h[i] }
func (h *buildHeap) Push(b any)   { *h = append(*h, b.(*build)) }
func (h *buildHeap) Pop() any {
	last := (*h)[len(*h)-1]
	*h = (*h)[:len(*h)-1]
	return last
}

// newBuilds prepares the search for sizes that have their kerf already.
func newBuilds(g *grid, sizes [][2]int64, values []int64, counts []uint8, w, h int64) *builds {
	b := &builds{counts: counts, sizes: sizes, values: values, w: w, h: h, grid: g}
	g.fill(sizes, values)
	b.rest = b.grid.outside()
	b.xAt, b.yAt = map[int64]int{}, map[int64]int{}
	for i, x := range b.grid.xs {
		b.xAt[x] = i
	}
	for i, y := range b.grid.ys {
		b.yAt[y] = i
	}
	return b
}

// stepsPerNode says how many simple steps of a grid, or joins of builds, take as long as a node of
// the exact search.
const (
	gridStepsPerNode = 64
	joinsPerNode     = 4
)

// fullestByBuilds is fullest where there is no pattern; tried is false if the grid alone would take
// more nodes than there are.
func (e *exact) fullestByBuilds(value []int64, kind int, above int64, nodes int) (s set, most int64, sure, tried bool) {
	k := &e.job.kinds[kind]
	var in []int
	var sizes [][2]int64
	var values []int64
	var counts []uint8
	for g := range e.groups {
		if q := &e.groups[g]; value[g] > 0 && e.job.fits(k, &q.piece) {
			in = append(in, g)
			sizes = append(sizes, [2]int64{q.w + e.job.kerf, q.h + e.job.kerf})
			values = append(values, value[g])
			counts = append(counts, uint8(len(q.pieces)))
		}
	}
	w, h := k.w+e.job.kerf, k.h+e.job.kerf
	grid := newGrid(sizes, w, h)
	if grid == nil || grid.cost()/gridStepsPerNode > nodes {
		return s, above, false, false
	}
	cost := grid.cost() / gridStepsPerNode
	b := newBuilds(grid, sizes, values, counts, w, h)
	sure = b.run(above, (nodes-cost)*joinsPerNode, e.over)
	e.nodes += cost + b.steps/joinsPerNode
	if b.best != nil {
		for i, n := range b.best.count {
			s = s.plus(e.groups[in[i]].lowest(int(n)))
		}
	}
	return s, b.least, sure, true
}

// run searches for a build worth more than least; sure is false if the steps ran out or stop said
// so first.
func (b *builds) run(least int64, steps int, stop func() bool) (sure bool) {
	b.least, b.known = least, map[string][][2]int64{}
	if b.grid.best() <= least {
		return true
	}
	for i, s := range b.sizes {
		count := make([]uint8, len(b.sizes))
		count[i] = 1
		b.add(s[0], s[1], b.values[i], count)
	}
	for len(b.open) > 0 {
		next := heap.Pop(&b.open).(*build)
		if next.promise <= b.least {
			return true
		}
		b.closed = append(b.closed, next)
		for _, other := range b.closed {
			if b.steps++; b.steps > steps || b.steps&1023 == 0 && stop() {
				return false
			}
			b.join(next, other)
		}
	}
	return true
}

// join puts two builds side by side and one above the other.
func (b *builds) join(p, q *build) {
	beside, above := p.w+q.w <= b.w, p.h+q.h <= b.h
	if !beside && !above {
		return
	}
	count := make([]uint8, len(p.count))
	for i := range count {
		if count[i] = p.count[i] + q.count[i]; count[i] > b.counts[i] {
			return
		}
	}
	if beside {
		b.add(p.w+q.w, max(p.h, q.h), p.value+q.value, count)
	}
	if above {
		b.add(max(p.w, q.w), p.h+q.h, p.value+q.value, count)
	}
}

// add adds a build, unless it is too large, promises too little, or another with the same pieces is
// as small.
func (b *builds) add(w, h, value int64, count []uint8) {
	if w > b.w || h > b.h {
		return
	}
	promise := value + b.rest[b.yAt[h]*len(b.grid.xs)+b.xAt[w]]
	if promise <= b.least {
		return
	}
	key := string(count)
	for _, s := range b.known[key] {
		if s[0] <= w && s[1] <= h {
			return
		}
	}
	b.known[key] = append(b.known[key], [2]int64{w, h})
	one := &build{w, h, value, promise, count, b.steps}
	if value > b.least {
		b.least, b.best = value, one
	}
	heap.Push(&b.open, one)
}
