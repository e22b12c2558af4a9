package nest

import "math/rand/v2"

// manner is a way of choosing: how free rectangles are ranked and divided.
type manner struct {
	rank  int // 0: least area left, 1: least left on the shorter side, 2: on the longer side, 3: lowest
	split int // 0: crosscut first, 1: rip first, 2: the larger rest stays whole, 3: the smaller does
}

const ranks, splits = 4, 4

// filler fills sheets of one job quickly: each piece in turn goes into the lower left corner of a
// free rectangle, and one straight cut divides what is left of that, so that everything comes free.
// It keeps its memory between calls.
type filler struct {
	job   *job
	free  []space
	steps int
}

// space is a free rectangle of a sheet, with the phase at its left side.
type space struct {
	rect
	phase int64
}

// spaceOf returns a rectangle of a sheet of the kind as a space.
func (j *job) spaceOf(k *sheetKind, r rect) space { return space{r, floorMod(k.phase+r.x, j.pitch)} }

// fill puts what it can of the pieces on a sheet of the kind, in their order; the others are rest.
func (f *filler) fill(kind int, order []int, how manner, spots []spot, rest []int) ([]spot, []int) {
	j := f.job
	k := &j.kinds[kind]
	f.free = append(f.free[:0], j.spaceOf(k, rect{0, 0, k.w, k.h}))
	for _, i := range order {
		q := &j.pieces[i]
		in, least, free := -1, int64(0), f.free
		for r := range free {
			if q.h > free[r].h || q.w > free[r].w {
				continue
			}
			if rank, ok := f.rank(&free[r], q, how.rank); ok && (in < 0 || rank < least) {
				in, least = r, rank
			}
		}
		f.steps += 1 + len(free)
		if in < 0 {
			rest = append(rest, i)
			continue
		}
		spots = append(spots, f.put(k, in, i, how.split))
	}
	return spots, rest
}

// rank returns how well a piece goes into a free rectangle of its size or larger; less is better.
func (f *filler) rank(r *space, q *piece, how int) (rank int64, ok bool) {
	w, h := r.w-f.job.next(r.phase, 0, q)-q.w, r.h-q.h
	if w < 0 {
		return 0, false
	}
	switch how {
	case 0:
		return r.w*r.h - q.w*q.h, true
	case 1:
		return min(w, h), true
	case 2:
		return max(w, h), true
	}
	return r.y, true
}

// put places a piece in a free rectangle and divides what is left of it.
func (f *filler) put(k *sheetKind, in, i, split int) spot {
	j := f.job
	r, q := f.free[in], &j.pieces[i]
	x := r.x + j.next(r.phase, 0, q)
	wide := x + q.w + j.kerf - r.x // of the column that the piece takes
	high := q.h + j.kerf
	right, top := r.w-wide, r.h-high
	last := len(f.free) - 1
	f.free[in] = f.free[last]
	f.free = f.free[:last]
	crosscut := split == 0
	if split >= 2 {
		// Area of the whole strip above against that of the whole strip beside.
		crosscut = (top*r.w >= right*r.h) == (split == 2)
	}
	above, beside := rect{r.x, r.y + high, r.w, top}, rect{r.x + wide, r.y, right, q.h}
	if !crosscut {
		above.w, beside.h = wide-j.kerf, r.h
	}
	for _, rest := range [...]rect{above, beside} {
		if rest.w > 0 && rest.h > 0 {
			f.free = append(f.free, j.spaceOf(k, rest))
		}
	}
	return spot{i, x, r.y}
}

// dice is a source of chance that searches the same problem in the same way.
func dice() *rand.Rand { return rand.New(rand.NewPCG(1, 2)) }
