package plan_test

import (
	"fmt"
	"regexp"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/plan"
)

func ring(lengths ...string) (points []plan.Point) {
	for i := 0; i+1 < len(lengths); i += 2 {
		points = append(points, plan.Point{X: fraction.MustParse(lengths[i]), Y: fraction.MustParse(lengths[i+1])})
	}
	return points
}

// No two things of a list have the same letters, and none looks like a leaf or a piece, which have figures.
func TestLettersTellApart(t *testing.T) {
	seen := map[string]bool{}
	for i := range 1000 {
		name := plan.CornerName(i)
		if seen[name] || !regexp.MustCompile("^[A-HJKMNPR-Z]+$").MatchString(name) {
			t.Errorf("thing %d is %q", i, name)
		}
		seen[name] = true
	}
}

// A corner 1/256 off the straight line between its neighbors has no letter where cuts may be 1/64 off, and has one where they
// may not; a level hole has none at all, and a slanted one has.
func TestCornersOnStraightLines(t *testing.T) {
	level, slanted := ring("2", "2", "4", "2", "4", "6", "2", "6"), ring("6", "2", "8", "3", "8", "6", "6", "6")
	outline := ring("0", "0", "10", "0", "10", "10", "5", "2561/256", "0", "10")
	m := plan.Marks{Corners: cutout.Corners{Face: outline, Back: outline}, Holes: []plan.HoleMarks{
		{Opening: "a", Corners: cutout.Corners{Face: level, Back: level}}, {Opening: "b", Corners: cutout.Corners{Face: slanted, Back: slanted}}}}
	for snap, want := range map[string]string{"1/64": "[A B C  D][   ][E F G H]", "1/512": "[A B C D E][   ][F G H J]"} {
		got := ""
		for _, ring := range m.Named(fraction.MustParse(snap)) {
			var names []string
			for _, c := range ring {
				names = append(names, c.Name)
			}
			got += fmt.Sprint(names)
		}
		if got != want {
			t.Errorf("%s: %s, want %s", snap, got, want)
		}
	}
}

// The four sides of a level hole have one number, the lines of any other waste one each.
func TestStrokes(t *testing.T) {
	side := func(points ...string) plan.SawCut { return plan.SawCut{Points: ring(points...)} }
	square := []plan.SawCut{side("0", "0", "0", "4"), side("2", "0", "2", "4"), side("0", "4", "2", "4"), side("0", "0", "2", "0")}
	slanted := append([]plan.SawCut{side("0", "0", "1", "4")}, square[1:]...)
	hole, notch := plan.Waste{Opening: "box"}, plan.Waste{Kind: cutout.NotchCut}
	for _, row := range []struct {
		order plan.Cutting
		want  int
	}{{plan.Cutting{Waste: hole, Saw: square}, 1}, {plan.Cutting{Waste: hole, Saw: slanted}, 4}, {plan.Cutting{Waste: notch, Saw: square[:3]}, 3}} {
		got := plan.Strokes(row.order, row.order)
		if len(got) != 2*row.want || got[0].Sides() != (row.want == 1) {
			t.Errorf("%v: %d strokes, sides %v, want %d each", row.order.Waste, len(got), got[0].Sides(), row.want)
		}
	}
}
