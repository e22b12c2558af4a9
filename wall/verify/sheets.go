package verify

import (
	"fmt"
	"slices"
)

// rect is an upright rectangle in sheet coordinates.
type rect struct{ x, y, w, h rat }

func (r rect) right() rat { return sum(r.x, r.w) }
func (r rect) top() rat   { return sum(r.y, r.h) }

func (r rect) is(s rect) bool {
	return same(r.x, s.x) && same(r.y, s.y) && same(r.w, s.w) && same(r.h, s.h)
}

// meets says whether the insides of two rectangles share a point.
func (r rect) meets(s rect) bool {
	return less(r.x, s.right()) && less(s.x, r.right()) && less(r.y, s.top()) && less(s.y, r.top())
}

func (r rect) holds(s rect) bool {
	return !less(s.x, r.x) && !less(r.right(), s.right()) && !less(s.y, r.y) && !less(r.top(), s.top())
}

func (r rect) String() string {
	return fmt.Sprintf("[%s, %s, %s, %s]", text(r.x), text(r.y), text(r.w), text(r.h))
}

// placed is one piece on a sheet.
type placed struct {
	rect
	piece  planPiece
	turned bool
	path   string
}

// outline returns the outline of the piece in sheet coordinates, without holes.
func (p placed) outline() loop {
	l := loopOf(p.piece.Outline)
	if p.turned {
		l = l.turned(p.w, p.h)
	}
	return l.moved(p.x, p.y)
}

// sheets checks placements, cuts and offcuts of every sheet.
func (c *checker) sheets() {
	times := map[int]int{}
	used := map[string]int{}
	for k, sheet := range c.plan.Sheets {
		path := fmt.Sprintf("sheets[%d]", k)
		if sheet.Number != k+1 {
			c.fault("order", path+".number", fmt.Sprint(sheet.Number), fmt.Sprint(k+1), "sheets are not numbered from 1 in order")
		}
		n, known := c.stock[sheet.Stock]
		if !known {
			c.fault("stock", path+".stock", sheet.Stock, "a stock of the job", "unknown stock")
			continue
		}
		used[sheet.Stock]++
		for _, p := range sheet.Placements {
			times[p.Piece]++
		}
		if len(sheet.Placements) == 0 {
			c.fault("placement", path+".placements", "none", "some", "a sheet for nothing")
		}
		c.sheet(path, sheet, c.job.stock[n])
	}
	for k, piece := range c.plan.Pieces {
		if n := times[piece.Number]; n != 1 {
			c.fault("placement", fmt.Sprintf("pieces[%d]", k), fmt.Sprint(n), "1", "times on a sheet")
		}
	}
	for i, s := range c.job.stock {
		if s.count != nil && used[s.name] > *s.count {
			c.fault("stock", fmt.Sprintf("stock[%d].used", i), fmt.Sprint(used[s.name]), fmt.Sprint(*s.count), "more sheets than there are")
		}
	}
	for i, s := range c.plan.Stock {
		if s.Used != used[s.Name] {
			c.fault("stock", fmt.Sprintf("stock[%d].used", i), fmt.Sprint(s.Used), fmt.Sprint(used[s.Name]), "sheets counted wrongly")
		}
	}
}

func (c *checker) sheet(path string, sheet planSheet, s stock) {
	var all []placed
	for k, p := range sheet.Placements {
		at := fmt.Sprintf("%s.placements[%d]", path, k)
		n, known := c.pieces[p.Piece]
		if !known {
			c.fault("placement", at+".piece", fmt.Sprint(p.Piece), "a piece", "unknown piece")
			continue
		}
		piece := c.plan.Pieces[n]
		next := placed{rect{p.X.r(), p.Y.r(), piece.Width.r(), piece.Height.r()}, piece, p.Turned, at}
		c.placement(next, s)
		all = append(all, next)
	}
	nested := c.nested(all)
	free, stood := c.saw(path, sheet, s)
	for k, p := range all {
		switch {
		case holds(free, p.rect):
		case nested[k]:
			// It comes out of another's notch by cuts that stop, which no replay of
			// through cuts can show.
		case slices.ContainsFunc(all, func(q placed) bool { return q.path != p.path && p.holds(q.rect) }) && holds(stood, p.rect):
			// The piece that holds another in its notch stood free before the notch was sawn.
		default:
			c.fault("cuts", p.path, p.String(), "a part of its own", "does not stand free after the cuts")
		}
	}
	for k, o := range sheet.Offcuts {
		at := fmt.Sprintf("%s.offcuts[%d]", path, k)
		r := rect{o.X.r(), o.Y.r(), o.Width.r(), o.Length.r()}
		if r.w.Sign() <= 0 || r.h.Sign() <= 0 {
			c.fault("offcut", at, r.String(), "some size", "an offcut of no size")
		}
		for _, p := range all {
			if r.meets(p.rect) && !disjoint(shape{rectangle(r.x, r.y, r.w, r.h)}, shape{p.outline()}) {
				c.fault("offcut", at, r.String(), p.String(), "shares material with piece %d", p.piece.Number)
			}
		}
		for l, other := range sheet.Offcuts[:k] {
			if r.meets(rect{other.X.r(), other.Y.r(), other.Width.r(), other.Length.r()}) {
				c.fault("offcut", at, r.String(), fmt.Sprintf("offcuts[%d]", l), "two offcuts overlap")
			}
		}
		if !holds(free, r) {
			c.fault("offcut", at, r.String(), "a part of its own", "does not stand free after the cuts")
		}
		c.equal("offcut", at+".left_phase", o.LeftPhase.r(), mod(sum(s.leftPhase, r.x), c.job.pattern.pitch), "not the sheet's pattern there")
	}
}

func holds(parts []rect, r rect) bool { return slices.ContainsFunc(parts, r.is) }

// placement checks one piece against the sheet alone.
func (c *checker) placement(p placed, s stock) {
	if p.x.Sign() < 0 {
		c.fault("placement", p.path+".x", text(p.x), "0", "left of the sheet")
	}
	if less(s.width, p.right()) {
		c.fault("placement", p.path+".x", text(p.right()), text(s.width), "right of the sheet")
	}
	if less(p.y, s.squareUp) {
		c.fault("placement", p.path+".y", text(p.y), text(s.squareUp), "within the end to be squared")
	}
	if high := diff(s.length, s.squareUp); less(high, p.top()) {
		c.fault("placement", p.path+".y", text(p.top()), text(high), "within the far end to be squared")
	}
	if p.turned && len(c.job.pattern.turns) == 0 {
		c.fault("placement", p.path+".turned", "true", "false", "the pattern is not its own mirror image")
		return
	}
	if !c.job.pattern.shows(p.piece.LeftPhase.r(), p.w, p.x, s, p.turned) {
		shown := mod(sum(s.leftPhase, p.x), c.job.pattern.pitch)
		if p.turned {
			shown = mod(diff(c.job.pattern.turns[0], sum(s.leftPhase, p.x, p.w)), c.job.pattern.pitch)
		}
		c.fault("placement", p.path+".x", text(shown), text(p.piece.LeftPhase.r()), "the sheet shows another phase here")
	}
}

// nested finds the placements that lie in the notch of another and reports those
// that overlap in any other way.
//
// This rule is apart from the others: a bounding rectangle may lie wholly within
// another only if the two outlines share no material.
func (c *checker) nested(all []placed) []bool {
	out := make([]bool, len(all))
	for k, p := range all {
		for l, q := range all[:k] {
			if !p.meets(q.rect) {
				continue
			}
			switch {
			case !disjoint(shape{p.outline()}, shape{q.outline()}):
				c.fault("placement", p.path, p.String(), q.String(), "shares material with piece %d", q.piece.Number)
			case q.holds(p.rect):
				out[k] = true
			case p.holds(q.rect):
				out[l] = true
			default:
				c.fault("notch", p.path, p.String(), q.String(), "lies partly in the rectangle of piece %d", q.piece.Number)
			}
		}
	}
	return out
}

// disjoint says whether the insides of two shapes share no point.
func disjoint(a, b shape) bool {
	first, second := a.edges(), b.edges()
	xs := events(slices.Concat(first, second))
	for k := 0; k+1 < len(xs); k++ {
		x := middle(xs[k], xs[k+1])
		one, other := spans(first, x, fromRight), spans(second, x, fromRight)
		if !same(length(without(one, other)), length(one)) {
			return false
		}
	}
	return true
}

// saw replays the cuts of a sheet. It returns the parts that are free at the end
// and every part that ever stood free.
func (c *checker) saw(path string, sheet planSheet, s stock) (free, stood []rect) {
	free = []rect{{zero(), zero(), s.width, s.length}}
	stood = slices.Clone(free)
	for k, cut := range sheet.Cuts {
		at := fmt.Sprintf("%s.cuts[%d]", path, k)
		if cut.Step != k+1 {
			c.fault("cuts", at+".step", fmt.Sprint(cut.Step), fmt.Sprint(k+1), "steps are not numbered from 1 in order")
		}
		part := rect{cut.Rect[0].r(), cut.Rect[1].r(), cut.Rect[2].r(), cut.Rect[3].r()}
		n := slices.IndexFunc(free, part.is)
		if n < 0 {
			c.fault("cuts", at+".rect", part.String(), "a part on the bench", "there is no such part")
			continue
		}
		near, far := part, part
		across := part.h
		switch cut.Kind {
		case "crosscut":
			near.h = cut.At.r()
			far.y = sum(part.y, cut.At.r(), c.job.kerf)
			far.h = diff(part.top(), far.y)
		case "rip":
			across = part.w
			near.w = cut.At.r()
			far.x = sum(part.x, cut.At.r(), c.job.kerf)
			far.w = diff(part.right(), far.x)
		default:
			c.fault("cuts", at+".kind", cut.Kind, "crosscut or rip", "unknown kind of cut")
			continue
		}
		if low := negative(c.job.kerf); !less(low, cut.At.r()) || !less(cut.At.r(), across) {
			c.fault("cuts", at+".at", text(cut.At.r()), "between "+text(low)+" and "+text(across), "the blade does not touch the part")
			continue
		}
		free = slices.Delete(free, n, n+1)
		for _, left := range []rect{near, far} {
			if left.w.Sign() > 0 && left.h.Sign() > 0 {
				free, stood = append(free, left), append(stood, left)
			}
		}
	}
	return free, stood
}
