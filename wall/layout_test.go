package wall_test

import (
	"fmt"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall"
)

func in(s string) fraction.Length { return fraction.MustParse(s) }

// bead is the 1-1/2 in bead of the ready profiles in plain figures.
func bead() groove.Profile {
	return groove.Profile{Name: "bead", Thickness: in("1/4"), Features: []groove.Feature{
		{Kind: groove.Flat, Width: in("1 1/4")},
		{Kind: groove.Bead, Width: in("1/4"), Depth: in("1/16")},
	}}
}

func level(width, height string) []wall.Height {
	return []wall.Height{{Top: in(height)}, {At: in(width), Top: in(height)}}
}

func kitchen() wall.Room {
	return wall.Room{
		Profile: bead(), Mark: in("1/16"), Priorities: wall.DefaultPriorities(),
		Sheets: []wall.Sheet{{Name: "sheet", Width: in("48"), Length: in("95 1/2")}},
		Gaps:   wall.Gaps{Top: in("1/8"), Bottom: in("1/8"), Side: in("1/16"), Seam: in("1/16"), Box: in("1/16"), Window: in("1/8")},
		Runs: []wall.Run{
			{Name: "sink", Width: in("93 3/8"), Left: wall.End{Kind: wall.Exposed}, Right: wall.End{Kind: wall.InsideCorner},
				Heights: []wall.Height{{Top: in("18")}, {At: in("40"), Top: in("18 1/8")}, {At: in("93 3/8"), Top: in("18 1/4")}},
				Openings: []wall.Opening{
					{Name: "outlet", Kind: wall.Box, Outline: cutout.Rectangle(in("12"), in("6"), in("2 1/4"), in("3 3/4"))},
					{Name: "window", Kind: wall.Window, Outline: cutout.Rectangle(in("30"), in("6"), in("36"), in("30"))},
				}},
			{Name: "range", Width: in("120"), Left: wall.End{Kind: wall.InsideCorner}, Right: wall.End{Kind: wall.InsideCorner},
				Heights: []wall.Height{{Top: in("18")}, {At: in("45"), Top: in("18")}, {At: in("45"), Top: in("30")}, {At: in("75"), Top: in("30")}, {At: in("75"), Top: in("18")}, {At: in("120"), Top: in("18")}}},
			{Name: "side", Width: in("61 5/16"), Left: wall.End{Kind: wall.InsideCorner}, Right: wall.End{Kind: wall.Exposed}, Heights: level("61 5/16", "18")},
		},
	}
}

func TestKitchen(t *testing.T) {
	n := 0
	for l, err := range wall.Layouts(kitchen()) {
		if err != nil {
			t.Fatal(err)
		}
		if n < 2 {
			fmt.Println(l.Total, l.Broken, len(l.Pieces))
			for _, r := range l.Runs {
				fmt.Println(r.Limits, r.SetOut, r.Corner, r.Panels)
			}
			for _, b := range l.Blemishes {
				fmt.Println("  ", b.Run, b.Where, b.At, b.Kind, b.Amount, b.Height, b.Weight, b.Cost())
			}
			for _, p := range l.Pieces {
				fmt.Println("  ", p.Number, p.Label, p.Run, p.At, p.LeftPhase, p.Shape.Outline, p.Shape.Holes, p.Holes)
			}
		}
		n++
		if n > 200 {
			break
		}
		fmt.Print(" ", l.Total)
	}
}

func BenchmarkFirstKitchen(b *testing.B) {
	for b.Loop() {
		for _, err := range wall.Layouts(kitchen()) {
			if err != nil {
				b.Fatal(err)
			}
			break
		}
	}
}
