package line

import (
	"fmt"
	"slices"
)

// MaxCapacity is the largest capacity, and MaxItems the largest number of items, that [Check]
// accepts. Together they leave head-room for every sum in this package to fit an int64.
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

// FirstFit packs by first-fit decreasing: the items in order of falling size, equal sizes in the
// order given, each into the first bin that has room.
//
// The bins hold indices of sizes, both in the order of packing. Sizes that [Check] would refuse are
// left out. The cost is at most items times bins.
func FirstFit(capacity int64, sizes []int64) [][]int {
	return fit(capacity, sizes, func(room, size int64, best int64) bool { return best < 0 && size <= room })
}

// BestFit packs by best-fit decreasing: as [FirstFit], but each item goes into the bin with the
// least room that still holds it, the first of equals.
func BestFit(capacity int64, sizes []int64) [][]int {
	return fit(capacity, sizes, func(room, size int64, best int64) bool {
		return size <= room && (best < 0 || room < best)
	})
}

// fit packs the items by falling size into the bin that better likes last; better compares a bin's
// room with the best room so far, -1 if there is none.
func fit(capacity int64, sizes []int64, better func(room, size, best int64) bool) [][]int {
	var bins [][]int
	var rooms []int64
	for _, item := range falling(sizes) {
		size := sizes[item]
		if size < 1 || size > capacity {
			continue
		}
		chosen, best := len(bins), int64(-1)
		for b, room := range rooms {
			if better(room, size, best) {
				chosen, best = b, room
			}
		}
		if chosen == len(bins) {
			bins, rooms = append(bins, nil), append(rooms, capacity)
		}
		bins[chosen] = append(bins[chosen], item)
		rooms[chosen] -= size
	}
	return bins
}

// falling returns the indices of sizes by falling size, equal sizes in order.
func falling(sizes []int64) []int {
	order := make([]int, len(sizes))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		switch {
		case sizes[a] > sizes[b]:
			return -1
		case sizes[a] < sizes[b]:
			return 1
		}
		return 0
	})
	return order
}
