package plan_test

import (
	"fmt"
	"testing"

	"example.com/groovewright/wall/plan"
)

// What of an outline is worth a template: a notch and a curve, not an edge that follows the wall nor the meeting of two.
func TestNotches(t *testing.T) {
	type corner = [2]int64
	for _, row := range []struct {
		name  string
		piece plan.Piece
		want  string // number of the first corner and how many there are
	}{
		{"a rectangle", pieceOf(40, 20, corner{}, corner{40, 0}, corner{40, 20}, corner{0, 20}), ""},
		{"a notch at a corner", pieceOf(40, 20, corner{}, corner{40, 0}, corner{40, 15}, corner{30, 15}, corner{30, 20}, corner{0, 20}), "2:3 "},
		{"one where the outline begins", pieceOf(40, 20, corner{5, 0}, corner{40, 0}, corner{40, 20}, corner{0, 20}, corner{0, 4}, corner{5, 4}), "4:3 "},
		{"one in an edge, and one at a corner", pieceOf(40, 20, corner{}, corner{10, 0}, corner{10, 6}, corner{20, 6}, corner{20, 0}, corner{40, 0},
			corner{40, 15}, corner{30, 15}, corner{30, 20}, corner{0, 20}), "1:4 6:3 "},
		{"a top that falls by one in ten", pieceOf(40, 20, corner{}, corner{40, 0}, corner{40, 16}, corner{0, 20}), ""},
		{"a corner cut off straight", pieceOf(40, 20, corner{}, corner{40, 0}, corner{40, 10}, corner{30, 20}, corner{0, 20}), ""},
		{"a curve of four corners", pieceOf(40, 20, corner{}, corner{40, 0}, corner{40, 8}, corner{39, 12}, corner{37, 15}, corner{34, 18}, corner{30, 19}, corner{24, 20}, corner{0, 20}), "2:6 "},
		{"three corners are none", pieceOf(40, 20, corner{}, corner{40, 0}, corner{40, 8}, corner{39, 12}, corner{37, 15}, corner{34, 18}, corner{30, 20}, corner{0, 20}), ""},
		{"a top that sags by one in ten", pieceOf(40, 20, corner{}, corner{40, 0}, corner{40, 20}, corner{20, 18}, corner{0, 20}), ""},
		{"a side that bulges by one in ten", pieceOf(40, 20, corner{}, corner{40, 0}, corner{39, 10}, corner{40, 20}, corner{0, 20}), ""},
	} {
		found, err := row.piece.Notches()
		got := ""
		for _, n := range found {
			got += fmt.Sprintf("%d:%d ", n.First, len(n.Points))
			for i, p := range n.Points {
				if want := row.piece.Outline[(n.First+i)%len(row.piece.Outline)]; p != want {
					t.Errorf("%s: corner %d is %v, want %v", row.name, i, p, want)
				}
			}
		}
		if err != nil || got != row.want {
			t.Errorf("%s: %q, %v; want %q", row.name, got, err, row.want)
		}
	}
}
