package nest

import "example.com/groovewright/nest/internal/line"

// stacked reports whether each of the pieces fits the width of every kind of stock that is of use,
// and no two of the widest fit side by side. A sheet is then a stack of parts, but for narrow ones:
// bin packing in one dimension, for which package line has a search of its own. It is all there is
// to the job where no two of the narrowest fit side by side either.
func (j *job) stacked(pieces []int) (some, all bool) {
	least, most := int64(maxMarks), int64(0)
	for _, i := range pieces {
		least, most = min(least, j.pieces[i].w), max(most, j.pieces[i].w)
	}
	all = true
	for _, kind := range j.stockOrder() {
		k := &j.kinds[kind]
		if 2*most+j.kerf <= k.w {
			return false, false
		}
		all = all && 2*least+j.kerf > k.w
		for _, i := range pieces {
			if q := &j.pieces[i]; j.next(k.phase, 0, q)+q.w > k.w {
				return false, false
			}
		}
	}
	return true, all
}

// stack packs a job of stacks on each kind of stock alone, where there is enough of it that is long
// enough, and then changes sheets for cheaper ones that will do. With one kind that gives a bound,
// if all is stacked.
func (s *searcher) stack(pieces []int, all bool) {
	j := s.job
	sizes := make([]int64, len(pieces))
	for n, i := range pieces {
		sizes[n] = j.pieces[i].h + j.kerf
	}
	kinds := j.stockOrder()
	for _, kind := range kinds {
		k := &j.kinds[kind]
		// A node of line is a whole partial packing, some ten steps of this package.
		r, err := line.Pack(s.ctx, k.h+j.kerf, sizes, max(1, s.budget/10/len(kinds)))
		if err != nil {
			continue // too short, or too large a job for line
		}
		s.nodes += r.Nodes
		if len(r.Bins) <= k.count {
			p := plan{left: j.except(pieces)}
			for _, items := range r.Bins {
				l, y := layout{kind: kind}, int64(0)
				for _, n := range items { // one above another
					q := &j.pieces[pieces[n]]
					l.spots = append(l.spots, spot{pieces[n], j.next(k.phase, 0, q), y})
					y += q.h + j.kerf
				}
				p.sheets = append(p.sheets, l)
			}
			j.downsize(p.sheets, j.spare(p.sheets))
			s.take(p)
		}
		if all && len(kinds) == 1 && r.Lower <= k.count {
			how := [...]Argument{PartArea, DualFunctions, LinearProgram, ExactSearch}[r.How]
			s.raise(r.Lower, int64(r.Lower)*k.price, how)
		}
	}
}
