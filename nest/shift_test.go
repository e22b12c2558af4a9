package nest_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
)

// Pieces move by whole repeats away from cuts that take off less than a saw can, and to the sides of
// the sheet. A blade is an eighth of an inch wide.
func TestPiecesMoveByWholeRepeats(t *testing.T) {
	for _, test := range []struct {
		name          string
		phase, widths string // of the parts at their left edges, and their widths
		want          string // places from the left
	}{
		{"a sixteenth at the left", "1/16", "40", "1 5/16"},
		{"a sixteenth at the left, no repeat to spare", "1/16", "47 1/2", "1/16"},
		{"its own side at the left", "0", "40", "0"},
		{"to the right side", "1/2", "40", "8"},
		{"what is in the way moves too", "1/16", "20, 20", "1 5/16, 22 9/16"},
	} {
		t.Run(test.name, func(t *testing.T) {
			p := nest.Problem{
				Stock:   []nest.Stock{{Name: "sheet", Width: inches("48"), Length: inches("96")}},
				Pattern: nest.Pattern{Pitch: inches("1 1/4")},
				Saw:     nest.Saw{Kerf: inches("1/8"), LeastRip: inches("1/8")},
			}
			for i, w := range strings.Split(test.widths, ", ") {
				p.Parts = append(p.Parts, nest.Part{Number: i + 1, Width: inches(w), Height: inches("90"), LeftPhase: inches(test.phase)})
			}
			r, err := nest.Search(t.Context(), p, nest.Budget{})
			if err != nil || len(r.Sheets) != 1 {
				t.Fatalf("%d sheets, %v", len(r.Sheets), err)
			}
			var got []string
			for _, at := range r.Sheets[0].Placements {
				got = append(got, fraction.Tape{}.Format(at.X))
			}
			if slices.Sort(got); strings.Join(got, ", ") != test.want {
				t.Errorf("places %q, want %q", got, test.want)
			}
		})
	}
}
