package verify

import "slices"

// closing checks which pieces of run i are measured again on the wall, and what is left on them to
// scribe: those of the panel fitted last, of each at an opening that parts the run and of each fitted up
// to a panel on the wall.
func (c *checker) closing(i int) {
	r, g := c.plan.Runs[i], c.regions[i]
	farRight := r.SetOut.Direction != "left"
	for k, panel := range r.Panels {
		n := slices.IndexFunc(c.boards[i], func(b board) bool { return !b.old && same(b.left, panel.Left) })
		meetsUp := farRight && n+1 < len(c.boards[i]) && c.boards[i][n+1].old && !c.joints[i][n].open ||
			!farRight && n > 0 && c.boards[i][n-1].old && !c.joints[i][n-1].open
		atDoor := func(right bool) bool {
			switch {
			case right && n+1 < len(c.boards[i]):
				return c.joints[i][n].open
			case !right && n > 0:
				return c.joints[i][n-1].open
			case right:
				return g.right.taken()
			}
			return g.left.taken()
		}
		last := k == 0
		if farRight {
			last = k == len(r.Panels)-1
		}
		closing := last || meetsUp || atDoor(true) || atDoor(false)
		alone := c.besideNone(i, panel)
		end := map[bool]string{true: c.job.Runs[i].Right.Kind, false: c.job.Runs[i].Left.Kind}[farRight]
		edges := []string{""} // what may be scribed
		name := map[bool]string{true: "right", false: "left"}
		switch {
		case last && end != exposed && end != outsideCorner, meetsUp, atDoor(farRight):
			edges = []string{name[farRight]}
		case last && atDoor(!farRight):
			edges = []string{"", name[!farRight]}
		case atDoor(!farRight):
			edges = []string{name[!farRight]}
		}
		for _, number := range panel.Pieces {
			n, known := c.pieces[number]
			if !known {
				continue
			}
			piece, path := c.plan.Pieces[n], item("pieces", n)
			edge, width := "", zero()
			if piece.Scribe != nil && piece.Scribe.Width.Sign() != 0 {
				edge, width = piece.Scribe.Edge, piece.Scribe.Width
			}
			c.equal(Closing, path+".closing", piece.Closing, closing && (edge != "" || !alone),
				"the panel fitted last, those at doors and before panels on the wall, and no others, have closing pieces, but for one that is alone and not scribed")
			want := slices.Clone(edges)
			for n, e := range want {
				if e != "" && (g.stops(piece, panel, e == "left") || c.job.mostScribe(piece, e == "left").Sign() == 0) {
					want[n] = ""
				}
			}
			c.require(slices.Contains(want, edge), Closing, path+".scribe.edge", edge, want, "not the edge to scribe")
			if edge != "" {
				c.equal(Closing, path+".scribe.width", width, c.job.mostScribe(piece, edge == "left"), "not what is left to scribe, or a sheet has for it")
			}
		}
	}
}

// besideNone says whether the space of a panel of run i is the wall's own: no panel stands beside it, new or on the wall
// already, and the run butts against none.
func (c *checker) besideNone(i int, panel planPanel) bool {
	n := slices.IndexFunc(c.boards[i], func(b board) bool { return !b.old && same(b.left, panel.Left) })
	return n >= 0 && (n == 0 || c.joints[i][n-1].open) && (n == len(c.joints[i]) || c.joints[i][n].open) &&
		!slices.ContainsFunc(c.plan.Runs, func(r planRun) bool { return r.CornerRight != nil && r.CornerRight.Butts == c.job.Runs[i].Name })
}

// stops reports whether an opening stops a piece short of an edge of its panel.
func (g *region) stops(piece planPiece, panel planPanel, left bool) bool {
	at, edge := sum(piece.At.X, piece.Width), panel.Right
	if left {
		at, edge = piece.At.X, panel.Left
	}
	return !same(at, edge) && slices.ContainsFunc(g.run.Openings, func(o opening) bool {
		parts, _ := g.job.grown(o)
		from, to, ok := bounds(parts...)
		return ok && within(at, from.X, to.X)
	})
}

// mostScribe returns what is left on one edge of a piece to scribe: the job's, or the most that some
// sheet has where none has all of it.
func (j *room) mostScribe(piece planPiece, left bool) rat {
	p, best := j.pattern, zero()
	for _, s := range j.Stock {
		if less(s.usable(), piece.Height) {
			continue
		}
		for _, turned := range []bool{false, true} {
			starts := p.starts(piece.LeftPhase, piece.Width, s, turned)
			for _, start := range starts[:min(1, len(starts))] {
				// What is left of the piece's place on the sheet, and what is right of it.
				for ; !less(s.Width, sum(start, piece.Width)); start = sum(start, p.pitch) {
					spare := diff(s.Width, sum(start, piece.Width))
					if left != turned {
						spare = start
					}
					best = most(best, least(spare, j.scribe))
					if j.sweep.spend(1); p.pitch.Sign() == 0 {
						spare = diff(s.Width, piece.Width) // it may lie anywhere
						best = most(best, least(spare, j.scribe))
						break
					}
				}
			}
		}
	}
	return best
}

// part returns the rectangle of material that a piece is sawn out of, with what is left to scribe, and
// the phase of its left edge.
func (p planPiece) part(x, y rat) (r rect, leftPhase rat) {
	r, leftPhase = rect{x, y, p.Width, p.Height}, p.LeftPhase
	if s := p.Scribe; s != nil {
		r.W = sum(r.W, s.Width)
		if s.Edge == "left" {
			leftPhase = diff(leftPhase, s.Width)
		}
	}
	return r, leftPhase
}
