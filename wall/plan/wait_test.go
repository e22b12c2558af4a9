package plan_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// TestWaits is worked by hand. A sheet 48 by 40 has piece 1 at its left, 20 wide, and piece 2, 12 wide and 10
// high, right of a kerf of 1/8: cut 1 rips at 20 and so makes the right edge of piece 1 and the left one of piece
// 2, cut 2 rips what is beyond at 12, cut 3 crosscuts piece 2 free.
func TestWaits(t *testing.T) {
	in := fraction.Inches
	kerf := fraction.Of(1, 8)
	start := in(20).Add(kerf)
	cut := func(step, from int, beyond bool, kind nest.CutKind, at fraction.Length, rect ...fraction.Length) plan.Cut {
		return plan.Cut{Cut: nest.Cut{Step: step, Kind: kind, At: at, Rect: [4]fraction.Length(rect)}, From: plan.Source{Step: from, Beyond: beyond}}
	}
	for _, row := range []struct {
		name      string
		direction wall.Direction
		turned    bool
		closing   int
		scribe    *wall.Scribe
		want      []plan.Wait
	}{
		{"the last piece is at the right edge of the sheet's part", wall.Right, false, 2, nil, []plan.Wait{{}, {Piece: 2}, {Step: 2}}},
		{"turned, its right edge lies at the left: all that comes after waits", wall.Right, true, 2, nil, []plan.Wait{{Piece: 2}, {Step: 1}, {Step: 2}}},
		{"worked to the left, its left edge closes", wall.Left, false, 2, nil, []plan.Wait{{Piece: 2}, {Step: 1}, {Step: 2}}},
		{"with something to scribe nothing waits", wall.Right, false, 2, &wall.Scribe{Edge: wall.Right, Width: kerf}, []plan.Wait{{}, {}, {}}},
		{"its closing edge is the sheet's own", wall.Left, false, 1, nil, []plan.Wait{{}, {}, {}}},
	} {
		run := plan.Run{Name: "wall", Panels: []wall.Panel{{Number: 1, Right: in(20)}, {Number: 2, Left: in(90), Right: in(102)}}}
		run.SetOut.Direction = row.direction
		p := plan.Plan{Runs: []plan.Run{run}, Saw: plan.Saw{Saw: nest.Saw{Kerf: kerf}}}
		for i, w := range []int64{20, 12} {
			p.Pieces = append(p.Pieces, plan.Piece{Number: i + 1, Run: "wall", Panel: i + 1, Width: in(w), Height: in(40 - 30*int64(i)), Closing: row.closing == i+1, Scribe: row.scribe})
		}
		sheet := plan.Sheet{Placements: []nest.Placement{{Part: 1}, {Part: 2, X: start, Turned: row.turned}}, Cuts: []plan.Cut{
			cut(1, 0, false, nest.Rip, in(20), in(0), in(0), in(48), in(40)),
			cut(2, 1, true, nest.Rip, in(12), start, in(0), in(48).Sub(start), in(40)),
			cut(3, 2, false, nest.Crosscut, in(10), start, in(0), in(12), in(40)),
		}}
		got, err := p.Waits(sheet)
		if diff := cmp.Diff(row.want, got); diff != "" || err != nil {
			t.Errorf("%s: %v (-want +got)\n%s", row.name, err, diff)
		}
	}
}
