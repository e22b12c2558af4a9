package nest

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
)

// boardsJob has boards 5 1/2 wide, whose pattern repeats once on each, and parts of them, each given by its width, height and
// left phase in eighths of an inch.
func boardsJob(t interface{ Fatal(...any) }, parts [][3]int64) *job {
	p := Problem{
		Stock:   []Stock{{Width: fraction.Of(11, 2), Length: fraction.Inches(96)}},
		Saw:     Saw{Kerf: fraction.Of(1, 8)},
		Pattern: Pattern{Pitch: fraction.Of(11, 2)},
	}
	for i, q := range parts {
		p.Parts = append(p.Parts, Part{Number: i + 1, Width: fraction.Of(q[0], 8), Height: fraction.Of(q[1], 8), LeftPhase: groove.Modulo(fraction.Of(q[2], 8), p.Pattern.Pitch)})
	}
	j, err := newJob(&p)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// A rip that keeps a board's left edge and one that keeps its right edge come from one board where a kerf is left between
// them; two that keep the same edge never do, nor two that keep its middle.
func TestShelvesOfRips(t *testing.T) {
	for _, row := range []struct {
		name    string
		parts   [][3]int64
		heights []int64 // of the shelves, in eighths, falling
	}{
		{"left and right", [][3]int64{{16, 400, 0}, {27, 320, 17}}, []int64{400}},
		{"no room for the kerf", [][3]int64{{16, 400, 0}, {28, 320, 16}}, []int64{400, 320}},
		{"the same edge", [][3]int64{{16, 400, 0}, {12, 320, 0}}, []int64{400, 320}},
		{"whole boards", [][3]int64{{44, 400, 0}, {16, 320, 0}, {44, 240, 0}}, []int64{400, 320, 240}},
		{"two above each other beside a tall one", [][3]int64{{16, 400, 0}, {20, 199, 24}, {24, 200, 20}}, []int64{400}},
		{"too high together", [][3]int64{{16, 400, 0}, {20, 200, 24}, {24, 200, 20}}, []int64{400, 200}},
		{"three side by side", [][3]int64{{10, 400, 0}, {10, 320, 34}, {10, 240, 17}}, []int64{400}},
		{"the best pairs", [][3]int64{{10, 400, 0}, {30, 390, 14}, {30, 380, 0}, {10, 370, 34}}, []int64{400, 380}},
	} {
		j := boardsJob(t, row.parts)
		var heights []int64
		for _, f := range j.shelves(j.except(nil)) {
			heights = append(heights, j.length(f.h).Mul(8).Num())
		}
		slices.Sort(heights)
		if slices.Reverse(heights); !slices.Equal(heights, row.heights) {
			t.Errorf("%s: shelves of %d, want %d", row.name, heights, row.heights)
		}
	}
}

// Shelves hold each piece once, within the board and the shelf, at the board's phase and a kerf from the others.
func TestShelvesHoldEachPieceOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var parts [][3]int64
		for range rapid.IntRange(1, 12).Draw(t, "parts") {
			left := rapid.Int64Range(0, 40).Draw(t, "left")
			parts = append(parts, [3]int64{rapid.Int64Range(1, 44-left).Draw(t, "width"), rapid.Int64Range(8, 400).Draw(t, "height"), left})
		}
		j := boardsJob(t, parts)
		var all []int
		for _, f := range j.shelves(j.except(nil)) {
			for n, s := range f.spots {
				q := &j.pieces[s.piece]
				all = append(all, s.piece)
				if s.x < 0 || s.x+q.w > j.kinds[0].w || s.y < 0 || s.y+q.h > f.h || s.x != q.at[0] {
					t.Fatalf("piece %d at %d, %d is not on its shelf", s.piece, s.x, s.y)
				}
				for _, o := range f.spots[:n] {
					p := &j.pieces[o.piece]
					if s.x < o.x+p.w+j.kerf && o.x < s.x+q.w+j.kerf && s.y < o.y+p.h+j.kerf && o.y < s.y+q.h+j.kerf {
						t.Fatalf("pieces %d and %d are less than a kerf apart", o.piece, s.piece)
					}
				}
			}
		}
		slices.Sort(all)
		if !slices.Equal(all, j.except(nil)) {
			t.Fatalf("pieces %d on shelves", all)
		}
	})
}
