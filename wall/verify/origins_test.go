package verify

import "slices"

// origins returns the contract's finite set of origins for each run, each in [0, pitch), in rising
// order.
func (j *room) origins(regions []*region, w map[string]rat) [][]rat {
	n := len(regions)
	base := make([][]rat, n)
	for i, g := range regions {
		base[i] = j.own(g, w)
	}
	group := j.groups()
	for i := range base {
		// Where a whole chain of runs shows no edge, each may start afresh at its left limit and
		// its pattern be carried on from there.
		seen := slices.ContainsFunc(group[i], func(k int) bool { return len(j.own(regions[k], w)) > 0 })
		if !seen {
			base[i] = []rat{mod(regions[i].left.stop, j.pattern.pitch)}
		}
	}
	out := make([][]rat, n)
	for i := range base {
		out[i] = slices.Clone(base[i])
	}
	for range n - 1 {
		next := make([][]rat, n)
		for i := range out {
			next[i] = slices.Clone(out[i])
		}
		for i := range out {
			k, ok := j.corner(i)
			if !ok {
				continue
			}
			shift := j.carry(i)
			for _, o := range out[i] {
				next[k] = append(next[k], mod(sum(o, shift), j.pattern.pitch))
			}
			for _, o := range out[k] {
				next[i] = append(next[i], mod(diff(o, shift), j.pattern.pitch))
			}
		}
		for i := range next {
			slices.SortFunc(next[i], rat.Cmp)
			out[i] = slices.CompactFunc(next[i], same)
		}
	}
	for i := range out {
		slices.SortFunc(out[i], rat.Cmp)
		out[i] = slices.CompactFunc(out[i], same)
	}
	return out
}

// carry returns what to add to the origin of run i to get that of the next run with the pattern
// unbroken round their corner.
func (j *room) carry(i int) rat {
	twice := times(whole(2), j.pattern.Thickness)
	if j.Runs[i].Right.Kind == outsideCorner {
		return negative(sum(j.Runs[i].Width, twice))
	}
	return diff(twice, j.Runs[i].Width)
}

// groups returns for each run all the runs that it is joined to by corners.
func (j *room) groups() [][]int {
	n := len(j.Runs)
	id := make([]int, n)
	for i := range id {
		id[i] = i
	}
	for i := range j.Runs {
		if next, ok := j.corner(i); ok {
			from, to := id[next], id[i]
			for k := range id {
				if id[k] == from {
					id[k] = to
				}
			}
		}
	}
	out := make([][]int, n)
	for i := range out {
		for k := range id {
			if id[k] == id[i] {
				out[i] = append(out[i], k)
			}
		}
	}
	return out
}

// own returns the origins that a run's own seen edges give: those that put a feature boundary on
// one, and those that leave equal cuts at its two ends.
func (j *room) own(g *region, w map[string]rat) []rat {
	p := j.pattern
	var out, ends []rat
	for _, u := range g.uprights(w) {
		if u.seen().Sign() <= 0 {
			continue
		}
		xs := []rat{u.x}
		if u.foot != nil {
			xs = []rat{u.foot, middle(u.foot, u.head), u.head}
		}
		for _, x := range xs {
			for k, b := range p.boundaries {
				out = append(out, mod(diff(x, b), p.pitch))
				if f := p.Features[k]; p.WideFlats && f.Kind == "flat" {
					out = append(out, mod(diff(x, sum(b, half(f.Width))), p.pitch))
				}
			}
		}
		if u.end && (len(ends) == 0 || !same(ends[0], u.x)) {
			ends = append(ends, u.x)
		}
	}
	if len(ends) == 2 {
		out = append(out, p.balanced(ends[0], ends[1])...)
	}
	return out
}

// balanced returns the origins that leave the same width of a like feature at both ends.
func (p *pattern) balanced(left, right rat) []rat {
	var out []rat
	for i, f := range p.Features {
		for k, h := range p.Features {
			if f.Kind != h.Kind || !same(f.Width, h.Width) {
				continue
			}
			// Feature i ends d right of left, feature k starts d left of right.
			twice := mod(diff(sum(left, right), sum(p.boundaries[i], f.Width, p.boundaries[k])), p.pitch)
			for _, origin := range []rat{half(twice), half(sum(twice, p.pitch))} {
				d := mod(diff(sum(p.boundaries[i], f.Width, origin), left), p.pitch)
				e := mod(diff(diff(right, p.boundaries[k]), origin), p.pitch)
				if same(d, e) && !less(f.Width, d) {
					out = append(out, mod(origin, p.pitch))
				}
			}
		}
	}
	return out
}
