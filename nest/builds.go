package nest

import (
	"container/heap"
	"math"
	"math/bits"
	"slices"
)

// builds finds the fullest sheet by building up: two builds, each a rectangle with its pieces, side
// by side or one above the other make a larger one. The build that promises most, its value and
// what bounds say of the rest of the sheet, comes next, until none promises more than is wanted.
// (K. V. Viswanathan and A. Bagchi, "Best-first search methods for constrained two-dimensional
// cutting stock problems", Operations Research 41 (1993) 768-776.)
type builds struct {
	items  []item
	w, h   int64
	grid   *grid
	rest   []int64 // by grid: no less than what is cut from the sheet outside of a rectangle
	bounds []knapsack
	packer packer
	open   buildHeap
	closed []*build
	known  map[uint64]*build // the last build made whose pieces have that hash
	sum    []uint64          // memory
	found  []*build          // worth more than wanted
	wanted int64
	rising bool // wanted rises with what is found
	steps  int
}

// build is a rectangle with its pieces.
type build struct {
	w, h, value, promise int64
	key                  int64              // that of the greatest comes next: fuller builds come somewhat earlier
	used                 [boundsUsed]uint64 // of each bound; of the area, what the rectangle takes
	count                []uint64
	item                 int // -1 for two builds
	kind                 CutKind
	near, far            *build
	same                 *build // the one before of the same hash
	order                int    // of making, which settles ties
}

// knapsack bounds the value of pieces by one weighing: a sheet holds so much in all. The first is
// that of the area.
type knapsack struct {
	each  []uint64 // by item
	whole uint64
	dense []dense // the items, most value for their weight first, summed up
}

// dense is the weight and the value of the densest items up to one.
type dense struct{ weight, value uint64 }

// mostBuilds bounds the memory of builds.
const mostBuilds = 1 << 19

// boundsUsed is how many weighings bound a build.
const boundsUsed = 4

func newKnapsack(items []item, each []uint64, whole uint64) knapsack {
	k := knapsack{each: each, whole: whole, dense: []dense{{}}}
	order := make([]int, len(items))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return compareProducts(uint64(items[b].value), each[a], uint64(items[a].value), each[b])
	})
	var sum dense
	for _, i := range order {
		sum.weight += each[i] * uint64(items[i].count)
		sum.value += uint64(items[i].value) * uint64(items[i].count)
		k.dense = append(k.dense, sum)
	}
	return k
}

// most returns no less value than any pieces have that weigh no more than the room, the last counted
// in part.
func (k *knapsack) most(room uint64) int64 {
	low, high := 0, len(k.dense)-1 // of the last that fits
	for low < high {
		if mid := (low + high + 1) / 2; k.dense[mid].weight <= room {
			low = mid
		} else {
			high = mid - 1
		}
	}
	d := k.dense[low]
	if low+1 == len(k.dense) {
		return int64(d.value)
	}
	next := k.dense[low+1]
	return int64(d.value) + scaled(int64(next.value-d.value), room-d.weight, next.weight-d.weight)
}

type buildHeap []*build

func (h buildHeap) Len() int { return len(h) }
func (h buildHeap) Less(i, j int) bool {
	a, b := h[i], h[j]
	switch {
	case a.key != b.key:
		return a.key > b.key
	case a.value != b.value:
		return a.value > b.value
	}
	return a.order < b.order
}
func (h buildHeap) Swap(i, j int) { h[i], h[j] = h[j], h[i] }
func (h *buildHeap) Push(b any)   { *h = append(*h, b.(*build)) }
func (h *buildHeap) Pop() any {
	last := len(*h) - 1
	defer func() { *h = (*h)[:last] }()
	return (*h)[last]
}

// packer counts the pieces of each item in few words: each count has bits of its own and one more,
// so that two are added in a few steps. An item's bias lifts its count into that guard bit if it is
// more than there are.
type packer struct {
	word, shift []int
	bias, guard []uint64
}

func newPacker(items []item) (p packer) {
	used := 64
	for _, q := range items {
		width := bits.Len(uint(q.count)) + 1
		if used+width > 64 {
			used = 0
			p.bias, p.guard = append(p.bias, 0), append(p.guard, 0)
		}
		word := len(p.bias) - 1
		p.word, p.shift = append(p.word, word), append(p.shift, used)
		p.guard[word] |= 1 << (used + width - 1)
		p.bias[word] |= (1<<(width-1) - 1 - uint64(q.count)) << used
		used += width
	}
	return p
}

// add adds counts into sum; ok is false if there are not as many pieces.
func (p *packer) add(sum, a, b []uint64) (ok bool) {
	var over uint64
	for i, bias := range p.bias {
		sum[i] = a[i] + b[i]
		over |= (sum[i] + bias) & p.guard[i]
	}
	return over == 0
}

// hash is the same for equal counts.
func hash(count []uint64) (h uint64) {
	for _, word := range count {
		h = (h ^ word) * 0x9e3779b97f4a7c15 // an odd number with mixed bits
		h ^= h >> 32
	}
	return h
}

// newBuilds prepares the search for items that have their kerf already. The weighings give what an item weighs and a sheet holds.
func newBuilds(g *grid, items []item, w, h int64, weighings ...knapsack) *builds {
	g.fill(items)
	areas := make([]uint64, len(items))
	for i, q := range items {
		areas[i] = uint64(q.w * q.h)
	}
	b := &builds{items: items, w: w, h: h, grid: g, rest: g.outside(), packer: newPacker(items), known: map[uint64]*build{}}
	b.sum = make([]uint64, len(b.packer.bias))
	for _, k := range append([]knapsack{{each: areas, whole: uint64(w * h)}}, weighings...) {
		b.bounds = append(b.bounds, newKnapsack(items, k.each, k.whole))
	}
	return b
}

// run searches for builds worth more than wanted until it has enough of them, or some after the
// given steps; with enough 0 for the one that is worth most. No build is worth more than most, which
// is no less than wanted.
func (b *builds) run(wanted int64, enough, some, steps int, stop func() bool) (most int64) {
	b.wanted, b.rising = wanted, enough == 0
	if v := b.grid.value; v[len(v)-1] <= wanted { // the whole sheet
		return wanted
	}
	for i, q := range b.items {
		one := build{w: q.w, h: q.h, value: q.value, item: i, count: b.sum}
		clear(b.sum)
		one.count[b.packer.word[i]] = 1 << b.packer.shift[i]
		for n := range b.bounds {
			one.used[n] = b.bounds[n].each[i]
		}
		b.add(&one)
	}
	for len(b.open) > 0 {
		next := heap.Pop(&b.open).(*build)
		if next.promise <= b.wanted {
			continue
		}
		b.closed = append(b.closed, next)
		for _, other := range b.closed {
			if b.steps++; b.steps > steps || len(b.closed)+len(b.open) > mostBuilds || b.steps&1023 == 0 && stop() {
				return max(next.promise, b.promised(), wanted)
			}
			b.join(next, other)
		}
		n := len(b.found)
		if enough > 0 && (n >= enough || n > 0 && b.steps > some) && len(b.open) > 0 {
			return max(b.promised(), wanted)
		}
	}
	return max(b.best(), wanted)
}

// promised returns no less than any build is worth that was found or can still come.
func (b *builds) promised() int64 {
	most := b.best()
	for _, q := range b.open {
		most = max(most, q.promise)
	}
	return most
}

// best returns the most that a build found is worth.
func (b *builds) best() (most int64) {
	for _, f := range b.found {
		most = max(most, f.value)
	}
	return most
}

// join puts two builds side by side and one above the other.
func (b *builds) join(p, q *build) {
	beside, above := p.w+q.w <= b.w, p.h+q.h <= b.h
	if !beside && !above {
		return
	}
	if !b.packer.add(b.sum, p.count, q.count) {
		return
	}
	j := build{value: p.value + q.value, count: b.sum, item: -1, near: p, far: q}
	for n := 1; n < len(b.bounds); n++ {
		j.used[n] = p.used[n] + q.used[n]
	}
	if beside {
		j.w, j.h, j.kind = p.w+q.w, max(p.h, q.h), Rip
		b.add(&j)
	}
	if above {
		j.w, j.h, j.kind = max(p.w, q.w), p.h+q.h, Crosscut
		b.add(&j)
	}
}

// add adds a build unless it is too large, promises too little, or holds what one as small does.
func (b *builds) add(q *build) {
	if q.w > b.w || q.h > b.h {
		return
	}
	q.used[0] = uint64(q.w * q.h)
	q.promise = math.MaxInt64
	for n := range b.bounds {
		k := &b.bounds[n]
		if q.used[n] > k.whole {
			return
		}
		if q.promise = min(q.promise, q.value+k.most(k.whole-q.used[n])); q.promise <= b.wanted {
			return
		}
	}
	if q.promise = min(q.promise, q.value+b.rest[b.grid.at(q.w, q.h)]); q.promise <= b.wanted {
		return
	}
	key := hash(q.count)
	same := b.known[key]
	for k := same; k != nil; k = k.same {
		if k.w <= q.w && k.h <= q.h && slices.Equal(k.count, q.count) {
			return
		}
	}
	one := new(*q)
	one.key = q.value + (q.promise-q.value)/8*7
	one.same, one.order, one.count = same, b.steps, slices.Clone(q.count)
	b.known[key] = one
	if q.value > b.wanted {
		b.found = append(b.found, one)
		if b.rising {
			b.wanted = q.value
		}
	}
	heap.Push(&b.open, one)
}
