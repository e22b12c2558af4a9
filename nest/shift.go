package nest

import (
	"cmp"
	"slices"
)

// shift moves pieces of a sheet along it by whole repeats, where that puts more edges of pieces on the
// sheet's own sides or, with as many, leaves fewer cuts that take off less than a saw can. What is
// right of a piece and in its way moves with it. The largest rectangle left gets smaller only for fewer
// such cuts.
func (j *job) shift(saw *sawyer, l *layout) {
	if j.pitch == 0 {
		return // all pieces stand as far to one side as they can
	}
	best, ok := j.trims(saw, l)
	k := &j.kinds[l.kind]
	for n := 0; ok && n < len(l.spots); n++ {
		order := slices.Clone(l.spots)
		slices.SortStableFunc(order, func(a, b spot) int { return cmp.Compare(b.x, a.x) })
		most := (k.w - order[n].x - j.pieces[order[n].piece].w) / j.pitch * j.pitch
		var inLine []int // one rip may free them all
		for i, s := range order {
			if s.x == order[n].x {
				inLine = append(inLine, i)
			}
		}
		least := j.pitch
		for least < most && j.length(least).Less(j.p.Saw.LeastRip) {
			least += j.pitch
		}
		for _, by := range []int64{least, most} {
			for _, moves := range [][]int{{n}, inLine} {
				other := layout{l.kind, slices.Clone(order)}
				if by == 0 || !j.push(&other, moves, by) {
					continue
				}
				if t, free := j.trims(saw, &other); free && t.better(best) {
					*l, best = other, t
				}
			}
		}
	}
}

// drop moves pieces of a sheet along their grooves to the lower edge of the part that they are sawn from, where that is
// better by tieBreak: such as by the cut that takes off what is under them.
func (j *job) drop(saw *sawyer, l *layout) {
	k, parts := &j.kinds[l.kind], j.rects(l.spots)
	best, ok := j.tieBreak(saw, *l)
	cuts, _, err := saw.takeApart(rect{0, 0, k.w, k.h}, parts)
	for i := 0; ok && err == nil && i < len(cuts); i++ {
		c, other := cuts[i], layout{l.kind, slices.Clone(l.spots)}
		off := c.rect
		if off.h = c.at; c.kind != Crosscut || slices.ContainsFunc(parts, off.holds) {
			continue
		}
		for n, part := range parts {
			if c.holds(part) {
				other.spots[n].y -= c.at + j.kerf
			}
		}
		if f, free := j.tieBreak(saw, other); free && f.better(best) {
			*l = other
			j.drop(saw, l)
			return
		}
	}
}

// push moves spots and all that is in their way to the right; ok is false if one leaves the sheet or
// a side of it.
func (j *job) push(l *layout, moves []int, by int64) (ok bool) {
	k := &j.kinds[l.kind]
	for n := 0; n < len(moves); n++ {
		s := &l.spots[moves[n]]
		q := &j.pieces[s.piece]
		if s.x == 0 || s.x+by+q.w > k.w {
			return false
		}
		for i, o := range l.spots {
			p := &j.pieces[o.piece]
			if i != moves[n] && !slices.Contains(moves, i) && o.x > s.x && o.x < s.x+by+q.w+j.kerf && o.y < s.y+q.h+j.kerf && s.y < o.y+p.h+j.kerf {
				moves = append(moves, i)
			}
		}
	}
	for _, i := range moves {
		l.spots[i].x += by
	}
	return true
}

// trims is what the cuts of a sheet are judged by: upright edges of pieces on its sides, cuts that take off less
// than a saw can, and what is left over.
type trims struct {
	own, thin int
	offcut    int64 // area of the largest rectangle left
}

func (t trims) better(u trims) bool {
	return (t.offcut >= u.offcut || t.thin < u.thin) && cmp.Or(u.own-t.own, t.thin-u.thin) < 0
}

// trims judges a sheet; ok is false if its parts do not come free.
func (j *job) trims(saw *sawyer, l *layout) (t trims, ok bool) {
	k, parts := &j.kinds[l.kind], j.rects(l.spots)
	cuts, offcuts, err := saw.takeApart(rect{0, 0, k.w, k.h}, parts)
	if len(offcuts) > 0 {
		t.offcut = offcuts[0].w * offcuts[0].h
	}
	for _, p := range parts {
		if p.x == 0 {
			t.own++
		}
		if p.x+p.w == k.w {
			t.own++
		}
	}
	for _, c := range cuts {
		near, whole := c.rect, c.w
		if c.kind == Crosscut {
			near.h, whole = c.at, c.h
		} else {
			near.w = c.at
		}
		off := whole - c.at // beyond the cut, where the blade takes it all
		if !slices.ContainsFunc(parts, near.holds) {
			off = c.at + j.kerf
		} else if off > j.kerf {
			continue
		}
		if j.length(off).Less(j.p.Saw.LeastRip) {
			t.thin++
		}
	}
	return t, err == nil
}

// holds reports whether a rectangle lies in another.
func (r rect) holds(p rect) bool {
	return r.x <= p.x && p.x+p.w <= r.x+r.w && r.y <= p.y && p.y+p.h <= r.y+r.h
}
