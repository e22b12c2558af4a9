package plan_test

import (
	"testing"

	"example.com/groovewright/finish"
)

// TestStripsBehindBoards is worked by hand. Of eight boards 5 1/4 in wide and 32 in high two have a
// hatch 10 1/2 wide from 8 to 20 up between them. Six cross level strips 16 in apart three times,
// the stubs below and above the hatch (8 and 12 in high) twice each: 5 1/4 × (6×3 + 2×2 + 2×2) =
// 136 1/2 in, and 24 along the sides of the hatch: 160 1/2 in, a tenth for waste, 176.55 in =
// 14.7125 ft. They cross studs 16 in apart 12 times and are two strips; 3/4 strip + 1/2 wall + 3/4
// in the stud are 2 in.
func TestStripsBehindBoards(t *testing.T) {
	p := makeFrom(t, `{
		"profile": {"name": "boards 5 1/4", "features": [{"kind": "flat", "width": "5"}, {"kind": "groove", "width": "1/4", "depth": "1/8"}], "thickness": "3/4", "boards": true},
		"stock": [{"name": "board", "width": "5 1/4", "length": "96"}],
		"runs": [{
			"name": "hall", "width": "42", "left": {"kind": "covered"}, "right": {"kind": "covered"},
			"heights": [{"at": "0", "top": "32"}, {"at": "42", "top": "32"}],
			"openings": [{"name": "hatch", "kind": "window", "left": "10 1/2", "bottom": "8", "width": "10 1/2", "height": "12"}]
		}],
		"finish": {"house": {"datum": "0", "material": "solid wood"}, "furring": {"thickness": "3/4"}}
	}`)
	want := map[finish.Item]string{finish.ItemFurringStrips: "14.72 ft", finish.ItemStripNails: "14 pieces"}
	for _, row := range p.List.Rows {
		if quantity, ours := want[row.Item]; ours {
			if got := (finish.Figure{Value: row.Quantity, Unit: row.Unit}).String(); got != quantity {
				t.Errorf("%s: %s, want %s", row.Item, got, quantity)
			}
			if item := row.Item; item == finish.ItemStripNails && row.Size[0].String() != "2 in" {
				t.Errorf("%s of %s, want 2 in", item, row.Size)
			}
			delete(want, row.Item)
		}
	}
	if len(want) > 0 {
		t.Errorf("not on the list: %v", want)
	}
}

// TestBoardsLieOnTheStripsOfTheirWall is worked by hand. Two boards 32 in high and two of 33, 5 1/4 in wide, stand on
// one wall, whose level strips are so at 11 and 22 in, 33 being more than two times 16: each board lies on four, at
// its foot and top and on these, 16 × 5 1/4 = 84 in in all, 7 ft; by its own height a board of 32 would lie on three.
// A bead of 3/8 in takes π/4 × 9/64 × 84 = 9.28 in3 = 5.14 fl oz (231 in3 a gallon of 128 fl oz), with a tenth for
// waste 5.66.
func TestBoardsLieOnTheStripsOfTheirWall(t *testing.T) {
	p := makeFrom(t, `{
		"profile": {"name": "boards 5 1/4", "features": [{"kind": "flat", "width": "5"}, {"kind": "groove", "width": "1/4", "depth": "1/8"}], "thickness": "3/4", "boards": true},
		"stock": [{"name": "board", "width": "5 1/4", "length": "96"}],
		"runs": [{
			"name": "hall", "width": "21", "left": {"kind": "covered"}, "right": {"kind": "covered"},
			"heights": [{"at": "0", "top": "32"}, {"at": "10 1/2", "top": "32"}, {"at": "10 1/2", "top": "33"}, {"at": "21", "top": "33"}]
		}],
		"finish": {"house": {"datum": "0", "material": "solid wood"}, "furring": {"thickness": "3/4"}, "adhesive": {"boards": "beads"}}
	}`)
	want := map[finish.Item]string{finish.ItemFurringStrips: "7.7 ft", finish.ItemAdhesive: "5.7 fl oz", finish.ItemBoardNails: "18 nails"}
	for _, row := range p.List.Rows {
		if got := (finish.Figure{Value: row.Quantity, Unit: row.Unit}).String(); want[row.Item] != "" && got != want[row.Item] {
			t.Errorf("%s: %s, want %s", row.Item, got, want[row.Item])
		}
		delete(want, row.Item)
	}
	if len(want) > 0 {
		t.Errorf("not on the list: %v", want)
	}
	for _, piece := range p.Pieces {
		beads, err := p.Glue(piece)
		if err != nil || len(beads) != 4 {
			t.Errorf("piece %s: %d beads, want 4 (%v)", piece.Label, len(beads), err)
		}
	}
}
