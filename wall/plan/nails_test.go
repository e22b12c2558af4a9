package plan_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
)

// Nails stand on supports 16 apart, 6 apart on the outer ones, 12 on those between and 1/2 off every edge: worked by hand.
func TestNails(t *testing.T) {
	rectangle := func(width, height int64) plan.Piece {
		return pieceOf(width, height, [2]int64{}, [2]int64{width, 0}, [2]int64{width, height}, [2]int64{0, height})
	}
	holed := rectangle(8, 24)
	holed.Holes = []plan.Hole{{Outline: pieceOf(0, 0, [2]int64{0, 5}, [2]int64{0, 10}, [2]int64{3, 10}, [2]int64{3, 5}).Outline}}
	holed.Holes[0].Outline[0].X, holed.Holes[0].Outline[1].X = fraction.Of(1, 4), fraction.Of(1, 4)
	sheets := finish.Fixing{Nails: 1, Supports: in("16"), Edge: in("6"), Field: in("12"), Inset: in("1/2")}
	boards := finish.Fixing{Nails: 1, Supports: in("16"), Level: true, Inset: in("1/2")}
	unsaid, nowhere, uncounted := sheets, sheets, sheets
	unsaid.Nails, nowhere.Supports, uncounted.Field = finish.UsualNails, fraction.Length{}, fraction.Length{}
	for _, row := range []struct {
		name  string
		piece plan.Piece
		how   finish.Fixing
		want  string
	}{
		// Of 12 between the outermost nails on 13, 6 is half; the column of the edge moves in, that of the field does not.
		{"as wide as two bays", rectangle(32, 13), sheets, "[{1/2 1/2} {1/2 6 1/2} {1/2 12 1/2} {16 1/2} {16 12 1/2} {31 1/2 1/2} {31 1/2 6 1/2} {31 1/2 12 1/2}]"},
		// Both edges have a support, as a seam lies on one for both its panels. 13 takes three distances of no more than 6.
		{"not as wide", rectangle(31, 13), sheets, "[{1/2 1/2} {1/2 6 1/2} {1/2 12 1/2} {16 1/2} {16 12 1/2} {30 1/2 1/2} {30 1/2 6 1/2} {30 1/2 12 1/2}]"},
		{"a support nearer than 3 to the edge gives way", rectangle(19, 4), sheets, "[{1/2 1/2} {1/2 3 1/2} {18 1/2 1/2} {18 1/2 3 1/2}]"},
		{"one as near as 3 stays", rectangle(20, 3), sheets, "[{1/2 1 1/2} {16 1 1/2} {19 1/2 1 1/2}]"},
		{"a little higher", rectangle(8, 14), sheets, "[{1/2 1/2} {1/2 4 5/6} {1/2 9 1/6} {1/2 13 1/2} {7 1/2 1/2} {7 1/2 4 5/6} {7 1/2 9 1/6} {7 1/2 13 1/2}]"},
		{"too low for two", rectangle(8, 3), sheets, "[{1/2 1 1/2} {7 1/2 1 1/2}]"},
		{"high enough for two", rectangle(8, 4), sheets, "[{1/2 1/2} {1/2 3 1/2} {7 1/2 1/2} {7 1/2 3 1/2}]"},
		{"too narrow for two columns", rectangle(3, 4), sheets, "[{1 1/2 1/2} {1 1/2 3 1/2}]"},
		{"lower than the distance off both edges", plan.Piece{Width: in("8"), Height: in("3/4"), Outline: []plan.Point{{}, {X: in("8")}, {X: in("8"), Y: in("3/4")}, {Y: in("3/4")}}}, sheets, "[]"},
		{"round a hole", holed, sheets, "[{1/2 1/2} {1/2 4 1/2} {1/2 10 1/2} {1/2 14 5/6} {1/2 19 1/6} {1/2 23 1/2} {7 1/2 1/2} {7 1/2 6 1/4} {7 1/2 12} {7 1/2 17 3/4} {7 1/2 23 1/2}]"},
		// Of 11 1/2 from the low part up, along both edges of the tall one, 3 1/2 from the supports at 16 and 32.
		{"a tall part", pieceOf(48, 20, [2]int64{}, [2]int64{48, 0}, [2]int64{48, 8}, [2]int64{36, 8}, [2]int64{36, 20}, [2]int64{12, 20}, [2]int64{12, 8}, [2]int64{0, 8}), sheets,
			"[{1/2 1/2} {1/2 4} {1/2 7 1/2} {16 1/2} {16 10} {16 19 1/2} {32 1/2} {32 10} {32 19 1/2} {47 1/2 1/2} {47 1/2 4} {47 1/2 7 1/2} {35 1/2 8} {35 1/2 13 3/4} {35 1/2 19 1/2} {12 1/2 8} {12 1/2 13 3/4} {12 1/2 19 1/2}]"},
		{"a board without a run", rectangle(5, 33), boards, "[{2 1/2 1/2} {2 1/2 32 1/2}]"},
		{"no kind of nails", rectangle(32, 13), unsaid, "[]"},
		{"no supports", rectangle(32, 13), nowhere, "[]"},
		{"no distance", rectangle(32, 13), uncounted, "[]"},
	} {
		got, bare, err := plan.Plan{Fixing: row.how}.Nails(row.piece)
		if err != nil || len(bare) > 0 || fmt.Sprint(got) != row.want {
			t.Errorf("%s: %v, %v; want %s", row.name, got, err, row.want)
		}
	}
	narrow := finish.Fixing{Nails: 1, Supports: in("1"), Edge: in("1"), Field: in("1"), Inset: in("1/2")}
	for _, size := range [][2]int64{{1500, 1}, {1, 1500}} { // supports and distances of 1; at most 1000 of either are listed
		p := plan.Plan{Fixing: narrow}
		p.Fixing.Level = size[0] == 1
		piece := rectangle(size[0], size[1])
		p.Runs = []plan.Run{{Outline: piece.Outline}}
		got, _, err := p.Nails(piece)
		if want := 1000 + int(size[1]/1500); err != nil || len(got) != want {
			t.Errorf("%d by %d: %d nails, %v; want %d", size[0], size[1], len(got), err, want)
		}
	}
	near, fine := sheets, sheets
	near.Inset, fine.Inset = fraction.Length{}, fraction.Of(1, 1<<62)
	if got, _, err := (plan.Plan{Fixing: near}).Nails(rectangle(32, 13)); err != nil || got != nil {
		t.Errorf("on the edge itself: %v, %v", got, err)
	}
	if _, _, err := (plan.Plan{Fixing: fine}).Nails(rectangle(32, 13)); err == nil {
		t.Error("no error beyond exact arithmetic")
	}
}

// A foot that slopes: a column stands off it not only upright but beside it too. From 0 at the left the foot rises to 4 at 8,
// so that at 4 it is 2 high, at 4 1/2 it is 2 1/4.
func TestNailsOverASlope(t *testing.T) {
	piece := pieceOf(8, 20, [2]int64{}, [2]int64{8, 4}, [2]int64{8, 20}, [2]int64{0, 20})
	p := plan.Plan{Fixing: finish.Fixing{Nails: 1, Supports: in("16"), Level: true, Inset: in("1/2")}, Runs: []plan.Run{{Outline: piece.Outline}}}
	got, _, err := p.Nails(piece)
	if want := "[{4 2 1/2} {4 10} {4 19 1/2}]"; err != nil || fmt.Sprint(got) != want {
		t.Errorf("%v, %v; want %s", got, err, want)
	}
}

// Boards of one run cross the same level supports. A run from 2 under the datum to 38 over it has them at most 16 apart, so at
// 11 1/3 and 24 2/3; where the ends' nails, 1/2 off, are within 1 of one it stands for them. All worked by hand.
func TestBoardsShareTheirSupports(t *testing.T) {
	outline := []plan.Point{{Y: in("-2")}, {X: in("50"), Y: in("-2")}, {X: in("50"), Y: in("30")}, {Y: in("38")}}
	p := plan.Plan{Fixing: finish.Fixing{Nails: 1, Supports: in("16"), Level: true, Inset: in("1/2")}, Runs: []plan.Run{{Name: "wall", Outline: outline}}}
	for _, row := range []struct {
		name, foot, top string
		hole            []string // from a height to another, over the datum
		want            string   // over the datum
	}{
		{"the whole height", "-2", "38", nil, "[-1 1/2 11 1/3 24 2/3 37 1/2]"},
		{"under a slope", "-2", "34", nil, "[-1 1/2 11 1/3 24 2/3 33 1/2]"},
		{"over a window", "14", "36", nil, "[14 1/2 24 2/3 35 1/2]"},
		{"between two supports", "12", "24", nil, "[12 1/2 23 1/2]"},
		{"its foot at one", "11", "30", nil, "[11 1/2 24 2/3 29 1/2]"},
		{"its foot a little under one", "10 1/2", "30", nil, "[11 1/3 24 2/3 29 1/2]"},
		{"its top a little over one", "14", "25 1/2", nil, "[14 1/2 24 2/3]"},
		{"one stands for both", "10 1/2", "12 1/2", nil, "[11 1/3]"},
		{"too low for two", "12", "13 3/4", nil, "[12 7/8]"},
		{"an opening at a support", "-2", "38", []string{"5", "20"}, "[-1 1/2 4 1/2 20 1/2 24 2/3 37 1/2]"},
	} {
		foot := in(row.foot)
		high := in(row.top).Sub(foot)
		piece := plan.Piece{Run: "wall", At: plan.Point{Y: foot}, Width: in("5"), Height: high, Outline: []plan.Point{{}, {X: in("5")}, {X: in("5"), Y: high}, {Y: high}}}
		if row.hole != nil {
			from, to := in(row.hole[0]).Sub(foot), in(row.hole[1]).Sub(foot)
			piece.Holes = []plan.Hole{{Outline: []plan.Point{{X: in("1"), Y: from}, {X: in("4"), Y: from}, {X: in("4"), Y: to}, {X: in("1"), Y: to}}}}
		}
		nails, _, err := p.Nails(piece)
		got := make([]fraction.Length, len(nails))
		for i, nail := range nails {
			got[i] = nail.Y.Add(foot)
		}
		if err != nil || fmt.Sprint(got) != row.want {
			t.Errorf("%s: %v, %v; want %s", row.name, got, err, row.want)
		}
	}
}

// No nail is nearer than 3 to a box that spans 10 to 12 along the wall and 20 to 24 up, nor, of a sheet or a board, to a pipe's opening
// there: one that would be moves along its support, a sheet's up or down unless there is one about as near as half their distance, a
// board's sideways. A gap round the box counts. A window there has a frame. The first column of a sheet at 6 is at 6 1/2, of one at 10 at 10 1/2.
func TestNoNailAtABox(t *testing.T) {
	for _, row := range []struct {
		name  string
		at    string // left edge of the piece on the wall
		wide  string
		level bool
		kind  wall.OpeningKind
		foot  string // of the opening
		want  string // in the first column, or of a board
		bare  string
	}{
		{"a sheet beside it", "6", "32", false, wall.Box, "20", "[{1/2 1/2} {1/2 6 1/3} {1/2 12 1/6} {1/2 18} {1/2 23 5/6} {1/2 29 2/3} {1/2 35 1/2}]", "[]"},
		{"a sheet behind it", "10", "32", false, wall.Box, "20", "[{1/2 1/2} {1/2 6 1/3} {1/2 12 1/6} {1/2 29 2/3} {1/2 35 1/2} {1/2 16 3/4}]", "[]"},
		{"a sheet behind a pipe", "10", "32", false, wall.Other, "20", "[{1/2 1/2} {1/2 6 1/3} {1/2 12 1/6} {1/2 29 2/3} {1/2 35 1/2} {1/2 16 3/4}]", "[]"},
		{"a sheet at a door", "10", "32", false, wall.Other, "-1", "[{1/2 1/2} {1/2 6 1/3} {1/2 12 1/6} {1/2 18} {1/2 23 5/6} {1/2 29 2/3} {1/2 35 1/2}]", "[]"},
		{"a sheet behind a window", "10", "32", false, wall.Window, "20", "[{1/2 1/2} {1/2 6 1/3} {1/2 12 1/6} {1/2 18} {1/2 23 5/6} {1/2 29 2/3} {1/2 35 1/2}]", "[]"},
		{"a board at it", "8", "5", true, wall.Box, "20", "[{2 1/2 1/2} {2 1/2 12} {2 1/2 35 1/2}]", "[{2 1/2 24}]"},
		{"a board as far off as wanted", "12 3/4", "5", true, wall.Box, "20", "[{2 1/2 1/2} {2 1/2 12} {2 1/2 24} {2 1/2 35 1/2}]", "[]"},
		{"a board nearer by 1/4", "12 1/2", "5", true, wall.Other, "20", "[{2 1/2 1/2} {2 1/2 12} {2 3/4 24} {2 1/2 35 1/2}]", "[]"},
	} {
		piece := plan.Piece{Run: "wall", At: plan.Point{X: in(row.at)}, Width: in(row.wide), Height: in("36"), Outline: []plan.Point{{}, {X: in(row.wide)}, {X: in(row.wide), Y: in("36")}, {Y: in("36")}}}
		foot := in(row.foot)
		box := plan.Opening{Name: "box", Kind: row.kind, Outline: []plan.Point{{X: in("10"), Y: foot}, {X: in("12"), Y: foot}, {X: in("12"), Y: in("24")}, {X: in("10"), Y: in("24")}}}
		p := plan.Plan{Gaps: wall.Gaps{Box: in("1/4"), Window: in("1/4")}, Fixing: finish.Fixing{Nails: 1, Supports: in("12"), Edge: in("6"), Field: in("12"), Level: row.level, Clear: in("3"), Inset: in("1/2")},
			Runs: []plan.Run{{Name: "wall", Outline: []plan.Point{{}, {X: in("50"), Y: in("36")}}, Openings: []plan.Opening{box}}}}
		nails, bare, err := p.Nails(piece)
		var got []plan.Point
		for _, nail := range nails {
			if row.level || nail.X == nails[0].X {
				got = append(got, nail)
			}
		}
		if err != nil || fmt.Sprint(got) != row.want || fmt.Sprint(bare) != row.bare {
			t.Errorf("%s: %v, bare %v, %v; want %s and %s", row.name, got, bare, err, row.want, row.bare)
		}
	}
}

// A sheet of 8 by 24 with a pipe's hole from 3 to 5 across and 10 to 14 up, at a wall where it is not near an end. The column of each
// edge, 1/2 in, is nearer than 3 to the hole and passes it from 7 to 17: of its nails at 1/2, 6 1/4, 12, 17 3/4 and 23 1/2 the middle one,
// as near to 7 as to 17, has one about as near as 3 there at either. Of a sheet of 8 by 9, over the same hole, both columns are bare.
func TestNailsKeepOffPipes(t *testing.T) {
	pipe := plan.Opening{Name: "drain", Kind: wall.Other, Outline: []plan.Point{{X: in("13"), Y: in("10")}, {X: in("15"), Y: in("10")}, {X: in("15"), Y: in("14")}, {X: in("13"), Y: in("14")}}}
	p := plan.Plan{Fixing: finish.Fixing{Nails: 1, Supports: in("16"), Edge: in("6"), Field: in("12"), Clear: in("3"), Inset: in("1/2")},
		Runs: []plan.Run{{Name: "wall", Outline: []plan.Point{{}, {X: in("50"), Y: in("36")}}, Openings: []plan.Opening{pipe}}}}
	for _, row := range []struct {
		foot, high int64
		want, bare string
	}{
		{0, 24, "[{1/2 1/2} {1/2 6 1/4} {1/2 17 3/4} {1/2 23 1/2} {7 1/2 1/2} {7 1/2 6 1/4} {7 1/2 17 3/4} {7 1/2 23 1/2}]", "[]"},
		{8, 9, "[]", "[{1/2 1/2} {7 1/2 1/2}]"},
	} {
		hole := pieceOf(0, 0, [2]int64{3, 10 - row.foot}, [2]int64{5, 10 - row.foot}, [2]int64{5, 14 - row.foot}, [2]int64{3, 14 - row.foot})
		piece := pieceOf(8, row.high, [2]int64{}, [2]int64{8, 0}, [2]int64{8, row.high}, [2]int64{0, row.high})
		piece.Run, piece.At, piece.Holes = "wall", plan.Point{X: in("10"), Y: fraction.Inches(row.foot)}, []plan.Hole{{Opening: "drain", Outline: hole.Outline}}
		nails, bare, err := p.Nails(piece)
		if err != nil || fmt.Sprint(nails) != row.want || fmt.Sprint(bare) != row.bare {
			t.Errorf("%d high: %v, bare %v, %v; want %s and %s", row.high, nails, bare, err, row.want, row.bare)
		}
	}
}

// What a run adds, worked by hand: boards are nailed through the tongue, on the side toward which one works, but those that end
// the run through the face, and those that start it through the face too, along the edge there; a sheet that is mitered off the edge of its back, a thickness farther in; a frame of 8 by 8, or 9 by 9, with
// nails at most 6 apart has six of them, 1/2 and the 1/64 of their grain off it, the first half a distance from its first corner.
func TestNailsOfARun(t *testing.T) {
	board := func(at string) plan.Piece {
		p := pieceOf(5, 16, [2]int64{}, [2]int64{5, 0}, [2]int64{5, 16}, [2]int64{0, 16})
		p.Run, p.At.X = "wall", in(at)
		return p
	}
	boards := plan.Plan{Fixing: finish.Fixing{Nails: 1, Supports: in("16"), Level: true, Inset: in("1/2")}}
	boards.Profile.Edges = groove.Tongued
	boards.Runs = []plan.Run{{Name: "wall", Limits: [2]fraction.Length{in("1"), in("16")}}}
	boards.Runs[0].SetOut.Direction = wall.Right
	for left := int64(1); left < 16; left += 5 {
		boards.Runs[0].Panels = append(boards.Runs[0].Panels, wall.Panel{Left: fraction.Inches(left), Right: fraction.Inches(left + 5)})
	}
	leftward := boards
	leftward.Runs = []plan.Run{boards.Runs[0]}
	leftward.Runs[0].SetOut.Direction = wall.Left
	sheets := plan.Plan{Fixing: finish.Fixing{Nails: 1, Supports: in("16"), Edge: in("6"), Field: in("12"), Inset: in("1/2")}, Runs: []plan.Run{{Name: "wall", Limits: [2]fraction.Length{in("0"), in("32")}}}}
	sheets.Profile.Thickness = in("1/4")
	mitred, window := sheets, sheets
	mitred.Runs = []plan.Run{sheets.Runs[0]}
	mitred.Runs[0].Right.Kind = wall.OutsideCorner
	window.Runs = []plan.Run{sheets.Runs[0]}
	window.Runs[0].Openings = []plan.Opening{{Name: "port", Kind: wall.Window}}
	low := pieceOf(32, 2, [2]int64{}, [2]int64{32, 0}, [2]int64{32, 2}, [2]int64{0, 2})
	leaning := pieceOf(32, 40, [2]int64{1, 0}, [2]int64{32, 0}, [2]int64{32, 40}, [2]int64{0, 40})
	holed := pieceOf(16, 40, [2]int64{}, [2]int64{16, 0}, [2]int64{16, 40}, [2]int64{0, 40})
	holed.Holes = []plan.Hole{{Opening: "port", Outline: pieceOf(8, 8, [2]int64{4, 4}, [2]int64{12, 4}, [2]int64{12, 12}, [2]int64{4, 12}).Outline}}
	studs, strips := mitred, mitred
	studs.Fixing.Wall, strips.Fixing.Wall, strips.Fixing.Strips = in("5/8"), in("5/8"), in("3/4")
	boarded := boards // whose last board is mitered
	boarded.Runs = []plan.Run{boards.Runs[0]}
	boarded.Runs[0].Right.Kind, boarded.Profile.Thickness = wall.OutsideCorner, in("3/4")
	only, plain, startMitered := boards, boards, boards
	only.Runs, startMitered.Runs = []plan.Run{boards.Runs[0]}, []plan.Run{boards.Runs[0]}
	only.Runs[0].Limits[1], only.Runs[0].Panels = in("6"), boards.Runs[0].Panels[:1]
	door := boards // in place of the board between
	door.Runs = []plan.Run{boards.Runs[0]}
	door.Runs[0].Panels = []wall.Panel{boards.Runs[0].Panels[0], boards.Runs[0].Panels[2]}
	apart := boards
	apart.Runs, apart.Gaps.Seam = []plan.Run{boards.Runs[0]}, in("1/8")
	apart.Runs[0].Panels = []wall.Panel{{Left: in("1"), Right: in("5 7/8")}, boards.Runs[0].Panels[1], {Left: in("11 1/8"), Right: in("16")}}
	up := boards // the first and the last board
	up.Runs = []plan.Run{boards.Runs[0]}
	up.Runs[0].Panels, up.Runs[0].Installed = boards.Runs[0].Panels[1:2], []plan.Installed{{Left: in("1"), Right: in("6")}, {Left: in("11"), Right: in("16")}}
	tight := only
	tight.Runs = []plan.Run{only.Runs[0]}
	tight.Runs[0].Limits[1] = in("1 3/4")
	plain.Profile.Edges = groove.Square
	screwed := boards
	screwed.Fixing.Nails = finish.PanelScrews
	startMitered.Runs[0].Left.Kind, startMitered.Profile.Thickness = wall.OutsideCorner, in("3/4")
	narrow := pieceOf(1, 16, [2]int64{}, [2]int64{1, 0}, [2]int64{1, 16}, [2]int64{0, 16})
	narrow.Width, narrow.Run, narrow.At.X = in("3/4"), "wall", in("1")
	for _, i := range []int{1, 2} {
		narrow.Outline[i].X = in("3/4")
	}
	low.Run, leaning.Run, holed.Run = "wall", "wall", "wall"
	for _, row := range []struct {
		name  string
		how   plan.Plan
		piece plan.Piece
		want  string // begins so
	}{
		{"a board", boards, board("6"), "[{5 1/2} {5 15 1/2}]"},
		{"leftward", leftward, board("6"), "[{0 1/2} {0 15 1/2}]"},
		{"the last board", boards, board("11"), "[{4 1/2 1/2} {4 1/2 15 1/2}]"},
		{"the last leftward", leftward, board("1"), "[{1/2 1/2} {1/2 15 1/2}]"},
		{"the first board", boards, board("1"), "[{5 1/2} {5 15 1/2} {1/2 1/2} {1/2 15 1/2}]"},
		{"the first leftward", leftward, board("11"), "[{0 1/2} {0 15 1/2} {4 1/2 1/2} {4 1/2 15 1/2}]"},
		{"the only one", only, board("1"), "[{4 1/2 1/2} {4 1/2 15 1/2} {1/2 1/2} {1/2 15 1/2}]"},
		{"the only one, too narrow for two", tight, narrow, "[{3/8 1/2} {3/8 15 1/2}]"},
		{"up to a door", door, board("1"), "[{4 1/2 1/2} {4 1/2 15 1/2} {1/2 1/2} {1/2 15 1/2}]"},
		{"on from a door", door, board("11"), "[{4 1/2 1/2} {4 1/2 15 1/2} {1/2 1/2} {1/2 15 1/2}]"},
		{"between two gaps", apart, board("6"), "[{5 1/2} {5 15 1/2}]"},
		{"between boards on the wall", up, board("6"), "[{5 1/2} {5 15 1/2}]"},
		{"without a tongue", plain, board("1"), "[{2 1/2 1/2} {2 1/2 15 1/2}]"},
		{"screwed through the face", screwed, board("1"), "[{2 1/2 1/2} {2 1/2 15 1/2}]"},
		{"the first board, mitered", startMitered, board("1"), "[{5 1/2} {5 15 1/2} {1 1/4 1/2} {1 1/4 15 1/2}]"},
		{"a sheet", sheets, low, "[{1/2 1} {16 1} {31 1/2 1}]"},
		{"mitered", mitred, low, "[{1/2 1} {16 1} {31 1/4 1}]"},
		{"mitered on studs", studs, low, "[{1/2 1} {16 1} {30 5/8 1}]"}, // the wall before them reaches round the corner
		{"mitered on strips", strips, low, "[{1/2 1} {16 1} {31 1/4 1}]"},
		{"a mitered board", boarded, board("11"), "[{3 3/4 1/2} {3 3/4 15 1/2}]"},
		{"a leaning edge", sheets, leaning, "[{1 1/2 1/2} "},
		{"a frame", window, holed, "[{1/2 1/2} {1/2 6 1/14} {1/2 11 9/14} "},
	} {
		got, _, err := row.how.Nails(row.piece)
		if err != nil || !strings.HasPrefix(fmt.Sprint(got), row.want) {
			t.Errorf("%s: %v, %v; want %s", row.name, got, err, row.want)
		}
	}
	box := window
	box.Runs = []plan.Run{window.Runs[0]}
	box.Runs[0].Openings = []plan.Opening{{Name: "port", Kind: wall.Box}}
	for _, row := range []struct {
		size int64 // of the frame, from 4 across and up
		want string
	}{
		{1, "[{5 5 33/64}]"}, // half of 4 from its first corner
		{8, "[{6 43/64 3 31/64} {12 33/64 4} {12 33/64 9 21/64} {9 21/64 12 33/64} {4 12 33/64} {3 31/64 6 43/64}]"},
		{9, "[{7 3 31/64} {13 33/64 4} {13 33/64 10} {10 13 33/64} {3 31/64 13} {3 31/64 7}]"}, // 36 is 6 times 6
	} {
		far := 4 + row.size
		holed.Holes[0].Outline = pieceOf(0, 0, [2]int64{4, 4}, [2]int64{far, 4}, [2]int64{far, far}, [2]int64{4, far}).Outline
		framed, _, err := window.Nails(holed)
		bare, _, wrong := box.Nails(holed)
		if err != nil || wrong != nil || fmt.Sprint(framed[len(bare):]) != row.want {
			t.Errorf("round a window of %d %v, %v, %v; want %s", row.size, framed[len(bare):], err, wrong, row.want)
		}
	}
}

// Supports stand on marks of the tape and are never farther apart than the plan says: worked by hand. Of 40 1/4 a third is 13 5/12,
// down to a sixteenth 13 6/16, two thirds are 26 5/6, 26 13/16; 48 has 16 and 32 as they are, 1/64 more has one more; of -2 1/32 to 38,
// from -2 1/16 on, a third is 13 17/48, so that it stands at 11 1/4. In millimetres 406.4 are 406, and 813 takes three such.
func TestSupportsStandOnMarks(t *testing.T) {
	for _, row := range []struct{ tape, foot, top, apart, want string }{
		{"1/16", "0", "40 1/4", "16", "[13 3/8 26 13/16]"},
		{"1/16", "0", "48", "16", "[16 32]"},
		{"1/16", "0", "48 1/64", "16", "[12 24 36]"},
		{"1/16", "-2 1/32", "38", "16", "[11 1/4 24 5/8]"},
		{"1 mm", "0", "812 mm", "16", "[15 125/127]"}, // 406 mm
		{"1 mm", "0", "813 mm", "16", "[10 85/127 21 43/127]"},
		{"20", "0", "40", "16", "[0 20]"}, // marks farther apart than supports
		{"0", "0", "40", "16", "[13 1/3 26 2/3]"},
		{"1/16", "0", "16", "16", "[]"},
		{"1/16", "0", "40", "0", "[]"},
	} {
		outline := []plan.Point{{Y: in(row.foot)}, {X: in("50"), Y: in(row.foot)}, {X: in("50"), Y: in(row.top)}, {Y: in(row.top)}}
		p := plan.Plan{Tape: in(row.tape), Fixing: finish.Fixing{Supports: in(row.apart), Level: true}}
		if got := plan.Supports(p, plan.Run{Outline: outline}); fmt.Sprint(got) != row.want {
			t.Errorf("from %s to %s: %v; want %s", row.foot, row.top, got, row.want)
		}
		p.Fixing.Level = false
		if got := plan.Supports(p, plan.Run{Outline: outline}); got != nil {
			t.Errorf("sheets: %v", got)
		}
	}
}

// No nail of a sheet is nearer to an edge of it, aslant or not, or to a true arc, than the plan has it: by float64.
func TestNailsOffEveryEdge(t *testing.T) {
	slope := pieceOf(40, 40, [2]int64{}, [2]int64{40, 30}, [2]int64{40, 40}, [2]int64{0, 40})
	plans := []plan.Plan{{Fixing: finish.Fixing{Nails: 1, Supports: in("16"), Edge: in("6"), Field: in("12"), Inset: in("3/8")}, Pieces: []plan.Piece{slope}}}
	for _, name := range []string{"kitchen", "odd-arch", "odd-window", "bathroom"} {
		job := fraction.Must(os.ReadFile("../../examples/" + name + ".json"))
		plans = append(plans, fraction.Must(plan.Make(t.Context(), fraction.Must(jobfile.Read(bytes.NewReader(job))), plan.Options{})))
	}
	checked := 0
	for _, p := range plans {
		least := p.Fixing.Inset.Float64() - 1e-9
		for _, piece := range p.Pieces {
			nails, _, err := p.Nails(piece)
			if err != nil {
				t.Fatal(err)
			}
			for _, nail := range nails {
				x, y := nail.X.Float64(), nail.Y.Float64()
				for _, ring := range piece.Rings() {
					for i, a := range ring {
						b := ring[(i+1)%len(ring)]
						ax, ay, dx, dy := a.X.Float64(), a.Y.Float64(), b.X.Sub(a.X).Float64(), b.Y.Sub(a.Y).Float64()
						share := max(0, min(1, ((x-ax)*dx+(y-ay)*dy)/(dx*dx+dy*dy)))
						if off := math.Hypot(ax+dx*share-x, ay+dy*share-y); off < least {
							t.Errorf("%s, piece %s: the nail at %v is %.4f off the edge from %v to %v", p.Title, piece.Label, nail, off, a, b)
						}
						checked++
					}
				}
				for _, a := range piece.Marks.Arcs {
					away := math.Hypot(x-a.Centre.X.Float64(), y-a.Centre.Y.Float64())
					nearest := a.Centre.Y.Float64() + (y-a.Centre.Y.Float64())*a.Radius.Float64()/away
					if off := math.Abs(away - a.Radius.Float64()); off < least && nearest > a.Springs.Float64() {
						t.Errorf("%s, piece %s: the nail at %v is %.4f off the arc", p.Title, piece.Label, nail, off)
					}
				}
			}
		}
	}
	if checked < 3000 {
		t.Errorf("only %d distances", checked)
	}
}
