package nest

import (
	"cmp"
	"math/bits"
	"slices"
)

// Parts that are alike are one group, so that no search tries them one for the other. All pieces
// are numbered anew, group by group; a set of pieces is a set of these numbers in which each group
// is filled from its lowest number up.

// mostInSet is how many pieces a set can hold; larger jobs are not searched exactly.
const mostInSet = 128

// set is a set of piece numbers below mostInSet.
type set [mostInSet / 64]uint64

func (s set) has(i int) bool    { return s[i/64]>>(i%64)&1 != 0 }
func (s set) with(i int) set    { s[i/64] |= 1 << (i % 64); return s }
func (s set) without(i int) set { s[i/64] &^= 1 << (i % 64); return s }
func (s set) empty() bool       { return s == set{} }
func (s set) minus(t set) set   { return set{s[0] &^ t[0], s[1] &^ t[1]} }
func (s set) plus(t set) set    { return set{s[0] | t[0], s[1] | t[1]} }
func (s set) and(t set) set     { return set{s[0] & t[0], s[1] & t[1]} }
func (s set) size() int         { return bits.OnesCount64(s[0]) + bits.OnesCount64(s[1]) }

// first returns the lowest number of a set that is not empty.
func (s set) first() int {
	if s[0] != 0 {
		return bits.TrailingZeros64(s[0])
	}
	return 64 + bits.TrailingZeros64(s[1])
}

// group is a number of pieces that are alike in size and phase.
type group struct {
	piece
	start  int   // number of its first piece
	pieces []int // indices into job.pieces
	all    set   // its numbers
}

// groups gathers the given pieces, the largest area first.
func (j *job) groups(pieces []int) []group {
	alike := make([]piece, len(j.pieces))
	for _, i := range pieces {
		q := j.pieces[i]
		if q.ways == 2 && q.at[1] < q.at[0] {
			q.at[0], q.at[1] = q.at[1], q.at[0]
		}
		alike[i] = q
	}
	order := slices.Clone(pieces)
	slices.SortStableFunc(order, func(a, b int) int {
		p, q := &alike[a], &alike[b]
		return cmp.Or(cmp.Compare(q.w*q.h, p.w*p.h), cmp.Compare(q.h, p.h),
			cmp.Compare(p.ways, q.ways), cmp.Compare(p.at[0], q.at[0]), cmp.Compare(p.at[1], q.at[1]))
	})
	var all []group
	for n, i := range order {
		if n == 0 || alike[order[n-1]] != alike[i] {
			all = append(all, group{piece: alike[i], start: n})
		}
		g := &all[len(all)-1]
		g.pieces = append(g.pieces, i)
		if n < mostInSet {
			g.all = g.all.with(n)
		}
	}
	return all
}

// of returns how many pieces of the group are in the set.
func (g *group) of(s set) int { return s.and(g.all).size() }

// lowest returns the set of the first n pieces of the group.
func (g *group) lowest(n int) (s set) {
	for i := range n {
		s = s.with(g.start + i)
	}
	return s
}

// setOf returns the set of all pieces of the groups.
func setOf(groups []group) (s set) {
	for _, g := range groups {
		s = s.plus(g.all)
	}
	return s
}
