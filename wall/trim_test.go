package wall

import (
	"slices"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
)

// A joint has the trim of its run, else that of the room; other joints and runs that there are not have none.
func TestTrimOf(t *testing.T) {
	trims := func(name string) Trims {
		return Trims{Top: &EdgeTrim{Name: name + " top"}, Bottom: &EdgeTrim{Name: name + " bottom"}, Casing: &EdgeTrim{Name: name + " casing"}}
	}
	room := &Room{Trim: trims("room"), Runs: []Run{{}, {Trim: trims("run")}}}
	for kind, name := range map[JointKind]string{TopJoint: "top", BottomJoint: "bottom", OpeningJoint: "casing", EndJoint: "", BoxJoint: "", SeamJoint: ""} {
		field := map[string]string{"top": "Top", "bottom": "Bottom", "casing": "Casing"}[name]
		for r, of := range []string{"room ", "run "} {
			switch got, path := room.TrimOf(r, kind); {
			case name == "" && got != nil, name != "" && (got == nil || got.Name != of+name):
				t.Errorf("joint %v of run %d: %v", kind, r, got)
			case got != nil && path.String() != []string{"Trim.", "Runs[1].Trim."}[r]+field:
				t.Errorf("joint %v of run %d: path %v", kind, r, path)
			}
		}
		for _, r := range []int{-1, 2} {
			if got, path := room.TrimOf(r, kind); got != nil || path != nil {
				t.Errorf("run %d has %v at %v", r, got, path)
			}
		}
		if got, _ := (*Room)(nil).TrimOf(0, kind); got != nil {
			t.Errorf("no room has %v", got)
		}
	}
}

// A stretch whose left end butts shares the work of the whole one where they are the same but for the first panel.
func TestShearedStretches(t *testing.T) {
	in := fraction.Inches
	run := func(name string, left, right EndKind) Run {
		return Run{Name: name, Width: in(70), Left: End{Kind: left}, Right: End{Kind: right}, Heights: []Height{{Top: in(40)}, {At: in(70), Top: in(40)}},
			Openings: []Opening{{Name: "window", Kind: Window, Outline: cutout.Rectangle(in(20), in(10), in(15), in(20))}}}
	}
	room := Room{Profile: profiles[0], Mark: fraction.Of(1, 16), Priorities: DefaultPriorities(fraction.Inch),
		Stock: []nest.Stock{{Name: "sheet", Width: in(48), Length: in(96)}}, Runs: []Run{run("a", Covered, InsideCorner), run("b", InsideCorner, Covered)}}
	m, err := NewModel(t.Context(), room)
	if err != nil {
		t.Fatal(err)
	}
	cut, err := m.stretch(1, -1, 0, fitting{buttsLeft: true})
	if err != nil || cut.whole == nil || cut.whole.shorn != cut || !cut.whole.shearsTo(cut) {
		t.Fatalf("the stretch that butts is by itself: %v", err)
	}
	if len(cut.region.columns) != 3 {
		t.Fatalf("%d columns, want 3", len(cut.region.columns))
	}
	for _, change := range []func(c []column){
		func(c []column) { c[1].left = c[1].left.Add(in(1)) },
		func(c []column) { c[2].cells = nil },
		func(c []column) { c[1].cells = c[1].cells[:1] },
	} {
		kept := cut.region.columns
		cut.region.columns = slices.Clone(kept)
		if change(cut.region.columns); cut.whole.shearsTo(cut) {
			t.Error("a stretch with other columns is the same")
		}
		cut.region.columns = kept
	}
}
