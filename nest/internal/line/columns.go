package line

import "context"

// columns solves the linear programme of a job by column generation and rounds it.
type columns struct {
	job      *job
	master   *Master
	knapsack *knapsack
	meter    *meter
}

// newColumns prepares the programme, or returns nil if its knapsack is too large.
func newColumns(j *job, meter *meter) *columns {
	k := newKnapsack(j)
	if k == nil {
		return nil
	}
	most := make([]int, len(j.counts))
	for kind, count := range j.counts {
		most[kind] = j.most(kind, count)
	}
	return &columns{job: j, master: NewMaster(j.counts, most), knapsack: k, meter: meter}
}

// price is the integer that stands for a dual price of one bin, batch the number of patterns taken
// from one knapsack, and cellsPerNode the part of its table that takes as long as a node.
const price, batch, cellsPerNode = 1 << 40, 40, 1 << 14

// solve covers the needed items by the least number of bins of the linear programme, or stops as
// soon as enough bins suffice. It returns the value, in floating point, and the largest number of
// bins that a price proved necessary.
//
// The proof is J. M. Farley's ("A note on bounding a class of linear programming problems",
// Operations Research 38, 1990) in integers: if no pattern is worth more than most at any prices,
// as the exact knapsack says, then bins >= (worth of all items) / most.
func (c *columns) solve(need []int, enough float64) (value float64, bound int) {
	m := c.master
	m.Cover(need)
	for c.meter.spend(1) && m.bins() > enough {
		if m.step() {
			continue
		}
		more, proved := c.generate(need)
		if bound = max(bound, proved); !more {
			break
		}
	}
	return m.bins(), bound
}

// generate adds the patterns that lower the value most, reports whether there were any, and returns
// the bound that the present prices prove.
func (c *columns) generate(need []int) (more bool, bound int) {
	c.meter.spend(len(c.knapsack.taken) / cellsPerNode)
	values := c.master.Prices(price)
	const floor = price + price>>26
	most, found := c.knapsack.solve(values, need, floor, batch)
	var worth int64
	for kind, count := range need {
		worth += int64(count) * values[kind]
	}
	if most > 0 {
		bound = int(ceilDiv(worth, most))
	}
	for _, p := range found {
		more = c.master.add(p) || more
	}
	return more, bound
}

// scramble is the next number of D. E. Knuth's 64-bit linear congruence; its upper bits are better.
func scramble(x uint64) uint64 { return x*6364136223846793005 + 1442695040888963407 }

// meter counts nodes against a budget and listens to a context.
type meter struct {
	ctx   context.Context
	used  int
	limit int
}

// spend uses up nodes and reports whether the search may go on.
func (m *meter) spend(nodes int) bool {
	before := m.used
	m.used += nodes
	if (before == 0 || m.used/64 != before/64) && m.ctx.Err() != nil {
		m.limit = min(m.limit, before)
	}
	return m.used <= m.limit
}

// spent reports whether the budget is used up.
func (m *meter) spent() bool { return m.used >= m.limit }

// within runs a search with at most so many nodes of the rest of the budget.
func (m *meter) within(nodes int, search func(*meter)) {
	part := &meter{ctx: m.ctx, limit: max(0, min(nodes, m.limit-m.used))}
	search(part)
	m.used += min(part.used, part.limit)
}
