package line

import (
	"cmp"
	"slices"
)

// maxPlaces bounds the number of places a knapsack works on, and maxCells the number of places
// times copies, so that one solution takes milliseconds.
const maxPlaces, maxCells = 1 << 18, 1 << 22

// knapsack finds the pattern of the greatest value that fits, by exact dynamic programming over the
// places where an item can end: the totals of subsets of the items (N. Christofides and C.
// Whitlock, "An algorithm for two-dimensional cutting problems", Operations Research 25, 1977).
type knapsack struct {
	job    *job
	places []int64   // totals of subsets up to the capacity, rising, from 0
	back   [][]int32 // back[kind][p]: the last place at least one item before place p
	first  []int     // first[kind]: the first place at least one item from 0
	best   []int64   // best[p]: the greatest value that ends at place p or before
	taken  []bool    // taken[copy*len(places)+p]: that copy is part of best[p]
	copies []int     // the kind of each copy
}

// newKnapsack prepares the job, or returns nil if it has too many places.
func newKnapsack(j *job) *knapsack {
	copies := 0
	for kind, count := range j.counts {
		copies += j.most(kind, count)
	}
	places := j.places(min(maxPlaces, maxCells/max(1, copies)))
	if places == nil {
		return nil
	}
	k := &knapsack{
		job: j, places: places, best: make([]int64, len(places)),
		taken: make([]bool, copies*len(places)), copies: make([]int, 0, copies),
	}
	for _, size := range j.sizes {
		back := make([]int32, len(places))
		first, behind := len(places), 0
		for p, place := range places {
			if place < size {
				continue
			}
			first = min(first, p)
			for behind+1 < p && places[behind+1] <= place-size {
				behind++
			}
			back[p] = int32(behind)
		}
		k.back, k.first = append(k.back, back), append(k.first, first)
	}
	return k
}

// most is how many of count items of a kind fit one bin.
func (j *job) most(kind, count int) int {
	return int(min(int64(count), j.capacity/j.sizes[kind]))
}

// places lists the totals of subsets of the items up to the capacity, or nil if there are more than
// limit. All lie at whole multiples of the greatest common divisor of the sizes.
func (j *job) places(limit int) []int64 {
	places := []int64{0}
	for kind, size := range j.sizes {
		for range j.most(kind, j.counts[kind]) {
			before := len(places)
			places = mergeShifted(places, size, j.capacity)
			if len(places) > limit {
				return nil
			}
			if len(places) == before {
				break // more of this size lead to no new place
			}
		}
	}
	return places
}

// mergeShifted merges a rising list with itself shifted by size, up to capacity.
func mergeShifted(list []int64, size, capacity int64) []int64 {
	merged := make([]int64, 0, 2*len(list))
	behind := 0
	for _, place := range list {
		for ; list[behind]+size < place; behind++ {
			merged = append(merged, list[behind]+size)
		}
		if list[behind]+size == place {
			behind++
		}
		merged = append(merged, place)
	}
	for ; behind < len(list) && list[behind]+size <= capacity; behind++ {
		merged = append(merged, list[behind]+size)
	}
	return merged
}

// solve returns the greatest value of a pattern of needed items, and up to limit different patterns
// worth more than floor, dearest first. No value is negative. The cost is places times copies.
func (k *knapsack) solve(values []int64, need []int, floor int64, limit int) (most int64, found []pattern) {
	type ending struct {
		copy  int
		value int64
	}
	var endings []ending
	width := len(k.places)
	clear(k.best)
	k.copies = k.copies[:0]
	for kind, value := range values {
		if value <= 0 {
			continue
		}
		back, first := k.back[kind], k.first[kind]
		for range k.job.most(kind, need[kind]) {
			taken := k.taken[len(k.copies)*width:][:width]
			clear(taken)
			if full := k.best[back[width-1]] + value; full > floor && k.first[kind] < width {
				endings = append(endings, ending{len(k.copies), full})
			}
			improved, all, back := width, k.best, back[first:]
			best, taken := all[first:][:len(back)], taken[first:][:len(back)]
			for p := len(back) - 1; p >= 0; p-- {
				if with := all[back[p]] + value; with > best[p] {
					best[p], taken[p] = with, true
					improved = first + p
				}
			}
			for first < width && int(k.back[kind][first]) < improved {
				first++ // another copy improves only on places that this one did
			}
			k.copies = append(k.copies, kind)
		}
	}
	slices.SortStableFunc(endings, func(a, b ending) int { return cmp.Compare(b.value, a.value) })
	for _, e := range endings[:min(limit, len(endings))] {
		found = append(found, k.trace(e.copy))
	}
	return k.best[width-1], found
}

// trace returns the best pattern among those whose last copy is the given one.
func (k *knapsack) trace(last int) pattern {
	width := len(k.places)
	place := int32(width - 1)
	var p pattern
	for c := last; c >= 0; c-- {
		if c == last || k.taken[c*width+int(place)] {
			kind := k.copies[c]
			place, p = k.back[kind][place], p.with(kind)
		}
	}
	slices.Reverse(p)
	return p
}
