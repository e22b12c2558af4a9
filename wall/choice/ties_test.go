package choice

import (
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

// A room of one run, 90 in wide, in sheets of 48 in, laid out by hand in two panels, each cut from a
// sheet of its own.
func TestTieBreak(t *testing.T) {
	in := fraction.Inches
	room := Problem{Stock: []nest.Stock{{Name: "sheet", Width: in(48), Length: in(96)}}}
	laid := func(seam int64, x1, x2 int64, turned bool) Choice {
		c := Choice{Layout: wall.Layout{Runs: []wall.RunLayout{{Panels: []wall.Panel{
			{Number: 1, Left: in(0), Right: in(seam)}, {Number: 2, Left: in(seam), Right: in(90)}}}}}}
		for i, p := range c.Layout.Runs[0].Panels {
			shape, err := cutout.NewShape(cutout.Rectangle(in(0), in(0), p.Right.Sub(p.Left), in(20)))
			if err != nil {
				t.Fatal(err)
			}
			c.Layout.Pieces = append(c.Layout.Pieces, wall.Piece{Number: i + 1, Panel: i + 1, At: cutout.Point{X: p.Left}, Shape: shape})
			c.Nest.Sheets = append(c.Nest.Sheets, nest.Sheet{Placements: []nest.Placement{{Part: i + 1, X: in([]int64{x1, x2}[i]), Turned: turned}}})
		}
		return c
	}
	for _, test := range []struct {
		name  string
		c     Choice
		want  [3]int // pieces, sawn edges at the seam, ripped sides
		mates [2]bool
	}{
		{"a whole sheet and one from its left edge", laid(48, 0, 0, false), [3]int{2, 0, 1}, [2]bool{true, true}},
		{"two narrower ones from the edges that meet", laid(45, 3, 0, false), [3]int{2, 0, 2}, [2]bool{true, true}},
		{"two from left edges", laid(45, 0, 0, false), [3]int{2, 1, 2}, [2]bool{false, true}},
		{"two out of the middle", laid(45, 1, 1, false), [3]int{2, 2, 4}, [2]bool{false, false}},
		{"turned ones have their right edge where the sheet's left one is", laid(45, 0, 3, true), [3]int{2, 0, 2}, [2]bool{true, true}},
	} {
		own := test.c.OwnEdges(room)
		if got, mates := test.c.tieBreak(room), [2]bool{own[1].Right, own[2].Left}; got != test.want || mates != test.mates {
			t.Errorf("%s: %v, mates %v; want %v, %v", test.name, got, mates, test.want, test.mates)
		}
	}

	// With 1 in left to scribe on its left edge the first panel is sawn 46 in wide: from 2 in on to the
	// right edge of its sheet.
	c := laid(45, 2, 0, false)
	c.Layout.Pieces[0].Scribe = &wall.Scribe{Edge: wall.Left, Width: in(1)}
	if own := c.OwnEdges(room)[1]; own != (Sides{false, true}) {
		t.Errorf("what is left to scribe: %v", own)
	}
}
