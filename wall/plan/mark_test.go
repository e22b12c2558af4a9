package plan_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/wall/choice"
	"example.com/groovewright/wall/plan"
)

// panelOf returns the piece of a room of one panel 40 wide and 30 high with these openings, without gaps.
func panelOf(t *testing.T, openings ...string) plan.Piece {
	t.Helper()
	p := makeFrom(t, `{"profile": {"features": [{"kind": "flat", "width": "1 1/8"}, {"kind": "bead", "width": "3/8"}], "thickness": "1/4"},
		"stock": [{"name": "sheet", "width": "48", "length": "96"}],
		"runs": [{"name": "a", "width": "40", "left": {"kind": "covered"}, "right": {"kind": "covered"},
		"heights": [{"at": "0", "top": "30"}, {"at": "40", "top": "30"}], "openings": [`+strings.Join(openings, ", ")+`]}]}`)
	if len(p.Pieces) != 1 {
		t.Fatalf("%d pieces", len(p.Pieces))
	}
	return p.Pieces[0]
}

// Several notches of a piece are numbered in the order of sawing, a lone one is not; a hole goes by its opening.
func TestNotchesAreNumbered(t *testing.T) {
	const low = `{"name": "low", "kind": "other", "left": "5", "bottom": "-1", "width": "4", "height": "6"}`
	const high = `{"name": "high", "kind": "window", "left": "20", "bottom": "25", "width": "4", "height": "6"}`
	const box = `{"name": "box", "kind": "box", "left": "30", "bottom": "10", "width": "2", "height": "4"}`
	for _, row := range []struct {
		openings []string
		want     map[plan.Waste]bool
	}{
		{[]string{low}, map[plan.Waste]bool{{Kind: cutout.NotchCut}: true}},
		{[]string{low, box}, map[plan.Waste]bool{{Kind: cutout.NotchCut}: true, {Kind: cutout.HoleCut, Opening: "box"}: true}},
		{[]string{low, high, box}, map[plan.Waste]bool{{Kind: cutout.NotchCut, Number: 1}: true, {Kind: cutout.NotchCut, Number: 2}: true, {Kind: cutout.HoleCut, Opening: "box"}: true}},
	} {
		marks := panelOf(t, row.openings...).Marks
		got, number := map[plan.Waste]bool{}, 0
		for _, c := range marks.Order {
			got[c.Waste] = true
			if c.Number > 0 {
				if number++; c.Number != number {
					t.Errorf("%v: notch %d comes as number %d", row.openings, c.Number, number)
				}
			}
			for _, d := range c.Drill {
				if marks.Drill[d].Waste != c.Waste {
					t.Errorf("%v: a starter hole of %v is listed for %v", row.openings, marks.Drill[d].Waste, c.Waste)
				}
			}
		}
		if fmt.Sprint(got) != fmt.Sprint(row.want) {
			t.Errorf("%v: %v, want %v", row.openings, got, row.want)
		}
	}
}

// Corners nearer to each other than the bit is wide share a hole, which is drilled once: a slot as wide as the bit has two.
func TestSharedStarterHoles(t *testing.T) {
	marks := panelOf(t, `{"name": "slot", "kind": "other", "left": "5", "bottom": "5", "width": "3/8", "height": "6"}`).Marks
	if got := fmt.Sprint(marks.Drill[0].At, marks.Drill[1].At, len(marks.Drill), marks.Order[0].Drill); got != "{5 3/16 5 3/16} {5 3/16 10 13/16} 2 [0 1]" {
		t.Error(got)
	}
}

// Corners have names that run on from the outline to the holes, A to H. Of an arch in a hole, 12 wide and 4 high over its springing,
// only its two ends have one, and lie on the true arc: those are corners of the hole too.
func TestNamedCorners(t *testing.T) {
	const hatch = `{"name": "hatch", "kind": "window", "left": "10", "bottom": "8", "width": "12", "height": "14", "rise": "4"}`
	piece := panelOf(t, hatch)
	rings := piece.Marks.Named(in("0"))
	if len(rings) != 2 || len(rings[0]) != 4 || len(rings[1]) != len(piece.Marks.Holes[0].Face) || len(rings[1]) < 7 {
		t.Fatalf("rings of corners: %+v", rings)
	}
	names, unnamed, paths := "", 0, ""
	for _, ring := range rings {
		for _, c := range ring {
			if names += c.Name; c.Name == "" {
				unnamed++
				continue
			}
			paths += fmt.Sprint(c.Paths, " ")
			if c.Back.X.Add(c.Face.X) != in("40") || c.Back.Y != c.Face.Y {
				t.Errorf("corner %s is at %v, from behind at %v", c.Name, c.Face, c.Back)
			}
		}
	}
	if names != "ABCDEFGH" || unnamed != len(rings[1])-4 {
		t.Errorf("names %s, %d corners of %d without one", names, unnamed, len(rings[1]))
	}
	if want := "[face[0] back[0]] [face[1] back[1]] [face[2] back[2]] [face[3] back[3]] [holes[0].face[0] holes[0].back[0]] " +
		"[arcs[0].ends[0].at arcs[0].ends[0].back] [arcs[0].ends[1].at arcs[0].ends[1].back] " +
		fmt.Sprintf("[holes[0].face[%[1]d] holes[0].back[%[1]d]] ", len(rings[1])-1); paths != want {
		t.Errorf("named corners are %s, want %s", paths, want)
	}
	at := map[plan.Point]bool{}
	for _, c := range rings[1] {
		if c.Name != "" {
			at[c.Face] = true
		}
	}
	for _, want := range []plan.Point{{X: in("10"), Y: in("8")}, {X: in("22"), Y: in("8")}, {X: in("10"), Y: in("22")}, {X: in("22"), Y: in("22")}} { // it springs at 8 + 14
		if !at[want] {
			t.Errorf("no named corner at %v: %v", want, at)
		}
	}
	piece.Marks.Holes[0].Back = piece.Marks.Holes[0].Back[:1]
	if rings := piece.Marks.Named(in("0")); len(rings[1]) != 1 {
		t.Errorf("%d corners of a hole have a place on the back, of 1", len(rings[1]))
	}
}

// Arches that come out over a top at 30: all their ends lie on the circle, also where the corners that stand for them do not. One of 24 by 8
// has the radius 13 about a place 5 below its springing at 23; 12 above that place the circle is 5 to either side. One of 9 3/4 by 1 5/8 has
// 65/8 about a place 52/8 below its springing at 29 1/2; there it is 39/8 to either side, and at 56/8 33/8.
func TestEndsOfAnArc(t *testing.T) {
	at := func(x, y string) plan.Point { return plan.Point{X: in(x), Y: in(y)} }
	for _, row := range []struct {
		left, width, height, rise string
		want                      []plan.Point
	}{
		{"8", "24", "15", "8", []plan.Point{at("25", "30"), at("32", "23"), at("8", "23"), at("15", "30")}},
		{"15 1/8", "9 3/4", "21 1/2", "1 5/8", []plan.Point{at("24 1/8", "30"), at("24 7/8", "29 1/2"), at("15 1/8", "29 1/2"), at("15 7/8", "30")}},
	} {
		marks := panelOf(t, fmt.Sprintf(`{"name": "hatch", "kind": "window", "left": %q, "bottom": "8", "width": %q, "height": %q, "rise": %q}`,
			row.left, row.width, row.height, row.rise)).Marks
		if len(marks.Arcs) != 1 {
			t.Fatalf("arcs %+v", marks.Arcs)
		}
		var got []plan.Point
		for _, end := range marks.Arcs[0].Ends {
			got = append(got, end.At)
			if want := (plan.Point{X: in("40").Sub(end.At.X), Y: end.At.Y}); end.Back != want {
				t.Errorf("an end at %v, from behind at %v, want %v", end.At, end.Back, want)
			}
		}
		if !slices.Equal(got, row.want) || marks.Face[marks.Arcs[0].Ends[0].Corner] == got[0] {
			t.Errorf("corners at %v, ends at %v, want them at %v", marks.Face, got, row.want)
		}
	}
}

// A box that is wider than any sheet has a seam through it, as there is no other way: a rule is broken, and the plan says how many.
func TestBrokenRulesAreDoubted(t *testing.T) {
	j := jobFrom(t, small(`"runs": [{"name": "a", "width": "60", "left": {"kind": "covered"}, "right": {"kind": "covered"},
		"heights": [{"at": "0", "top": "30"}, {"at": "60", "top": "30"}], "openings": [{"name": "box", "kind": "box", "left": "5", "bottom": "10", "width": "50", "height": "4"}]}]`))
	p, err := plan.Make(t.Context(), j, plan.Options{Budget: choice.Budget{Layouts: 1, Nodes: 1000}})
	if err != nil {
		t.Fatal(err)
	}
	counts := map[string]string{}
	for _, w := range p.Warnings {
		counts[string(w.Kind)] = fmt.Sprint(w.Path, w.Counts)
	}
	if got := counts[string(plan.RulesBroken)]; got != "Runs [1]" {
		t.Errorf("doubts %v", counts)
	}
}

// What lies beside an edge of the rectangle by less than the snap is not sawn again: 1102 mm have 0.011 in more than 43 3/8.
func TestNothingIsSawnThatNoSawCanTell(t *testing.T) {
	for middle, sawn := range map[string]bool{"1102 mm": false, "43 7/16": true} {
		p := makeFrom(t, `{"profile": "plain sheet", "stock": [{"name": "sheet", "width": "48", "length": "96"}],
			"runs": [{"name": "wall", "width": "40", "left": {"kind": "covered"}, "right": {"kind": "covered"},
				"heights": [{"at": "0", "top": "43 3/8"}, {"at": "20", "top": "`+middle+`"}, {"at": "40", "top": "43 3/8"}]}]}`)
		if got := len(p.Pieces[0].Marks.Order) > 0; got != sawn {
			t.Errorf("%s: sawn %v, want %v", middle, got, sawn)
		}
	}
}
