package nest

import (
	"cmp"
	"fmt"
	"slices"
)

// tieBreak is what a plan is judged by beyond its objective: the better one leaves the largest
// single rectangle, which serves best for the next job, and then needs fewest cuts. Both are looked
// for, not proved: a short improvement run gathers the waste on one sheet, then each sheet is laid
// out anew in several ways.
type tieBreak struct {
	offcut int64 // area of the largest rectangle left
	cuts   int
}

func (f tieBreak) better(g tieBreak) bool {
	return f.offcut > g.offcut || f.offcut == g.offcut && f.cuts < g.cuts
}

// tieBreak saws sheets; ok is false if the parts of one do not come free.
func (j *job) tieBreak(sheets ...layout) (f tieBreak, ok bool) {
	for _, l := range sheets {
		k := &j.kinds[l.kind]
		cuts, offcuts, err := takeApart(j.kerf, rect{0, 0, k.w, k.h}, j.rects(l.spots))
		if err != nil {
			return f, false
		}
		f.cuts += len(cuts)
		if len(offcuts) > 0 {
			f.offcut = max(f.offcut, offcuts[0].w*offcuts[0].h)
		}
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

// One step in gatherShare of the budget gathers the waste, and mostGather at most.
const gatherShare, mostGather = 64, 8_000

// postOptimize betters the best plan without changing its objective.
func (s *searcher) postOptimize() {
	j := s.job
	if len(s.best.sheets) > 1 {
		m := s.newImprover(objective{left: -1})
		m.run(min(s.budget/gatherShare, mostGather))
		s.nodes += m.filler.steps
		gathered, _ := j.tieBreak(m.now.sheets...)
		before, _ := j.tieBreak(s.best.sheets...)
		if j.objective(&m.now).compare(j.objective(&s.best)) < 0 || gathered.better(before) {
			s.best = m.now
		}
	}
	for i := range s.best.sheets {
		j.rearrange(&s.best.sheets[i])
	}
	// How far a sheet is filled, in thousandths.
	load := func(l layout) int64 { return j.area(l.spots) / (j.kinds[l.kind].w*j.kinds[l.kind].h/1000 + 1) }
	slices.SortStableFunc(s.best.sheets, func(a, b layout) int { return cmp.Compare(load(b), load(a)) })
}

// rearrange lays the pieces of a sheet out anew, if that is better by tieBreak.
func (j *job) rearrange(l *layout) {
	best, _ := j.tieBreak(*l)
	known := map[string]bool{j.look(l.spots): true}
	consider := func(spots []spot) {
		look := j.look(spots)
		if len(spots) < len(l.spots) || known[look] {
			return
		}
		known[look] = true
		other := layout{l.kind, spots}
		if f, ok := j.tieBreak(other); ok && f.better(best) {
			*l, best = other, f
		}
	}
	var pieces []int
	for _, s := range l.spots {
		pieces = append(pieces, s.piece)
	}
	for _, less := range []func(a, b *piece) int{tallFirst, wideFirst} {
		order, f := j.order(pieces, less), filler{job: j}
		for n := range ranks * splits {
			spots, _ := f.fill(l.kind, order, manner{n % ranks, n / ranks}, nil, nil)
			consider(spots)
		}
	}
	if len(pieces) > mostInSet {
		return
	}
	groups := j.groups(pieces)
	one := newOneSheet(j, groups)
	one.limit = mostSteps
	k, all := &j.kinds[l.kind], setOf(groups)
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
