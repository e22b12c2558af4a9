package line

import (
	"context"
	"fmt"
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

// The dearest pattern costs nodes by the size of the table that it is found in.
func TestTableCostsNodes(t *testing.T) {
	var sizes []int64
	for i := range int64(50) {
		sizes = append(sizes, 20+i%7)
	}
	j := newJob(1000, sizes)
	m := &meter{ctx: t.Context(), limit: 100}
	c := newColumns(j, m)
	c.generate(j.counts)
	if want := len(c.knapsack.taken) / cellsPerNode; m.used != want || want < 2 {
		t.Errorf("%d nodes for %d cells", m.used, len(c.knapsack.taken))
	}
}

// States of a search have one text only if they are the same: as many bins left and as many items of each kind, also beyond 255.
func TestStatesHaveTextsOfTheirOwn(t *testing.T) {
	counts := []int{0, 1, 2, 255, 256, 257, 512}
	states, patterns := map[string]string{}, map[string]string{}
	once := func(texts map[string]string, key string, of ...any) {
		if other, twice := texts[key]; twice {
			t.Errorf("%v and %s are one", of, other)
		}
		texts[key] = fmt.Sprint(of...)
	}
	for _, bins := range counts {
		for _, one := range counts {
			for _, other := range counts {
				once(states, (&completion{need: []int{one, other}}).key(bins), bins, one, other)
			}
			once(patterns, pattern{{kind: bins, count: one}}.key(), bins, one)
		}
	}
}
