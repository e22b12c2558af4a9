package line

import "context"

// Programme is the linear programme over patterns of a problem, for tests.
type Programme struct {
	columns *columns
	need    []int
}

// NewProgramme prepares the programme with a budget of nodes.
func NewProgramme(capacity int64, sizes []int64, nodes int) *Programme {
	j := newJob(capacity, sizes)
	return &Programme{newColumns(j, &meter{ctx: context.Background(), limit: nodes}), j.counts}
}

// Solve returns the value and the proved bound.
func (p *Programme) Solve() (float64, int) { return p.columns.solve(p.need, 0) }

// Dive returns a packing into so many bins, or nil.
func (p *Programme) Dive(bins, round int) [][]int {
	found := p.columns.dive(p.need, bins, round)
	if found == nil {
		return nil
	}
	return p.columns.job.bins(found)
}

// Best is the greatest value of a pattern at the given values of the items.
func (p *Programme) Best(value func(size int64) int64) int64 {
	values := make([]int64, len(p.need))
	for kind := range values {
		values[kind] = value(p.columns.job.sizes[kind])
	}
	best, _ := p.columns.knapsack.solve(values, p.need, 0, 0)
	return best
}

// ThresholdBound is the bound that the complete search uses in each node.
func ThresholdBound(capacity int64, sizes []int64) int {
	j := newJob(capacity, sizes)
	return newCompletion(j, j.counts, nil).threshold()
}

// Complete searches for a packing into so many bins without any other means.
func Complete(capacity int64, sizes []int64, bins int) (packed [][]int, proved bool) {
	j := newJob(capacity, sizes)
	s := newCompletion(j, j.counts, &meter{ctx: context.Background(), limit: DefaultNodes})
	if s.search(bins) {
		return j.bins(s.chosen), true
	}
	return nil, s.proved()
}
