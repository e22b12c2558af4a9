package drawing

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall/plan"
)

// drawnCut is a cutting line of random size, a hole or a notch.
func drawnCut(t *rapid.T) cutLine {
	length := func(name string, low, high int64) fraction.Length {
		return fraction.Of(rapid.Int64Range(low*16, high*16).Draw(t, name), 16)
	}
	w, h := length("width", 1, 60), length("height", 1, 60)
	x, y := length("x", 0, 30), length("y", 0, 30)
	c := cutLine{closed: rapid.Bool().Draw(t, "closed"), what: "hole", path: "pieces[0].outline", count: 4}
	c.points = cutout.Rectangle(x, y, w, h)
	if rapid.Bool().Draw(t, "sloped") {
		c.points[2].Y = c.points[2].Y.Add(fraction.Of(3, 4))
	}
	return c
}

func TestTilesCoverEveryCorner(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawnCut(t)
		for _, paper := range Papers() {
			tiling := c.tile(paper, 1)
			for _, p := range c.points {
				x, y, found := p.X.Float64(), p.Y.Float64(), false
				for _, one := range tiling.tiles {
					found = found || one.needed && x >= one.x && x <= one.x+one.w && y >= one.y && y <= one.y+one.h
				}
				if !found {
					t.Fatalf("%s: corner %v is on no page", paper.Name, p)
				}
			}
		}
	})
}

// TestStraightsLeftOutJoinPrintedPages walks along every straight: all of it is on the map, and the
// pages left out lie between two that are printed.
func TestStraightsLeftOutJoinPrintedPages(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawnCut(t)
		for _, paper := range Papers() {
			tiling := c.tile(paper, 1)
			for i, p := range c.points {
				q := c.points[(i+1)%len(c.points)]
				if i == len(c.points)-1 && !c.closed {
					continue
				}
				for step := range 101 {
					f := float64(step) / 100
					x, y := p.X.Float64()+f*q.X.Sub(p.X).Float64(), p.Y.Float64()+f*q.Y.Sub(p.Y).Float64()
					onAny, onNeeded := false, false
					for _, one := range tiling.tiles {
						if x >= one.x && x <= one.x+one.w && y >= one.y && y <= one.y+one.h {
							onAny, onNeeded = true, onNeeded || one.needed
						}
					}
					if !onAny || (step == 0 || step == 100) && !onNeeded {
						t.Fatalf("%s: point %v, %v of the line: on a page of the map %v, printed %v", paper.Name, x, y, onAny, onNeeded)
					}
				}
			}
		}
	})
}

func TestNeighboringTilesOverlap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		paper, cut := Papers()[rapid.IntRange(0, 1).Draw(t, "paper")], drawnCut(t)
		tiling := cut.tile(paper, 1)
		across := tiling.across
		for i, one := range tiling.tiles {
			if (i+1)%across != 0 && i+1 < len(tiling.tiles) {
				if overlap := one.x + one.w - tiling.tiles[i+1].x; overlap < pageOverlap-1e-9 || overlap > pageOverlap+1e-9 {
					t.Fatalf("pages %s and %s share %v in, want %v", one.name, tiling.tiles[i+1].name, overlap, pageOverlap)
				}
			}
			if below := i + across; below < len(tiling.tiles) {
				under := tiling.tiles[below]
				if overlap := under.y + under.h - one.y; overlap < pageOverlap-1e-9 || overlap > pageOverlap+1e-9 {
					t.Fatalf("pages %s and %s share %v in, want %v", one.name, under.name, overlap, pageOverlap)
				}
			}
		}
	})
}

func TestNotches(t *testing.T) {
	for _, row := range []struct {
		name    string
		outline []plan.Point
		want    string
	}{
		{"a rectangle has none", ring("0", "0", "10", "0", "10", "10", "0", "10"), "[]"},
		{"a sloping top is one straight", ring("0", "0", "10", "0", "10", "10", "0", "9"), "[]"},
		{"a corner step", ring("0", "0", "10", "0", "10", "6", "4", "6", "4", "10", "0", "10"), "[[{10 6} {4 6} {4 10}]]"},
		{"a notch in the top", ring("0", "0", "10", "0", "10", "10", "8", "10", "8", "5", "2", "5", "2", "10", "0", "10"), "[[{8 10} {8 5} {2 5} {2 10}]]"},
		{"a bottom that follows the counter", ring("0", "0", "5", "1/16", "10", "0", "10", "10", "0", "10"), "[]"},
		{"a sloping top beside a leaning end", ring("0", "0", "9", "0", "10", "9", "0", "10"), "[]"},
		{"an arched head", ring("0", "0", "10", "0", "10", "7", "9", "9", "7", "10", "3", "10", "1", "9", "0", "7"), "[]"},
		{"an arched head on one side", ring("0", "0", "10", "0", "10", "2", "9 1/2", "5", "8", "8", "6", "9 1/4", "4", "9 3/4", "0", "10"), "[[{10 2} {9 1/2 5} {8 8} {6 9 1/4} {4 9 3/4} {0 10}]]"},
		{"half a niche with an arched head", ring("0", "0", "10", "0", "10", "2", "6", "2", "6", "5", "8", "7", "10", "8", "10", "10", "0", "10"), "[[{10 2} {6 2} {6 5} {8 7} {10 8}]]"},
		{"a notch over the first corner", ring("2", "3", "2", "0", "10", "0", "10", "10", "0", "10", "0", "3"), "[[{0 3} {2 3} {2 0}]]"},
	} {
		t.Run(row.name, func(t *testing.T) {
			found := [][]string{}
			notches, err := plan.Piece{Width: in("10"), Height: in("10"), Outline: row.outline}.Notches()
			if err != nil {
				t.Fatal(err)
			}
			for _, c := range notches {
				var points []string
				for i, p := range c.Points {
					if p != row.outline[(c.First+i)%len(row.outline)] {
						t.Errorf("point %d is %v, and %v at its place in the plan", i, p, row.outline[(c.First+i)%len(row.outline)])
					}
					points = append(points, fmt.Sprintf("{%s %s}", p.X, p.Y))
				}
				found = append(found, points)
			}
			if got := fmt.Sprint(found); got != row.want {
				t.Errorf("notches = %s, want %s", got, row.want)
			}
		})
	}
}

// TestStripesFollowThePhase checks the pattern against counting: at the middle of every feature of
// a long board stands that feature and no other.
func TestStripesFollowThePhase(t *testing.T) {
	profile := kitchen().Profile
	rapid.Check(t, func(t *rapid.T) {
		phase := fraction.Of(rapid.Int64Range(0, 47).Draw(t, "phase"), 32)
		width := fraction.Of(rapid.Int64Range(1, 2000).Draw(t, "width"), 32)
		all := profile.Stripes(in("0"), width, phase)
		for at := fraction.Of(1, 64); at.Less(width); at = at.Add(fraction.Of(1, 32)) {
			want, left := -1, phase.Add(at).Mod(profile.Pitch)
			for _, f := range profile.Features {
				if want < 0 && left.Less(f.Width) {
					want = int(f.Kind)
				}
				left = left.Sub(f.Width)
			}
			got := -1
			for _, s := range all {
				if s.Left.Less(at) && at.Less(s.Right) {
					got = int(s.Kind)
				}
			}
			if got != want {
				t.Fatalf("at %s of a board that begins at phase %s: kind %d, want %d", at, phase, got, want)
			}
		}
	})
}

func TestStripesEndWithoutPitch(t *testing.T) {
	for name, features := range map[string][]groove.Feature{
		"no features":            nil,
		"features without width": {{Kind: groove.Bead}},
		"a width below zero":     {{Width: in("2")}, {Width: in("-1")}},
		"far too fine":           {{Width: in("1/1000000")}},
	} {
		if got := (plan.Profile{Pitch: in("1"), Profile: groove.Profile{Features: features}}).Stripes(in("0"), in("48"), in("0")); got != nil {
			t.Errorf("%s: %d stripes", name, len(got))
		}
	}
}

// TestTemplateShowsTheTrueArc: an arched head is drawn as the circle that it is, from springing to
// springing.
func TestTemplateShowsTheTrueArc(t *testing.T) {
	p := kitchen()
	piece := &p.Pieces[3]
	piece.Holes = []plan.Hole{{Opening: "niche", Outline: ring("11", "2", "35", "2", "35", "10", "23", "18", "11", "10")}}
	piece.Marks.Arcs = []plan.Arc{{Opening: "niche", Centre: plan.Point{X: in("23"), Y: in("5")}, Radius: in("13"), Springs: in("10")}}
	set, err := Templates(p, Papers()[0])
	if err != nil {
		t.Fatal(err)
	}
	found := false
	for _, page := range set.Pages {
		for _, cell := range page {
			svg := string(cell.Picture.SVG())
			for _, m := range regexp.MustCompile(`class="template" d="[^"]*L([-0-9.]+) ([-0-9.]+)A([0-9.]+) ([0-9.]+) 0 0 [01] ([-0-9.]+) ([-0-9.]+)A[0-9.]+ [0-9.]+ 0 0 [01] ([-0-9.]+) ([-0-9.]+)`).FindAllStringSubmatch(svg, -1) {
				var v [8]float64 // from, radii, crown, to
				for i := range v {
					v[i], _ = strconv.ParseFloat(m[i+1], 64)
				}
				// 5 over the centre a circle of 13 is 24 wide and 8 high.
				if v[2] != 13*perInch || v[3] != v[2] || v[1] != v[7] || math.Abs(math.Abs(v[6]-v[0])-24*perInch) > .01 || math.Abs(v[1]-v[5]-8*perInch) > .01 {
					t.Errorf("arc %v", v)
				}
				found = true
			}
		}
	}
	if !found {
		t.Error("no template shows the arc")
	}
}
