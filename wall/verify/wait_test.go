package verify_test

import (
	"encoding/json"
	"os"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/wall/plan"
)

// TestOnlyTheClosingPanelWaits has jobs that are hard in some way; the other tests of plans have the examples, rooms once
// found, and random ones, of boards too.
func TestOnlyTheClosingPanelWaits(t *testing.T) {
	t.Parallel()
	waiting := 0
	for _, name := range []string{"../../examples/bathroom.json", "../book/testdata/hard/boards.json", "../book/testdata/hard/eight-inches.json", "testdata/found/level-past-a-corner.json", "testdata/found/taped-foot.json"} {
		job, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		data, message, exit := planned(t, job, plan.Sheets, small)
		if exit != 0 {
			t.Fatal(message)
		}
		waiting += onlyClosingWaits(t, data)
	}
	if waiting == 0 {
		t.Error("no cut waits")
	}
}

// onlyClosingWaits checks that a cut which waits until the space of a closing piece is measured on the wall frees that piece
// and others of its panel alone: all other pieces are dry-fitted and coated before, and most are fitted before. It returns
// how many cuts wait.
func onlyClosingWaits(t rapid.TB, data []byte) (waiting int) {
	var p plan.Plan
	if err := json.Unmarshal(data, &p); err != nil {
		t.Fatal(err)
	}
	for _, s := range p.Sheets {
		closed := map[int]plan.Piece{} // by the step of a cut that waits
		for _, c := range s.Cuts {
			piece, _ := p.Piece(c.Waits.Piece)
			if c.Waits.Step != 0 {
				piece = closed[c.Waits.Step]
			}
			if piece.Number == 0 && closed[c.From.Step].Number != 0 {
				t.Errorf("sheet %d, cut %d does not wait for cut %d, on what of that it is made", s.Number, c.Step, c.From.Step)
			}
			if piece.Number == 0 {
				continue
			}
			waiting++
			closed[c.Step] = piece
			for _, number := range c.Frees {
				if freed, _ := p.Piece(number); number != 0 && (freed.Run != piece.Run || freed.Panel != piece.Panel) {
					t.Errorf("sheet %d, cut %d frees piece %s once the space of %s is measured", s.Number, c.Step, freed.Label, piece.Label)
				}
			}
		}
	}
	return waiting
}
