package nest

import (
	"cmp"
	"errors"
	"slices"
)

// Taking a sheet apart: the cuts are found from the places of the parts alone. Any straight cut
// that goes through no part is allowed, since it never spoils a way of freeing the rest. So the
// sheet is the root of a guillotine tree: its nodes are rectangles, its candidates the cuts that
// divide them. The cuts taken leave the largest single rectangle, and are the fewest that do.

// maxNodes bounds the rectangles that are looked at for one sheet (20 parts need a few hundred), and
// draftNodes those for a draft; each further one is cut at the first line that serves.
const maxNodes, draftNodes = 1500, 0

var errNotFree = errors.New("parts cannot be freed by straight cuts")

// rect is a rectangle of the sheet in marks, y counted from the trimmed end.
type rect struct{ x, y, w, h int64 }

// node is a rectangle with the parts in it, without width or height where a cut leaves nothing.
type node struct {
	rect
	spots      [2][]int32 // the same parts in order of x (Rip) and of y (Crosscut)
	candidates []candidate
	largest    int64 // area of the largest rectangle that can be left of it
	plain      int   // fewest cuts that free all parts
	keeping    int   // fewest such cuts that leave a rectangle of area keep; -1: none do
	seen       bool  // keeping is known
	plainBy    int   // index into candidates
	keepBy     int
	keepNear   bool // the rectangle to keep is on the near side of keepBy
}

// candidate is a possible cut and what lies on its sides.
type candidate struct {
	kind      CutKind
	at        int64
	near, far *node
}

// cut is one cut as it is made.
type cut struct {
	rect
	kind CutKind
	at   int64
}

// sawyer finds the cuts of one sheet after another, and keeps its memory between them.
type sawyer struct {
	kerf    int64
	most    int // nodes beyond which the first line that serves is taken
	parts   []rect
	nodes   map[rect]*node
	memory  []node  // for them
	spots   []int32 // memory for those of the nodes
	lines   []int64
	stuck   bool // some parts cannot be freed
	keep    int64
	cuts    []cut
	offcuts []rect
}

// takeApart returns the cuts that free the parts from the whole rectangle, in sawing order, and
// what is left over, largest first, then from the lower left.
func (s *sawyer) takeApart(whole rect, parts []rect) ([]cut, []rect, error) {
	b := s.plan(whole, parts)
	if s.stuck {
		return nil, nil, errNotFree
	}
	s.saw(b, s.keep > 0)
	slices.SortStableFunc(s.offcuts, func(a, b rect) int {
		return cmp.Or(cmp.Compare(b.w*b.h, a.w*a.h), cmp.Compare(a.y, b.y), cmp.Compare(a.x, b.x))
	})
	return s.cuts, s.offcuts, nil
}

// plan finds the cuts to take, unless it is stuck.
func (s *sawyer) plan(whole rect, parts []rect) *node {
	if s.nodes == nil {
		s.nodes = map[rect]*node{}
	}
	clear(s.nodes)
	s.memory, s.parts, s.spots, s.cuts, s.offcuts, s.stuck = s.memory[:0], parts, s.spots[:0], nil, nil, false
	var spots [2][]int32
	for kind := range spots {
		for i := range parts {
			spots[kind] = append(spots[kind], int32(i))
		}
		slices.SortStableFunc(spots[kind], func(i, j int32) int {
			a, _ := parts[i].along(CutKind(kind))
			c, _ := parts[j].along(CutKind(kind))
			return cmp.Compare(a, c)
		})
	}
	b := s.lay(whole, spots)
	if s.keep = b.largest; !s.stuck {
		s.keeping(b)
	}
	return b
}

// fewest returns how many cuts the plan has below the node.
func (s *sawyer) fewest(b *node) int {
	if s.keep > 0 {
		return b.keeping
	}
	return b.plain
}

// lay makes a node of a rectangle and finds all ways to cut it.
func (s *sawyer) lay(r rect, spots [2][]int32) *node {
	if len(s.memory) == cap(s.memory) {
		s.memory = make([]node, 0, 2*cap(s.memory)+16)
	}
	s.memory = s.memory[:len(s.memory)+1]
	b := &s.memory[len(s.memory)-1]
	*b = node{rect: r, spots: spots, candidates: b.candidates[:0]}
	s.nodes[r] = b
	switch in := spots[Rip]; {
	case len(in) == 0:
		b.largest = max(0, r.w) * max(0, r.h)
		return b
	case len(in) == 1 && s.parts[in[0]] == r:
		return b
	}
	for kind := range CutKind(len(spots)) {
		from := len(s.lines)
		s.linesAcross(b, kind)
		for _, at := range s.lines[from:] {
			if len(b.candidates) > 0 && len(s.nodes) > s.most {
				break
			}
			c := s.divide(b, kind, at)
			if s.stuck {
				return b
			}
			if cuts := 1 + c.near.plain + c.far.plain; len(b.candidates) == 0 || cuts < b.plain {
				b.plain, b.plainBy = cuts, len(b.candidates)
			}
			b.largest = max(b.largest, c.near.largest, c.far.largest)
			b.candidates = append(b.candidates, c)
		}
		s.lines = s.lines[:from]
	}
	s.stuck = len(b.candidates) == 0
	return b
}

// along returns where a rectangle begins and ends: in y for crosscuts, in x for rips.
func (r rect) along(kind CutKind) (from, to int64) {
	if kind == Crosscut {
		return r.y, r.y + r.h
	}
	return r.x, r.x + r.w
}

// linesAcross adds to s.lines, rising, where cuts of one kind go through no part and along a part's
// edge.
func (s *sawyer) linesAcross(b *node, kind CutKind) {
	start, end := b.along(kind)
	reach := start - s.kerf // where the parts so far end; a cut before the first needs no room
	for n, i := range b.spots[kind] {
		from, to := s.parts[i].along(kind)
		if n == 0 && from > start {
			s.lines = append(s.lines, from-s.kerf-start)
		} else if n > 0 && from-reach >= s.kerf {
			s.lines = append(s.lines, reach-start)
			if from-reach > s.kerf {
				s.lines = append(s.lines, from-s.kerf-start)
			}
		}
		reach = max(reach, to)
	}
	if reach < end {
		s.lines = append(s.lines, reach-start)
	}
}

// divide makes one cut and a node of each side.
func (s *sawyer) divide(b *node, kind CutKind, at int64) candidate {
	near, far := b.rect, b.rect
	if kind == Crosscut {
		near.h, far.y, far.h = at, b.y+at+s.kerf, b.h-at-s.kerf
	} else {
		near.w, far.x, far.w = at, b.x+at+s.kerf, b.w-at-s.kerf
	}
	return candidate{kind, at, s.side(b, near, kind), s.side(b, far, kind)}
}

// side returns the node of one side of a cut.
func (s *sawyer) side(b *node, r rect, kind CutKind) *node {
	if known := s.nodes[r]; known != nil {
		return known
	}
	start, end := r.along(kind)
	var spots [2][]int32
	for order := range spots {
		from := len(s.spots)
		for _, i := range b.spots[order] {
			if at, to := s.parts[i].along(kind); at >= start && to <= end {
				s.spots = append(s.spots, i)
			}
		}
		spots[order] = s.spots[from:len(s.spots):len(s.spots)]
	}
	return s.lay(r, spots)
}

// keeping finds the fewest cuts that leave a rectangle of area keep.
func (s *sawyer) keeping(b *node) int {
	if b.largest < s.keep {
		return -1
	}
	if b.seen || len(b.candidates) == 0 {
		return b.keeping
	}
	b.seen, b.keeping = true, -1
	for i, c := range b.candidates {
		for side, pair := range [][2]*node{{c.near, c.far}, {c.far, c.near}} {
			n := s.keeping(pair[0])
			if cuts := 1 + n + pair[1].plain; n >= 0 && (b.keeping < 0 || cuts < b.keeping) {
				b.keeping, b.keepBy, b.keepNear = cuts, i, side == 0
			}
		}
	}
	return b.keeping
}

// waiting is a node that lies aside until the cuts of the other kind are made.
type waiting struct {
	*node
	keep bool
}

// saw makes the cuts: all of one kind first, as far as the plan has them in a row, so that the
// fence is set once; then each part that came free in turn.
func (s *sawyer) saw(b *node, keep bool) {
	var aside []waiting
	s.chain(b, keep, b.pick(keep), &aside)
	for _, w := range aside {
		s.saw(w.node, w.keep)
	}
}

// pick returns the planned cut of a node, nil if none is needed.
func (b *node) pick(keep bool) *candidate {
	switch {
	case len(b.candidates) == 0:
		return nil
	case keep:
		return &b.candidates[b.keepBy]
	}
	return &b.candidates[b.plainBy]
}

// chain makes the cuts of one kind and puts the rest aside, in order of place.
func (s *sawyer) chain(b *node, keep bool, c *candidate, aside *[]waiting) {
	if c == nil {
		if b.largest > 0 {
			s.offcuts = append(s.offcuts, b.rect)
		}
		return
	}
	s.cuts = append(s.cuts, cut{b.rect, c.kind, c.at})
	for _, side := range []waiting{{c.near, keep && b.keepNear}, {c.far, keep && !b.keepNear}} {
		next := side.pick(side.keep)
		if next != nil && next.kind != c.kind {
			*aside = append(*aside, side)
			continue
		}
		s.chain(side.node, side.keep, next, aside)
	}
}
