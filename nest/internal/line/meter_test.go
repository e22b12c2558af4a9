package line

import (
	"context"
	"testing"
)

// hearing counts how often it is asked whether it has ended.
type hearing struct {
	context.Context
	asked int
}

func (h *hearing) Err() error {
	h.asked++
	return h.Context.Err()
}

// A search asks its context at the first node and then once in 64: an ended one allows no node.
func TestMeterAsksTheContext(t *testing.T) {
	h := &hearing{Context: t.Context()}
	m := &meter{ctx: h, limit: 640}
	for range 640 {
		if !m.spend(1) {
			t.Fatalf("no node after %d of %d", m.used, m.limit)
		}
	}
	if m.spend(1) || h.asked != 11 {
		t.Errorf("asked %d times, and %d nodes of %d", h.asked, m.used, m.limit)
	}
	ended, end := context.WithCancel(t.Context())
	end()
	if m := (&meter{ctx: ended, limit: 640}); m.spend(1) || m.limit != 0 {
		t.Errorf("an ended context allows %d nodes", m.limit)
	}
}

// Five items of 34 take three bins of 100, two in each. What was tried in vain for two is remembered, as long as there is memory.
func TestFailuresTakeMemory(t *testing.T) {
	sizes := []int64{34, 34, 34, 34, 34}
	for before, kept := range map[int]bool{0: true, memory: false} {
		j := newJob(100, sizes)
		s := newCompletion(j, j.counts, &meter{ctx: t.Context(), limit: 1000})
		s.memory = before
		if s.search(2) || !s.proved() {
			t.Error("five items of 34 are packed into two bins of 100")
		}
		total := before
		for key := range s.failed {
			total += len(key)
		}
		if len(s.failed) > 0 != kept || kept && s.memory != total {
			t.Errorf("%d failures kept, %d bytes counted, %d taken", len(s.failed), s.memory, total)
		}
	}
}

// A programme that is at its optimum needs no pivot more.
func TestOptimumTakesNoPivot(t *testing.T) {
	m := NewMaster([]int{2, 3}, []int{1, 1})
	m.Add([]int{1, 1})
	if _, pivots := m.Optimize(); pivots < 1 || pivots > 9 {
		t.Errorf("%d pivots", pivots)
	}
	if bins, pivots := m.Optimize(); pivots != 0 {
		t.Errorf("%d pivots at an optimum of %v", pivots, bins)
	}
}
