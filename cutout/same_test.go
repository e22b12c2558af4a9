package cutout_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fractiontest"
)

// TestShapesStayTheSame holds what is calculated of drawn pieces of walls. After a change read what differs, and use -update.
func TestShapesStayTheSame(t *testing.T) {
	var b strings.Builder
	b.WriteString("Drawn pieces of walls: corners and area; snapped; cells, uprights, marks, how it is cut, where it is weak; of each how many and the\n" +
		"beginning of its hash.\n\n")
	hash := func(name string, n int, x any, err error) {
		text, wrong := json.Marshal(x)
		if wrong != nil {
			t.Fatal(wrong)
		}
		fmt.Fprintf(&b, " %s %d %s", name, n, fractiontest.Hash(fmt.Append(text, err)))
	}
	pieces := rapid.Custom(drawPieces)
	for i := range 40 {
		exact := pieces.Example(i)
		for _, s := range exact {
			area, err := s.Area()
			fmt.Fprintf(&b, "%d: %d, %v, %v;", i, len(pointsOf(s)), area, err)
			cells, err := s.Cells()
			hash("cells", len(cells), cells, err)
			hash("uprights", len(s.Uprights()), s.Uprights(), nil)
			marks, err := s.Marks()
			hash("marks", len(marks.Holes), marks, err)
			cuttings, err := s.Cuttings(of(3, 8), of(1, 16))
			hash("cuttings", len(cuttings), cuttings, err)
			spots, err := s.WeakSpots(cutout.Limits{Strip: in(2), Corner: in(3), LegRatio: fraction.NewRatio(6, 1)})
			hash("weak", len(spots), spots, err)
			b.WriteByte('\n')
		}
		for _, tolerance := range []int64{1, 4} {
			snapped, err := cutout.Snap(exact, of(1, 8), of(1, 16*tolerance), func(cutout.Point) bool { return false })
			hash("snapped", len(snapped), snapped, err)
		}
		b.WriteByte('\n')
	}
	fractiontest.Golden(t, "testdata/same.txt", b.String())
}
