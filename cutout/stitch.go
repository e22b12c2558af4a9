package cutout

import (
	"cmp"
	"slices"

	"example.com/groovewright/fraction"
)

// stitcher joins the borders of the cells of a sweep to closed rings. A border has the material to
// its left: the lower edge of a cell runs to the right, the upper edge to the left, and an upright
// stretch where only the slab on one side has material runs up or down.
type stitcher struct {
	nodes   []Point
	borders []border
	out     []int // for each node the first border that leaves it, or none
}

type border struct {
	from, to int // nodes
	edge     int // index of the side it is a part of, or up, or down
	another  int // the next border that leaves the same node, or none
	used     bool
}

const (
	none = -1
	up   = -1 // edges of upright borders
	down = -2
)

// pieces draws the connected pieces of the decomposition, in the form that [Shape] describes,
// ordered from left to right and then from the bottom up.
func (w *sweep) pieces() []Shape {
	if len(w.cells) == 0 {
		return nil
	}
	t := w.borders()
	var outlines, holes [][]Point
	for i := range t.borders {
		if t.borders[i].used {
			continue
		}
		ring := t.trace(i)
		if ring == nil {
			continue
		}
		if counterclockwise(ring) {
			if ring = simplify(ring); ring != nil {
				outlines = append(outlines, rotated(ring))
			}
			continue
		}
		for _, hole := range unpinched(ring) {
			if hole = simplify(hole); hole != nil {
				holes = append(holes, rotated(hole))
			}
		}
	}
	return assemble(outlines, holes)
}

// borders lists the border of every cell and the upright stretches between.
func (w *sweep) borders() *stitcher {
	t := &stitcher{
		nodes:   make([]Point, 0, 4*len(w.cells)),
		borders: make([]border, 0, 4*len(w.cells)),
	}
	t.out = make([]int, 0, 4*len(w.cells))
	corners := make([][4]int, len(w.cells)) // nodes at bottom left, bottom right, top left, top right
	for i := range w.xs {
		w.column(t, i, corners)
	}
	for i, c := range w.cells {
		t.add(corners[i][0], corners[i][1], c.lower)
		t.add(corners[i][3], corners[i][2], c.upper)
	}
	return t
}

func (t *stitcher) node(p Point) int {
	t.nodes = append(t.nodes, p)
	t.out = append(t.out, none)
	return len(t.nodes) - 1
}

func (t *stitcher) add(from, to, edge int) {
	t.borders = append(t.borders, border{from: from, to: to, edge: edge, another: t.out[from]})
	t.out[from] = len(t.borders) - 1
}

// column goes up the line between two slabs. It makes one node of all corners at the same height
// and an upright border wherever one slab only has material.
func (w *sweep) column(t *stitcher, i int, corners [][4]int) {
	left, right := w.slab(i-1), w.slab(i)
	var l, r int // corners passed on either side; an odd number means inside a cell
	fromLeft := func() fraction.Length {
		if c := &left[l/2]; l%2 == 0 {
			return c.br
		} else {
			return c.tr
		}
	}
	fromRight := func() fraction.Length {
		if c := &right[r/2]; r%2 == 0 {
			return c.bl
		} else {
			return c.tl
		}
	}
	previous := none
	for l < 2*len(left) || r < 2*len(right) {
		var y fraction.Length
		switch {
		case l == 2*len(left):
			y = fromRight()
		case r == 2*len(right):
			y = fromLeft()
		default:
			y = fraction.Min(fromLeft(), fromRight())
		}
		node := t.node(Point{w.xs[i], y})
		switch inLeft, inRight := l%2 == 1, r%2 == 1; {
		case inLeft && !inRight:
			t.add(previous, node, up)
		case inRight && !inLeft:
			t.add(node, previous, down)
		}
		for l < 2*len(left) && fromLeft() == y {
			corners[w.start[i-1]+l/2][1+l%2*2] = node
			l++
		}
		for r < 2*len(right) && fromRight() == y {
			corners[w.start[i]+r/2][r%2*2] = node
			r++
		}
		previous = node
	}
}

// trace follows the borders from the given one until the ring closes and returns its vertices;
// nodes within one edge are left out.
func (t *stitcher) trace(start int) []Point {
	var ring []Point
	for at := start; ; {
		b := &t.borders[at]
		b.used = true
		next := t.leftmost(at)
		if next == none || t.borders[next].used && next != start {
			return nil // cannot happen with edges that do not cross
		}
		if t.borders[next].edge != b.edge {
			ring = append(ring, t.nodes[b.to])
		}
		if next == start {
			return ring
		}
		at = next
	}
}

// leftmost returns the border on which to go on from the end of the given one. Where several leave
// the node, two parts touch there at a point: taking the leftmost goes round one wedge of material
// only, so that they come apart.
func (t *stitcher) leftmost(at int) int {
	b := &t.borders[at]
	best := t.out[b.to]
	if best == none {
		return none
	}
	for other := t.borders[best].another; other != none; other = t.borders[other].another {
		if t.moreLeft(b, other, best) {
			best = other
		}
	}
	return best
}

// moreLeft reports whether border i turns further to the left than j, coming from b.
func (t *stitcher) moreLeft(b *border, i, j int) bool {
	from, at := t.nodes[b.from], t.nodes[b.to]
	p, q := t.nodes[t.borders[i].to], t.nodes[t.borders[j].to]
	if tp, tq := orient(from, at, p), orient(from, at, q); tp != tq {
		return tp > tq
	}
	return orient(at, q, p) > 0
}

// counterclockwise reports the direction of a ring by its turns at the lowest vertex. Material lies
// to the left; round an outline all of it lies above that vertex, so that every turn there is to
// the left, however often the outline comes back to the same point. Round a hole one turn there is
// to the right.
func counterclockwise(ring []Point) bool {
	lowest := slices.MinFunc(ring, lower)
	for i, p := range ring {
		if p == lowest && orientAt(ring, i) < 0 {
			return false
		}
	}
	return true
}

// unpinched splits a hole that touches itself at a point into simple holes.
func unpinched(ring []Point) [][]Point {
	for i := range ring {
		for j := i + 1; j < len(ring); j++ {
			if ring[i] == ring[j] {
				inner := slices.Clone(ring[i:j])
				rest := slices.Delete(slices.Clone(ring), i, j)
				return append(unpinched(inner), unpinched(rest)...)
			}
		}
	}
	return [][]Point{ring}
}

// assemble gives each hole to the outline round it, the smallest where an outline lies in another's
// hole, and sorts.
func assemble(outlines, holes [][]Point) []Shape {
	shapes := make([]Shape, len(outlines))
	for i, outline := range outlines {
		shapes[i].outline = outline
	}
	slices.SortFunc(shapes, compareShapes)
	for _, hole := range holes {
		best := none
		for i := range shapes {
			if len(shapes) > 1 && !within(hole, shapes[i].outline) {
				continue
			}
			if best == none || within(shapes[i].outline, shapes[best].outline) {
				best = i
			}
		}
		if best != none {
			shapes[best].holes = append(shapes[best].holes, hole)
		}
	}
	for i := range shapes {
		slices.SortFunc(shapes[i].holes, compareRings)
	}
	return shapes
}

// within reports whether ring a, which does not cross ring b, lies inside b. The first vertex that
// is not on b decides.
func within(a, b []Point) bool {
	for _, p := range a {
		if where := locate(b, p); where != 0 {
			return where > 0
		}
	}
	return false
}

func compareShapes(a, b Shape) int { return compareRings(a.outline, b.outline) }

// compareRings orders rings by the left edge of their bounds, then by the lower edge, then by their
// first vertex.
func compareRings(a, b []Point) int {
	aLow, _ := Bounds(a)
	bLow, _ := Bounds(b)
	return cmp.Or(lower(flip(aLow), flip(bLow)), lower(a[0], b[0]))
}
