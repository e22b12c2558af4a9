package verify

import (
	"cmp"
	"slices"
)

// kept checks that run i keeps to what the job insists on, and that its work goes the way that
// tongues or the ends that are seen ask for. A run that stays bare has nothing to keep.
func (c *checker) kept(i int) {
	if c.job.bare[i] {
		return
	}
	r, keep, path := c.plan.Runs[i], c.job.Runs[i].Keep, item("runs", i)
	if keep.Origin != nil {
		origins := []rat{r.SetOut.Origin}
		for _, restart := range r.Restarts {
			origins = append(origins, restart.Origin)
		}
		for _, origin := range origins {
			c.equal(Keep, path+".set_out.origin", mod(origin, c.job.pattern.pitch), mod(*keep.Origin, c.job.pattern.pitch), "not the origin to keep")
		}
	}
	if want := c.direction(i); want != "" {
		c.equal(Keep, path+".set_out.direction", r.SetOut.Direction, want, "not the way to work")
	}
	seam := func(j joint) bool { return !j.open && !j.old }
	for _, x := range keep.Seams {
		c.require(slices.ContainsFunc(c.joints[i], func(j joint) bool { return seam(j) && same(j.middle(), x) }), Keep,
			path+".panels", "none", x, "no seam where one must be")
	}
	for _, zone := range keep.Clear {
		for _, j := range c.joints[i] {
			x := j.middle()
			c.require(!seam(j) || !less(zone.From, x) || !less(x, zone.To), Keep, path+".panels", x,
				text(zone.From)+" to "+text(zone.To)+" clear", "a seam where none may be")
		}
	}
}

// direction returns the way to work on run i, empty where the plan is free: that of the tongues of
// boards, else what the job keeps to, else away from the end that weighs more.
func (c *checker) direction(i int) string {
	p, g, seen := c.job.pattern, c.regions[i], map[bool]rat{true: zero(), false: zero()}
	if p.Boards && (p.Edges == "tongued" || p.Edges == "lapped") {
		return cmp.Or(p.Tongue, "right")
	}
	if keep := c.job.Runs[i].Keep.Direction; keep != "" || c.laid(i) {
		return keep
	}
	for _, u := range g.uprights(c.weights) {
		if u.end && u.height.Sign() > 0 {
			seen[u.right] = u.weight
		}
	}
	if less(seen[true], seen[false]) { // material lies left of a right end
		return "left"
	}
	return "right"
}

// A notice is a warning that is due, or may be, and where: at a path or in a run, at an x.
type notice struct{ kind, at string }

// seamsAtBoxes notes each seam of run i in or close to a box.
func (c *checker) seamsAtBoxes(i int) {
	for n, o := range c.job.Runs[i].Openings {
		low, high, ok := bounds(o.taped)
		if !ok || o.Kind != "box" || c.job.pattern.Boards {
			continue
		}
		low.X, high.X = diff(low.X, c.weights["box_clear"]), sum(high.X, c.weights["box_clear"])
		for k, j := range c.joints[i] {
			if x := j.middle(); !j.open && less(low.X, x) && less(x, high.X) {
				c.due[notice{"seam at box", item(item("runs", i)+".openings", n) + " " + text(x)}] = !c.boards[i][k].old && !c.boards[i][k+1].old
			}
		}
	}
}

// warnings compares the warnings of certain kinds with those that are due.
func (c *checker) warnings() {
	found := map[notice]bool{}
	for k, w := range c.plan.Warnings {
		at := ""
		switch {
		case w.Kind == "seam at box" && len(w.Lengths) > 0:
			at = w.Path + " " + text(w.Lengths[0])
		case w.Kind == "lap lost" && len(w.Lengths) > 0 && len(w.Names) > 0:
			at = w.Names[0] + " " + text(w.Lengths[0])
		case w.Kind == "run bare":
			at = w.Path
		case w.Kind != "corner heights":
			continue
		}
		_, may := c.due[notice{w.Kind, at}]
		c.require(may, Warning, item("warnings", k), w.Kind, "none", "nothing here to warn of")
		found[notice{w.Kind, at}] = true
	}
	for n, must := range c.due {
		c.require(!must || found[n], Warning, "warnings", "none", n.kind, "no such warning at %s", n.at)
	}
}

// laps notes each seam of run i that loses its lap, which is kept where the sheets' own edges mate: both upright or both turned.
func (c *checker) laps(i int) {
	p, r := c.job.pattern, c.plan.Runs[i]
	lapped := !p.Boards && (p.Edges == "tongued" || p.Edges == "lapped")
	own := func(panel planPanel, right bool, ways map[bool]bool) bool {
		for _, n := range panel.Pieces {
			k, known := c.pieces[n]
			if !known {
				continue
			}
			piece := c.plan.Pieces[k]
			edge := sum(piece.At.X, piece.Width)
			if !right {
				edge = piece.At.X
			}
			if at := map[bool]rat{true: panel.Right, false: panel.Left}[right]; same(edge, at) && !c.ownEdge(piece, right, ways) {
				return false
			}
		}
		return true
	}
	for k, j := range c.joints[i] {
		left, right := c.boards[i][k], c.boards[i][k+1]
		if j.open || left.old || right.old {
			continue
		}
		a := slices.IndexFunc(r.Panels, func(p planPanel) bool { return same(p.Left, left.left) })
		ways := map[bool]bool{} // turned or not
		lost := lapped && !(own(r.Panels[a], true, ways) && own(r.Panels[a+1], false, ways) && len(ways) < 2)
		if lost {
			c.due[notice{"lap lost", r.Name + " " + text(j.middle())}] = true
		}
	}
}

// ownEdge says whether a piece's edge is the sheet's own, and notes whether the piece is turned.
func (c *checker) ownEdge(piece planPiece, right bool, ways map[bool]bool) bool {
	for _, sheet := range c.plan.Sheets {
		for _, p := range sheet.Placements {
			if p.Piece != piece.Number {
				continue
			}
			n, known := c.stock[sheet.Stock]
			r, _ := piece.part(p.X, p.Y)
			ways[p.Turned] = true
			right = right != p.Turned
			return known && (right && same(r.right(), c.job.Stock[n].Width) || !right && r.X.Sign() == 0)
		}
	}
	return false
}

// cornerHeights notes heights that differ at the two sides of a shared inside corner.
func (c *checker) cornerHeights() {
	if tops, any := c.jumps(); any > 0 {
		c.due[notice{"corner heights", ""}] = tops > 0
	}
}

// jumps counts the shared inside corners at which the tops differ by more than the least that is
// doubted, and those at which tops or bottoms do.
func (c *checker) jumps() (tops, any int) {
	for i, r := range c.job.Runs {
		next, shared := c.job.meet(i)
		if !shared || r.Right.Kind != insideCorner {
			continue
		}
		a, b, jump := r.Heights[len(r.Heights)-1], c.job.Runs[next].Heights[0], c.weights["height_jump"]
		if less(jump, size(diff(a.Top, b.Top))) {
			tops++
		}
		if less(jump, size(diff(a.Top, b.Top))) || less(jump, size(diff(a.Bottom, b.Bottom))) {
			any++
		}
	}
	return tops, any
}
