package finish_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
)

// The figures are the defaults that the docs of Materials state, and what is given in their place.
func TestFix(t *testing.T) {
	in := fraction.MustParse
	sheet, board := groove.Profile{Thickness: in("1/4")}, groove.Profile{Thickness: in("3/4"), Boards: true}
	box := []finish.Box{{Name: "socket", Gangs: 1}, {Name: "up already", Gangs: 1, Up: true}}
	for _, row := range []struct {
		name string
		work finish.Work
		m    finish.Materials
		want finish.Fixing
	}{
		{"thin sheets by custom", finish.Work{Profile: sheet}, finish.Materials{},
			finish.Fixing{Wall: in("1/2"), Supports: in("16"), Glue: finish.GlueCustom, Nails: finish.Brads, Edge: in("6"), Field: in("12"), Inset: in("3/8"), Clear: in("3")}},
		{"a full hold of beads and no nails", finish.Work{Profile: sheet},
			finish.Materials{Adhesive: finish.Adhesive{Form: finish.GlueBeads, Hold: finish.FullHold}, Nails: finish.Nails{None: true}},
			finish.Fixing{Wall: in("1/2"), Supports: in("16"), Glue: finish.GlueBeads, GlueSize: in("3/8"), GlueSpacing: in("8")}},
		{"boards on strips, a box behind them", finish.Work{Profile: board, Boxes: box}, finish.Materials{Furring: finish.Furring{Thickness: "3/4"},
			Extenders: []finish.Extender{{Depth: "1 1/2"}}},
			finish.Fixing{Wall: in("1/2"), Strips: in("3/4"), Supports: in("16"), Level: true, Glue: finish.NoGlue, Nails: finish.FinishNails, Edge: in("6"), Field: in("12"), Inset: in("3/8"), Clear: in("3"),
				Boxes: []finish.BoxFixing{{Name: "socket", Behind: in("1 1/2"), Extender: in("1 1/2")}}}},
		{"as far off edges and boxes as the job says", finish.Work{Profile: sheet}, finish.Materials{Nails: finish.Nails{Inset: "1/2", Clear: "0"}},
			finish.Fixing{Wall: in("1/2"), Supports: in("16"), Glue: finish.GlueCustom, Nails: finish.Brads, Edge: in("6"), Field: in("12"), Inset: in("1/2")}},
		{"what cannot be read is as it was left out", finish.Work{Profile: sheet}, finish.Materials{House: finish.House{Studs: "16 yards"}, Nails: finish.Nails{Edge: "six", Field: "-12"}},
			finish.Fixing{Wall: in("1/2"), Supports: in("16"), Glue: finish.GlueCustom, Nails: finish.Brads, Edge: in("6"), Field: in("12"), Inset: in("3/8"), Clear: in("3")}},
		{"millimetres", finish.Work{Units: fraction.Millimetre, Profile: sheet}, finish.Materials{Adhesive: finish.Adhesive{Form: finish.NoGlue}},
			finish.Fixing{Wall: in("12.5 mm"), Supports: in("400 mm"), Glue: finish.NoGlue, Nails: finish.FinishNails, Edge: in("150 mm"), Field: in("300 mm"), Inset: in("10 mm"), Clear: in("75 mm")}},
	} {
		got, err := finish.Fix(row.work, row.m)
		if diff := cmp.Diff(row.want, got, cmp.Comparer(func(a, b fraction.Length) bool { return a == b })); diff != "" || err != nil {
			t.Errorf("%s: %v (-want +got)\n%s", row.name, err, diff)
		}
	}
}
