package nest

import (
	"cmp"
	"slices"

	"example.com/groovewright/fraction"
)

// spot is a piece at its place on a sheet.
type spot struct {
	piece int // index into job.pieces
	x, y  int64
}

// layout is a filled sheet.
type layout struct {
	kind  int // index into job.kinds
	spots []spot
}

// FirstFit nests the parts by first-fit decreasing height in rows: the tallest
// part first, each in the first row with room for it at its phase, else in a new
// row of the first sheet with room for that, else on a new sheet. Rows are
// numbered as they are opened. A new sheet is taken from limited stock first,
// then from the cheapest.
//
// The rows of a sheet come free by crosscuts, the parts of a row by rips, and a
// third cut takes a part to its height. The result is not searched for a better
// one; it takes n log n + n × rows steps. This is the hybrid first-fit of
// F. R. K. Chung, M. R. Garey and D. S. Johnson, "On packing two-dimensional
// bins", SIAM J. Algebraic and Discrete Methods 3 (1982), with kerf and phase
// added; without these it takes at most 17/8 of the least number of sheets and 5
// (from memory).
func FirstFit(p Problem) (r Result, err error) {
	defer fraction.Catch(&err)
	if err := p.Validate(); err != nil {
		return Result{}, err
	}
	j, err := newJob(&p)
	if err != nil {
		return Result{}, err
	}
	sheets, left := j.firstFit(j.order(tallFirst))
	r, err = j.result(sheets, left)
	if err != nil {
		return Result{}, err
	}
	r.Bound = j.lower()
	j.settle(&r, sheets)
	return r, nil
}

// tallFirst orders pieces by height falling, then width falling, then phase.
func tallFirst(a, b *piece) int {
	return cmp.Or(cmp.Compare(b.h, a.h), cmp.Compare(b.w, a.w), cmp.Compare(a.at[0], b.at[0]))
}

// order returns the indices of all pieces in the given order, equal ones as the
// problem lists them.
func (j *job) order(less func(a, b *piece) int) []int {
	all := make([]int, len(j.pieces))
	for i := range all {
		all[i] = i
	}
	slices.SortStableFunc(all, func(a, b int) int { return less(&j.pieces[a], &j.pieces[b]) })
	return all
}

// row is a strip across a sheet; right is where its last part ends.
type row struct {
	sheet    int
	y, h     int64
	right    int64
	occupied bool
}

// firstFit places the pieces in the given order; left are those for which no
// sheet is left.
func (j *job) firstFit(order []int) (sheets []layout, left []int) {
	var rows []row
	var top []int64 // of the rows of each sheet
	used := make([]int, len(j.kinds))
	shelf := j.shelf()
next:
	for _, i := range order {
		q := &j.pieces[i]
		for r := range rows {
			if j.intoRow(&rows[r], sheets, i) {
				continue next
			}
		}
		for s := range sheets {
			k := &j.kinds[sheets[s].kind]
			if top[s]+j.kerf+q.h <= k.h && j.fits(k, q) {
				rows = append(rows, row{sheet: s, y: top[s] + j.kerf, h: q.h})
				top[s] += j.kerf + q.h
				j.intoRow(&rows[len(rows)-1], sheets, i)
				continue next
			}
		}
		for _, kind := range shelf {
			k := &j.kinds[kind]
			if used[kind] < k.count && j.fits(k, q) {
				used[kind]++
				sheets = append(sheets, layout{kind: kind})
				top = append(top, q.h)
				rows = append(rows, row{sheet: len(sheets) - 1, h: q.h})
				j.intoRow(&rows[len(rows)-1], sheets, i)
				continue next
			}
		}
		left = append(left, i)
	}
	return sheets, left
}

// intoRow puts the piece at the right end of the row, if there is room.
func (j *job) intoRow(r *row, sheets []layout, i int) bool {
	s := &sheets[r.sheet]
	k := &j.kinds[s.kind]
	q := &j.pieces[i]
	from := int64(0)
	if r.occupied {
		from = r.right + j.kerf
	}
	x := j.next(k.phase, from, q)
	if q.h > r.h || x+q.w > k.w {
		return false
	}
	r.right, r.occupied = x+q.w, true
	s.spots = append(s.spots, spot{i, x, r.y})
	return true
}

// shelf returns the kinds of stock in the order in which sheets are taken:
// limited before unlimited, then the cheapest, then of limited ones the smallest
// (to use up offcuts) and of others the largest, then as the problem lists them.
func (j *job) shelf() []int {
	var all []int
	for i, k := range j.kinds {
		if k.usable {
			all = append(all, i)
		}
	}
	slices.SortStableFunc(all, func(a, b int) int {
		p, q := &j.kinds[a], &j.kinds[b]
		if p.limited != q.limited {
			if p.limited {
				return -1
			}
			return 1
		}
		size := cmp.Compare(p.w*p.h, q.w*q.h)
		if !p.limited {
			size = -size
		}
		return cmp.Or(cmp.Compare(p.price, q.price), size)
	})
	return all
}
