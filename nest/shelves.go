package nest

import (
	"cmp"
	"slices"
)

// shelf is pieces side by side and, where one beside them is taller, above each other.
type shelf struct {
	spots   []spot // from the shelf's lower edge up
	h       int64  // of the tallest piece
	columns []column
}

// column is what pieces above each other take of a shelf's width, and how high they are with the kerf above them. The
// columns of a shelf go from left to right, with at least a kerf between them.
type column struct{ left, right, top int64 }

// shelvesTried is how often pieces are put on shelves, the first time by height and then by what is at most one part in
// shelfNoise less: the shelves are kept that are least high in all.
const shelvesTried, shelfNoise = 32, 4

// shelves puts pieces on shelves that each kind of stock has room for. Where kinds show the pattern differently each
// piece has a shelf of its own.
func (j *job) shelves(pieces []int) []shelf {
	kinds := j.stockOrder()
	k := j.kinds[kinds[0]] // as wide as all kinds have room for
	for _, kind := range kinds {
		other := &j.kinds[kind]
		if k.w = min(k.w, other.w); other.phase != k.phase {
			k.w = 0
		}
	}
	narrowest := j.pieces[pieces[0]].w
	for _, i := range pieces {
		narrowest = min(narrowest, j.pieces[i].w)
	}
	var alone []shelf // that no piece fits beside
	var others []int
	for _, i := range pieces {
		if j.pieces[i].w+j.kerf+narrowest > k.w {
			alone = append(alone, j.shelfOf(&k, i))
		} else {
			others = append(others, i)
		}
	}
	var least []shelf
	rand, keys, lowest := dice(), make([]int64, len(j.pieces)), int64(-1)
	for try := range shelvesTried {
		for _, i := range others {
			keys[i] = j.pieces[i].h
			if try > 0 {
				keys[i] -= rand.Int64N(keys[i]/shelfNoise + 1)
			}
		}
		var all []shelf
		high := int64(0)
		for _, i := range slices.SortedStableFunc(slices.Values(others), func(a, b int) int { return cmp.Compare(keys[b], keys[a]) }) {
			if !j.shelve(all, &k, i) {
				all = append(all, j.shelfOf(&k, i))
				high += j.pieces[i].h + j.kerf
			}
		}
		if lowest < 0 || high < lowest {
			least, lowest = all, high
		}
		if len(all) == len(others) {
			break // none fits beside another
		}
	}
	return append(alone, least...)
}

// shelfOf returns a shelf of one piece.
func (j *job) shelfOf(k *sheetKind, i int) shelf {
	q := &j.pieces[i]
	x := j.next(k.phase, 0, q)
	return shelf{[]spot{{i, x, 0}}, q.h, []column{{x, x + q.w, q.h + j.kerf}}}
}

// shelve puts a piece on one of the shelves that are tall enough, as a new column or on top of one, where that leaves least
// room beside or above it; false if none has room.
func (j *job) shelve(shelves []shelf, k *sheetKind, i int) bool {
	q := &j.pieces[i]
	var at struct {
		f      *shelf
		column int
		onTop  bool
		x      int64
		room   int64
	}
	for n := range shelves {
		f := &shelves[n]
		if q.h > f.h {
			continue
		}
		x := j.next(k.phase, 0, q) // as far to the left as the columns before c let it
		for c := 0; c <= len(f.columns); c++ {
			beyond := func(c int) int64 { // how far to the right what stands left of a column reaches
				if c < len(f.columns) {
					return f.columns[c].left - j.kerf
				}
				return k.w
			}
			if room := beyond(c) - x - q.w; room >= 0 && (at.f == nil || room < at.room) {
				at.f, at.column, at.onTop, at.x, at.room = f, c, false, x, room
			}
			if c == len(f.columns) {
				break
			}
			if room := f.h - f.columns[c].top - q.h; room >= 0 && x+q.w <= beyond(c+1) && (at.f == nil || room < at.room) {
				at.f, at.column, at.onTop, at.x, at.room = f, c, true, x, room
			}
			x = j.next(k.phase, f.columns[c].right+j.kerf, q)
		}
	}
	if at.f == nil {
		return false
	}
	c := column{at.x, at.x + q.w, 0}
	if at.onTop {
		old := &at.f.columns[at.column]
		c = column{min(c.left, old.left), max(c.right, old.right), old.top}
	}
	at.f.spots = append(at.f.spots, spot{i, at.x, c.top})
	if c.top += q.h + j.kerf; at.onTop {
		at.f.columns[at.column] = c
	} else {
		at.f.columns = slices.Insert(at.f.columns, at.column, c)
	}
	return true
}
