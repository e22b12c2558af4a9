package nest

import (
	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

// Notches. A stepped piece has waste in a corner of its rectangle. Two stopped
// cuts, each from an edge of the part to the corner of the step, free it:
//
//	+-------+--+-----+        the rip runs down from the upper edge, the
//	|       |##|     |        crosscut in from the right edge; both stop where
//	|       |##|free |        they meet, and their kerfs (#) lie in the waste
//	|       |##|     |
//	|       +--+#####|
//	|       |########|
//	|       +--------+
//	|   the piece    |
//	+----------------+
//
// What is freed is one more sheet, small, paid for, and with the phase that the
// piece shows there; so it is searched like any other stock, and the pieces cut
// from it lie in the piece's own frame, whichever way round that lies itself. A
// piece from a notch is smaller than the piece with the notch, so no two can each
// wait for the other.

// hollow is a corner of a part where nothing of its shape is, in marks from the
// lower left corner of the part: what the two stopped cuts free.
type hollow struct {
	host        int // index into job.pieces
	rect            // freed, without the kerfs
	right, high bool
}

// addNotches adds a kind of stock for each notch that could serve some piece. A
// notch counts only if its part is sure to be cut: some stock is never short.
func (j *job) addNotches() {
	for i, part := range j.p.Parts {
		if part.Shape.IsEmpty() || !j.sure(&j.pieces[i]) {
			continue
		}
		for _, h := range j.hollows(i, part.Shape) {
			j.addNotch(h)
		}
	}
}

// sure reports whether there is stock without limit for the piece.
func (j *job) sure(q *piece) bool {
	for i := range j.kinds {
		if k := &j.kinds[i]; !k.limited && j.fits(k, q) {
			return true
		}
	}
	return false
}

// addNotch adds the stock of one notch, or one more of a kind that is equal.
func (j *job) addNotch(h hollow) {
	k := sheetKind{w: h.w, h: h.h, limited: true, count: 1, notches: []hollow{h}}
	if j.pitch > 0 {
		k.phase = floorMod(j.pieces[h.host].at[0]+h.x, j.pitch)
	}
	for i := range j.pieces {
		k.usable = k.usable || j.fits(&k, &j.pieces[i])
	}
	if !k.usable {
		return
	}
	for i := range j.kinds {
		o := &j.kinds[i]
		if len(o.notches) > 0 && o.w == k.w && o.h == k.h && o.phase == k.phase {
			o.count++
			o.notches = append(o.notches, h)
			return
		}
	}
	j.kinds = append(j.kinds, k)
}

// hollows returns the largest empty rectangle at each corner of a shape that has
// one, kerfs taken off.
func (j *job) hollows(i int, shape cutout.Shape) (all []hollow) {
	q := &j.pieces[i]
	slabs := j.clearances(shape)
	for _, right := range []bool{false, true} {
		for _, high := range []bool{false, true} {
			w, h := q.largestCorner(slabs, right, high)
			if w <= j.kerf || h <= j.kerf {
				continue
			}
			free := hollow{host: i, rect: rect{0, 0, w - j.kerf, h - j.kerf}, right: right, high: high}
			if right {
				free.x = q.w - free.w
			}
			if high {
				free.y = q.h - free.h
			}
			all = append(all, free)
		}
	}
	return all
}

// clearance is an upright band of a shape: from and to across, and the heights
// between which all its material lies, rounded outward to whole marks.
type clearance struct{ from, to, low, high int64 }

// clearances returns the bands of a shape, left to right.
func (j *job) clearances(shape cutout.Shape) (all []clearance) {
	for _, s := range shape.Slabs() {
		if len(s.Cells) == 0 {
			continue
		}
		bottom, top := s.Cells[0], s.Cells[len(s.Cells)-1]
		all = append(all, clearance{
			from: j.marksDown(s.Left), to: -j.marksDown(s.Right.Neg()),
			low:  j.marksDown(fraction.Min(bottom.BottomLeft, bottom.BottomRight)),
			high: -j.marksDown(fraction.Max(top.TopLeft, top.TopRight).Neg()),
		})
	}
	return all
}

// marksDown returns a length in whole marks, rounded down.
func (j *job) marksDown(x fraction.Length) int64 {
	marks, _ := x.Mul(j.den).DivMod(fraction.Inches(1))
	return marks
}

// largestCorner returns the largest rectangle in a corner that no material of
// the bands lies in.
func (q *piece) largestCorner(bands []clearance, right, high bool) (w, h int64) {
	clear := q.h
	best := int64(0)
	for n := range bands {
		b := bands[n]
		if right {
			b = bands[len(bands)-1-n]
			b.from, b.to = q.w-b.to, q.w-b.from
		}
		// Up to where this band begins, what was clear before is clear.
		if b.from*clear > best && clear < q.h {
			best, w, h = b.from*clear, b.from, clear
		}
		if high {
			clear = min(clear, q.h-b.high)
		} else {
			clear = min(clear, b.low)
		}
		if clear <= 0 {
			break
		}
	}
	return w, h
}

// notch makes the two stopped cuts that free a hollow of a part, and cuts what
// comes from it. at is where the part lies, turned how.
func (b *builder) notch(h hollow, l layout, at rect, turned bool) error {
	kerf := b.job.kerf
	free := frame{at, turned}.on(h.rect)
	right, high := h.right != turned, h.high != turned
	// The blade's kerf lies in the waste, so its side away from what is freed is
	// the edge of the step.
	rip := stroke{rect: at, kind: StoppedRip, at: free.w, to: free.h + kerf}
	across := stroke{rect: at, kind: StoppedCrosscut, at: free.h, to: free.w + kerf}
	if right {
		rip.at = at.w - free.w - kerf
		across.from, across.to = at.w, rip.at
	}
	if high {
		across.at = at.h - free.h - kerf
		rip.from, rip.to = at.h, across.at
	}
	b.strokes = append(b.strokes, rip, across)
	return b.fill(l, frame{free, turned})
}
