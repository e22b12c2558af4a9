package line

import "slices"

// completion searches bin by bin: each bin starts with the largest item left and is completed in
// every way that no other way dominates, fullest first (R. E. Korf, "A new algorithm for optimal
// bin packing", AAAI 2002). Sets of items that did not fit are remembered with their bins.
type completion struct {
	job       *job
	need      []int
	meter     *meter
	chosen    []pattern
	failed    map[string]bool
	memory    int  // bytes of the keys of failed
	truncated bool // some completions were left out: failure proves nothing
}

// memory is the number of bytes of failures remembered.
const memory = 1 << 24

func newCompletion(j *job, need []int, meter *meter) *completion {
	return &completion{job: j, need: slices.Clone(need), meter: meter, failed: map[string]bool{}}
}

// proved reports whether a search that failed has tried everything.
func (s *completion) proved() bool {
	return !s.truncated && s.meter.used <= s.meter.limit
}

// search packs the needed items into so many bins, leaving them in chosen.
func (s *completion) search(bins int) bool {
	total := s.job.total(s.need)
	if total == 0 {
		return true
	}
	slack := int64(bins)*s.job.capacity - total
	if slack < 0 || !s.meter.spend(1) || s.threshold() > bins {
		return false
	}
	key := s.key(bins)
	if s.failed[key] {
		return false
	}
	for _, c := range s.completions(slack) {
		s.pack(c.pattern, -1)
		s.chosen = append(s.chosen, c.pattern)
		if s.search(bins - 1) {
			return true
		}
		s.chosen = s.chosen[:len(s.chosen)-1]
		s.pack(c.pattern, 1)
		if s.meter.used > s.meter.limit {
			return false
		}
	}
	if s.memory += len(key); s.memory < memory {
		s.failed[key] = true
	}
	return false
}

// pack changes the need by the pattern, sign times.
func (s *completion) pack(p pattern, sign int) {
	for _, t := range p {
		s.need[t.kind] += sign * t.count
	}
}

// key is the state as text. As the total of the items is part of it, so is the slack of the bins.
func (s *completion) key(bins int) string {
	text := make([]byte, 0, 2*len(s.need)+2)
	text = append(text, byte(bins), byte(bins>>8))
	for _, count := range s.need {
		text = append(text, byte(count), byte(count>>8))
	}
	return string(text)
}

// threshold is the best bound of the functions threshold on the needed items (Martello and Toth's
// L2), found in one pass: as the step falls, kinds before whole exceed capacity-step and fill a bin
// each, and middle is the total of the others down to the step.
func (s *completion) threshold() int {
	capacity, sizes := s.job.capacity, s.job.sizes
	whole, filled := 0, 0
	for whole < len(sizes) && 2*sizes[whole] > capacity {
		filled += s.need[whole]
		whole++
	}
	best, middle := filled, int64(0)
	for kind := whole; kind < len(sizes); kind++ {
		if s.need[kind] == 0 {
			continue
		}
		for whole > 0 && sizes[whole-1] <= capacity-sizes[kind] {
			whole--
			filled -= s.need[whole]
			middle += int64(s.need[whole]) * sizes[whole]
		}
		middle += int64(s.need[kind]) * sizes[kind]
		best = max(best, filled+int(ceilDiv(middle, capacity)))
	}
	return best
}
