package verify

import (
	"fmt"
	"slices"
)

// A Rule is one rule of the contract, as tests try it on random rooms.
type Rule struct {
	Name   string
	Always []string // what always happens in the rooms drawn for it
	Small  bool     // rooms that plain search can judge

	applies func(c *checker) bool
}

// Rules are the rules, in order.
var Rules = []Rule{
	{"R1 seen upright edges", nil, false, func(c *checker) bool { return c.anyUpright(func(u upright) bool { return u.foot == nil }) }},
	{"R1 wide flats", []string{"wide flats"}, false, func(c *checker) bool {
		return c.job.pattern.WideFlats && c.anyUpright(func(upright) bool { return true })
	}},
	{"R2 leaning ends", []string{"leans"}, false, func(c *checker) bool { return c.anyUpright(func(u upright) bool { return u.foot != nil }) }},
	{"R3 origins", nil, true, nil},
	{"R4 shared lines", []string{"beside a step", "box under a window", "step", "step in the top"}, false, (*checker).sharesLine},
	{"R5 boards", []string{"tongued boards"}, false, func(c *checker) bool { return c.job.pattern.Boards }},
	{"R5 sheets", []string{"sheets"}, false, func(c *checker) bool { return !c.job.pattern.Boards }},
	{"R6 seams and boxes", []string{"sheets"}, false, func(c *checker) bool {
		return c.anyRun(func(i int) bool {
			return len(c.joints[i]) > 0 && slices.ContainsFunc(c.job.Runs[i].Openings, func(o opening) bool { return o.Kind == "box" })
		})
	}},
	{"R7 weak strips", []string{"sheets", "strips are wide"}, false, func(c *checker) bool {
		return slices.ContainsFunc(c.terms(), func(t term) bool { return t.kind == "weak strip" && t.cost().Sign() > 0 })
	}},
	{"R8 keep", []string{"keep"}, false, func(c *checker) bool {
		return c.anyRun(func(i int) bool { return fmt.Sprint(c.job.Runs[i].Keep) != fmt.Sprint(keep{}) })
	}},
	{"R9 snap", []string{"leans"}, false, func(c *checker) bool {
		return c.anyRun(func(i int) bool {
			return slices.ContainsFunc(c.regions[i].outline, func(e edge) bool { return e.sloped })
		})
	}},
	{"R10 trim", []string{"trim at the top", "trim at the bottom", "trim at the casing"}, false, func(c *checker) bool {
		return c.anyRun(func(i int) bool {
			g := c.regions[i]
			return slices.ContainsFunc(g.outline, func(e edge) bool {
				level := func(p point) bool { return same(p.Y, e.a.Y) }
				return !e.sloped && !(slices.ContainsFunc(g.taped, level) && g.station(e.a.X, true) && g.station(e.b.X, true))
			})
		})
	}},
	{"R11 scribe", []string{"scribe"}, false, func(c *checker) bool {
		return slices.ContainsFunc(c.plan.Pieces, func(p planPiece) bool { return p.Scribe != nil })
	}},
	{"R12 least rip", []string{"saw"}, false, (*checker).thinCuts},
	{"R13 saw", []string{"saw", "face"}, false, func(c *checker) bool { return c.job.Saw.Face != "" }},
	{"R14 numbers", nil, false, func(*checker) bool { return true }},
	{"R15 own edges at seams", []string{"sheets"}, false, func(c *checker) bool { return c.anyRun(func(i int) bool { return len(c.joints[i]) > 0 }) }},
	{"R16 laps", []string{"lapped sheets"}, false, func(c *checker) bool { return c.anyRun(func(i int) bool { return len(c.joints[i]) > 0 }) }},
	{"R17 order of work", nil, false, func(c *checker) bool { return len(c.plan.Order) > 0 }},
	{"R18 heights at corners", nil, false, func(c *checker) bool {
		want, _ := c.jumps()
		return want > 0
	}},
	{"R19 doors at ends", []string{"opening at the left end", "opening at the right end"}, false, (*checker).takesEnd},
	{"R19 in small rooms", []string{"opening at the left end", "opening at the right end"}, true, nil},
	{"R19 boards", []string{"opening at the left end", "tongued boards"}, false, (*checker).takesEnd},
	{"R19 close to ends", []string{"opening at the left end", "short of the left end", "opening at the right end", "over a part of the right end"}, false,
		func(*checker) bool { return true }},
	{"breaks", []string{"break", "break at a door"}, false, func(c *checker) bool { return c.anyRun(func(i int) bool { return len(c.job.Runs[i].Breaks) > 0 }) }},
}

// Judge returns the faults of a plan, and whether the rule had anything to say of it.
func (r Rule) Judge(job, plan []byte) (faults []Fault, applied bool) {
	c := newChecker()
	c.judge(job, plan)
	if len(c.faults) == 0 {
		switch r.Name[:3] {
		case "R12":
			c.thinRips()
		case "R15":
			c.ownEdges()
		}
	}
	return c.faults, len(c.joints) == len(c.job.Runs) && r.applies != nil && r.applies(c)
}

// anyUpright says whether an upright edge that is seen is such.
func (c *checker) anyUpright(is func(u upright) bool) bool {
	return c.anyRun(func(i int) bool {
		return slices.ContainsFunc(c.regions[i].uprights(c.weights), func(u upright) bool { return u.seen().Sign() > 0 && is(u) })
	})
}

// takesEnd says whether openings take an end of a run that is panelled.
func (c *checker) takesEnd() bool {
	return c.anyRun(func(i int) bool { return !c.job.bare[i] && (c.regions[i].left.taken() || c.regions[i].right.taken()) })
}

// sharesLine says whether upright sides of two kinds stand in one line and bound the shape.
func (c *checker) sharesLine() bool {
	return c.anyRun(func(i int) bool {
		all := slices.DeleteFunc(c.regions[i].uprights(c.weights), func(u upright) bool { return u.end || u.height.Sign() == 0 })
		for k, u := range all {
			if slices.ContainsFunc(all[:k], func(v upright) bool { return same(u.x, v.x) && u.right == v.right && u.kind != v.kind }) {
				return true
			}
		}
		return false
	})
}

// ownEdges reports each piece that is alone in its row of a sheet and would have more of the sheet's own
// edges at seams if it were cut whole repeats to one side: nothing else would change.
func (c *checker) ownEdges() {
	c.alone(func(path string, piece planPiece, s stock, at rect, _ []rect, x rat, turned bool) {
		left, right := c.seamed(piece)
		count := func(x rat) int { return ownSides(x, at.W, s, left, right) }
		c.require(turned || count(x) <= count(at.X), Placement, path, at.X, x, "own edges at seams fewer than they could be")
	})
}

// thinRips reports each such piece that stands so near a side of the sheet that a rip takes off less than a saw
// can, where elsewhere it would not and as many sides were the sheet's own.
func (c *checker) thinRips() {
	thin := func(off rat) bool { return off.Sign() > 0 && less(off, c.job.leastRip()) }
	c.alone(func(path string, _ planPiece, s stock, at rect, others []rect, x rat, _ bool) {
		for k, o := range others { // one rip may serve two rows, less than a saw can beside the other
			for _, p := range others[:k] {
				if thin(size(diff(o.X, p.X))) || thin(size(diff(sum(o.X, o.W), sum(p.X, p.W)))) {
					return
				}
			}
		}
		rips := func(x rat) (n int) {
			rest := diff(s.Width, sum(x, at.W))
			if thin(x) {
				n++
			}
			if thin(rest) && !less(c.job.kerf, rest) {
				n++
			}
			return n
		}
		own := func(x rat) int { return ownSides(x, at.W, s, true, true) }
		c.require(rips(at.X) <= rips(x) || own(x) < own(at.X), Placement, path, at.X, x, "a rip takes off less than it could")
	})
}

// ownSides counts the sides of a piece that lie on a sheet's own, of those that count.
func ownSides(x, width rat, s stock, left, right bool) (n int) {
	if left && x.Sign() == 0 {
		n++
	}
	if right && same(sum(x, width), s.Width) {
		n++
	}
	return n
}

// alone calls judge for each place, whole repeats off, of each piece that is alone in its row of a sheet.
func (c *checker) alone(judge func(path string, piece planPiece, s stock, at rect, others []rect, x rat, turned bool)) {
	pitch := c.job.pattern.pitch
	for k, sheet := range c.plan.Sheets {
		s := c.job.Stock[c.stock[sheet.Stock]]
		for n, p := range sheet.Placements {
			piece := c.plan.Pieces[c.pieces[p.Piece]]
			r, phase := piece.part(p.X, p.Y)
			row, shared := rect{zero(), r.Y, s.Width, r.H}, pitch.Sign() == 0
			var others []rect
			for m, other := range sheet.Placements { // one rip may free two rows
				o, _ := c.plan.Pieces[c.pieces[other.Piece]].part(other.X, other.Y)
				if m != n {
					others = append(others, o)
				}
				shared = shared || m != n && (row.meets(o) || same(o.X, r.X) || same(sum(o.X, o.W), sum(r.X, r.W)))
			}
			if shared {
				continue
			}
			for _, x := range c.job.pattern.starts(phase, r.W, s, p.Turned) {
				for ; !less(s.Width, sum(x, r.W)); x = sum(x, pitch) {
					judge(item(item("sheets", k)+".placements", n), piece, s, r, others, x, p.Turned)
				}
			}
		}
	}
}

// seamed says at which edges of a piece there is a seam.
func (c *checker) seamed(piece planPiece) (left, right bool) {
	i := c.runOf(piece.Run)
	for _, j := range c.joints[i] {
		if !j.open {
			left = left || same(piece.At.X, j.right)
			right = right || same(sum(piece.At.X, piece.Width), j.left)
		}
	}
	return left, right
}

// ThinCuts says whether a plan has a cut that takes off less than a saw can.
func ThinCuts(job, plan []byte) bool {
	c := newChecker()
	c.judge(job, plan)
	return c.thinCuts()
}

func (c *checker) thinCuts() bool {
	rip := c.job.leastRip()
	return slices.ContainsFunc(c.plan.Sheets, func(s planSheet) bool {
		for _, cut := range s.Cuts {
			if cut.Off.Sign() > 0 && less(cut.Off, rip) {
				return true
			}
		}
		return false
	})
}
