package line

import (
	"cmp"
	"slices"
	"sort"
)

// enumeration lists the completions of one bin.
type enumeration struct {
	*completion
	slack  int64
	rest   []int64 // rest[kind]: total of the needed items from that kind on
	bin    []int   // kinds of its items
	found  []completed
	visits int
}

// visitLimit is the number of partial bins looked at for one bin: a bin of many small items has too
// many completions to list. visitsPerNode of them cost one node.
const visitLimit, visitsPerNode = 200_000, 50

// completed is what a bin holds and leaves.
type completed struct {
	pattern
	waste int64
}

// completions lists the undominated patterns for a bin that holds the largest needed item and
// wastes at most slack, fullest first.
func (s *completion) completions(slack int64) []completed {
	first := 0
	for s.need[first] == 0 {
		first++
	}
	e := &enumeration{completion: s, slack: slack, bin: []int{first}}
	s.need[first]--
	e.rest = make([]int64, len(s.need)+1)
	for kind := len(s.need) - 1; kind >= first; kind-- {
		e.rest[kind] = e.rest[kind+1] + int64(s.need[kind])*s.job.sizes[kind]
	}
	e.extend(first, s.job.capacity-s.job.sizes[first])
	s.need[first]++
	slices.SortStableFunc(e.found, func(a, b completed) int { return cmp.Compare(a.waste, b.waste) })
	return e.found
}

// extend records the bin if it may end here, and every way to fill the room from the kind on.
func (e *enumeration) extend(kind int, room int64) {
	if e.visits++; e.visits > visitLimit {
		e.truncated = true
		return
	}
	if e.visits%visitsPerNode == 0 && !e.meter.spend(1) {
		return
	}
	if room <= e.slack && !e.dominated(room) {
		var p pattern
		for _, kind := range e.bin {
			p = p.with(kind)
		}
		e.found = append(e.found, completed{p, room})
	}
	for kind = max(kind, e.largest(room)); kind < len(e.need); kind++ {
		if room-e.rest[kind] > e.slack {
			return // all that is left would waste too much
		}
		if e.need[kind] == 0 {
			continue
		}
		e.need[kind]--
		e.bin = append(e.bin, kind)
		e.extend(kind, room-e.job.sizes[kind])
		e.bin = e.bin[:len(e.bin)-1]
		e.need[kind]++
	}
}

// largest is the kind of the largest size that is at most room.
func (e *enumeration) largest(room int64) int {
	sizes := e.job.sizes
	return sort.Search(len(sizes), func(kind int) bool { return sizes[kind] <= room })
}

// needed reports whether an item of a size from low to high is left.
func (e *enumeration) needed(low, high int64) bool {
	for kind := e.largest(high); kind < len(e.need) && e.job.sizes[kind] >= low; kind++ {
		if e.need[kind] > 0 {
			return true
		}
	}
	return false
}

// swapped is the number of items up to which every subset of a bin is tried against single items.
const swapped = 8

// dominated reports whether an item left over fits the room, or could take the place of some items
// in the bin (not the first) that are together no larger: exchanging them is no worse for the rest
// of the packing (Martello and Toth's dominance). An exchange raises the filling, or keeps it with
// fewer items, so exchanges cannot go round in a circle.
func (e *enumeration) dominated(room int64) bool {
	if e.needed(1, room) {
		return true
	}
	var sizes []int64
	for _, kind := range e.bin[1:] {
		size := e.job.sizes[kind]
		if e.needed(size+1, size+room) {
			return true
		}
		sizes = append(sizes, size)
	}
	sizes = sizes[:min(len(sizes), swapped)]
	for set := 3; set < 1<<len(sizes); set++ {
		if set&(set-1) == 0 {
			continue // one item
		}
		var sum int64
		for i, size := range sizes {
			if set>>i&1 == 1 {
				sum += size
			}
		}
		if e.needed(sum, sum+room) {
			return true
		}
	}
	return false
}
