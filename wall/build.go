package wall

import (
	"cmp"
	"context"
	"slices"
	"sort"
	"strconv"
	"strings"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
)

// build makes the layout of a finished path.
func (s *search) build(p *path) Layout {
	layout := s.m.build(s.ctx, p.legs())
	layout.Broken, layout.Floor = int(p.bound.broken), fraction.NewRatio(p.bound.blemish, grains)
	if s.units > 0 {
		layout.Cost = fraction.Of(p.bound.price, s.units)
	}
	return layout
}

// build makes the layout of stretches whose seams are chosen.
func (m *Model) build(ctx context.Context, legs []leg) Layout {
	layout := Layout{Runs: make([]RunLayout, len(m.room.Runs))}
	first := 0 // leg of the run
	for i, l := range legs {
		s := l.sol.stretch
		run := &layout.Runs[s.run]
		if s.from < 0 {
			first = i
			run.Limits[0] = s.region.left
			run.EndPhases[0], run.EndLeans[0] = s.endPhase(l.sol.origin, true)
			run.EndsBare[0] = s.region.bareEnds()[0]
			run.EndsSeen[0], _ = s.region.endsSeen()
		}
		run.Limits[1], run.EndsBare[1] = s.region.right, s.region.bareEnds()[1]
		_, run.EndsSeen[1] = s.region.endsSeen()
		run.EndPhases[1], run.EndLeans[1] = s.endPhase(l.sol.origin, false)
		layout.Blemishes = append(layout.Blemishes, s.edgeTerms(l.sol.origin)...)
		m.addPanels(&layout, l)
		m.join(&layout, l, legs[(i+1)%len(legs)].residue)
		if l.next.run == s.run {
			continue
		}
		run.SetOut = m.setOut(legs[first].sol, l.sol)
		for k := range run.Restarts {
			at, beyond := run.Restarts[k].At, legs[first+k+1]
			if run.SetOut.Direction == Left {
				beyond = legs[first+k]
			}
			run.Restarts[k].Origin = firstRepeat(at, beyond.sol.origin, s.pitch, run.SetOut.Direction)
		}
		if run.SetOut.Direction == Left {
			slices.Reverse(run.Restarts)
		}
	}
	m.cutPieces(ctx, &layout, legs)
	sort.SliceStable(layout.Blemishes, func(i, j int) bool {
		a, b := &layout.Blemishes[i], &layout.Blemishes[j]
		return cmp.Or(cmp.Compare(a.Run, b.Run), a.At.Compare(b.At), cmp.Compare(a.Kind, b.Kind)) < 0
	})
	m.addJoints(&layout, legs)
	for i := range layout.Blemishes {
		b := &layout.Blemishes[i]
		b.Cost = b.cost()
		layout.Total = layout.Total.Add(b.Cost)
	}
	return layout
}

// endPhase returns the phase of an end's foot, the pattern's origin at o, and the end's lean.
func (s *stretch) endPhase(o fraction.Length, left bool) (phase, lean fraction.Length) {
	foot, lean := s.region.endAt(left)
	return groove.Modulo(foot.Sub(o), s.pitch), lean
}

// addPanels adds the panels and the seam terms of one stretch.
func (m *Model) addPanels(layout *Layout, l leg) {
	s := l.sol.stretch
	run := &layout.Runs[s.run]
	seam := func(x fraction.Length) {
		if m.room.Profile.Boards {
			return
		}
		layout.Blemishes = append(layout.Blemishes, s.seamTerms(x)...)
		if t := s.lineTerm(l.sol.origin, x); !t.Amount.IsZero() {
			layout.Blemishes = append(layout.Blemishes, t)
		}
	}
	for _, x := range s.beside {
		seam(x)
	}
	for k, nodes := range l.nodes {
		c := &l.sol.bays[k]
		at := 0
		for _, j := range nodes {
			left, right := c.left[at], c.right[j]
			run.Panels = append(run.Panels, Panel{Left: left, Right: right,
				LeftPhase: groove.Modulo(left.Sub(l.sol.origin), s.pitch), RightPhase: groove.Modulo(right.Sub(l.sol.origin), s.pitch)})
			if j < len(c.at)-1 {
				seam(c.at[j])
			}
			at = j
		}
	}
}

// join records how a stretch meets the one after it, of residue number i.
func (m *Model) join(layout *Layout, l leg, i int) {
	s, next := l.sol.stretch, l.next
	run := &layout.Runs[s.run]
	if next.from >= 0 {
		mismatch := m.mismatch(next, l.residue, i)
		run.Restarts = append(run.Restarts, Restart{At: m.room.Runs[s.run].Breaks[next.from].At, Mismatch: mismatch})
		layout.Blemishes = append(layout.Blemishes, fraction.Must(m.breakTerms(s.run, next.from, mismatch))...)
		return
	}
	if !m.coupled(s.run) {
		return
	}
	run.Corner = &Corner{Next: next.run % len(m.room.Runs), Passes: -1, Butts: -1, Mismatch: m.mismatch(next, l.residue, i)}
	if !m.sharesInside(s.run) {
		return
	}
	run.Corner.Passes, run.Corner.Butts = s.run, run.Corner.Next
	if s.fit.buttsRight {
		run.Corner.Passes, run.Corner.Butts = run.Corner.Butts, run.Corner.Passes
	}
	if term := fraction.Must(m.cornerTerm(s.run, !s.fit.buttsRight, run.Corner.Mismatch)); !term.Weight.IsZero() {
		layout.Blemishes = append(layout.Blemishes, term)
	}
}

// setOut says where the pattern of a run starts: the way that is kept, else where the boards have
// their tongue on the far side, else from the end that is seen more.
func (m *Model) setOut(first, last *solution) SetOut {
	run, profile := &m.room.Runs[first.stretch.run], &m.room.Profile
	_, left := m.room.Priorities.endWeight(run.Left)
	_, right := m.room.Priorities.endWeight(run.Right)
	for side, weight := range []*fraction.Ratio{&left, &right} {
		if ![]*solution{first, last}[side].stretch.region.showsEnd(side == 0) {
			*weight = fraction.Ratio{}
		}
	}
	s, begin := SetOut{From: first.stretch.left, DirectionBy: BySeenEnd}, first
	leftward := left.Less(right)
	switch d := run.Keep.Direction; {
	case d != nil:
		leftward, s.DirectionBy = *d == Left, ByKeep
	case boardsBy(profile) != ByNothing:
		leftward, s.DirectionBy = profile.Tongue == groove.TongueLeft, boardsBy(profile)
	case left == right:
		s.DirectionBy = ByNothing
	}
	if leftward {
		s.From, s.Direction, begin = last.stretch.right, Left, last
	}
	s.Origin = firstRepeat(s.From, begin.origin, profile.Pitch(), s.Direction)
	return s
}

// boardsBy returns what of boards decides the way to work, to the side of their tongue or else to the
// right; ByNothing where they go on either way.
func boardsBy(p *groove.Profile) DirectionCause {
	switch {
	case p.Boards && p.Edges == groove.Tongued:
		return ByTongue
	case p.Boards && p.Edges == groove.Lapped:
		return ByLap
	}
	return ByNothing
}

// firstRepeat returns where the first repeat starts that one meets from x on in a direction, the
// pattern's origin at o.
func firstRepeat(x, o, pitch fraction.Length, d Direction) fraction.Length {
	if d == Left {
		return x.Sub(groove.Modulo(x.Sub(o), pitch))
	}
	return x.Add(groove.Modulo(o.Sub(x), pitch))
}

// fittingOrder returns the runs so that each comes after those it butts against. Where panels that are
// on the wall make them go round in a ring, the first of them comes first.
func fittingOrder(layout *Layout) []int {
	waits := make([]int, len(layout.Runs))
	for _, run := range layout.Runs {
		if run.Corner != nil && run.Corner.Butts >= 0 {
			waits[run.Corner.Butts]++
		}
	}
	var order, rest []int
	for r := range waits {
		rest = append(rest, r)
	}
	for len(rest) > 0 {
		pick := slices.MinFunc(rest, func(a, b int) int { return waits[a] - waits[b] })
		rest = slices.DeleteFunc(rest, func(r int) bool { return r == pick })
		order = append(order, pick)
		for _, run := range layout.Runs {
			if run.Corner != nil && run.Corner.Passes == pick {
				waits[run.Corner.Butts]--
			}
		}
	}
	return order
}

// cutPieces numbers the panels in order of fitting, on each run from where it is set out, and cuts
// their pieces out of the wall's shape.
func (m *Model) cutPieces(ctx context.Context, layout *Layout, legs []leg) {
	number := 0
	for _, r := range fittingOrder(layout) {
		run := &layout.Runs[r]
		run.Panels = slices.DeleteFunc(run.Panels, func(p Panel) bool { // of a board at a leaning end no saw makes what is left
			empty := len(m.regionOfPanel(legs, r, &p).band(p.Left, p.Right, m.room.Mark)) == 0
			if empty && p.Left == run.Limits[0] {
				run.stopAt(0, p.Right, m.room.Profile.Pitch())
			} else if empty && p.Right == run.Limits[1] {
				run.stopAt(1, p.Left, m.room.Profile.Pitch())
			}
			return empty
		})
		last := len(run.Panels) - 1
		for i := range run.Panels {
			check(ctx)
			panel := &run.Panels[i]
			if run.SetOut.Direction == Left {
				panel = &run.Panels[last-i]
			}
			number++
			panel.Number = number
			m.cutPanel(layout, m.regionOfPanel(legs, r, panel), r, panel, run.SetOut.Direction, i == last)
		}
	}
	for _, in := range m.room.Installed {
		for _, l := range legs {
			if l.sol.stretch.run == in.Run && l.sol.stretch.from < 0 {
				for _, piece := range m.piecesOf(l.sol.stretch.region, in.Run, in.Left, in.Right) {
					layout.Runs[in.Run].Up = layout.Runs[in.Run].Up.Add(fraction.Must(piece.Shape.Area()))
				}
			}
		}
	}
}

// cutPanel cuts the pieces of one panel of run r, which is worked in the direction of far.
func (m *Model) cutPanel(layout *Layout, g *region, r int, panel *Panel, far Direction, last bool) {
	closing, alone, scribed := m.closes(g, r, panel, far, last)
	alone = alone && !slices.ContainsFunc(layout.Runs, func(run RunLayout) bool { return run.Corner != nil && run.Corner.Butts == r })
	pieces := m.piecesOf(g, r, panel.Left, panel.Right)
	m.stopAtPieces(&layout.Runs[r], panel, g, g.band(panel.Left, panel.Right, m.room.Mark))
	for i, piece := range pieces {
		piece.Number, piece.Label, piece.Panel, piece.Closing = len(layout.Pieces)+1, strconv.Itoa(panel.Number), panel.Number, closing
		piece.LeftPhase = groove.Modulo(panel.LeftPhase.Add(piece.At.X.Sub(panel.Left)), m.room.Profile.Pitch())
		if len(pieces) > 1 {
			piece.Label += letter(i)
		}
		if scribed != nil {
			piece.Scribe = m.scribe(&piece, panel, *scribed)
		}
		if alone && piece.Scribe == nil { // its place is measured before it is sawn
			piece.Closing = false
		}
		panel.Pieces = append(panel.Pieces, piece.Number)
		layout.Pieces = append(layout.Pieces, piece)
	}
}

// piecesOf returns the pieces of the region between left and right, less what depends on their panel.
// They are kept, since many layouts share panels.
func (m *Model) piecesOf(g *region, r int, left, right fraction.Length) []Piece {
	shapes := g.band(left, right, m.room.Mark)
	g.lock.Lock()
	defer g.lock.Unlock()
	pieces, ok := g.pieces[span{left, right}]
	if ok {
		return pieces
	}
	for _, shape := range shapes {
		lo, _ := shape.Bounds()
		piece := Piece{Run: r, At: lo, Shape: fraction.Must(shape.Move(lo.X.Neg(), lo.Y.Neg()))}
		for p, q := range shape.Edges() {
			piece.Edges = piece.Edges.Add(lengthOf(p, q))
		}
		m.nameHoles(&piece, shape)
		pieces = append(pieces, piece)
	}
	g.pieces[span{left, right}] = pieces
	return pieces
}

// nameHoles names the holes of a piece by the openings that they are for, and measures those round
// one window or other opening. The shape is that of the piece in run coordinates.
func (m *Model) nameHoles(piece *Piece, shape cutout.Shape) {
	for _, hole := range shape.Holes() {
		var names []string
		windows := 0
		for _, o := range m.room.Runs[piece.Run].Openings {
			if cutout.BoundsOverlap(hole, o.Outline) {
				names = append(names, o.Name)
				if o.Kind == Window {
					windows++
				}
			}
		}
		piece.Holes = append(piece.Holes, strings.Join(names, " and "))
		for i, p := range hole {
			if len(names) == 1 && windows == 1 {
				piece.OpeningEdges = piece.OpeningEdges.Add(lengthOf(p, hole[(i+1)%len(hole)]))
			}
		}
	}
}

// stopAtPieces moves an edge of a panel at an opening that parts the run, or at an end of the run, to
// where its pieces stop. Beside a sloped side or a leaning end that is a mark of the tape: farther in
// than the line itself, or another than that of the whole wall, which has other corners near it.
func (m *Model) stopAtPieces(run *RunLayout, panel *Panel, g *region, shapes []cutout.Shape) {
	if len(shapes) == 0 {
		return
	}
	pitch := m.room.Profile.Pitch()
	left, right := extent(shapes)
	if end := panel.Left == g.left; end || g.columnAt(panel.Left, true) < 0 {
		panel.LeftPhase = groove.Modulo(panel.LeftPhase.Add(left.Sub(panel.Left)), pitch)
		if panel.Left = left; end {
			run.stopAt(0, left, pitch)
		}
	}
	if end := panel.Right == g.right; end || g.columnAt(panel.Right, false) < 0 {
		panel.RightPhase = groove.Modulo(panel.RightPhase.Add(right.Sub(panel.Right)), pitch)
		if panel.Right = right; end {
			run.stopAt(1, right, pitch)
		}
	}
}

// stopAt moves the left or the right limit of the run, and where it is set out from with it.
func (run *RunLayout) stopAt(side int, at, pitch fraction.Length) {
	if run.SetOut.From == run.Limits[side] {
		run.SetOut.From = at
		run.SetOut.Origin = firstRepeat(at, run.SetOut.Origin, pitch, run.SetOut.Direction)
	}
	run.Limits[side] = at
}

func letter(i int) string {
	if i < 26 {
		return string(rune('a' + i))
	}
	return "-" + strconv.Itoa(i+1)
}

// regionOfPanel returns the region of the stretch that holds a panel.
func (m *Model) regionOfPanel(legs []leg, r int, panel *Panel) *region {
	for _, l := range legs {
		s := l.sol.stretch
		if s.run == r && !panel.Left.Less(s.left) && !s.right.Less(panel.Right) {
			return s.region
		}
	}
	return nil
}

// band returns the pieces of the region between left and right, from the top down and from left to
// right. They are kept, since many layouts share panels.
func (g *region) band(left, right, mark fraction.Length) []cutout.Shape {
	g.lock.Lock()
	defer g.lock.Unlock()
	shapes, ok := g.bands[span{left, right}]
	if ok {
		return shapes
	}
	// The limits of the run may lie on a mark farther in than the exact shape.
	from, to := extent(g.exact)
	if g.left.Less(left) {
		from = left
	}
	if right.Less(g.right) {
		to = right
	}
	shapes = g.snap(each(g.exact, func(s cutout.Shape) ([]cutout.Shape, error) { return s.Band(from, to) }), mark)
	slices.SortStableFunc(shapes, func(a, b cutout.Shape) int {
		loA, hiA := a.Bounds()
		loB, hiB := b.Bounds()
		if !loA.X.Less(hiB.X) || !loB.X.Less(hiA.X) {
			return loA.X.Compare(loB.X)
		}
		return cmp.Or(loB.Y.Compare(loA.Y), hiB.Y.Compare(hiA.Y), loA.X.Compare(loB.X))
	})
	g.bands[span{left, right}] = shapes
	return shapes
}
