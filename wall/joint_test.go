package wall

import (
	"context"
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
)

// TestJointsHaveTheirTrueLengths compares the joints of a run of slopes, and the edges of its
// pieces, with the lengths that math.Hypot gives for the lines as taped.
func TestJointsHaveTheirTrueLengths(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		inches := func(low, high int64, label string) fraction.Length {
			return fraction.Of(rapid.Int64Range(low*16, high*16).Draw(t, label), 16)
		}
		profile, _ := groove.Find("beadboard 2")
		run := Run{Name: "stair", Left: End{Kind: Exposed, Lean: inches(-2, 2, "lean")}, Right: End{Kind: Covered}}
		var top, bottom float64
		x := fraction.Length{}
		for i := range rapid.IntRange(2, 5).Draw(t, "stations") {
			if i > 0 {
				x = x.Add(inches(12, 30, "apart"))
			}
			foot := inches(0, 40, "foot")
			h := Height{At: x, Bottom: foot, Top: foot.Add(inches(20, 50, "high"))}
			if i > 0 {
				before := run.Heights[i-1]
				across := h.At.Sub(before.At).Float64()
				top += math.Hypot(across, h.Top.Sub(before.Top).Float64())
				bottom += math.Hypot(across, h.Bottom.Sub(before.Bottom).Float64())
			}
			run.Heights = append(run.Heights, h)
		}
		run.Width = x
		first, last := run.Heights[0], run.Heights[len(run.Heights)-1]
		lean := run.Left.Lean.Float64()
		ends := math.Hypot(first.Top.Sub(first.Bottom).Float64(), lean) + last.Top.Sub(last.Bottom).Float64()
		room := Room{Profile: profile, Runs: []Run{run}, Mark: fraction.Of(1, 16), Priorities: DefaultPriorities(fraction.Inch),
			Stock: []nest.Stock{{Name: "sheet", Width: fraction.Inches(48), Length: fraction.Inches(300)}}}
		for layout, err := range Layouts(context.Background(), room) {
			if err != nil {
				t.Fatal(err)
			}
			got := map[JointKind]float64{}
			for _, j := range layout.Joints {
				got[j.Kind] += j.Length.Float64()
			}
			// A lean moves the foot or the top of the first line, and every corner goes to a mark.
			slack := 0.5
			for kind, want := range map[JointKind]float64{TopJoint: top, BottomJoint: bottom, EndJoint: ends} {
				room := slack
				if kind != EndJoint {
					room += math.Abs(lean) * 3
				}
				if math.Abs(got[kind]-want) > room {
					t.Fatalf("%v: %v in, want %v", kind, got[kind], want)
				}
			}
			seams, edges := 0.0, 0.0
			for _, p := range layout.Pieces {
				edges += p.Edges.Float64()
			}
			for _, j := range layout.Joints {
				if j.Kind == SeamJoint {
					seams += j.Length.Float64()
				}
			}
			if want := got[TopJoint] + got[BottomJoint] + got[EndJoint] + 2*seams; math.Abs(edges-want) > 0.25*float64(1+len(layout.Pieces)) {
				t.Fatalf("edges of the pieces %v in, want %v", edges, want)
			}
			return
		}
	})
}
