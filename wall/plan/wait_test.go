package plan

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

// TestWaits is worked by hand. A sheet 48 by 40 has piece 1 at its left, 20 wide, and piece 2, 12 wide and 10
// high, right of a kerf of 1/8 and, in some rows, of 3 in of waste and a kerf more. The first rip makes the right edge of piece 1
// and, without waste, the left one of piece 2; with waste the next rip makes that. Then a rip makes the right edge of piece
// 2, and a crosscut frees it.
func TestWaits(t *testing.T) {
	in := fraction.Inches
	kerf := fraction.Of(1, 8)
	rip := func(at fraction.Length, left fraction.Length, width fraction.Length) nest.Cut {
		return nest.Cut{Kind: nest.Rip, At: at, Rect: rect{left, in(0), width, in(40)}}
	}
	for _, row := range []struct {
		name      string
		direction wall.Direction
		turned    bool
		closing   int
		scribe    *wall.Scribe
		waste     int64             // between the pieces; below 0: the rip at its right comes first
		at        []fraction.Length // of the rips, once what can be freed first is
		want      []Wait
	}{
		{"the last piece is at the right edge of the sheet's part", wall.Right, false, 2, nil, 0, []fraction.Length{in(20), in(12)}, []Wait{{}, {Piece: 2}, {Step: 2}}},
		{"turned, its right edge lies at the left: piece 1 needs that cut", wall.Right, true, 2, nil, 0, []fraction.Length{in(20), in(12)}, []Wait{{}, {}, {}}},
		{"worked to the left, its left edge closes, which piece 1 needs", wall.Left, false, 2, nil, 0, []fraction.Length{in(20), in(12)}, []Wait{{}, {}, {}}},
		{"piece 2 needs the closing edge of piece 1", wall.Right, false, 1, nil, 0, []fraction.Length{in(20), in(12)}, []Wait{{}, {}, {}}},
		{"with waste between them piece 2 comes free first", wall.Right, false, 1, nil, 3, []fraction.Length{in(23).Add(kerf), in(20), in(12)}, []Wait{{}, {Piece: 1}, {}, {}}},
		{"the waste lies left of piece 2, which closes there", wall.Left, false, 2, nil, 3, []fraction.Length{in(20), in(3), in(12)}, []Wait{{}, {Piece: 2}, {Step: 2}, {Step: 3}}},
		{"the same, its left edge sawn first: piece 1 comes free before it", wall.Left, false, 2, nil, -3, []fraction.Length{in(20), in(3), in(12)}, []Wait{{}, {Piece: 2}, {Step: 2}, {Step: 3}}},
		{"with something to scribe nothing waits", wall.Right, false, 2, &wall.Scribe{Edge: wall.Right, Width: kerf}, 0, []fraction.Length{in(20), in(12)}, []Wait{{}, {}, {}}},
		{"its closing edge is the sheet's own", wall.Left, false, 1, nil, 0, []fraction.Length{in(20), in(12)}, []Wait{{}, {}, {}}},
	} {
		run := Run{Name: "wall", Panels: []wall.Panel{{Number: 1, Right: in(20)}, {Number: 2, Left: in(90), Right: in(102)}}}
		run.SetOut.Direction = row.direction
		p := Plan{Runs: []Run{run}, Saw: Saw{Saw: nest.Saw{Kerf: kerf}}}
		for i, w := range []int64{20, 12} {
			p.Pieces = append(p.Pieces, Piece{Number: i + 1, Run: "wall", Panel: i + 1, Width: in(w), Height: in(40 - 30*int64(i)), Closing: row.closing == i+1, Scribe: row.scribe})
		}
		start := in(20).Add(kerf)
		cuts := []nest.Cut{rip(in(20), in(0), in(48))}
		switch past := start.Add(in(max(row.waste, -row.waste))); {
		case row.waste > 0:
			cuts = append(cuts, rip(in(row.waste), start, in(48).Sub(start)))
			start = past.Add(kerf)
		case row.waste < 0:
			cuts = []nest.Cut{rip(past, in(0), in(48)), rip(in(20), in(0), past)}
			start = past.Add(kerf)
		}
		cuts = append(cuts, rip(in(12), start, in(48).Sub(start)), nest.Cut{Kind: nest.Crosscut, At: in(10), Rect: rect{start, in(0), in(12), in(40)}})
		for i := range cuts {
			cuts[i].Step = i + 1
		}
		sheet := Sheet{Placements: []nest.Placement{{Part: 1}, {Part: 2, X: start, Turned: row.turned}}}
		places := map[int]rect{}
		for _, placed := range sheet.Placements {
			piece, _ := p.Piece(placed.Part)
			places[placed.Part] = p.placed(piece, placed)
		}
		sheet.Cuts = cutList(p.closeLast(sheet, cuts), places, p.Saw)
		p.wait(&sheet)
		var got []Wait
		for i, c := range sheet.Cuts {
			got = append(got, c.Waits)
			if i < len(row.at) && c.At != row.at[i] {
				t.Errorf("%s: cut %d is at %v, want %v", row.name, c.Step, c.At, row.at[i])
			}
		}
		if diff := cmp.Diff(row.want, got); diff != "" {
			t.Errorf("%s (-want +got)\n%s", row.name, diff)
		}
	}
}
