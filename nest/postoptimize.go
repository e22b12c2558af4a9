package nest

import (
	"cmp"
	"fmt"
	"slices"
)

// Among nests of the same objective the better one leaves the largest single rectangle, which serves
// best for the next job, and then needs fewest cuts. These two are looked for, not proved: a short
// improvement run gathers the waste on one sheet, then each sheet is laid out anew in several ways.

// tieBreak is what a plan is judged by beyond its objective.
type tieBreak struct {
	offcut int64 // area of the largest rectangle left
	cuts   int
}

func (f tieBreak) better(g tieBreak) bool {
	return f.offcut > g.offcut || f.offcut == g.offcut && f.cuts < g.cuts
}

// tieBreakOf saws a sheet; ok is false if the parts do not come free.
func (j *job) tieBreakOf(l *layout) (f tieBreak, ok bool) {
	k := &j.kinds[l.kind]
	cuts, offcuts, err := takeApart(j.kerf, rect{0, 0, k.w, k.h}, j.rects(l.spots))
	if err != nil {
		return f, false
	}
	f.cuts = len(cuts)
	if len(offcuts) > 0 {
		f.offcut = offcuts[0].w * offcuts[0].h
	}
	return f, true
}

func (j *job) rects(spots []spot) []rect {
	parts := make([]rect, len(spots))
	for i, s := range spots {
		parts[i] = rect{s.x, s.y, j.pieces[s.piece].w, j.pieces[s.piece].h}
	}
	return parts
}

// tieBreaks judges a whole plan.
func (j *job) tieBreaks(p *plan) (f tieBreak) {
	for i := range p.sheets {
		one, _ := j.tieBreakOf(&p.sheets[i])
		f.offcut = max(f.offcut, one.offcut)
		f.cuts += one.cuts
	}
	return f
}

// gatherShare is the part of the budget that is spent on gathering the waste, and mostGather the
// most steps.
const (
	gatherShare = 64
	mostGather  = 8_000
)

// postOptimize betters the best plan without changing its objective.
func (s *searcher) postOptimize() {
	j := s.job
	if len(s.best.sheets) > 1 {
		m := improver{ctx: s.ctx, job: j, rand: dice(), now: s.best.clone(), least: objective{left: -1}}
		m.run(min(s.budget/gatherShare, mostGather))
		s.nodes += m.filler.steps
		if j.objective(&m.now).compare(j.objective(&s.best)) < 0 || j.tieBreaks(&m.now).better(j.tieBreaks(&s.best)) {
			s.best = m.now
		}
	}
	for i := range s.best.sheets {
		j.rearrange(&s.best.sheets[i])
	}
	slices.SortStableFunc(s.best.sheets, func(a, b layout) int { return b.load(j) - a.load(j) })
}

// load is how far a sheet is filled, in thousandths.
func (l *layout) load(j *job) int {
	var area int64
	for _, s := range l.spots {
		area += j.pieces[s.piece].w * j.pieces[s.piece].h
	}
	k := &j.kinds[l.kind]
	return int(area / (k.w*k.h/1000 + 1))
}

// rearrange lays the pieces of a sheet out anew, if that leaves a larger rectangle or needs fewer cuts.
func (j *job) rearrange(l *layout) {
	best, _ := j.tieBreakOf(l)
	known := map[string]bool{j.look(l.spots): true}
	consider := func(spots []spot) {
		if len(spots) < len(l.spots) {
			return
		}
		look := j.look(spots)
		if known[look] {
			return
		}
		known[look] = true
		other := layout{l.kind, spots}
		if f, ok := j.tieBreakOf(&other); ok && f.better(best) {
			*l, best = other, f
		}
	}
	var pieces []int
	for _, s := range l.spots {
		pieces = append(pieces, s.piece)
	}
	for _, less := range []func(a, b *piece) int{tallFirst, wideFirst} {
		order := slices.Clone(pieces)
		slices.SortStableFunc(order, func(a, b int) int { return less(&j.pieces[a], &j.pieces[b]) })
		f := filler{job: j}
		for n := range ranks * splits {
			spots, _ := f.fill(l.kind, order, manner{n % ranks, n / ranks}, nil, nil)
			consider(spots)
		}
	}
	groups := j.groups(pieces)
	one := newOneSheet(j, groups)
	one.limit = mostSteps
	if len(pieces) > mostInSet {
		return
	}
	var all set
	for _, g := range groups {
		all = all.plus(g.all)
	}
	k := &j.kinds[l.kind]
	boxes, gap := one.boxes(all, k.phase)
	for i, b := range boxes {
		if gap+b.w <= k.w && b.h <= k.h {
			consider(name(groups, one.place(nil, all, k.phase, 0, 0, i)))
		}
	}
}

// look is equal for layouts that differ only in which of like pieces lies where.
func (j *job) look(spots []spot) string {
	parts := j.rects(spots)
	slices.SortFunc(parts, func(a, b rect) int { return cmp.Or(cmp.Compare(a.y, b.y), cmp.Compare(a.x, b.x)) })
	return fmt.Sprint(parts)
}

// name gives each spot of a group one of its pieces.
func name(groups []group, spots []spot) []spot {
	next := make([]int, len(groups))
	for i, at := range spots {
		spots[i].piece = groups[at.piece].pieces[next[at.piece]]
		next[at.piece]++
	}
	return spots
}
