package wall

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/cutout"
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

// TestDoorsAndStepsPartAJoint: a foot goes on along a slope, and ends at a door and at a step; a door has two sides, a window within the
// wall four, and one under the top three.
func TestDoorsAndStepsPartAJoint(t *testing.T) {
	profile, _ := groove.Find("plain sheet")
	in := fraction.Inches
	level := func(at, bottom, top int64) Height { return Height{At: in(at), Bottom: in(bottom), Top: in(top)} }
	opening := func(name string, kind OpeningKind, x, y, width, height int64) Opening {
		return Opening{Name: name, Kind: kind, Outline: cutout.Rectangle(in(x), in(y), in(width), in(height))}
	}
	run := Run{Name: "wall", Width: in(150), Left: End{Kind: Covered}, Right: End{Kind: Covered},
		Heights: []Height{level(0, 0, 40), level(20, 0, 44), level(60, 0, 44), level(60, 4, 48), level(150, 4, 48)},
		Openings: []Opening{opening("door", Other, 30, 0, 20, 60), opening("window", Window, 70, 20, 10, 8), opening("high window", Window, 100, 40, 10, 20),
			opening("box", Box, 130, 20, 2, 4)}}
	room := Room{Profile: profile, Runs: []Run{run}, Mark: fraction.Of(1, 16), Priorities: DefaultPriorities(fraction.Inch),
		Stock: []nest.Stock{{Name: "sheet", Width: in(48), Length: in(96)}}}
	want := map[string]string{"bottom": "[30 10 90] 130", "top": "[50 10 40 40]", "step": "[4 4] 8", "opening door": "[44 44] 88", "opening window": "[8 8 10 10] 36",
		"opening high window": "[8 8 10] 26", "box box": "[4 4 2 2] 12"}
	for layout, err := range Layouts(context.Background(), room) {
		if err != nil {
			t.Fatal(err)
		}
		for _, j := range layout.Joints {
			name := strings.TrimSpace(j.Kind.String() + " " + j.Opening)
			if j.Kind == TopJoint { // its slope is not rational: 20.396 in over 20, and 10 level
				if len(j.Parts) != 4 || j.Parts[0].Float64() < 30.39 || j.Parts[0].Float64() > 30.4 {
					t.Errorf("top: %v", j.Parts)
				}
			} else if got := fmt.Sprint(j.Parts, " ", j.Length); want[name] != "" && got != want[name] {
				t.Errorf("%s: %s, want %s", name, got, want[name])
			}
			delete(want, name)
		}
		break
	}
	if len(want) > 0 {
		t.Errorf("no joints: %v", want)
	}
}
