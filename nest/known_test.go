package nest

import (
	"math"
	"testing"

	"example.com/groovewright/fraction"
)

// Outside of nothing lies the whole sheet with all that it holds, outside of the whole sheet nothing; outside of a strip along its
// left or its lower edge at least what the rest of it holds.
func TestOutside(t *testing.T) {
	items := []item{{w: 3, h: 4, value: 5}, {w: 2, h: 7, value: 4}}
	g := newGrid(items, 8, 11, math.MaxInt)
	g.fill(items)
	rest := g.outside()
	if whole := g.value[len(g.value)-1]; rest[0] < whole || rest[len(rest)-1] != 0 {
		t.Errorf("outside of nothing lies %d of %d, outside of all %d", rest[0], whole, rest[len(rest)-1])
	}
	for _, x := range []int64{2, 3, 5, 6} {
		if got, least := rest[g.at(x, 11)], g.value[g.at(8-x, 11)]; got < least {
			t.Errorf("right of %d lies %d, want %d or more", x, got, least)
		}
	}
	for _, y := range []int64{4, 7, 8} {
		if got, least := rest[g.at(8, y)], g.value[g.at(8, 11-y)]; got < least {
			t.Errorf("above %d lies %d, want %d or more", y, got, least)
		}
	}
	for _, y := range []int64{0, 4, 7} {
		for _, x := range []int64{0, 2, 3, 5} {
			if got, least := rest[g.at(x, y)], max(g.value[g.at(8-x, 11)], g.value[g.at(8, 11-y)]); got < least {
				t.Errorf("outside of %d by %d lies %d, want %d or more", x, y, got, least)
			}
		}
	}
}

// A rectangle holds what reaches no edge of it from outside.
func TestRectHolds(t *testing.T) {
	whole := rect{x: 2, y: 3, w: 10, h: 20}
	for _, row := range []struct {
		r    rect
		want bool
	}{
		{whole, true}, {rect{4, 5, 1, 1}, true}, {rect{2, 3, 1, 1}, true}, {rect{11, 22, 1, 1}, true},
		{rect{1, 5, 1, 1}, false}, {rect{4, 2, 1, 1}, false}, {rect{11, 5, 2, 1}, false}, {rect{4, 22, 1, 2}, false}, {rect{1, 2, 12, 22}, false},
	} {
		if got := whole.holds(row.r); got != row.want {
			t.Errorf("%+v: %v", row.r, got)
		}
	}
}

// What is squared up at both ends is gone, however fine its measure: of 96 less twice 1/3 a part of 95 1/3 comes, and none of 95 1/2.
func TestSquaringUpIsExact(t *testing.T) {
	for height, fits := range map[fraction.Length]bool{fraction.Inches(95): true, fraction.Of(286, 3): true, fraction.Of(191, 2): false, fraction.Inches(96): false} {
		r, err := Search(t.Context(), Problem{Saw: Saw{SquareUp: fraction.Of(1, 3)}, Stock: []Stock{{Name: "sheet", Width: fraction.Inches(48), Length: fraction.Inches(96)}},
			Parts: []Part{{Number: 1, Width: fraction.Inches(20), Height: height}}}, Budget{Nodes: 100})
		if err != nil || (len(r.Unplaced) == 0) != fits {
			t.Errorf("a part %v high: %v, %v", height, r.Unplaced, err)
		}
	}
}

// Three plain parts of 16 are as wide as a sheet of 48, but two blades of 1/8 do not fit between them: two come from a sheet.
func TestBoundCountsTheBlade(t *testing.T) {
	for kerf, want := range map[fraction.Length]int{{}: 2, fraction.Of(1, 8): 3} {
		p := Problem{Saw: Saw{Kerf: kerf}, Stock: []Stock{{Name: "sheet", Width: fraction.Inches(48), Length: fraction.Inches(96)}}}
		for i := range 6 {
			p.Parts = append(p.Parts, Part{Number: i + 1, Width: fraction.Inches(16), Height: fraction.Inches(96)})
		}
		if b, err := LowerBound(p); err != nil || b.Sheets != want {
			t.Errorf("a blade of %v: at least %d sheets, %v; want %d", kerf, b.Sheets, err, want)
		}
	}
}

// The least worth above none needs a sheet, no worth needs none.
func TestLeastOfLittle(t *testing.T) {
	in := fraction.Inches
	p := Problem{Stock: []Stock{{Name: "sheet", Width: in(48), Length: in(96)}}}
	all, err := DualWeights(p, []Strip{{Width: in(40), Height: in(30), Tallest: in(30)}}, nil, 1)
	if err != nil || len(all) == 0 {
		t.Fatal(all, err)
	}
	for total, want := range map[fraction.Length]int{{}: 0, in(-1): 0, fraction.Of(1, all[0].s.job.den): 1} {
		if _, bought, sheets := all[0].Least(total); bought != want || sheets != want {
			t.Errorf("what is worth %v needs %d sheets, %d of them bought, want %d", total, sheets, bought, want)
		}
	}
}
