package main

import (
	order "cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/wall/plan"
)

// What holds of the marks on every odd piece; the helpers and the figures of the two examples stand
// in odd_test.go.

// Half of an opening lies on either side of a seam: both sides show its lines at the same heights.
// Window: the sill's underside. Hatch: sill and crown. The other corners beside the seam are those
// of the floor, below 1, and of the top at 24.
func TestHalfNotchesAgree(t *testing.T) {
	for name, want := range map[string][]plan.Point{"odd-window": spots("37 15/16, 23 15/16; 38 1/16, 23 15/16"), "odd-arch": spots("43 3/4, 1 1/8; 43 3/4, 19 1/8; 43 7/8, 1 1/8; 43 7/8, 19 1/16")} {
		p := oddPlan(t, name)
		left, right := p.Runs[0].Panels[0].Right, p.Runs[0].Panels[1].Left
		var got []plan.Point
		for _, piece := range p.Pieces {
			for _, c := range onRun(piece, piece.Marks.Face) {
				if y := c.Y.Float64(); (c.X == left || c.X == right) && y > 1 && y < 24 {
					got = append(got, c)
				}
			}
		}
		slices.SortFunc(got, func(a, b plan.Point) int { return order.Or(a.X.Compare(b.X), a.Y.Compare(b.Y)) })
		sameRing(t, name+": corners of the notch at the seam", want, got)
	}
}

// Seen from behind, every corner and every starter hole is as far from the other edge, exactly, and
// as high.
func TestBackMarksMirrorTheFace(t *testing.T) {
	forOdd(t, func(t *testing.T, _ plan.Plan, piece plan.Piece) {
		mirrored := func(what string, face, back []plan.Point) {
			if len(face) != len(back) || len(face) == 0 {
				t.Fatalf("%s: %d marks on the face, %d on the back", what, len(face), len(back))
			}
			for i, f := range face {
				if back[i] != (plan.Point{X: piece.Width.Sub(f.X), Y: f.Y}) {
					t.Errorf("%s: %v on the face, %v on the back of a piece %v wide", what, f, back[i], piece.Width)
				}
			}
		}
		mirrored("edge", piece.Marks.Face, piece.Marks.Back)
		for _, h := range piece.Marks.Holes {
			mirrored(h.Opening, h.Face, h.Back)
		}
		for _, d := range piece.Marks.Drill {
			mirrored("drill", []plan.Point{d.At}, []plan.Point{d.Back})
		}
	})
}

// Every figure that is to be marked lies on a mark of the tape.
func TestMarksLieOnTheTape(t *testing.T) {
	forOdd(t, func(t *testing.T, p plan.Plan, piece plan.Piece) {
		all := append(append([]plan.Point{piece.At, {X: piece.Width, Y: piece.Height}}, piece.Marks.Face...), piece.Marks.Back...)
		for _, h := range piece.Marks.Holes {
			all = append(append(all, h.Face...), h.Back...)
		}
		for _, d := range piece.Marks.Drill {
			all = append(all, d.At, d.Back)
		}
		for _, c := range all {
			if !c.X.Mod(p.Tape).IsZero() || !c.Y.Mod(p.Tape).IsZero() {
				t.Errorf("%v is off the marks of %v", c, p.Tape)
			}
		}
	})
}

// A starter hole lies in the waste: its centre outside the material, half a diameter at least from
// every edge of it, and within the piece's rectangle.
func TestStarterHolesOfOddPiecesLieInTheWaste(t *testing.T) {
	forOdd(t, func(t *testing.T, _ plan.Plan, piece plan.Piece) {
		rings := [][]plan.Point{piece.Outline}
		for _, hole := range piece.Holes {
			rings = append(rings, hole.Outline)
		}
		if len(piece.Marks.Drill) == 0 {
			t.Fatal("no starter holes")
		}
		for _, d := range piece.Marks.Drill {
			x, y, r := d.At.X.Float64(), d.At.Y.Float64(), d.Diameter.Float64()/2
			inside := false // by crossings of a level ray to the right
			for _, ring := range rings {
				for i, p := range ring {
					q := ring[(i+1)%len(ring)]
					if near := fromSegment(x, y, p, q); near < r {
						t.Errorf("the hole at %v is %v from the edge %v %v", d.At, near, p, q)
					}
					if py, qy := p.Y.Float64(), q.Y.Float64(); (py > y) != (qy > y) && x < p.X.Float64()+(y-py)/(qy-py)*(q.X.Float64()-p.X.Float64()) {
						inside = !inside
					}
				}
			}
			if inside {
				t.Errorf("the hole at %v lies in the material", d.At)
			}
			if x < r || y < r || x+r > piece.Width.Float64() || y+r > piece.Height.Float64() {
				t.Errorf("the hole at %v reaches past the piece", d.At)
			}
		}
	})
}

// Between the socket's cutout, up to 23 3/8, and the sill's notch, from 23 15/16, stay 9/16: a
// strip that no other seam makes wider. Below the hatch's sill at 1 1/8 stays a leg from 29 7/8 to
// the seam at 43 3/4, 1 1/4 high there, 11 times as long. Behind the sharp corner at (29 7/8, 1
// 1/8) the counter's line lies 1.187 below.
func TestWeakSpotsAreNamedWithAWayOut(t *testing.T) {
	for _, row := range []struct {
		example string
		piece   int
		kind    cutout.WeakKind
		at      string // on the run
		width   float64
		wayOut  cutout.WayOut
	}{
		{"odd-window", 2, cutout.Strip, "21 1/8, 23 21/32", 9.0 / 16, cutout.RunOut},
		{"odd-arch", 1, cutout.Leg, "36 13/16, 1/2", 5.0 / 4, cutout.PartLeg},
		{"odd-arch", 1, cutout.Corner, "29 7/8, 1 1/8", 1.187, cutout.DrillCorner},
	} {
		p := oddPlan(t, row.example)
		found := false
		for _, w := range p.Pieces[row.piece-1].Weak {
			at := onRun(p.Pieces[row.piece-1], []plan.Point{w.At})[0]
			if w.Kind == row.kind && at == spots(row.at)[0] {
				found = math.Abs(w.Width.Float64()-row.width) < 1.0/512 && w.WayOut == row.wayOut
			}
		}
		if !found {
			t.Errorf("%s: no %s of %v at %s with a way out in %+v", row.example, row.kind, row.width, row.at, p.Pieces[row.piece-1].Weak)
		}
		if text := planned(t, examples(t)[row.example]); !strings.Contains(text, "! piece "+p.Pieces[row.piece-1].Label+": "+row.kind.String()) {
			t.Errorf("%s: the printed plan does not warn of the %s", row.example, row.kind)
		}
	}
}

// TestArcsOfTheArchedHeads holds the trammel's marks against the survey worked by hand: r =
// chord²/(8 rise) + rise/2, the centre so far below the top, and the gap of 1/8 added to the
// radius. The niche is 12 wide with a rise of 6 over 8 to 20 and 11 high: a half circle round (14,
// 11). The hatch is 24 wide with a rise of 8 over 30 to 54 and 11 high: 576/64 + 4 = 13 round (42,
// 11+8-13 = 6).
func TestArcsOfTheArchedHeads(t *testing.T) {
	p := oddPlan(t, "odd-arch")
	want := map[string]string{"niche": "14, 11, 6 1/8", "hatch": "42, 6, 13 1/8"}
	count := map[string]int{}
	for _, piece := range p.Pieces {
		for _, a := range piece.Marks.Arcs {
			count[a.Opening]++
			if got := fmt.Sprint(a.Centre.X.Add(piece.At.X), ", ", a.Centre.Y.Add(piece.At.Y), ", ", a.Radius); got != want[a.Opening] {
				t.Errorf("piece %s, %s: %s, want %s", piece.Label, a.Opening, got, want[a.Opening])
			}
			if a.Centre.X.Add(a.Back.X) != piece.Width || a.Centre.Y != a.Back.Y {
				t.Errorf("piece %s, %s: back %v of %v", piece.Label, a.Opening, a.Back, a.Centre)
			}
		}
	}
	// The ends of each arc, as they are measured on its piece: of the hatch where the seam cuts its circle,
	// 1 3/4 and 1 7/8 off its centre, sqrt(13.125² - 1.75²) = 13.008 and 12.990 above it, and where its
	// side does, 11.150 and 11.525 up; to the next 1/16 away from the arc, as none is less than 1/64 within it.
	ends := map[string]string{"1 niche": "[[7 13/16, 11 1/8] [20 1/16, 11 1/8]]", "1 hatch": "[[29 13/16, 11 3/16] [43 11/16, 19 1/8]]", "2 hatch": "[[0, 19 1/2] [10 1/4, 11 9/16]]"}
	for _, piece := range p.Pieces {
		for _, a := range piece.Marks.Arcs {
			var got []string
			for _, e := range a.Ends {
				got = append(got, fmt.Sprintf("[%v, %v]", e.At.X, e.At.Y))
				if e.At.X.Add(e.Back.X) != piece.Width || e.At.Y != e.Back.Y {
					t.Errorf("piece %s, %s: back %v of %v", piece.Label, a.Opening, e.Back, e.At)
				}
			}
			if want := ends[piece.Label+" "+a.Opening]; fmt.Sprint(got) != want {
				t.Errorf("piece %s, %s: ends %v, want %s", piece.Label, a.Opening, got, want)
			}
		}
	}
	if count["niche"] != 1 || count["hatch"] != 2 { // the seam stands over the hatch
		t.Errorf("arcs: %v", count)
	}
	for _, piece := range oddPlan(t, "odd-window").Pieces {
		if len(piece.Marks.Arcs) > 0 {
			t.Errorf("odd-window has no arch: %v", piece.Marks.Arcs)
		}
	}
	text := strings.Join(strings.Fields(planned(t, examples(t)["odd-arch"], "--explain")), " ")
	if arc := "trammel for niche: center 13 15/16 across, 11 1/8 up, radius 6 1/8, top at 17 1/4 up; on the back the center is 29 3/4 from left"; !strings.Contains(text, arc) {
		t.Errorf("the printed plan lacks %q", arc)
	}
}
