package nest

import (
	"cmp"
	"container/heap"
	"slices"
)

// The fullest sheet where there is no pattern to match: a rectangle is then known by its size
// alone. A kerf is counted to each piece and once to the sheet.

// item is a size with the number and the value of its pieces.
type item struct {
	w, h, value int64
	count       uint8
}

// grid holds the greatest values that rectangles can be cut into, each item used any number of
// times. Its sizes are all sums of widths and of heights; a rectangle of another size can do what
// the next smaller one can. (P. C. Gilmore and R. E. Gomory, "Multistage cutting stock problems of
// two and more dimensions", Operations Research 13 (1965), with the sums of J. C. Herz, IBM J.
// Research and Development 16 (1972).)
type grid struct {
	xs, ys []int64
	value  []int64 // value[y*len(xs)+x]
}

// mostSums bounds the sums along one side of a grid; above it a grid costs more than it gives.
const mostSums = 4096

// sums returns the sums of sizes, each any number of times, up to most; not all beyond mostSums.
func sums(items []item, size func(item) int64, most int64) []int64 {
	all := []int64{0}
	seen := map[int64]bool{0: true}
	for i := 0; i < len(all) && len(all) <= mostSums; i++ {
		for _, q := range items {
			if t := all[i] + size(q); t <= most && !seen[t] {
				seen[t] = true
				all = append(all, t)
			}
		}
	}
	slices.Sort(all)
	return all
}

// floors returns for each sum i and each sum a up to half of it the number of the largest sum that
// is no more than sum i less sum a.
func floors(all []int64) [][]int32 {
	table := make([][]int32, len(all))
	for i, whole := range all {
		rest := i
		for a := 0; a <= i && 2*all[a] <= whole; a++ {
			for all[rest] > whole-all[a] {
				rest--
			}
			table[i] = append(table[i], int32(rest))
		}
	}
	return table
}

// newGrid makes an empty grid for rectangles up to w by h, or nil where it has too many sums.
func newGrid(items []item, w, h int64) *grid {
	g := &grid{xs: sums(items, func(q item) int64 { return q.w }, w), ys: sums(items, func(q item) int64 { return q.h }, h)}
	if max(len(g.xs), len(g.ys)) > mostSums {
		return nil
	}
	return g
}

// cost estimates the steps of fill and outside together.
func (g *grid) cost() int { return len(g.xs) * len(g.ys) * (len(g.xs) + len(g.ys)) }

// at returns the index of a rectangle whose sides are sums.
func (g *grid) at(w, h int64) int {
	x, _ := slices.BinarySearch(g.xs, w)
	y, _ := slices.BinarySearch(g.ys, h)
	return y*len(g.xs) + x
}

// fill computes the values of all rectangles.
func (g *grid) fill(items []item) {
	nx := len(g.xs)
	g.value = make([]int64, nx*len(g.ys))
	for _, q := range items {
		if q.w <= g.xs[nx-1] && q.h <= g.ys[len(g.ys)-1] {
			g.value[g.at(q.w, q.h)] = max(g.value[g.at(q.w, q.h)], q.value)
		}
	}
	acrossX, acrossY := floors(g.xs), floors(g.ys)
	for y := range g.ys {
		row := g.value[y*nx : (y+1)*nx]
		for x := range g.xs {
			best := row[x]
			if x > 0 {
				best = max(best, row[x-1])
			}
			if y > 0 {
				best = max(best, g.value[(y-1)*nx+x])
			}
			for a, rest := range acrossX[x] {
				best = max(best, row[a]+row[rest])
			}
			for a, rest := range acrossY[y] {
				best = max(best, g.value[a*nx+x]+g.value[int(rest)*nx+x])
			}
			row[x] = best
		}
	}
}

// outside returns, for a rectangle in the lower left corner of the whole, no less value than can be
// cut from the rest: strips to the right and above, in turn.
func (g *grid) outside() []int64 {
	nx, ny := len(g.xs), len(g.ys)
	rest := make([]int64, len(g.value))
	for y := ny - 1; y >= 0; y-- {
		for x := nx - 1; x >= 0; x-- {
			var most int64
			// The strip between two sums holds what the next smaller sum does.
			for to, a := x+1, 0; to < nx; to++ {
				for a+1 < nx && g.xs[a+1] <= g.xs[to]-g.xs[x] {
					a++
				}
				most = max(most, rest[y*nx+to]+g.value[y*nx+a])
			}
			for to, a := y+1, 0; to < ny; to++ {
				for a+1 < ny && g.ys[a+1] <= g.ys[to]-g.ys[y] {
					a++
				}
				most = max(most, rest[to*nx+x]+g.value[a*nx+x])
			}
			rest[y*nx+x] = most
		}
	}
	return rest
}

// builds finds the fullest sheet by building up: two builds, each a rectangle with its pieces, side
// by side or one above the other make a larger one. The build that promises most, its value and
// what the grid says of the rest of the sheet, comes next, until none promises more than the best
// found. (K. V. Viswanathan and A. Bagchi, "Best-first search methods for constrained
// two-dimensional cutting stock problems", Operations Research 41 (1993) 768-776.)
type builds struct {
	items  []item
	w, h   int64
	grid   *grid
	rest   []int64
	open   buildHeap
	closed []*build
	known  map[string][][2]int64 // sizes of the builds with given pieces
	best   *build
	least  int64 // only what is worth more matters
	steps  int
}

// build is a rectangle with its pieces.
type build struct {
	w, h, value, promise int64
	count                []uint8
	order                int // of making, which settles ties
}

type buildHeap []*build

func (h buildHeap) Len() int { return len(h) }
func (h buildHeap) Less(i, j int) bool {
	return cmp.Or(cmp.Compare(h[j].promise, h[i].promise), cmp.Compare(h[j].value, h[i].value), cmp.Compare(h[i].order, h[j].order)) < 0
}
func (h buildHeap) Swap(i, j int) { h[i], h[j] = h[j], h[i] }
func (h *buildHeap) Push(b any)   { *h = append(*h, b.(*build)) }
func (h *buildHeap) Pop() any {
	last := len(*h) - 1
	defer func() { *h = (*h)[:last] }()
	return (*h)[last]
}

// newBuilds prepares the search for items that have their kerf already.
func newBuilds(g *grid, items []item, w, h int64) *builds {
	g.fill(items)
	return &builds{items: items, w: w, h: h, grid: g, rest: g.outside(), known: map[string][][2]int64{}}
}

// So many simple steps of a grid, or joins of builds, take as long as a node of the exact search.
const gridStepsPerNode, joinsPerNode = 64, 4

// fullestByBuilds is fullest without a pattern; tried is false if the grid alone takes all nodes.
func (e *exact) fullestByBuilds(value []int64, kind int, above int64, nodes int) (s set, most int64, sure, tried bool) {
	k := &e.job.kinds[kind]
	var in []int
	var items []item
	for g := range e.groups {
		if q := &e.groups[g]; value[g] > 0 && e.job.fits(k, &q.piece) {
			in = append(in, g)
			items = append(items, item{q.w + e.job.kerf, q.h + e.job.kerf, value[g], uint8(len(q.pieces))})
		}
	}
	w, h := k.w+e.job.kerf, k.h+e.job.kerf
	grid := newGrid(items, w, h)
	if grid == nil || grid.cost()/gridStepsPerNode > nodes {
		return s, above, false, false
	}
	cost := grid.cost() / gridStepsPerNode
	b := newBuilds(grid, items, w, h)
	sure = b.run(above, (nodes-cost)*joinsPerNode, e.over)
	e.nodes += cost + b.steps/joinsPerNode
	if b.best != nil {
		for i, n := range b.best.count {
			s = s.plus(e.groups[in[i]].lowest(int(n)))
		}
	}
	return s, b.least, sure, true
}

// run searches for a build worth more than least; sure is false if steps or stop ended it first.
func (b *builds) run(least int64, steps int, stop func() bool) (sure bool) {
	b.least = least
	if v := b.grid.value; v[len(v)-1] <= least { // the whole sheet
		return true
	}
	for i, q := range b.items {
		count := make([]uint8, len(b.items))
		count[i] = 1
		b.add(q.w, q.h, q.value, count)
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
	if p.w+q.w > b.w && p.h+q.h > b.h {
		return
	}
	count := make([]uint8, len(p.count))
	for i := range count {
		if p.count[i] > b.items[i].count-q.count[i] {
			return
		}
		count[i] = p.count[i] + q.count[i]
	}
	b.add(p.w+q.w, max(p.h, q.h), p.value+q.value, count)
	b.add(max(p.w, q.w), p.h+q.h, p.value+q.value, count)
}

// add adds a build unless it is too large, promises too little, or holds what one as small does.
func (b *builds) add(w, h, value int64, count []uint8) {
	if w > b.w || h > b.h {
		return
	}
	promise := value + b.rest[b.grid.at(w, h)]
	if promise <= b.least {
		return
	}
	key := string(count)
	if slices.ContainsFunc(b.known[key], func(s [2]int64) bool { return s[0] <= w && s[1] <= h }) {
		return
	}
	b.known[key] = append(b.known[key], [2]int64{w, h})
	one := &build{w, h, value, promise, count, b.steps}
	if value > b.least {
		b.least, b.best = value, one
	}
	heap.Push(&b.open, one)
}
