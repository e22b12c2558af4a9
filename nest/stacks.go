package nest

import (
	"cmp"
	"slices"
)

// lineShare is the part of the budget, one in so many, that package line may spend: a node of it is a
// whole partial packing, some ten steps of this package.
const lineShare = 10

// stacked reports whether each of the pieces fits the width of every kind of stock that is of use,
// and no two of the widest fit side by side. A sheet is then a stack of shelves:
// bin packing in one dimension, for which package line has a search of its own.
func (j *job) stacked(pieces []int) bool {
	most := int64(0)
	for _, i := range pieces {
		most = max(most, j.pieces[i].w)
	}
	for _, kind := range j.stockOrder() {
		k := &j.kinds[kind]
		if 2*most+j.kerf <= k.w {
			return false
		}
		for _, i := range pieces {
			if q := &j.pieces[i]; j.next(k.phase, 0, q)+q.w > k.w {
				return false
			}
		}
	}
	return true
}

// stack packs a job of stacks, shelf by shelf, on each kind of stock alone, where there is enough of it that is long
// enough, and then changes sheets for cheaper ones that will do. That gives a bound if there is one
// kind and no two pieces fit side by side; else mixes do.
func (s *searcher) stack(pieces []int) {
	j := s.job
	kinds, wide, shelves := j.stockOrder(), j.widest(pieces), j.shelves(pieces)
	sizes := j.lengths(shelves)
	plain := len(kinds) == 1 && len(wide) == len(pieces)
	for _, kind := range kinds {
		k := &j.kinds[kind]
		r, err := j.memory.line.Pack(s.ctx, k.h+j.kerf, sizes, max(1, s.budget/lineShare/len(kinds)))
		if err != nil {
			continue // too short, or too large a job for line
		}
		s.nodes += r.Nodes
		if len(r.Bins) <= k.count {
			p := plan{left: j.except(pieces)}
			for _, items := range r.Bins {
				p.sheets = append(p.sheets, j.stackOf(kind, shelves, items))
			}
			j.downsize(p.sheets, j.spare(p.sheets))
			s.take(p)
		}
		if plain && r.Lower <= k.count {
			how := [...]Argument{PartArea, DualFunctions, LinearProgram, ExactSearch}[r.How]
			s.raise(r.Lower, int64(r.Lower)*k.price, how)
		}
	}
	if !plain && len(s.best.left) == s.least.left && !s.done() {
		s.mix(pieces, wide, shelves)
	}
}

// mix finds the best nest of shelves, and the best sheets for the wide pieces, of which no two stand side by side: no nest
// needs less.
func (s *searcher) mix(pieces, wide []int, shelves []shelf) {
	j := s.job
	sheets, sure := s.best.sheets, false
	if len(j.stockOrder()) > 1 {
		sheets, sure = s.mixes(shelves, sheets)
		s.take(plan{sheets, j.except(pieces)})
	}
	if len(wide) < len(pieces) {
		sheets = nil
		for _, l := range s.best.clone().sheets {
			l.spots = slices.DeleteFunc(l.spots, func(at spot) bool { return !slices.Contains(wide, at.piece) })
			if len(l.spots) > 0 {
				sheets = append(sheets, l)
			}
		}
		sheets, sure = s.mixes(j.shelves(wide), sheets)
	}
	least := j.objective(&plan{sheets: sheets, left: s.best.left})
	switch {
	case !sure:
	case j.objective(&s.best).compare(least) <= 0:
		s.prove()
	default:
		s.raise(s.least.sheets, least.cost, ExactSearch)
	}
}

// widest returns pieces of which no two fit side by side, the widest first.
func (j *job) widest(pieces []int) (wide []int) {
	for _, i := range slices.SortedStableFunc(slices.Values(pieces), func(a, b int) int { return cmp.Compare(j.pieces[b].w, j.pieces[a].w) }) {
		if !slices.ContainsFunc(wide, func(other int) bool { return j.beside(&j.pieces[other], &j.pieces[i]) }) {
			wide = append(wide, i)
		}
	}
	return wide
}

// beside reports whether some stock has room for two pieces side by side.
func (j *job) beside(p, q *piece) bool {
	return slices.ContainsFunc(j.kinds, func(k sheetKind) bool {
		beyond := func(left, right *piece) int64 {
			return j.next(k.phase, j.next(k.phase, 0, left)+left.w+j.kerf, right) + right.w
		}
		return k.usable && p.w+j.kerf+q.w <= k.w && min(beyond(p, q), beyond(q, p)) <= k.w
	})
}

// lengths returns what each shelf takes of a stack.
func (j *job) lengths(shelves []shelf) (sizes []int64) {
	for _, f := range shelves {
		sizes = append(sizes, f.h+j.kerf)
	}
	return sizes
}

// stackOf returns a sheet of the kind with shelves, given by their numbers in the list, one above another.
func (j *job) stackOf(kind int, shelves []shelf, items []int) layout {
	l, y := layout{kind: kind}, int64(0)
	for _, n := range items {
		for _, s := range shelves[n].spots {
			if len(shelves[n].spots) == 1 { // the kinds may show the pattern differently
				s.x = j.next(j.kinds[kind].phase, 0, &j.pieces[s.piece])
			}
			l.spots = append(l.spots, spot{s.piece, s.x, y + s.y})
		}
		y += shelves[n].h + j.kerf
	}
	return l
}
