package wall

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
)

// TestClosingPieces lists by panel, from left to right, which pieces close a run and what is left on
// them to scribe. The pattern repeats every 3 in, sheets are 24 wide.
func TestClosingPieces(t *testing.T) {
	end := func(kind EndKind) End { return End{Kind: kind} }
	door := func(left, right string) Opening {
		return Opening{Name: "door to " + right, Outline: cutout.Rectangle(inches(left), inches("-1"), inches(right).Sub(inches(left)), inches("40"))}
	}
	for _, test := range []struct {
		name, width string
		left, right End
		openings    []Opening
		want        string
	}{
		{"the last in the direction of work, at its far edge", "61", end(Exposed), end(Covered), nil, "1, 2, 3 closing, right 1/4"},
		{"from the right", "60", end(Covered), end(Exposed), nil, "3 closing, left 1/4, 2, 1"},
		{"nothing at an exposed end", "60", end(Exposed), end(Exposed), nil, "1, 2, 3 closing"},
		{"nor at an outside corner", "60", end(Exposed), end(OutsideCorner), nil, "1, 2, 3 closing"},
		{"beside a door too", "70", end(Exposed), end(Covered), []Opening{door("31", "50")}, "1, 2 closing, right 1/4, 3 closing, right 1/4"},
		{"between two doors at the far one", "70", end(Exposed), end(Covered), []Opening{door("10", "30"), door("40", "60")},
			"1 closing, right 1/4, 2 closing, right 1/4, 3 closing, right 1/4"},
		{"beside a door where the far end is seen", "60", end(Exposed), end(Exposed), []Opening{door("20", "40")}, "1 closing, right 1/4, 2 closing, left 1/4"},
		// Both ends are 23 7/8 apart: of the whole sheet 1/8 is left.
		{"as much as a sheet has", "23 7/8", end(Exposed), end(Covered), nil, "1 closing, right 1/8"},
		{"nothing where a sheet is used whole", "48", end(Exposed), end(Covered), nil, "1, 2 closing"},
		{"alone, with nothing to scribe, its place is measured before it is sawn", "24", end(Exposed), end(Covered), nil, "1"},
		{"so between two seen ends", "10", end(Exposed), end(Exposed), nil, "1"},
		{"and where a door takes the rest of the run", "34", end(Exposed), end(Covered), []Opening{door("24", "34")}, "1"},
		// The right end shows phase 0, so the left edge shows 1/8, which is 1/8 from the sheet's left edge.
		{"before a panel that is on the wall, at its side", "65 up 21 to 45", end(Exposed), end(Covered), nil, "1 closing, right 1/4, 2 closing, right 1/4"},
		{"also where the end is seen", "48 up 21 to 48", end(Exposed), end(Exposed), nil, "1 closing, right 1/4"},
		{"and worked from the right", "70 up 20 to 49", end(Covered), end(Exposed), nil, "2 closing, left 1/4, 1 closing, left 1/4"},
		{"as much as lies before its place in the pattern", "23 7/8", end(Covered), end(Exposed), nil, "1 closing, left 1/8"},
	} {
		t.Run(test.name, func(t *testing.T) {
			width, up, _ := strings.Cut(test.width, " up ")
			room := Room{Profile: profiles[0], Mark: inches("1/16"), Scribe: inches("1/4"), Priorities: DefaultPriorities(fraction.Inch),
				Stock: []nest.Stock{{Name: "sheet", Width: inches("24"), Length: inches("96")}},
				Runs: []Run{{Name: "wall", Width: inches(width), Left: test.left, Right: test.right, Openings: test.openings,
					Heights: []Height{{Top: inches("30")}, {At: inches(width), Top: inches("30")}}}}}
			if from, to, ok := strings.Cut(up, " to "); ok {
				room.Installed = []Installed{{Left: inches(from), Right: inches(to)}}
			}
			for l, err := range Layouts(context.Background(), room) {
				if err != nil {
					t.Fatal(err)
				}
				var got []string
				for _, panel := range l.Runs[0].Panels {
					piece := l.Pieces[panel.Pieces[0]-1]
					text := piece.Label
					if piece.Closing {
						text += " closing"
					}
					part, err := piece.Part()
					_, high := piece.Shape.Bounds()
					wider, earlier := part.Width.Sub(high.X), piece.LeftPhase.Sub(part.LeftPhase)
					if s := piece.Scribe; s != nil {
						text += fmt.Sprint(", ", s.Edge, " ", s.Width)
						if wider = wider.Sub(s.Width); s.Edge == Left {
							earlier = earlier.Sub(s.Width)
						}
					}
					if got = append(got, text); err != nil || !wider.IsZero() || !earlier.IsZero() {
						t.Errorf("piece %s is cut from %v, error %v", text, part, err)
					}
				}
				if diff := cmp.Diff(test.want, strings.Join(got, ", ")); diff != "" {
					t.Errorf("(-want +got)\n%s", diff)
				}
				break
			}
		})
	}
}
