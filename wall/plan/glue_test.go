package plan_test

import (
	"fmt"
	"testing"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/plan"
)

// Adhesive on a piece of 20 by 12, worked by hand: 20 takes two distances of at most 16, so beads stand at 0, 10 and 20, the outer
// ones as far in as a bead is wide, and dots in the middles of two fields; boards have theirs across supports at 0 and 12.
func TestGlue(t *testing.T) {
	piece := pieceOf(20, 12, [2]int64{}, [2]int64{20, 0}, [2]int64{20, 12}, [2]int64{0, 12})
	for _, row := range []struct {
		form  finish.GlueForm
		level bool
		want  string
	}{
		{finish.GlueBeads, false, "[[{1/2 1/2} {1/2 11 1/2}] [{10 1/2} {10 11 1/2}] [{19 1/2 1/2} {19 1/2 11 1/2}]]"},
		{finish.GlueDots, false, "[[{5 6} {5 6}] [{15 6} {15 6}]]"},
		{finish.GlueBeads, true, "[[{1/2 0} {19 1/2 0}] [{1/2 12} {19 1/2 12}]]"},
		{finish.GlueDots, true, "[[{10 0} {10 0}] [{10 12} {10 12}]]"},
		{finish.NoGlue, false, "[]"},
	} {
		p := plan.Plan{Fixing: finish.Fixing{Glue: row.form, Level: row.level, Supports: in("16"), GlueSpacing: in("16"), GlueSize: in("1/2")}}
		got, err := p.Glue(piece)
		if err != nil || fmt.Sprint(got) != row.want {
			t.Errorf("%v, level %v: %v, %v; want %s", row.form, row.level, got, err, row.want)
		}
		p.Fixing.Supports, p.Fixing.GlueSpacing = in("0"), in("0")
		if got, err := p.Glue(piece); err != nil || got != nil {
			t.Errorf("%v at no distance: %v, %v", row.form, got, err)
		}
	}
	// The top bead of a board whose top slopes from 12 to 13 lies where the board has its width.
	sloped := plan.Plan{Fixing: finish.Fixing{Glue: finish.GlueBeads, Level: true, Supports: in("16")}}
	got, err := sloped.Glue(pieceOf(4, 13, [2]int64{}, [2]int64{4, 0}, [2]int64{4, 13}, [2]int64{0, 12}))
	if want := "[[{0 0} {4 0}] [{0 12} {4 12}]]"; err != nil || fmt.Sprint(got) != want {
		t.Errorf("a sloped board: %v, %v; want %s", got, err, want)
	}
	// A hole in the middle parts the bead there, a bead's width off, and takes the dots that would come nearer.
	piece.Holes = []plan.Hole{{Outline: []plan.Point{{X: in("4"), Y: in("5")}, {X: in("4"), Y: in("8")}, {X: in("12"), Y: in("8")}, {X: in("12"), Y: in("5")}}}}
	for form, want := range map[finish.GlueForm]string{
		finish.GlueBeads: "[[{1/2 1/2} {1/2 11 1/2}] [{10 1/2} {10 4 1/2}] [{10 8 1/2} {10 11 1/2}] [{19 1/2 1/2} {19 1/2 11 1/2}]]",
		finish.GlueDots:  "[[{15 6} {15 6}]]",
	} {
		p := plan.Plan{Fixing: finish.Fixing{Glue: form, GlueSpacing: in("16"), GlueSize: in("1/2")}}
		if got, err := p.Glue(piece); err != nil || fmt.Sprint(got) != want {
			t.Errorf("%v round a hole: %v, %v; want %s", form, got, err, want)
		}
	}
	// Beads stand evenly, from edge to edge; none where there would be more than can be seen.
	for _, row := range []struct {
		width int64
		want  string
	}{{24, "[1/4 8 16 23 3/4]"}, {25, "[1/4 6 1/4 12 1/2 18 3/4 24 3/4]"}, {5, "[1/4 4 3/4]"}, {0, "[]"}, {1 << 20, "[]"}} {
		p := plan.Plan{Fixing: finish.Fixing{Glue: finish.GlueBeads, GlueSpacing: in("8"), GlueSize: in("1/4")}}
		got, err := p.Glue(pieceOf(row.width, 12, [2]int64{}, [2]int64{row.width, 0}, [2]int64{row.width, 12}, [2]int64{0, 12}))
		at := []fraction.Length{}
		for _, bead := range got {
			at = append(at, bead[0].X)
		}
		if err != nil || fmt.Sprint(at) != row.want {
			t.Errorf("beads on %d: %v, %v; want %s", row.width, at, err, row.want)
		}
	}
}
