package nest

import (
	"cmp"
	"errors"
	"slices"
)

// Taking a sheet apart. Whatever found the places of the parts, the cuts are
// found here from the places alone: any straight cut that goes through no part
// is allowed, since cutting along it never spoils a way of freeing the rest.
//
// Of all orders of cutting the one is taken that leaves the largest single
// rectangle, and of these one with the fewest cuts.

// maxNodes bounds the rectangles that are looked at for one sheet; after that
// each further rectangle is cut at the first line that serves. A sheet of 20
// parts needs a few hundred.
const maxNodes = 1500

var errNotFree = errors.New("parts cannot be freed by straight cuts")

// rect is a rectangle of the sheet in marks, y counted from the trimmed end.
type rect struct{ x, y, w, h int64 }

// node is a rectangle on the node with the parts in it.
type node struct {
	rect
	spots    []int
	lines    []blade
	largest  int64 // area of the largest rectangle that can be left of it
	plain    int   // fewest cuts that free all parts
	keeping  int   // fewest such cuts that leave a rectangle of area keep; -1: none do
	seen     bool  // keeping is reckoned
	plainBy  int   // index into lines
	keepBy   int
	keepNear bool // the rectangle to keep is on the near side of keepBy
}

// blade is a possible cut and what lies on its sides, nil if nothing is left.
type blade struct {
	kind      CutKind
	at        int64
	near, far *node
}

// stroke is one cut as it is made.
type stroke struct {
	rect
	kind CutKind
	at   int64
}

// sawyer finds the cuts of one sheet.
type sawyer struct {
	kerf    int64
	parts   []rect
	nodes   map[rect]*node
	keep    int64
	strokes []stroke
	offcuts []rect
}

// takeApart returns the cuts that free the parts from the whole rectangle, in
// sawing order, and what is left over, largest first.
func takeApart(kerf int64, whole rect, parts []rect) ([]stroke, []rect, error) {
	s := &sawyer{kerf: kerf, parts: parts, nodes: map[rect]*node{}}
	all := make([]int, len(parts))
	for i := range all {
		all[i] = i
	}
	b, err := s.lay(whole, all)
	if err != nil {
		return nil, nil, err
	}
	s.keep = b.largest
	s.reckon(b)
	s.cut(b, s.keep > 0)
	slices.SortStableFunc(s.offcuts, largestFirst)
	return s.strokes, s.offcuts, nil
}

// largestFirst orders rectangles by area falling, then from the lower left.
func largestFirst(a, b rect) int {
	return cmp.Or(cmp.Compare(b.w*b.h, a.w*a.h), cmp.Compare(a.y, b.y), cmp.Compare(a.x, b.x))
}

// lay puts a rectangle on the node and finds all ways to cut it; nil if there
// is nothing of it.
func (s *sawyer) lay(r rect, spots []int) (*node, error) {
	if r.w <= 0 || r.h <= 0 {
		return nil, nil
	}
	if b, ok := s.nodes[r]; ok {
		return b, nil
	}
	b := &node{rect: r, spots: spots}
	s.nodes[r] = b
	switch {
	case len(spots) == 0:
		b.largest = r.w * r.h
		return b, nil
	case len(spots) == 1 && s.parts[spots[0]] == r:
		return b, nil
	}
	for _, kind := range []CutKind{Crosscut, Rip} {
		for _, at := range s.linesAcross(b, kind) {
			if len(b.lines) > 0 && len(s.nodes) > maxNodes {
				break
			}
			l, err := s.divide(b, kind, at)
			if err != nil {
				return nil, err
			}
			b.lines = append(b.lines, l)
		}
	}
	if len(b.lines) == 0 {
		return nil, errNotFree
	}
	for i, l := range b.lines {
		cuts := 1 + l.near.cuts() + l.far.cuts()
		if i == 0 || cuts < b.plain {
			b.plain, b.plainBy = cuts, i
		}
		b.largest = max(b.largest, l.near.left(), l.far.left())
	}
	return b, nil
}

func (b *node) cuts() int {
	if b == nil {
		return 0
	}
	return b.plain
}

func (b *node) left() int64 {
	if b == nil {
		return 0
	}
	return b.largest
}

// along returns where a part or node begins and ends along the way that cuts of
// the kind are told apart by: y for crosscuts, x for rips.
func (r rect) along(kind CutKind) (from, to int64) {
	if kind == Crosscut {
		return r.y, r.y + r.h
	}
	return r.x, r.x + r.w
}

// linesAcross returns the places of all cuts of one kind that go through no part
// and have a part's edge on one side, rising.
func (s *sawyer) linesAcross(b *node, kind CutKind) []int64 {
	order := slices.Clone(b.spots)
	slices.SortFunc(order, func(i, j int) int {
		a, _ := s.parts[i].along(kind)
		c, _ := s.parts[j].along(kind)
		return cmp.Or(cmp.Compare(a, c), cmp.Compare(i, j))
	})
	start, end := b.along(kind)
	var at []int64
	reach := start - s.kerf // where the parts so far end; a cut before the first needs no room
	for _, i := range order {
		from, to := s.parts[i].along(kind)
		if first := i == order[0]; first && from > start {
			at = append(at, from-s.kerf-start)
		} else if !first && from-reach >= s.kerf {
			at = append(at, reach-start)
			if from-reach > s.kerf {
				at = append(at, from-s.kerf-start)
			}
		}
		reach = max(reach, to)
	}
	if reach < end {
		at = append(at, reach-start)
	}
	return at
}

// divide makes one cut and lays both sides on the node.
func (s *sawyer) divide(b *node, kind CutKind, at int64) (blade, error) {
	near, far := b.rect, b.rect
	if kind == Crosscut {
		near.h, far.y, far.h = at, b.y+at+s.kerf, b.h-at-s.kerf
	} else {
		near.w, far.x, far.w = at, b.x+at+s.kerf, b.w-at-s.kerf
	}
	start, _ := b.along(kind)
	var before, after []int
	for _, i := range b.spots {
		if _, to := s.parts[i].along(kind); to <= start+at {
			before = append(before, i)
		} else {
			after = append(after, i)
		}
	}
	l := blade{kind: kind, at: at}
	var err error
	if l.near, err = s.lay(near, before); err != nil {
		return l, err
	}
	l.far, err = s.lay(far, after)
	return l, err
}

// reckon finds the fewest cuts that leave a rectangle of area keep.
func (s *sawyer) reckon(b *node) int {
	if b == nil || b.largest < s.keep {
		return -1
	}
	if b.seen {
		return b.keeping
	}
	b.seen = true
	if len(b.lines) == 0 {
		return 0
	}
	b.keeping = -1
	for i, l := range b.lines {
		if n := s.reckon(l.near); n >= 0 && (b.keeping < 0 || 1+n+l.far.cuts() < b.keeping) {
			b.keeping, b.keepBy, b.keepNear = 1+n+l.far.cuts(), i, true
		}
		if n := s.reckon(l.far); n >= 0 && (b.keeping < 0 || 1+n+l.near.cuts() < b.keeping) {
			b.keeping, b.keepBy, b.keepNear = 1+n+l.near.cuts(), i, false
		}
	}
	return b.keeping
}

// waiting is a part that lies aside until the cuts of the other kind are made.
type waiting struct {
	*node
	keep bool
}

// cut makes the cuts: all of one kind first, as far as the plan has them in a
// row, so that the fence is set once; then each part that came free in turn.
func (s *sawyer) cut(b *node, keep bool) {
	var aside []waiting
	s.chain(b, keep, b.pick(keep), &aside)
	for _, w := range aside {
		s.cut(w.node, w.keep)
	}
}

// pick returns the planned cut of a node, nil if none is needed.
func (b *node) pick(keep bool) *blade {
	switch {
	case b == nil || len(b.lines) == 0:
		return nil
	case keep:
		return &b.lines[b.keepBy]
	}
	return &b.lines[b.plainBy]
}

// chain makes the cuts of one kind and puts the rest aside, in order of place.
func (s *sawyer) chain(b *node, keep bool, l *blade, aside *[]waiting) {
	if b == nil {
		return
	}
	if l == nil {
		if len(b.spots) == 0 {
			s.offcuts = append(s.offcuts, b.rect)
		}
		return
	}
	s.strokes = append(s.strokes, stroke{rect: b.rect, kind: l.kind, at: l.at})
	sides := []waiting{{l.near, keep && b.keepNear}, {l.far, keep && !b.keepNear}}
	for _, side := range sides {
		next := side.pick(side.keep)
		if next != nil && next.kind != l.kind {
			*aside = append(*aside, side)
			continue
		}
		s.chain(side.node, side.keep, next, aside)
	}
}
