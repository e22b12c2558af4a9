package drawing

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// Places beside an area are so far off one of its sides, and level with its middle where they are right or left of it.
func TestPlacesBeside(t *testing.T) {
	area := box{100, 50, 40, 30}
	for i, p := range besides(area, 20, 10) {
		away := []float64{3, 10, 20, 34}[i/8]
		gap := max(area.x-p.x-p.w, p.x-area.x-area.w, area.y-p.y-p.h, p.y-area.y-area.h)
		if p.w != 20 || p.h != 10 || math.Abs(gap-away) > 1e-9 {
			t.Errorf("place %d, %v, is %v away, want %v", i, p, gap, away)
		}
		if beside := p.x+p.w <= area.x || area.x+area.w <= p.x; !beside && (p.x < area.x || area.x+area.w < p.x+p.w) || beside && p.y+p.h/2 != area.y+area.h/2 {
			t.Errorf("place %d, %v, is neither above, below nor level with %v", i, p, area)
		}
	}
}

// A paper has 3 in and more left between its margins and over its foot, and is less than 1000 in there.
func TestPapers(t *testing.T) {
	for _, row := range []struct {
		width, height float64
		good          bool
	}{
		{8.5, 11, true}, {4, 4.75, true}, {3.99, 4.75, false}, {4, 4.74, false}, {1000.9, 999, true}, {1001, 999, false}, {999, 1001.75, false},
		{math.NaN(), 11, false}, {8.5, math.NaN(), false}, {-8.5, 11, false}, {math.Inf(1), 11, false},
	} {
		if err := (Paper{Width: row.width, Height: row.height}).check(); err == nil != row.good {
			t.Errorf("%v by %v: %v", row.width, row.height, err)
		}
	}
}

// A corner is square where an upright or a level edge ends at it. Of a piece whose top has three corners on a curve only the
// one in the middle is none; that of a hole is all square.
func TestSquareCorners(t *testing.T) {
	at := func(x, y int64) plan.Point { return plan.Point{X: fraction.Inches(x), Y: fraction.Inches(y)} }
	face := []plan.Point{at(0, 0), at(20, 0), at(20, 10), at(15, 13), at(9, 14), at(0, 8)}
	hole := cutout.Corners{Face: []plan.Point{at(4, 4), at(4, 6), at(6, 6)}, Back: []plan.Point{at(16, 4), at(16, 6), at(14, 6)}}
	d := &pieceDrawing{piece: plan.Piece{Marks: plan.Marks{Corners: cutout.Corners{Face: face, Back: slices.Repeat([]plan.Point{at(1, 1)}, 6)}, Holes: []plan.HoleMarks{{Corners: hole}}}}}
	for _, back := range []bool{false, true} {
		d.corners, d.back = nil, back
		side := map[bool]string{false: "face", true: "back"}[back]
		d.measured("pieces[3].")
		want := []bool{true, true, true, false, false, true, true, true, true}
		if len(d.corners) != len(want) {
			t.Fatalf("%d corners, want %d", len(d.corners), len(want))
		}
		for i, c := range d.corners {
			if c.square != want[i] || c.name != plan.CornerName(i) {
				t.Errorf("corner %d at %v is square: %v, name %s", i, c.at, c.square, c.name)
			}
		}
		marked := map[bool]plan.Point{false: at(20, 10), true: at(1, 1)}[back]
		if c := d.corners[2]; c.at != at(20, 10) || c.marked != marked || c.path != "pieces[3]."+side+"[2]" {
			t.Errorf("the third corner is %+v", c)
		}
		marked = map[bool]plan.Point{false: at(4, 6), true: at(16, 6)}[back]
		if c := d.corners[7]; c.at != at(4, 6) || c.marked != marked || c.path != "pieces[3].holes[0]."+side+"[1]" {
			t.Errorf("the second corner of the hole is %+v", c)
		}
	}
}

// Walls that are unfolded are all to one scale and stand in order, in rows as high as the tallest of all and the white above and
// below, a corner's gap apart, none wider than the drawing or higher than its row.
func TestUnfoldedWallsStandInRows(t *testing.T) {
	rows := 0
	forEachPlan(t, func(t *testing.T, p plan.Plan) {
		for _, width := range []float64{wideInk, 400, 250} {
			walls := unfold(p, width, "unfolded", "title", 26, 40)
			if len(walls) != len(p.Runs) {
				t.Fatalf("%d walls of %d runs", len(walls), len(p.Runs))
			}
			for i, e := range walls {
				lo, hi := e.run.Extent()
				long, high := hi.X.Sub(lo.X).Float64()*e.scale, hi.Y.Sub(lo.Y).Float64()*e.scale
				if e.scale != walls[0].scale || high > unfoldTall+1e-6 || e.left < cornerGap-1e-6 || e.left+long > width-cornerGap+1e-6 || e.floor > e.Height-40+1e-6 {
					t.Errorf("wall %d of %d in %v: scale %v, from %v %v long, %v high, floor at %v of %v", i, len(walls), width, e.scale, e.left, long, high, e.floor, e.Height)
				}
				if e.y(lo.Y) > e.floor+1e-6 || e.y(hi.Y) < e.frame.y+26-1e-6 || math.Abs(e.x(lo.X)-e.left) > 1e-6 {
					t.Errorf("wall %d stands at %v, %v, its lowest place at %v, %v", i, e.left, e.floor, e.x(lo.X), e.y(lo.Y))
				}
				if i == 0 {
					continue
				}
				before := walls[i-1]
				blo, bhi := before.run.Extent()
				next := before.left + bhi.X.Sub(blo.X).Float64()*e.scale + cornerGap
				switch {
				case e.floor == before.floor && (math.Abs(e.left-next) > 1e-6 || math.Abs(e.y(zero)-before.y(zero)) > 1e-6):
					t.Errorf("wall %d begins at %v, the one before leaves %v; its datum at %v and %v", i, e.left, next, e.y(zero), before.y(zero))
				case e.floor != before.floor && (e.left != cornerGap || math.Abs(e.frame.y-before.floor-40) > 1e-6 || next+long+cornerGap <= width-1e-6):
					t.Errorf("wall %d begins a row at %v, %v, though the one above would have room from %v", i, e.left, e.floor, next)
				case e.floor != before.floor:
					rows++
				}
			}
		}
	})
	if rows == 0 {
		t.Error("no wall begins a row")
	}
}

// The words that say where to start lie on the drawing, whichever way one works and wherever that is, and their place is
// taken.
func TestStartIsSaidOnTheDrawing(t *testing.T) {
	p := kitchen()
	for i, run := range p.Runs {
		for _, way := range []wall.Direction{wall.Left, wall.Right} {
			for step := range int64(18) {
				e := newElevation(p, i, []float64{420, 390}[step/9], "run", "run ")
				e.lay()
				e.run.SetOut.Direction, e.run.SetOut.From = way, run.Limits[0].Add(run.Limits[1].Sub(run.Limits[0]).Mul(step%9).Div(8))
				e.begin, e.floor = 60, 200
				e.start()
				var n *node
				for _, k := range e.kids {
					if strings.HasPrefix(k.value("class"), "starttext") {
						n = k
					}
				}
				if n == nil {
					t.Fatal("not said")
				}
				x, err := strconv.ParseFloat(n.value("x"), 64)
				if err != nil {
					t.Fatal(err)
				}
				text := append(e.startsAt(), ", work ", figure{way.String(), "x"})
				wide := text.width(typeSize)
				if n.value("text-anchor") == "end" {
					x -= wide
				}
				if x < 3.9 || x+wide > e.Width-3.9 {
					t.Errorf("run %d from %v to the %v: said from %v to %v of %v", i, e.run.SetOut.From, way, x, x+wide, e.Width)
				}
				arrow := e.x(e.run.SetOut.From)
				behind, ahead := arrow-10, arrow+48
				if way == wall.Left {
					behind, ahead = arrow-48, arrow+10
				}
				if mid := max(4+wide/2, min(arrow, e.Width-4-wide/2)); behind-wide < 4 && ahead+wide > e.Width-4 && math.Abs(x+wide/2-mid) > .06 {
					t.Errorf("run %d from %v to the %v: with room on neither side said about %v, want %v", i, e.run.SetOut.From, way, x+wide/2, mid)
				}
				if !slices.ContainsFunc(e.words, func(b box) bool { return math.Abs(b.x-x) < .06 && math.Abs(b.w-wide) < .06 }) {
					t.Errorf("run %d from %v to the %v: what is said from %v, %v wide, has no place among %v", i, e.run.SetOut.From, way, x, wide, e.words)
				}
			}
		}
	}
}
