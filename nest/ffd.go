package nest

import (
	"cmp"
	"slices"

	"example.com/groovewright/fraction"
)

// FirstFit nests the parts by first-fit decreasing height in rows: the tallest part first, each in
// the first row with room for it at its phase, else in a new row of the first sheet with room for
// that, else on a new sheet. Rows are numbered as they are opened. A new sheet is taken from
// limited stock first, then from the cheapest.
//
// The rows of a sheet come free by crosscuts, the parts of a row by rips, and a third cut takes a
// part to its height. The result is not searched for a better one; it takes n log n + n × rows
// steps. This is the hybrid first-fit of F. R. K. Chung, M. R. Garey and D. S. Johnson, "On packing
// two-dimensional bins", SIAM J. Algebraic and Discrete Methods 3 (1982), with kerf and phase
// added; without these it takes at most 17/8 of the least number of sheets and 5 (from memory).
func FirstFit(p Problem) (r Result, err error) {
	defer fraction.Catch(&err)
	j, err := prepare(&p)
	if err != nil {
		return Result{}, err
	}
	first := j.levels(j.order(tallFirst), Crosscut, false, j.stockOrder())
	r, err = j.result(first)
	if err != nil {
		return Result{}, err
	}
	r.Bound = j.lower()
	j.settle(&r, &first)
	return r, nil
}

// tallFirst orders pieces by height falling, then width falling, then phase.
func tallFirst(a, b *piece) int {
	return cmp.Or(cmp.Compare(b.h, a.h), cmp.Compare(b.w, a.w), cmp.Compare(a.at[0], b.at[0]))
}

// wideFirst orders pieces by width falling, then height falling, then phase.
func wideFirst(a, b *piece) int {
	return cmp.Or(cmp.Compare(b.w, a.w), cmp.Compare(b.h, a.h), cmp.Compare(a.at[0], b.at[0]))
}

// order returns the indices of all pieces in the given order, equal ones as the problem lists them.
func (j *job) order(less func(a, b *piece) int) []int {
	all := make([]int, len(j.pieces))
	for i := range all {
		all[i] = i
	}
	slices.SortStableFunc(all, func(a, b int) int { return less(&j.pieces[a], &j.pieces[b]) })
	return all
}

// level is a strip of a sheet: a row across it, filled from the left, or a column along it, filled
// from the lower end.
type level struct {
	sheet    int
	at, size int64 // where the strip begins and how thick it is
	end      int64 // where its last piece ends
	occupied bool
}

// levels packs the pieces in the given order into rows (divided by crosscuts) or columns (divided
// by rips): each into the first level with room, or with best into the one where least is left
// beyond it; else into a new level of the first (or best filled) sheet, else on a new sheet. left
// are the pieces for which no sheet is left.
func (j *job) levels(order []int, way CutKind, best bool, stockOrder []int) (p plan) {
	var open []level
	var top []int64 // where the next level of each sheet may begin
	used := make([]int, len(j.kinds))
	for _, i := range order {
		q := &j.pieces[i]
		in, least := -1, int64(0)
		for l := range open {
			if rest := j.room(&open[l], p.sheets, q, way); rest >= 0 && (in < 0 || rest < least) {
				if in, least = l, rest; !best {
					break
				}
			}
		}
		if in < 0 {
			sheet := j.sheetFor(q, p.sheets, top, way, best)
			if sheet < 0 {
				if sheet = j.newSheet(q, &p, used, stockOrder); sheet < 0 {
					p.left = append(p.left, i)
					continue
				}
				top = append(top, 0)
			}
			l := level{sheet: sheet, at: top[sheet], size: q.h}
			if way == Rip {
				l.size = j.next(j.kinds[p.sheets[sheet].kind].phase, l.at, q) - l.at + q.w
			}
			top[sheet] += l.size + j.kerf
			open = append(open, l)
			in = len(open) - 1
		}
		j.intoLevel(&open[in], p.sheets, i, way)
	}
	return p
}

// spotIn returns where a piece would lie at the end of a level.
func (j *job) spotIn(l *level, k *sheetKind, q *piece, way CutKind) (x, y int64) {
	from := int64(0)
	if l.occupied {
		from = l.end + j.kerf
	}
	if way == Crosscut {
		return j.next(k.phase, from, q), l.at
	}
	return j.next(k.phase, l.at, q), from
}

// room returns what is left of a level beyond a piece; below 0 it does not fit.
func (j *job) room(l *level, sheets []layout, q *piece, way CutKind) int64 {
	k := &j.kinds[sheets[l.sheet].kind]
	x, y := j.spotIn(l, k, q, way)
	if way == Crosscut {
		if q.h > l.size {
			return -1
		}
		return k.w - x - q.w
	}
	if x+q.w > l.at+l.size {
		return -1
	}
	return k.h - y - q.h
}

func (j *job) intoLevel(l *level, sheets []layout, i int, way CutKind) {
	s := &sheets[l.sheet]
	q := &j.pieces[i]
	x, y := j.spotIn(l, &j.kinds[s.kind], q, way)
	s.spots = append(s.spots, spot{i, x, y})
	if l.end, l.occupied = x+q.w, true; way == Rip {
		l.end = y + q.h
	}
}

// sheetFor returns an open sheet with room for a new level, -1 if there is none.
func (j *job) sheetFor(q *piece, sheets []layout, top []int64, way CutKind, best bool) int {
	in, least := -1, int64(0)
	for s := range sheets {
		k := &j.kinds[sheets[s].kind]
		rest := k.h - top[s] - q.h
		if way == Rip {
			rest = k.w - j.next(k.phase, top[s], q) - q.w
		}
		if rest >= 0 && j.fits(k, q) && (in < 0 || rest < least) {
			if in, least = s, rest; !best {
				break
			}
		}
	}
	return in
}

// newSheet takes the first sheet on the stockOrder that the piece fits, -1 if none.
func (j *job) newSheet(q *piece, p *plan, used, stockOrder []int) int {
	for _, kind := range stockOrder {
		if used[kind] < j.kinds[kind].count && j.fits(&j.kinds[kind], q) {
			used[kind]++
			p.sheets = append(p.sheets, layout{kind: kind})
			return len(p.sheets) - 1
		}
	}
	return -1
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
