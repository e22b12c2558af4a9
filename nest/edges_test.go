package nest

import (
	"testing"

	"example.com/groovewright/fraction"
)

// A cut divides what it goes through; the blade takes something off and leaves something. With no blade a cut lies between the
// ends; a blade can take the lower end alone, but not lie off it.
func TestCutOfAnArea(t *testing.T) {
	in := fraction.Inches
	whole := area{in(3), in(5), in(20), in(40)}
	for _, row := range []struct {
		kind     CutKind
		at, kerf int64
		ok       bool
	}{
		{Crosscut, 0, 0, false}, {Crosscut, 1, 0, true}, {Crosscut, 39, 0, true}, {Crosscut, 40, 0, false},
		{Rip, 0, 0, false}, {Rip, 1, 0, true}, {Rip, 19, 0, true}, {Rip, 20, 0, false},
		{Rip, 0, 2, true}, {Rip, -1, 2, true}, {Rip, -2, 2, false}, {Rip, 19, 2, true}, {Rip, 20, 2, false}, {Crosscut, 39, 2, true}, {Crosscut, 40, 2, false},
		{CutKind(9), 5, 0, false},
	} {
		near, far, ok := whole.cut(row.kind, in(row.at), in(row.kerf))
		if ok != row.ok {
			t.Errorf("%+v: %v", row, ok)
		}
		wantNear, wantFar := area{in(3), in(5), in(20), in(row.at)}, area{in(3), in(5 + row.at + row.kerf), in(20), in(40 - row.at - row.kerf)}
		if row.kind == Rip {
			wantNear, wantFar = area{in(3), in(5), in(row.at), in(40)}, area{in(3 + row.at + row.kerf), in(5), in(20 - row.at - row.kerf), in(40)}
		}
		if ok && (near != wantNear || far != wantFar) {
			t.Errorf("%+v: %v and %v, want %v and %v", row, near, far, wantNear, wantFar)
		}
	}
}

func TestFirstFitRefusesWhatIsNotValid(t *testing.T) {
	if _, err := FirstFit(Problem{Saw: Saw{Kerf: fraction.Inches(-1)}}); err == nil {
		t.Error("no error with a blade of -1 in")
	}
}

// What rounding leaves over is laid on sheets of the kind that the programme is of.
func TestDiveLaysOnItsOwnKind(t *testing.T) {
	in := fraction.Inches
	p := Problem{Stock: []Stock{{Name: "strip", Width: in(10), Length: in(10), Count: new(1)}, {Name: "sheet", Width: in(48), Length: in(96)}}}
	for i := range int64(6) {
		p.Parts = append(p.Parts, Part{Number: int(i) + 1, Width: in(20 + i), Height: in(40)})
	}
	j, err := prepare(&p)
	if err != nil {
		t.Fatal(err)
	}
	all := []int{0, 1, 2, 3, 4, 5}
	relax := j.relax(all)
	groups := j.groups(all)
	c := newGenerator(t.Context(), j, relax, groups, newWeights(j, groups, relax), nil)
	got := c.dive(0, 1000)
	laid := 0
	for _, l := range got.sheets {
		if laid += len(l.spots); l.kind != c.kind || l.kind != 1 {
			t.Errorf("a layout on kind %d, the programme is of %d", l.kind, c.kind)
		}
	}
	if laid+len(got.left) != 6 || laid == 0 {
		t.Errorf("%d laid, %v left", laid, got.left)
	}
}

// A plan that is as good as can be is not worked on.
func TestNothingToImprove(t *testing.T) {
	in := fraction.Inches
	p := Problem{Stock: []Stock{{Name: "sheet", Width: in(48), Length: in(96)}}}
	for i := range int64(9) {
		p.Parts = append(p.Parts, Part{Number: int(i) + 1, Width: in(20 + i), Height: in(30)})
	}
	j, err := prepare(&p)
	if err != nil {
		t.Fatal(err)
	}
	now := j.levels(j.order(j.except(nil), tallFirst), Crosscut, false, j.stockOrder())
	least := j.objective(&now)
	for least, works := range map[objective]bool{least: false, {}: true} {
		m := j.newImprover(t.Context(), &now, least)
		if m.run(10); (m.filler.steps > 0) != works {
			t.Errorf("of at least %v: %d steps", least, m.filler.steps)
		}
	}
}

// A filling that the programme learns from the exact search lies on its sheet, and its pieces on none of each other: a kerf of
// 1/8 is between them.
func TestLearnedFillingsLieOnTheirSheet(t *testing.T) {
	in := fraction.Inches
	p := Problem{Pattern: Pattern{Pitch: in(2)}, Saw: Saw{Kerf: fraction.Of(1, 8)}, Stock: []Stock{{Name: "sheet", Width: in(48), Length: in(96)}}}
	for i := range int64(7) {
		p.Parts = append(p.Parts, Part{Number: int(i) + 1, Width: in(13 + i), Height: fraction.Of(767, 16), LeftPhase: in(i % 2)})
	}
	j, err := prepare(&p)
	if err != nil {
		t.Fatal(err)
	}
	all := j.except(nil)
	relax, groups := j.relax(all), j.groups(all)
	weigh := newWeights(j, groups, relax)
	c := newGenerator(t.Context(), j, relax, groups, weigh, newExact(t.Context(), j, groups, weigh, objective{left: -1}))
	c.limit = 100_000
	value := make([]int64, len(groups))
	for g := range value {
		value[g] = groups[g].piece.w
	}
	known := len(c.columns)
	if _, more := c.fullest(c.kind, value, 1, 1); !more || len(c.columns) == known || len(c.columns[len(c.columns)-1]) < 4 {
		t.Fatalf("nothing learned: %v", c.columns[known:])
	}
	k := j.kinds[c.kind]
	for _, spots := range c.columns[known:] {
		for n, a := range spots {
			at := groups[a.piece].piece
			if a.x < 0 || a.y < 0 || a.x+at.w > k.w || a.y+at.h > k.h {
				t.Errorf("%v lies off its sheet, %d by %d", a, k.w, k.h)
			}
			for _, b := range spots[:n] {
				if other := groups[b.piece].piece; a.x < b.x+other.w+j.kerf && b.x < a.x+at.w+j.kerf && a.y < b.y+other.h+j.kerf && b.y < a.y+at.h+j.kerf {
					t.Errorf("%v lies on %v", a, b)
				}
			}
		}
	}
}
