package line

import "context"

// Result is a packing and what is known about it.
type Result struct {
	Bins   [][]int  // the indices of the sizes in each bin, larger items first, bins with larger items first
	Lower  int      // a number of bins that no packing can go below
	Proved bool     // len(Bins) equals Lower: the packing is optimal
	How    Argument // what gives Lower
	Nodes  int      // the effort spent
}

// quick is the number of nodes of a complete search before the linear programme is set up,
// diveShare the part of the nodes left, one in so many, that dives may use, and rounds the number
// of dives into each number of bins.
const quick, diveShare, rounds = 500, 2, 100

// Pack packs the sizes into the fewest bins that it can find and prove with so many nodes. A node
// is one partial packing looked at or one pivot of the linear programme.
//
// It fails only if [Check] does. When the nodes are spent or the context is cancelled it returns
// the best packing so far with Proved false.
func Pack(ctx context.Context, capacity int64, sizes []int64, nodes int) (Result, error) {
	return (*Memory)(nil).Pack(ctx, capacity, sizes, nodes)
}

// pack packs a job.
func (j *job) pack(ctx context.Context, nodes int) packed {
	p := &packer{job: j, meter: &meter{ctx: ctx, limit: nodes}, how: Area}
	p.best = j.greedy(j.counts)
	p.lower = int(ceilDiv(j.total(j.counts), j.capacity))
	if len(p.best) > p.lower {
		p.raise(j.lower())
		p.run()
	}
	return packed{p.best, p.lower, p.how, min(p.meter.used, p.meter.limit)}
}

// packer holds the best packing and the best bound while they close in.
type packer struct {
	job   *job
	meter *meter
	best  []pattern
	lower int
	how   Argument
}

// raise takes over a bound if it is better.
func (p *packer) raise(bins int, how Argument) {
	if bins > p.lower {
		p.lower, p.how = bins, how
	}
}

// run closes the gap between best and lower, by the cheapest means first.
func (p *packer) run() {
	if !p.closed() {
		p.complete(quick)
	}
	if p.closed() {
		return
	}
	if c := newColumns(p.job, p.meter); c != nil {
		_, bound := c.solve(p.job.counts, 0)
		p.raise(bound, LinearProgram)
		p.dives(c)
	}
	for !p.closed() {
		p.complete(p.meter.limit)
	}
}

// closed reports whether there is nothing more to do, or nothing to do it with.
func (p *packer) closed() bool {
	return len(p.best) == p.lower || p.meter.spent()
}

// complete searches for a packing into the lower bound, and raises the bound if there is none.
func (p *packer) complete(nodes int) {
	p.meter.within(nodes, func(part *meter) {
		s := newCompletion(p.job, p.job.counts, part)
		switch {
		case s.search(p.lower):
			p.best = s.chosen
		case s.proved():
			p.raise(p.lower+1, Search)
		default:
			part.used = nodes
		}
	})
}

// dives rounds the programme again and again: into the lower bound, or into as few more as it can.
func (p *packer) dives(c *columns) {
	p.meter.within((p.meter.limit-p.meter.used)/diveShare, func(part *meter) {
		c.meter = part
		for round := 0; round < rounds && len(p.best) > p.lower; round++ {
			for bins := p.lower; bins < len(p.best); bins++ {
				if found := c.dive(p.job.counts, bins, round); found != nil {
					p.best = found
				}
			}
		}
	})
}
