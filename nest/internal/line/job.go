package line

import (
	"cmp"
	"fmt"
	"slices"
)

// MaxCapacity is the largest capacity, and MaxItems the largest number of items, that [Check]
// accepts. With them every sum in this package fits an int64.
const (
	MaxCapacity int64 = 1 << 40
	MaxItems          = 1 << 16
)

// Check reports the first fault of a problem: a capacity outside 1 to [MaxCapacity], more than
// [MaxItems] items, or a size outside 1 to capacity.
func Check(capacity int64, sizes []int64) error {
	if capacity < 1 || capacity > MaxCapacity {
		return fmt.Errorf("capacity: %d is not between 1 and %d", capacity, MaxCapacity)
	}
	if len(sizes) > MaxItems {
		return fmt.Errorf("sizes: %d items, at most %d are accepted", len(sizes), MaxItems)
	}
	for i, size := range sizes {
		if size < 1 || size > capacity {
			return fmt.Errorf("sizes[%d]: %d is not between 1 and the capacity %d", i, size, capacity)
		}
	}
	return nil
}

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
	order := make([]int, len(sizes))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(sizes[b], sizes[a]) })
	for n, item := range order {
		if n == 0 || sizes[item] != sizes[order[n-1]] {
			j.sizes, j.counts, j.items = append(j.sizes, sizes[item]), append(j.counts, 0), append(j.items, nil)
		}
		last := len(j.sizes) - 1
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

// with returns the pattern with one more item of its last kind or of another one.
func (p pattern) with(kind int) pattern {
	if last := len(p) - 1; last >= 0 && p[last].kind == kind {
		p[last].count++
		return p
	}
	return append(p, take{kind, 1})
}

// total is the total size of the needed items.
func (j *job) total(need []int) int64 {
	var sum int64
	for kind, count := range need {
		sum += int64(count) * j.sizes[kind]
	}
	return sum
}

// greedy packs the needed items by the better of first-fit and best-fit decreasing.
func (j *job) greedy(need []int) []pattern {
	bins := j.fit(need, false)
	if other := j.fit(need, true); len(other) < len(bins) {
		return other
	}
	return bins
}

// fit packs the needed items by falling size, each into the first bin that has room for it or, with
// best, into the first of those with least room. The cost is at most items times bins.
func (j *job) fit(need []int, best bool) (bins []pattern) {
	var rooms []int64
	for kind, count := range need {
		for range count {
			chosen := -1
			for b, room := range rooms {
				if room >= j.sizes[kind] && (chosen < 0 || room < rooms[chosen]) {
					if chosen = b; !best {
						break
					}
				}
			}
			if chosen < 0 {
				chosen = len(bins)
				bins, rooms = append(bins, nil), append(rooms, j.capacity)
			}
			bins[chosen] = bins[chosen].with(kind)
			rooms[chosen] -= j.sizes[kind]
		}
	}
	return bins
}

// bins turns patterns that hold each item once into the caller's indices, largest items first.
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
		if c := cmp.Or(a[i].kind-b[i].kind, b[i].count-a[i].count); c != 0 {
			return c
		}
	}
	return len(b) - len(a)
}
