package nest

import "example.com/groovewright/nest/internal/line"

// Boards, and all jobs in which no two parts lie side by side: a sheet is then a stack of parts,
// and only their heights count. That is bin packing in one dimension, for which package line has a
// search of its own.

// stacked reports whether no two of the pieces fit side by side on any kind of stock, and each fits
// the width of every kind that is of use.
func (j *job) stacked(pieces []int) bool {
	least := int64(maxMarks)
	for _, i := range pieces {
		least = min(least, j.pieces[i].w)
	}
	for i := range j.kinds {
		k := &j.kinds[i]
		if !k.usable {
			continue
		}
		if 2*least+j.kerf <= k.w {
			return false
		}
		for _, p := range pieces {
			q := &j.pieces[p]
			if j.next(k.phase, 0, q)+q.w > k.w {
				return false
			}
		}
	}
	return true
}

// stack searches a job of stacks; it may find nothing.
func (s *searcher) stack(pieces []int) {
	j := s.job
	var kinds []int
	var boards []line.Board
	for i, k := range j.kinds {
		if k.usable {
			kinds = append(kinds, i)
			boards = append(boards, line.Board{Length: k.h + j.kerf, Price: k.price, Limited: k.limited, Count: k.count})
		}
	}
	sizes := make([]int64, len(pieces))
	for n, i := range pieces {
		sizes[n] = j.pieces[i].h + j.kerf
	}
	// A node of line is a whole partial packing, some ten steps of this package.
	r, err := line.Boards(s.ctx, boards, sizes, line.Budget{Nodes: max(1, s.budget/10)})
	if err != nil || len(r.Cuts) == 0 {
		return // too large a job for line, or too few boards; the general search goes on
	}
	p := plan{left: j.except(pieces)}
	for _, c := range r.Cuts {
		p.sheets = append(p.sheets, j.stackOn(kinds[c.Board], pieces, c.Items))
	}
	s.nodes += r.Nodes
	s.take(p)
	how := [...]Argument{line.Area: PartArea, line.DualFunction: DualFunctions, line.LinearProgram: LinearProgram, line.Search: ExactSearch}[r.How]
	s.raise(r.Fewest, r.Lower, how)
	if r.Proved && j.objective(&s.best).bought <= s.least.bought {
		s.bound.Proved, s.bound.How = true, how
	}
}

// stackOn lays pieces on a sheet one above another.
func (j *job) stackOn(kind int, pieces, items []int) layout {
	l := layout{kind: kind}
	var y int64
	for _, n := range items {
		q := &j.pieces[pieces[n]]
		l.spots = append(l.spots, spot{pieces[n], j.next(j.kinds[kind].phase, 0, q), y})
		y += q.h + j.kerf
	}
	return l
}
