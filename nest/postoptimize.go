package nest

import (
	"cmp"
	"context"
	"slices"
	"sort"

	"example.com/groovewright/fraction"
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

// tieBreak plans the cuts of sheets; ok is false if the parts of one do not come free.
func (j *job) tieBreak(saw *sawyer, sheets ...layout) (f tieBreak, ok bool) {
	for _, l := range sheets {
		k := &j.kinds[l.kind]
		b := saw.plan(rect{0, 0, k.w, k.h}, j.rects(l.spots))
		if saw.stuck {
			return f, false
		}
		f.cuts += saw.fewest(b)
		f.offcut = max(f.offcut, b.largest)
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

// PostOptimize returns a nest that is as good in the order of [Search] as r, a nest of the problem,
// and leaves a larger rectangle, or as large a one after fewer cuts, where such a nest is found: where
// pieces also stand on the sawn edge under them. They then move across their sheets by whole repeats, to
// the sheet's own sides and away from cuts that take off less than Saw.LeastRip. Search does all this itself unless its budget is for a draft. It takes some milliseconds. The errors are those
// of [Verify].
func PostOptimize(p Problem, r Result) (better Result, err error) {
	defer fraction.Catch(&err)
	if err := Verify(p, r); err != nil {
		return Result{}, err
	}
	j, err := newJob(&p)
	if err != nil {
		return Result{}, err
	}
	best, ok := j.planOf(&r)
	if !ok {
		return r, nil // it lies between the marks of the problem
	}
	j.postOptimize(context.Background(), &best)
	if better, err = j.result(best, maxNodes); err != nil {
		return Result{}, err
	}
	better.Bound, better.Status, better.Nodes = r.Bound, r.Status, r.Nodes
	j.settle(&better, &best)
	return better, nil
}

// planOf returns the plan of a result; ok is false if a part does not lie on the marks.
func (j *job) planOf(r *Result) (p plan, ok bool) {
	index := map[int]int{}
	for i, part := range j.p.Parts {
		index[part.Number] = i
	}
	for _, s := range r.Sheets {
		l := layout{kind: s.Stock}
		for _, pl := range s.Placements {
			if j.den%pl.X.Den() != 0 || j.den%pl.Y.Den() != 0 {
				return p, false
			}
			l.spots = append(l.spots, spot{index[pl.Part], j.marks(pl.X), j.marks(pl.Y) - j.kinds[s.Stock].trim})
		}
		p.sheets = append(p.sheets, l)
	}
	for _, u := range r.Unplaced {
		p.left = append(p.left, index[u.Part])
	}
	return p, true
}

// mostGather is how many nodes gather the waste.
const mostGather = 500

// postOptimize betters a plan without changing its objective.
func (j *job) postOptimize(ctx context.Context, best *plan) {
	saw := &sawyer{kerf: j.kerf, most: maxNodes}
	if len(best.sheets) > 1 {
		m := j.newImprover(ctx, best, objective{left: -1})
		m.run(mostGather)
		gathered, _ := j.tieBreak(saw, m.now.sheets...)
		before, _ := j.tieBreak(saw, best.sheets...)
		if j.objective(&m.now) == j.objective(best) && gathered.better(before) {
			*best = m.now
		}
	}
	for i := range best.sheets {
		j.rearrange(saw, &best.sheets[i])
		j.drop(saw, &best.sheets[i])
		j.shift(saw, &best.sheets[i])
	}
	// How far a sheet is filled, in thousandths.
	load := func(l layout) int64 { return j.area(l.spots) / (j.kinds[l.kind].w*j.kinds[l.kind].h/1000 + 1) }
	sort.SliceStable(best.sheets, func(a, b int) bool { return load(best.sheets[a]) > load(best.sheets[b]) })
}

// mostRearranged is how many steps look for all rectangles that the pieces of a sheet come from;
// six different ones need no more.
const mostRearranged = 729

// rearrange lays the pieces of a sheet out anew, if that is better by tieBreak.
func (j *job) rearrange(saw *sawyer, l *layout) {
	best, _ := j.tieBreak(saw, *l)
	known := [][]rect{j.look(l.spots)}
	consider := func(spots []spot) {
		if len(spots) < len(l.spots) {
			return
		}
		look := j.look(spots)
		if slices.ContainsFunc(known, func(k []rect) bool { return slices.Equal(k, look) }) {
			return
		}
		known = append(known, look)
		other := layout{l.kind, spots}
		if f, ok := j.tieBreak(saw, other); ok && f.better(best) {
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
	one.limit = mostRearranged
	k, all := &j.kinds[l.kind], setOf(groups)
	boxes, gap := one.boxes(all, k.phase)
	for i, b := range boxes {
		if gap+b.w <= k.w && b.h <= k.h {
			consider(name(groups, one.place(nil, all, k.phase, 0, 0, i)))
		}
	}
}

// look is equal for layouts that differ only in which of like pieces lies where.
func (j *job) look(spots []spot) []rect {
	parts := j.rects(spots)
	slices.SortStableFunc(parts, func(a, b rect) int { return cmp.Or(cmp.Compare(a.y, b.y), cmp.Compare(a.x, b.x)) })
	return parts
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
