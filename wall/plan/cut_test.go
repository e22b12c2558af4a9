package plan_test

import (
	"fmt"
	"math"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// Every part on the bench lies where the cut that it comes from left it, and every piece stands free
// after one cut, on the side and at the place that the cut says.
func TestCutsSayWhatTheyLeave(t *testing.T) {
	forEachExample(t, func(t *testing.T, p plan.Plan) {
		for _, s := range p.Sheets {
			freed := map[int]int{}
			for i, c := range s.Cuts {
				if whole := c.From.Step == 0; whole != (i == 0) || c.From.Step > i {
					t.Fatalf("sheet %d: cut %d is of a part from cut %d", s.Number, c.Step, c.From.Step)
				}
				if i > 0 {
					from := s.Cuts[c.From.Step-1]
					if x, y, w, h := left(p, from, c.From.Beyond); c.Rect != [4]fraction.Length{x, y, w, h} {
						t.Errorf("sheet %d: cut %d is of %v, and cut %d left %v, %v, %v, %v", s.Number, c.Step, c.Rect, from.Step, x, y, w, h)
					}
				}
				for side, number := range c.Frees {
					if number == 0 {
						continue
					}
					freed[number]++
					piece, _ := p.Piece(number)
					if _, _, w, h := left(p, c, side == 1); w != blank(piece) || h != piece.Height {
						t.Errorf("sheet %d: cut %d frees piece %d from %v x %v", s.Number, c.Step, number, w, h)
					}
				}
			}
			for _, placed := range s.Placements {
				if freed[placed.Part] != 1 {
					t.Errorf("sheet %d: piece %d is freed %d times", s.Number, placed.Part, freed[placed.Part])
				}
			}
		}
	})
}

// blank returns the width of what a piece is sawn from.
func blank(p plan.Piece) fraction.Length {
	if p.Scribe == nil {
		return p.Width
	}
	return p.Width.Add(p.Scribe.Width)
}

// left returns what a cut leaves on one side.
func left(p plan.Plan, c plan.Cut, beyond bool) (x, y, w, h fraction.Length) {
	x, y, w, h = c.Rect[0], c.Rect[1], c.Rect[2], c.Rect[3]
	past := c.At.Add(p.Saw.Kerf)
	switch {
	case c.Kind == nest.Rip && beyond:
		return x.Add(past), y, w.Sub(past), h
	case c.Kind == nest.Rip:
		return x, y, c.At, h
	case beyond:
		return x, y.Add(past), w, h.Sub(past)
	}
	return x, y, w, c.At
}

// The edges of a whole sheet are the factory's; those of an offcut may be anybody's, and are not called so.
func TestEdgesOfAnOffcutAreNotTheFactorys(t *testing.T) {
	one := 1
	for _, row := range []struct {
		count *int
		phase int64 // of the stock in eighths
		want  plan.MarkEdges
	}{
		{nil, 0, plan.MarkEdges{Left: plan.FactoryEdge, Lower: plan.FactoryEdge}},
		{&one, 0, plan.MarkEdges{}},
		{nil, 4, plan.MarkEdges{Left: plan.SawnEdge, Lower: plan.FactoryEdge}},
		{&one, 4, plan.MarkEdges{Left: plan.SawnEdge}},
	} {
		in := fraction.Inches
		j := backsplash()
		j.Stock = []nest.Stock{{Name: "sheet", Width: in(48), Length: in(18), Count: row.count, LeftPhase: fraction.Of(row.phase, 8)}}
		j.Runs[0].Openings, j.Runs[0].Width, j.Runs[0].Left.Kind = nil, in(40), wall.Covered
		j.Runs[0].Heights = []wall.Height{{Top: in(18)}, {At: in(40), Top: in(18)}}
		p, err := plan.Make(t.Context(), j, plan.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := p.Pieces[0].Marks.From; got != row.want {
			t.Errorf("stock with phase %d/8 and count %v: %+v, want %+v", row.phase, row.count, got, row.want)
		}
	}
}

// The middle of a blade of 1/8 that leaves 10 on its near side, of a part 20 x 30 that lies at (3, 5).
func TestLine(t *testing.T) {
	for kind, want := range map[nest.CutKind]string{nest.Rip: "[{13 1/16 5} {13 1/16 35}]", nest.Crosscut: "[{3 15 1/16} {23 15 1/16}]"} {
		cut := plan.Cut{Cut: nest.Cut{Kind: kind, At: in("10"), Rect: [4]fraction.Length{in("3"), in("5"), in("20"), in("30")}}}
		if got, err := cut.Line(in("1/8")); err != nil || fmt.Sprint(got) != want {
			t.Errorf("%v: %v, %v; want %s", kind, got, err, want)
		}
	}
	far := plan.Cut{Cut: nest.Cut{At: fraction.Inches(math.MaxInt64)}}
	if _, err := far.Line(in("2")); err == nil {
		t.Error("no error beyond exact arithmetic")
	}
}

// A piece 9 x 5 with a hole, scribed by 1/2, at (20, 30) of its sheet. Turned by half a turn about the middle of its blank of
// 9 1/2, what was scribed at the left is scribed at the right.
func TestPlaced(t *testing.T) {
	piece := pieceOf(9, 5, [2]int64{}, [2]int64{9, 0}, [2]int64{9, 5}, [2]int64{0, 4})
	piece.Number = 7
	piece.Holes = []plan.Hole{{Outline: pieceOf(0, 0, [2]int64{2, 1}, [2]int64{2, 3}, [2]int64{3, 3}).Outline}}
	for _, row := range []struct {
		scribed wall.Direction
		turned  bool
		want    string
	}{
		{wall.Left, false, "[[{20 1/2 30} {29 1/2 30} {29 1/2 35} {20 1/2 34}] [{22 1/2 31} {22 1/2 33} {23 1/2 33}]]"},
		{wall.Right, false, "[[{20 30} {29 30} {29 35} {20 34}] [{22 31} {22 33} {23 33}]]"},
		{wall.Left, true, "[[{29 35} {20 35} {20 30} {29 31}] [{27 34} {27 32} {26 32}]]"},
		{wall.Right, true, "[[{29 1/2 35} {20 1/2 35} {20 1/2 30} {29 1/2 31}] [{27 1/2 34} {27 1/2 32} {26 1/2 32}]]"},
	} {
		piece.Scribe = &wall.Scribe{Edge: row.scribed, Width: in("1/2")}
		p := plan.Plan{Pieces: []plan.Piece{{}, piece}}
		got, err := p.Placed(nest.Placement{Part: 7, X: in("20"), Y: in("30"), Turned: row.turned})
		if err != nil || fmt.Sprint(got) != row.want {
			t.Errorf("scribed at the %v, turned %v: %v, %v; want %s", row.scribed, row.turned, got, err, row.want)
		}
	}
	if _, err := (plan.Plan{Pieces: []plan.Piece{piece}}).Placed(nest.Placement{Part: 7, X: fraction.Inches(math.MaxInt64)}); err == nil {
		t.Error("no error beyond exact arithmetic")
	}
}

// An offcut is listed as large as the tape shows at least, under the number that it has on its sheet.
func TestLeftoversAreOnTheTape(t *testing.T) {
	in := fraction.MustParse
	s := plan.Sheet{Offcuts: []nest.Offcut{{Width: in("24 mm"), Length: in("900 mm")}, {X: in("27 mm"), Y: in("5 mm"), Width: in("117.4 mm"), Length: in("1232.9 mm"), LeftPhase: in("2.6 mm")}}}
	got := plan.Plan{Units: fraction.Millimetre, Tape: in("1 mm")}.Leftovers(s)
	if len(got) != 1 || got[0].Width != in("117 mm") || got[0].Length != in("1232 mm") || got[0].LeftPhase != in("2.6 mm") || s.OffcutNumber(got[0]) != 2 || s.OffcutNumber(nest.Offcut{}) != 1 {
		t.Errorf("%+v", got)
	}
}
