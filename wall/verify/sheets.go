package verify

import (
	"cmp"
	"fmt"
	"slices"
)

// rect is an upright rectangle in sheet coordinates.
type rect struct{ X, Y, W, H rat }

func (r rect) right() rat { return sum(r.X, r.W) }
func (r rect) top() rat   { return sum(r.Y, r.H) }

func (r rect) is(s rect) bool {
	return same(r.X, s.X) && same(r.Y, s.Y) && same(r.W, s.W) && same(r.H, s.H)
}

// meets says whether the insides of two rectangles share a point.
func (r rect) meets(s rect) bool {
	return less(r.X, s.right()) && less(s.X, r.right()) && less(r.Y, s.top()) && less(s.Y, r.top())
}

// within says whether a rectangle lies in another.
func (r rect) within(s rect) bool {
	return !less(r.X, s.X) && !less(r.Y, s.Y) && !less(s.right(), r.right()) && !less(s.top(), r.top())
}

func (r rect) String() string {
	return fmt.Sprintf("[%s, %s, %s, %s]", text(r.X), text(r.Y), text(r.W), text(r.H))
}

// sheets checks placements, cuts and offcuts of every sheet.
func (c *checker) sheets() {
	placed, used := map[int]int{}, map[string]int{}
	for k, sheet := range c.plan.Sheets {
		path := item("sheets", k)
		c.equal(Order, path+".number", sheet.Number, k+1, "sheets are not numbered from 1 in order")
		n, known := c.stock[sheet.Stock]
		if !known {
			c.fault(Stock, path+".stock", sheet.Stock, "a stock of the job", "unknown stock")
			continue
		}
		used[sheet.Stock]++
		for _, p := range sheet.Placements {
			placed[p.Piece]++
		}
		c.require(len(sheet.Placements) > 0, Placement, path+".placements", "none", "some", "a sheet for nothing")
		c.sheet(path, sheet, c.job.Stock[n])
	}
	for k, piece := range c.plan.Pieces {
		c.equal(Placement, item("pieces", k), placed[piece.Number], 1, "times on a sheet")
	}
	for i, s := range c.job.Stock {
		if s.Count != nil && used[s.Name] > *s.Count {
			c.fault(Stock, item("stock", i)+".used", used[s.Name], *s.Count, "more sheets than there are")
		}
	}
	for i, s := range c.plan.Stock {
		c.equal(Stock, item("stock", i)+".used", s.Used, used[s.Name], "sheets counted wrongly")
	}
}

// sheet checks one sheet: what is on it stands apart, free after the cuts, and so do its offcuts.
func (c *checker) sheet(path string, sheet planSheet, s stock) {
	before := len(c.faults)
	free, left := c.saw(path, sheet, s)
	var taken []rect
	stands := func(kind, unfree Kind, at string, r rect) {
		c.job.sweep.spend(len(free) + len(taken))
		c.require(slices.ContainsFunc(free, r.is), unfree, at, r, "a part of its own", "does not stand free after the cuts")
		for k, other := range taken {
			c.require(!r.meets(other), kind, at, r, other, "shares material with what stands at %d on the sheet", k+1)
		}
		taken = append(taken, r)
	}
	for k, p := range sheet.Placements {
		at := item(path+".placements", k)
		n, known := c.pieces[p.Piece]
		if !known {
			c.fault(Placement, at+".piece", p.Piece, "a piece", "unknown piece")
			continue
		}
		piece := c.plan.Pieces[n]
		r, leftPhase := piece.part(p.X, p.Y)
		c.placement(at, r, leftPhase, p.Turned, s)
		stands(Placement, Cuts, at, r)
	}
	for k, o := range sheet.Offcuts {
		at, r := item(path+".offcuts", k), rect{o.X, o.Y, o.Width, o.Length}
		c.require(r.W.Sign() > 0 && r.H.Sign() > 0, Offcut, at, r, "some size", "an offcut of no size")
		stands(Offcut, Offcut, at, r)
		c.equal(Offcut, at+".left_phase", o.LeftPhase, mod(sum(s.LeftPhase, r.X), c.job.pattern.pitch),
			"not the sheet's pattern there")
	}
	if len(c.faults) == before {
		c.said(path, sheet, left, taken[:len(sheet.Placements)])
	}
}

// placement checks one piece against the sheet alone.
func (c *checker) placement(path string, r rect, leftPhase rat, turned bool, s stock) {
	p := c.job.pattern
	c.between(Placement, path+".x", r.X, zero(), nil, "left of the sheet")
	c.between(Placement, path+".x", r.right(), nil, s.Width, "right of the sheet")
	c.between(Placement, path+".y", r.Y, s.trim, nil, "within the end to be squared")
	c.between(Placement, path+".y", r.top(), nil, diff(s.Length, s.trim), "within the far end to be squared")
	if turned && len(p.turns) == 0 {
		c.fault(Placement, path+".turned", true, false, "the pattern is not its own mirror image")
	} else if !p.shows(leftPhase, r.W, r.X, s, turned) {
		c.fault(Placement, path+".x", "the sheet's phase "+text(mod(sum(s.LeftPhase, r.X), p.pitch)), leftPhase,
			"the sheet shows another phase here")
	}
}

// saw replays the cuts of a sheet and returns the parts that are free at the end. left are the
// whole sheet and what each cut leaves near and beyond, if only a part of no size.
func (c *checker) saw(path string, sheet planSheet, s stock) (free, left []rect) {
	free = []rect{{zero(), zero(), s.Width, s.Length}}
	left = slices.Clone(free)
	for k, cut := range sheet.Cuts {
		at := item(path+".cuts", k)
		c.equal(Cuts, at+".step", cut.Step, k+1, "steps are not numbered from 1 in order")
		part := cut.Rect
		n := slices.IndexFunc(free, part.is)
		if n < 0 {
			c.fault(Cuts, at+".rect", part, "a part on the bench", "there is no such part")
			continue
		}
		near, far, across := part, part, part.H
		beyond := sum(cut.At, c.job.kerf)
		switch cut.Kind {
		case "crosscut":
			near.H = cut.At
			far.Y, far.H = sum(part.Y, beyond), diff(part.H, beyond)
		case "rip":
			across, near.W = part.W, cut.At
			far.X, far.W = sum(part.X, beyond), diff(part.W, beyond)
		default:
			c.fault(Cuts, at+".kind", cut.Kind, "crosscut or rip", "unknown kind of cut")
			continue
		}
		if low := negative(c.job.kerf); !less(low, cut.At) || !less(cut.At, across) {
			c.fault(Cuts, at+".at", cut.At, "between "+text(low)+" and "+text(across), "the blade does not touch the part")
			continue
		}
		free = slices.Delete(free, n, n+1)
		for _, rest := range []rect{near, far} {
			left = append(left, rest)
			if rest.W.Sign() > 0 && rest.H.Sign() > 0 {
				free = append(free, rest)
			}
		}
	}
	return free, left
}

// said checks what a plan says of the cuts of a sheet that is right otherwise: which cut, on which
// side, left the part on the bench, whether another part has its size, what only comes off, and
// which pieces stand free. left is as of saw, placed is where the pieces are.
func (c *checker) said(path string, sheet planSheet, left, placed []rect) {
	for k, cut := range sheet.Cuts {
		c.job.sweep.spend(len(left) + len(sheet.Placements))
		near, far, from := left[1+2*k], left[2+2*k], slices.IndexFunc(left, cut.Rect.is)
		alike := slices.ContainsFunc(left, func(part rect) bool {
			return same(part.W, cut.Rect.W) && same(part.H, cut.Rect.H) && !part.is(cut.Rect)
		})
		trim, off, frees := "none", zero(), [2]int{}
		if rest := least(far.W, far.H); !slices.ContainsFunc(placed, near.meets) {
			trim, off = "near", sum(cut.At, c.job.kerf)
		} else if rest.Sign() <= 0 {
			trim, off = "beyond", sum(rest, c.job.kerf)
		}
		for side, part := range []rect{near, far} {
			if i := slices.IndexFunc(placed, part.is); i >= 0 {
				frees[side] = sheet.Placements[i].Piece
			}
		}
		c.waits(item(path+".cuts", k), sheet, k, near, placed)
		c.equal(Cuts, item(path+".cuts", k),
			[]any{cut.From.Step, cut.From.Beyond, cut.Alike, cmp.Or(cut.Trim, "none"), cut.Off, cut.Frees.Near, cut.Frees.Beyond},
			[]any{(from + 1) / 2, from > 0 && from%2 == 0, alike, trim, off, frees[0], frees[1]},
			"not what it is made on and what it leaves: step and side of from, alike, trim, off, frees")
	}
}

// waits checks whether cut k of a sheet waits until a space is measured on the wall. It does where it makes the closing edge
// of a piece without anything to scribe, and all that lies on its part are pieces of that panel which it closes; so does each
// cut of what such a cut leaves. So no piece that is dry-fitted, coated or fitted before waits for a cut. near is what lies
// near the blade.
func (c *checker) waits(path string, sheet planSheet, k int, near rect, placed []rect) {
	cut, want := sheet.Cuts[k], struct{ Piece, Step int }{}
	blade := near.right()
	panels := map[string]bool{}
	for n, at := range placed {
		if !at.within(cut.Rect) {
			continue
		}
		piece := c.plan.Pieces[c.pieces[sheet.Placements[n].Piece]]
		edge := sum(blade, c.job.kerf) // the left one of what lies beyond
		closes := same(at.X, edge)
		if c.closesLeft(piece) == sheet.Placements[n].Turned {
			closes = same(at.right(), blade)
		}
		if cut.Kind != "rip" || !piece.Closing || piece.Scribe != nil || !closes {
			panels = nil
			break
		}
		panels[item(piece.Run, piece.Panel)] = true
		want.Piece = piece.Number
	}
	if len(panels) != 1 {
		want.Piece = 0
	}
	if from := cut.From.Step; want.Piece == 0 && from > 0 && sheet.Cuts[from-1].Waits != want {
		want.Step = from
	}
	c.equal(Cuts, path+".waits", cut.Waits, want, "not what the cut waits for: the piece whose space is measured first, or the cut that it is made after")
}

// closesLeft says whether a piece that closes its run is sawn to the space at its left edge: the far one in the direction of
// work, or at an opening the one beside it where a panel goes on beyond the far one.
func (c *checker) closesLeft(piece planPiece) bool {
	i := c.runOf(piece.Run)
	if i < 0 {
		return false // which is a fault of its own
	}
	left := c.plan.Runs[i].SetOut.Direction == "left"
	n := slices.IndexFunc(c.boards[i], func(b board) bool { return !b.old && !less(piece.At.X, b.left) && less(piece.At.X, b.right) })
	if left && n > 0 && !c.joints[i][n-1].open && !c.boards[i][n-1].old || !left && n >= 0 && n+1 < len(c.boards[i]) && !c.joints[i][n].open && !c.boards[i][n+1].old {
		return !left
	}
	return left
}
