package wall

import (
	"context"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
)

// someLayouts draws a room and returns a few of its first layouts.
func someLayouts(t *rapid.T) (Room, []Layout) {
	room := drawRoom(t)
	return room, firstLayouts(t, Layouts(context.Background(), room), 3)
}

func layoutRegion(t *rapid.T, room *Room, l *Layout, r int) *region {
	f := fitting{}
	if c := l.Runs[r].Corner; c != nil && c.Butts == r {
		f.buttsRight = true
	}
	before := (r + len(room.Runs) - 1) % len(room.Runs)
	if c := l.Runs[before].Corner; c != nil && c.Butts == r && c.Next == r {
		f.buttsLeft = true
	}
	g, err := newRegion(context.Background(), room, r, f)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

func TestPiecesCoverTheRegionOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room, layouts := someLayouts(t)
		for _, l := range layouts {
			for r := range room.Runs {
				g := layoutRegion(t, &room, &l, r)
				var whole, covered, gaps fraction.Area
				for _, s := range g.exact {
					whole = whole.Add(fraction.Must(s.Area()))
				}
				for i := 1; i < len(l.Runs[r].Panels); i++ {
					left, right := l.Runs[r].Panels[i-1].Right, l.Runs[r].Panels[i].Left
					if right.Less(left) {
						t.Fatalf("run %d: panels overlap at %v", r, left)
					}
					for _, s := range g.exact {
						for _, between := range fraction.Must(s.Band(left, right)) {
							gaps = gaps.Add(fraction.Must(between.Area()))
						}
					}
				}
				for _, p := range l.Pieces {
					if p.Run != r {
						continue
					}
					covered = covered.Add(fraction.Must(p.Shape.Area()))
					// Every corner of the piece lies in the region, or beyond it by no more than is snapped.
					for _, c := range p.Shape.Outline() {
						c = cutout.Point{X: c.X.Add(p.At.X), Y: c.Y.Add(p.At.Y)}
						if !slices.ContainsFunc(around(c, room.Snap), func(c cutout.Point) bool { return within(g.exact, c) }) {
							t.Fatalf("piece %d: corner %v lies outside the wall", p.Number, c)
						}
					}
				}
				missing := whole.Sub(covered).Sub(gaps)
				// Rounding into the space loses less than a mark along each panel's sloped edges;
				// level walls lose nothing.
				most := room.Mark.Times(slopingSides(&room.Runs[r]))
				if !level(&room.Runs[r]) {
					most = most.Add(room.Mark.Times(room.Runs[r].Width.Mul(2)))
				}
				if missing.Neg().Compare(room.Snap.Times(room.Runs[r].Width.Mul(4))) > 0 || most.Compare(missing) < 0 {
					t.Fatalf("run %d: wall %v, pieces %v, seam gaps %v: %v missing, at most %v wanted", r, whole, covered, gaps, missing, most)
				}
			}
		}
	})
}

// around returns a point and the eight that lie so far from it across and up.
func around(c cutout.Point, by fraction.Length) (points []cutout.Point) {
	for i := range int64(9) {
		points = append(points, cutout.Point{X: c.X.Add(by.Mul(i%3 - 1)), Y: c.Y.Add(by.Mul(i/3 - 1))})
	}
	return points
}

// TestPanelsStopWhereTheirPiecesDo is what lets a panel of a plan be given back as an installed
// one: its edges are those of its pieces.
func TestPanelsStopWhereTheirPiecesDo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, layouts := someLayouts(t)
		for _, l := range layouts {
			for _, run := range l.Runs {
				for _, p := range run.Panels {
					left, right := wide, wide.Neg()
					for _, number := range p.Pieces {
						piece := l.Pieces[number-1]
						lo, hi := piece.Shape.Bounds()
						left, right = fraction.Min(left, piece.At.X.Add(lo.X)), fraction.Max(right, piece.At.X.Add(hi.X))
					}
					if left != p.Left || right != p.Right {
						t.Fatalf("panel %d stands from %v to %v, its pieces from %v to %v", p.Number, p.Left, p.Right, left, right)
					}
				}
			}
		}
	})
}

func level(run *Run) bool {
	for _, h := range run.Heights[1:] {
		if len(run.Heights) == 2 && (h.Top != run.Heights[0].Top || h.Bottom != run.Heights[0].Bottom) {
			return false
		}
	}
	return run.Left.Lean.IsZero() && run.Right.Lean.IsZero()
}

// Panels beside a sloping side stop on marks short of it; once they are all up, what is left beside
// it is nothing to plan.
func TestNothingIsLeftBesideASlopingSide(t *testing.T) {
	room := Room{Profile: profiles[0], Mark: fraction.Of(1, 16), Priorities: DefaultPriorities(fraction.Inch),
		Stock: []nest.Stock{{Name: "sheet", Width: fraction.Inches(48), Length: fraction.Inches(96)}},
		Runs: []Run{{Name: "run", Width: fraction.Inches(60), Left: End{Kind: Exposed}, Right: End{Kind: Covered},
			Heights:  heights("0,0,20; 60,0,20"),
			Openings: []Opening{{Name: "sloping door", Kind: Other, Outline: ring("24,-4; 30,-4; 30 3/8,27; 24 3/8,27")}}}}}
	best := func() Layout {
		for l, err := range Layouts(context.Background(), room) {
			if err != nil {
				t.Fatal(err)
			}
			return l
		}
		return Layout{}
	}
	first := best()
	for _, p := range first.Runs[0].Panels {
		room.Installed = append(room.Installed, Installed{Left: p.Left, Right: p.Right, LeftPhase: p.LeftPhase})
	}
	again := best()
	if len(first.Runs[0].Panels) != 2 || len(again.Runs[0].Panels) != 0 || again.Total != first.Total {
		t.Errorf("first panels %v, blemish %v; then panels %v, blemish %v", first.Runs[0].Panels, first.Total, again.Runs[0].Panels, again.Total)
	}
}

// A break behind the face that a run butts against is no place where its pattern could start.
func TestBreakInTheCornerIsNotUsed(t *testing.T) {
	room := Room{Profile: profiles[1], Mark: fraction.Of(1, 16), Priorities: DefaultPriorities(fraction.Inch),
		Stock: []nest.Stock{{Name: "sheet", Width: fraction.Inches(48), Length: fraction.Inches(96)}},
		Runs: []Run{
			{Name: "first", Width: fraction.Inches(30), Left: End{Kind: Exposed}, Right: End{Kind: InsideCorner}, Heights: heights("0,0,20; 30,0,20")},
			{Name: "second", Width: fraction.Inches(31), Left: End{Kind: InsideCorner}, Right: End{Kind: Exposed}, Heights: heights("0,0,20; 31,0,20"),
				Breaks: []Break{{At: fraction.Of(1, 4)}}},
		}}
	seen := 0
	for l, err := range Layouts(context.Background(), room) {
		if err != nil {
			t.Fatal(err)
		}
		if seen++; seen > 50 {
			break
		}
		run := l.Runs[1]
		if l.Runs[0].Corner.Butts == 1 && (len(run.Restarts) > 0 || run.Panels[0].Left != run.Limits[0]) {
			t.Fatalf("the second run butts, stops at %v, and is broken at %v", run.Limits, run.Restarts)
		}
	}
}

// slopingSides returns how far the sloping sides of a run's openings go up in all.
func slopingSides(run *Run) (up fraction.Length) {
	for _, o := range run.Openings {
		last := o.Outline[len(o.Outline)-1]
		for _, p := range o.Outline {
			if p.X != last.X {
				up = up.Add(p.Y.Sub(last.Y).Abs())
			}
			last = p
		}
	}
	return up
}

func within(shapes []cutout.Shape, p cutout.Point) bool {
	return slices.ContainsFunc(shapes, func(s cutout.Shape) bool { return s.Contains(p) })
}

func TestPatternRunsOnAcrossSeams(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room, layouts := someLayouts(t)
		pitch := room.Profile.Pitch()
		for _, l := range layouts {
			for r, run := range l.Runs {
				restarts := slices.Clone(run.Restarts)
				leftward := run.SetOut.Direction == Left
				if leftward {
					slices.Reverse(restarts)
				}
				for i, p := range run.Panels {
					if p.RightPhase != p.LeftPhase.Add(p.Right.Sub(p.Left)).Mod(pitch) {
						t.Fatalf("panel %d: phases %v and %v over %v", p.Number, p.LeftPhase, p.RightPhase, p.Right.Sub(p.Left))
					}
					if i == 0 {
						continue
					}
					before := run.Panels[i-1]
					want := before.RightPhase.Add(p.Left.Sub(before.Right)).Mod(pitch)
					if len(restarts) > 0 && before.Right.Compare(restarts[0].At) <= 0 && restarts[0].At.Compare(p.Left) <= 0 {
						want = p.Left.Sub(restarts[0].Origin).Mod(pitch)
						if leftward {
							if left := before.Left.Sub(restarts[0].Origin).Mod(pitch); before.LeftPhase != left {
								t.Fatalf("run %d: left of the break at %v phase %v, want %v", r, restarts[0].At, before.LeftPhase, left)
							}
							want = p.LeftPhase
						}
						if p.LeftPhase == before.RightPhase.Add(p.Left.Sub(before.Right)).Mod(pitch) {
							t.Fatalf("run %d restarts at %v with the pattern as it was", r, restarts[0].At)
						}
						restarts = restarts[1:]
					}
					if p.LeftPhase != want {
						t.Fatalf("run %d: panel %d has phase %v at its left edge, want %v", r, p.Number, p.LeftPhase, want)
					}
				}
				if len(restarts) > 0 && len(run.Panels) > 0 && run.Panels[0].Right.Less(restarts[0].At) {
					t.Fatalf("run %d: the restart at %v is at no seam", r, restarts[0].At)
				}
			}
			for _, p := range l.Pieces {
				run := l.Runs[p.Run]
				for _, panel := range run.Panels {
					if panel.Number == p.Panel && p.LeftPhase != panel.LeftPhase.Add(p.At.X.Sub(panel.Left)).Mod(pitch) {
						t.Fatalf("piece %d: phase %v", p.Number, p.LeftPhase)
					}
				}
			}
		}
	})
}

func TestOnlyExposedEndIsWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room, layouts := someLayouts(t)
		l := layouts[0]
		if l.Broken > 0 {
			return // sheets too narrow for the wanted phase, or the like
		}
		for r := range room.Runs {
			run := &room.Runs[r]
			if (run.Left.Kind == Exposed) == (run.Right.Kind == Exposed) {
				continue
			}
			for _, e := range layoutRegion(t, &room, &l, r).edges {
				if e.kind == ExposedEnd && !showsWhole(&room.Profile, e.foot, e.top, originAt(&l.Runs[r], e.x), e.keepsLeft()) {
					t.Fatalf("run %d: the exposed end from %v to %v is cut", r, e.foot, e.top)
				}
			}
		}
	})
}

// originAt returns where a repeat starts in the part of the run that reaches to x.
func originAt(run *RunLayout, x fraction.Length) fraction.Length {
	o := run.SetOut.Origin
	for _, restart := range run.Restarts {
		if restart.At.Less(x) == (run.SetOut.Direction == Right) {
			o = restart.Origin
		}
	}
	return o
}

// showsWhole looks along the pattern, from a repeat before the edge to one after it: an upright edge
// is whole where a flat or a bead beside it starts or stops, a leaning one where it crosses nothing
// but flats; on a profile with wide flats a flat of which half is left is whole, too.
func showsWhole(p *groove.Profile, foot, top, origin fraction.Length, left bool) bool {
	x := foot.Sub(foot.Sub(origin).Mod(p.Pitch())).Sub(p.Pitch())
	whole := foot != top
	for i := 0; i < 3*len(p.Features); i++ {
		f := p.Features[i%len(p.Features)]
		end := x.Add(f.Width)
		switch {
		case foot != top:
			whole = whole && (f.Kind == groove.Flat || end.Compare(fraction.Min(foot, top)) <= 0 || fraction.Max(foot, top).Compare(x) <= 0)
		case f.Kind == groove.Groove:
		case left && (end == foot || p.WideFlats && f.Kind == groove.Flat && foot.Less(end) && !foot.Less(x.Add(f.Width.Div(2)))):
			whole = true
		case !left && (x == foot || p.WideFlats && f.Kind == groove.Flat && x.Less(foot) && !end.Sub(f.Width.Div(2)).Less(foot)):
			whole = true
		}
		x = end
	}
	return whole
}

// layoutKey tells layouts apart.
func layoutKey(l *Layout) (key string) {
	for _, run := range l.Runs {
		key += run.SetOut.Origin.String() + "/"
		for _, s := range run.Restarts {
			key += "r" + s.At.String() + ":" + s.Origin.String()
		}
		for _, p := range run.Panels {
			key += p.Left.String() + "-" + p.Right.String() + ":" + p.LeftPhase.String() + ";"
		}
		if run.Corner != nil {
			key += string(rune('a' + run.Corner.Passes + 1))
		}
	}
	return key
}

// An opening at the exposed end leaves two edges of it, of which the pattern of the panel on the
// wall cuts both: that breaks one rule, not two.
func TestCutExposedEndBreaksOneRule(t *testing.T) {
	in := fraction.Inches
	room := Room{
		Profile: profiles[0], Mark: fraction.Of(1, 16), Priorities: DefaultPriorities(fraction.Inch),
		Stock:     []nest.Stock{{Name: "sheet", Width: in(48), Length: in(96)}},
		Installed: []Installed{{Run: 0, Left: in(30), Right: in(40), LeftPhase: in(1)}},
		Runs: []Run{{Name: "run", Width: in(40), Left: End{Kind: Exposed}, Right: End{Kind: Covered},
			Heights:  []Height{{Top: in(18)}, {At: in(40), Top: in(18)}},
			Openings: []Opening{{Name: "window", Kind: Window, Outline: cutout.Rectangle(in(0), in(6), in(4), in(5))}}}},
	}
	for layout, err := range Layouts(context.Background(), room) {
		if err != nil || layout.Broken != 1 {
			t.Errorf("%d rules broken (%v), want 1", layout.Broken, err)
		}
		return
	}
	t.Error("no layout")
}

func TestLayoutsComeInOrderAndOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := drawRoom(t)
		seen := map[string]bool{}
		var last fraction.Ratio
		for n, l := range firstLayouts(t, Layouts(context.Background(), room), 60) {
			var sum fraction.Ratio
			for _, b := range l.Blemishes {
				sum = sum.Add(b.Cost)
			}
			if sum != l.Total || n > 0 && sum.Less(last) {
				t.Fatalf("layout %d: terms add up to %v, total %v, after %v", n, sum, l.Total, last)
			}
			key := layoutKey(&l)
			if seen[key] {
				t.Fatalf("layout %d comes twice: %s", n, key)
			}
			seen[key] = true
			last = sum
		}
	})
}

func TestTwoRunsWithBothOtherEndsExposed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		height := quarters(t, "height", 12, 30)
		run := func(name string, left, right EndKind) Run {
			width := quarters(t, "width", 20, 130)
			return Run{Name: name, Width: width, Left: End{Kind: left}, Right: End{Kind: right},
				Heights: []Height{{Top: height}, {At: width, Top: height}}}
		}
		room := Room{Profile: rapid.SampledFrom(profiles).Draw(t, "profile"), Mark: fraction.Of(1, 16), Priorities: DefaultPriorities(fraction.Inch),
			Stock: []nest.Stock{{Name: "sheet", Width: fraction.Inches(48), Length: fraction.Inches(96)}},
			Runs:  []Run{run("first", Exposed, InsideCorner), run("second", InsideCorner, Exposed)}}
		for l, err := range Layouts(context.Background(), room) {
			if err != nil {
				t.Fatal(err)
			}
			p := &room.Profile
			left, right := l.Runs[0].Panels[0], l.Runs[1].Panels[len(l.Runs[1].Panels)-1]
			if d, err := p.CutDistance(left.LeftPhase, groove.KeepRight); err != nil || !d.IsZero() {
				t.Fatalf("left exposed end cut by %v", d)
			}
			if d, err := p.CutDistance(right.RightPhase, groove.KeepLeft); err != nil || !d.IsZero() {
				t.Fatalf("right exposed end cut by %v", d)
			}
			break
		}
	})
}

// TestReplanKeepsTheRest puts the first panels of the best layout on the wall and plans again: the
// best of what is left is what it was. In a closed room it can be less, since the origin of an
// installed panel is one more to carry round.
func TestReplanKeepsTheRest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room, layouts := someLayouts(t)
		best := layouts[0]
		if best.Broken > 0 {
			return
		}
		r := rapid.IntRange(0, len(room.Runs)-1).Draw(t, "run")
		panels := best.Runs[r].Panels
		if len(best.Runs[r].Restarts) > 0 || len(panels) == 0 {
			return
		}
		for _, p := range panels[:rapid.IntRange(1, len(panels)).Draw(t, "installed")] {
			room.Installed = append(room.Installed, Installed{Run: r, Left: p.Left, Right: p.Right, LeftPhase: p.LeftPhase})
		}
		for again, err := range Layouts(context.Background(), room) {
			if err != nil {
				t.Fatal(err)
			}
			if again.Total != best.Total && !(room.Closed && again.Total.Less(best.Total)) {
				t.Fatalf("planned again the blemish is %v, not %v", again.Total, best.Total)
			}
			for _, p := range again.Runs[r].Panels {
				if len(p.Pieces) == 0 {
					t.Fatalf("panel %v to %v has no piece", p.Left, p.Right)
				}
				for _, in := range room.Installed {
					if p.Left.Less(in.Right) && in.Left.Less(p.Right) {
						t.Fatalf("panel %v to %v lies over an installed one", p.Left, p.Right)
					}
				}
			}
			break
		}
	})
}

// A closed room may be listed from any of its runs on: its best layout stays as good.
func TestClosedRoomsBeginAnywhere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := drawRoom(t)
		n := len(room.Runs)
		if room.Closed = n > 1; !room.Closed {
			t.Skip("one run")
		}
		for r := range n {
			kind := rapid.SampledFrom([]EndKind{InsideCorner, InsideCorner, InsideCorner, OutsideCorner}).Draw(t, "corner")
			room.Runs[r].Right.Kind, room.Runs[(r+1)%n].Left.Kind = kind, kind
			if rapid.Bool().Draw(t, "no opening") {
				room.Runs[r].Openings = nil
			}
		}
		a := firstLayouts(t, Layouts(context.Background(), room), 1)[0]
		room.Runs = append(slices.Clone(room.Runs[1:]), room.Runs[0])
		b := firstLayouts(t, Layouts(context.Background(), room), 1)[0]
		if a.Broken != b.Broken || a.Total != b.Total || len(a.Pieces) != len(b.Pieces) {
			t.Fatalf("blemish %v, %d rules broken, %d pieces; from the second run on %v, %d, %d",
				a.Total, a.Broken, len(a.Pieces), b.Total, b.Broken, len(b.Pieces))
		}
	})
}
