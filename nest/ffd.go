package nest

import (
	"cmp"
	"slices"

	"example.com/groovewright/fraction"
)

// FirstFit nests the parts by first-fit decreasing height in rows: the tallest part first, each in
// the first row opened that has room for it at its phase, else in a new row of the first sheet with
// room for that, else on a new sheet, of limited stock first, then of the cheapest.
//
// It takes n log n + n × rows steps. This is the hybrid first-fit of F. R. K. Chung, M. R. Garey
// and D. S. Johnson, "On packing two-dimensional bins", SIAM J. Algebraic and Discrete Methods 3
// (1982), with kerf and phase added; without these it takes at most 17/8 of the least number of
// sheets and 5 (from memory). The errors are those of [LowerBound].
func FirstFit(p Problem) (r Result, err error) {
	defer fraction.Catch(&err)
	j, err := prepare(&p)
	if err != nil {
		return Result{}, err
	}
	first := j.levels(j.order(j.except(nil), tallFirst), Crosscut, false, j.stockOrder())
	if r, err = j.result(first, maxNodes); err == nil {
		r.Bound, _ = j.lower(never)
		j.settle(&r, &first)
	}
	return r, err
}

// tallFirst orders pieces by height falling, then width falling, then phase.
func tallFirst(a, b *piece) int {
	return cmp.Or(cmp.Compare(b.h, a.h), cmp.Compare(b.w, a.w), cmp.Compare(a.at[0], b.at[0]))
}

// wideFirst orders pieces by width falling, then height falling, then phase.
func wideFirst(a, b *piece) int {
	return cmp.Or(cmp.Compare(b.w, a.w), cmp.Compare(b.h, a.h), cmp.Compare(a.at[0], b.at[0]))
}

// order returns the pieces in the given order, equal ones as they are listed.
func (j *job) order(pieces []int, less func(a, b *piece) int) []int {
	return slices.SortedStableFunc(slices.Values(pieces), func(a, b int) int { return less(&j.pieces[a], &j.pieces[b]) })
}

// level is a row across a sheet, filled from the left, or a column, filled from the lower end.
type level struct {
	sheet    int
	at, size int64 // where the strip begins and how thick it is
	from     int64 // where its next piece may begin
}

// levels packs the pieces in the given order into rows (divided by crosscuts) or columns (by rips):
// each into the first level with room, or with best into the one where least is left beyond it;
// else into a new level of the first (or best filled) sheet, else on the first new sheet that fits.
func (j *job) levels(order []int, way CutKind, best bool, stockOrder []int) (p plan) {
	var open []level
	var top []int64 // where the next level of each sheet may begin
	spare := j.spare(nil)
	for _, i := range order {
		q := &j.pieces[i]
		in := choose(len(open), best, func(l int) int64 {
			_, _, rest := j.spotIn(&open[l], p.sheets, q, way)
			return rest
		})
		if in < 0 {
			sheet := choose(len(p.sheets), best, func(s int) int64 {
				k := &j.kinds[p.sheets[s].kind]
				switch {
				case !j.fits(k, q):
					return -1
				case way == Rip:
					return k.w - j.next(k.phase, top[s], q) - q.w
				}
				return k.h - top[s] - q.h
			})
			if sheet < 0 {
				n := slices.IndexFunc(stockOrder, func(kind int) bool { return spare[kind] > 0 && j.fits(&j.kinds[kind], q) })
				if n < 0 {
					p.left = append(p.left, i)
					continue
				}
				spare[stockOrder[n]]--
				sheet = len(p.sheets)
				p.sheets, top = append(p.sheets, layout{kind: stockOrder[n]}), append(top, 0)
			}
			l := level{sheet: sheet, at: top[sheet], size: q.h}
			if way == Rip {
				l.size = j.next(j.kinds[p.sheets[sheet].kind].phase, l.at, q) - l.at + q.w
			}
			top[sheet] += l.size + j.kerf
			in, open = len(open), append(open, l)
		}
		l := &open[in]
		x, y, _ := j.spotIn(l, p.sheets, q, way)
		p.sheets[l.sheet].spots = append(p.sheets[l.sheet].spots, spot{i, x, y})
		if l.from = x + q.w + j.kerf; way == Rip {
			l.from = y + q.h + j.kerf
		}
	}
	return p
}

// choose returns the first of n places where something is left, or with best the first of those
// where least is left; -1 if there is none.
func choose(n int, best bool, left func(int) int64) int {
	chosen, least := -1, int64(0)
	for i := range n {
		if rest := left(i); rest >= 0 && (chosen < 0 || rest < least) {
			if chosen, least = i, rest; !best {
				break
			}
		}
	}
	return chosen
}

// spotIn returns where a piece would lie at the end of a level, and what is left of the level
// beyond it; below 0 it does not fit.
func (j *job) spotIn(l *level, sheets []layout, q *piece, way CutKind) (x, y, rest int64) {
	k := &j.kinds[sheets[l.sheet].kind]
	if way == Crosscut {
		if x = j.next(k.phase, l.from, q); q.h > l.size {
			return x, l.at, -1
		}
		return x, l.at, k.w - x - q.w
	}
	if x = j.next(k.phase, l.at, q); x+q.w > l.at+l.size {
		return x, l.from, -1
	}
	return x, l.from, k.h - l.from - q.h
}

// stockOrder returns the kinds of stock in the order in which sheets are taken: limited before
// unlimited, then the cheapest, then of limited ones the smallest (to use up offcuts) and of others
// the largest, then as the problem lists them.
func (j *job) stockOrder() []int {
	var all []int
	for i, k := range j.kinds {
		if k.usable {
			all = append(all, i)
		}
	}
	slices.SortStableFunc(all, func(a, b int) int {
		p, q := &j.kinds[a], &j.kinds[b]
		size := cmp.Compare(p.w*p.h, q.w*q.h)
		if !p.limited {
			size = -size
		}
		return cmp.Or(cmp.Compare(p.objective().bought, q.objective().bought), cmp.Compare(p.price, q.price), size)
	})
	return all
}
