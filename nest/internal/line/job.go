package line

import "slices"

// job is a problem with equal sizes gathered: the form every search works on.
type job struct {
	capacity int64
	sizes    []int64 // distinct, falling
	counts   []int   // items of each size
	items    [][]int // the caller's indices of each size, in order
}

// newJob gathers equal sizes. The problem has passed [Check].
func newJob(capacity int64, sizes []int64) *job {
	j := &job{capacity: capacity}
	for _, item := range falling(sizes) {
		last := len(j.sizes) - 1
		if last < 0 || j.sizes[last] != sizes[item] {
			j.sizes = append(j.sizes, sizes[item])
			j.counts = append(j.counts, 0)
			j.items = append(j.items, nil)
			last++
		}
		j.counts[last]++
		j.items[last] = append(j.items[last], item)
	}
	return j
}

// take is a number of items of one size: sizes[kind] of the job.
type take struct {
	kind, count int
}

// pattern is what one bin holds, by rising kind, each kind at most once.
type pattern []take

// total is the total size of the needed items.
func (j *job) total(need []int) int64 {
	var sum int64
	for kind, count := range need {
		sum += int64(count) * j.sizes[kind]
	}
	return sum
}

// greedy packs the needed items by first-fit and by best-fit decreasing and returns the better
// packing.
func (j *job) greedy(need []int) []pattern {
	var sizes []int64
	var kinds []int
	for kind, count := range need {
		for range count {
			sizes, kinds = append(sizes, j.sizes[kind]), append(kinds, kind)
		}
	}
	bins := FirstFit(j.capacity, sizes)
	if other := BestFit(j.capacity, sizes); len(other) < len(bins) {
		bins = other
	}
	packed := make([]pattern, len(bins))
	for b, bin := range bins {
		for _, item := range bin {
			kind := kinds[item]
			last := len(packed[b]) - 1
			if last >= 0 && packed[b][last].kind == kind {
				packed[b][last].count++
			} else {
				packed[b] = append(packed[b], take{kind, 1})
			}
		}
	}
	return packed
}

// bins turns patterns that hold each needed item once into the caller's indices. Bins are ordered
// by their items, largest first.
func (j *job) bins(packed []pattern) [][]int {
	packed = slices.Clone(packed)
	slices.SortStableFunc(packed, comparePatterns)
	next := make([]int, len(j.sizes))
	bins := make([][]int, len(packed))
	for b, p := range packed {
		for _, t := range p {
			first := next[t.kind]
			bins[b] = append(bins[b], j.items[t.kind][first:first+t.count]...)
			next[t.kind] += t.count
		}
	}
	return bins
}

// comparePatterns orders patterns by their items from the largest down: the pattern with the larger
// item, or more of it, comes first.
func comparePatterns(a, b pattern) int {
	for i := range min(len(a), len(b)) {
		if a[i].kind != b[i].kind {
			return a[i].kind - b[i].kind
		}
		if a[i].count != b[i].count {
			return b[i].count - a[i].count
		}
	}
	return len(b) - len(a)
}

// Budget bounds the effort of a search. The zero value stands for [DefaultNodes].
type Budget struct {
	// Nodes is the greatest number of nodes. A node is one partial packing looked at or one pivot
	// of the linear programme.
	Nodes int
}

// DefaultNodes is the budget of a zero [Budget]: a few seconds at most.
const DefaultNodes = 400_000

// nodes is the number of nodes the budget allows.
func (b Budget) nodes() int {
	if b.Nodes > 0 {
		return b.Nodes
	}
	return DefaultNodes
}
