package cutout

import (
	"math/big"
	"slices"

	"example.com/groovewright/fraction"
)

// field is a decomposition of a shape, with the neighbours of each cell, for finding narrow places.
// For strips that run up and down the axes are swapped; comments speak of those that run across.
type field struct {
	sweep
	swapped     bool
	limits      Limits
	left, right [][]int // of each cell, the cells that share a stretch of its left or right end
}

func newField(s Shape, swapped bool, limits Limits) *field {
	f := &field{swapped: swapped, limits: limits}
	for number, ring := range s.rings {
		ring = slices.Clone(ring)
		for i, p := range ring {
			ring[i] = f.swap(p)
		}
		f.addRing(number, ring, false, nil)
	}
	f.run(inShapeOnly)
	f.left, f.right = make([][]int, len(f.cells)), make([][]int, len(f.cells))
	for i := 1; i+1 < len(f.start); i++ {
		l, r := f.start[i-1], f.start[i]
		for l < f.start[i] && r < f.start[i+1] {
			a, b := &f.cells[l], &f.cells[r]
			if fraction.Max(a.y[br], b.y[bl]).Less(fraction.Min(a.y[tr], b.y[tl])) {
				f.right[l], f.left[r] = append(f.right[l], r), append(f.left[r], l)
			}
			if a.y[tr].Less(b.y[tl]) {
				l++
			} else {
				r++
			}
		}
	}
	return f
}

// ends returns the heights of a cell at its left and right end, and its borders in x.
func (f *field) ends(i int) (hl, hr, from, to fraction.Length) {
	c := &f.cells[i]
	return c.y[tl].Sub(c.y[bl]), c.y[tr].Sub(c.y[br]), f.xs[c.slab], f.xs[c.slab+1]
}

// slantGrain is what irrational slants are rounded up to, a pure number: widths square to a slope
// come out too small by less than a thousandth.
var slantGrain = big.NewRat(1, 1024)

// slant returns by how much a height exceeds the width square to the edges of a cell: the root of 1
// + slope², for the lesser slope if both edges rise or both fall, rounded up to slantGrain; else 1.
func (f *field) slant(i int) fraction.Ratio {
	c := &f.cells[i]
	_, _, from, to := f.ends(i)
	low, high := c.y[br].Sub(c.y[bl]), c.y[tr].Sub(c.y[tl])
	if low.Sign()*high.Sign() <= 0 {
		return fraction.NewRatio(1, 1)
	}
	rise := fraction.Min(low.Abs(), high.Abs())
	slope := new(big.Rat).Quo(rise.Rat(), difference(to, from))
	root := rootAbove(slope.Add(squared(slope), one), slantGrain)
	return mustFit(root).Over(fraction.Inches(1))
}

// narrow is a cell, or cells in a row, as far as they are narrower than a strip.
type narrow struct {
	from, to            fraction.Length // in x
	width, widest       fraction.Length
	openLeft, openRight bool // wider material goes on there
	at                  rational
	rings               [2]int
	box                 box
}

// thin returns the narrow strips and arms, and adds the bounds of the strips to the list.
func (f *field) thin(strips *[]box) (spots []Weak) {
	parts := make([]*narrow, len(f.cells)) // cells that are joined share one
	for i := range parts {
		parts[i] = f.narrowPart(i)
	}
	for l, neighbours := range f.right {
		for _, r := range neighbours {
			p, q := parts[l], parts[r]
			if p != nil && q != nil && !f.wideAt(l, false) && !f.wideAt(r, true) {
				join(parts, p, q)
				continue
			}
			if p != nil {
				p.openRight = true
			}
			if q != nil {
				q.openLeft = true
			}
		}
	}
	for i, p := range parts {
		if p == nil || slices.Index(parts, p) < i {
			continue
		}
		kind, length := Strip, p.to.Sub(p.from)
		if p.openLeft != p.openRight {
			if kind = Leg; length.Compare(p.widest.Mul(stubRatio)) <= 0 {
				continue
			}
		}
		*strips = append(*strips, box{f.swap(p.box.lo), f.swap(p.box.hi)})
		spots = append(spots, Weak{Kind: kind, At: f.swap(spotPoint(p.at)), Width: p.width, Length: length, Rings: p.rings, level: !f.swapped})
	}
	return spots
}

// join makes one part of two: that of the cell with the lesser index.
func join(parts []*narrow, p, q *narrow) {
	if p == q {
		return
	}
	if slices.Index(parts, q) < slices.Index(parts, p) {
		p, q = q, p
	}
	for i := range parts {
		if parts[i] == q {
			parts[i] = p
		}
	}
	if q.width.Less(p.width) {
		p.width, p.at, p.rings = q.width, q.at, q.rings
	}
	p.from, p.to = fraction.Min(p.from, q.from), fraction.Max(p.to, q.to)
	p.widest = fraction.Max(p.widest, q.widest)
	p.openLeft, p.openRight = p.openLeft || q.openLeft, p.openRight || q.openRight
	p.box = box{
		Point{p.from, fraction.Min(p.box.lo.Y, q.box.lo.Y)},
		Point{p.to, fraction.Max(p.box.hi.Y, q.box.hi.Y)},
	}
}

// wideAt reports whether a cell is as wide as a strip at its left or right end.
func (f *field) wideAt(i int, left bool) bool {
	hl, hr, _, _ := f.ends(i)
	if !left {
		hl = hr
	}
	return !hl.Less(f.limits.Strip.Scale(f.slant(i)))
}

// narrowPart returns the part of a cell that is narrower than a strip, or nil.
func (f *field) narrowPart(i int) *narrow {
	hl, hr, from, to := f.ends(i)
	slant := f.slant(i)
	limit := f.limits.Strip.Scale(slant)
	if !fraction.Min(hl, hr).Less(limit) {
		return nil
	}
	c := &f.cells[i]
	p := &narrow{from: from, to: to, rings: [2]int{f.sides[c.lower].ring, f.sides[c.upper].ring}}
	p.box = box{Point{from, fraction.Min(c.y[bl], c.y[br])}, Point{to, fraction.Max(c.y[tl], c.y[tr])}}
	across := fraction.NewRatio(1, 1).Div(slant)
	p.width = fraction.Min(hl, hr).Scale(across)
	p.widest = fraction.Min(fraction.Max(hl, hr), limit).Scale(across)
	atLeft := halfWay(Point{from, c.y[bl]}.rational(), Point{from, c.y[tl]}.rational())
	atRight := halfWay(Point{to, c.y[br]}.rational(), Point{to, c.y[tr]}.rational())
	switch hl.Compare(hr) {
	case -1:
		if p.at = atLeft; limit.Less(hr) {
			p.openRight, p.to = true, heightAt(Point{hl, from}, Point{hr, to}, limit)
		}
	case 1:
		if p.at = atRight; limit.Less(hl) {
			p.openLeft, p.from = true, heightAt(Point{hl, from}, Point{hr, to}, limit)
		}
	default:
		p.at = halfWay(atLeft, atRight)
	}
	return p
}

// longLegs walks inwards from every free end, cell by cell as long as they make one arm, and
// returns the arms that are too long for their width.
func (f *field) longLegs() (spots []Weak) {
	for i := range f.cells {
		if len(f.left[i]) == 0 {
			spots = f.walk(spots, i, f.right, f.left, true)
		}
		if len(f.right[i]) == 0 {
			spots = f.walk(spots, i, f.left, f.right, false)
		}
	}
	return spots
}

// walk follows the arm that begins with cell i. Ahead and behind are the neighbours on either side
// of a cell in the walking direction.
func (f *field) walk(spots []Weak, i int, ahead, behind [][]int, rightward bool) []Weak {
	first := f.cells[i]
	start, end := f.xs[first.slab], f.xs[first.slab+1]
	var length, tallest fraction.Length
	for {
		hl, hr, from, to := f.ends(i)
		start, end = fraction.Min(start, from), fraction.Max(end, to)
		length, tallest = length.Add(to.Sub(from)), fraction.Max(tallest, hl, hr)
		if len(ahead[i]) != 1 {
			return spots // the far end, or cutouts that begin there
		}
		next := ahead[i][0]
		root, far, _, _ := f.ends(next)
		if !rightward {
			root = far
		}
		if !root.Less(tallest.Mul(anchorRatio)) {
			if tallest.Scale(f.limits.LegRatio).Less(length) && !tallest.Less(f.limits.Strip) {
				middle := halfWay(Point{start, first.y[bl]}.rational(), Point{end, first.y[tr]}.rational())
				spots = append(spots, Weak{Kind: Leg, At: f.swap(spotPoint(middle)), Width: tallest, Length: length,
					Rings: [2]int{f.sides[first.lower].ring, f.sides[first.upper].ring}})
			}
			return spots
		}
		if len(behind[next]) != 1 {
			return spots
		}
		i = next
	}
}

// swap swaps the axes, or swaps them back, where the field has them swapped.
func (f *field) swap(p Point) Point {
	if f.swapped {
		return flip(p)
	}
	return p
}
