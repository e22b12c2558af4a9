package nest

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/fraction"
)

// What is taken fits the limits, the prices pay for each column, and both come to the same: by the duality of linear programming
// (D. Gale, H. W. Kuhn and A. W. Tucker, "Linear programming and the theory of games", 1951) that is the optimum.
func TestPackingMeetsItsDual(t *testing.T) {
	const near = 1e-3
	rapid.Check(t, func(t *rapid.T) {
		rows := rapid.IntRange(1, 12).Draw(t, "rows")
		number := rapid.IntRange(0, 9)
		var limits []float64
		for range rows {
			limits = append(limits, float64(1+number.Draw(t, "limit")))
		}
		var p packing
		p.start(limits)
		for range rapid.IntRange(1, 30).Draw(t, "columns") {
			column := []float64{}
			for range rows {
				column = append(column, float64(number.Draw(t, "of a row")))
			}
			column[rapid.IntRange(0, rows-1).Draw(t, "bounded by")]++
			if p.columns = append(p.columns, column); rapid.Bool().Draw(t, "at once") {
				p.optimize()
			}
		}
		p.optimize()
		used, sum := make([]float64, rows), 0.0
		for r, b := range p.basis {
			if b >= 0 {
				sum += p.taken[r]
				for i, x := range p.columns[b] {
					used[i] += x * p.taken[r]
				}
			}
		}
		for i, u := range used {
			if u > limits[i]*(1+near) {
				t.Fatalf("row %d: %v of %v", i, u, limits[i])
			}
		}
		for j, column := range p.columns {
			if paid := dot(column, p.prices); paid < 1-near {
				t.Fatalf("column %d: prices %v pay %v", j, p.prices, paid)
			}
		}
		if pay := dot(limits, p.prices); math.Abs(pay-sum) > near*sum || math.Abs(p.value()*sum-1) > near {
			t.Fatalf("taken %v, prices pay %v, value %v", sum, pay, p.value())
		}
	})
}

// The best measure of parts that are all alike says how many of them a sheet gives, worked by hand: those that cover a repeat with
// a kerf lose the next one.
func TestGameOfOneSort(t *testing.T) {
	for _, c := range []struct {
		name               string
		sheet, pitch, wide int64
		kerf               fraction.Length
		mirrored           bool
		phase              fraction.Length
		each               float64 // that a sheet gives
	}{
		{"repeats without a kerf", 48, 4, 4, fraction.Length{}, false, fraction.Length{}, 12},
		{"every other repeat", 48, 4, 4, fraction.Of(1, 8), false, fraction.Length{}, 6},
		{"two repeats of twelve, less a kerf", 48, 4, 7, fraction.Of(1, 8), false, fraction.Length{}, 6},
		{"half a repeat, upright only", 48, 4, 2, fraction.Length{}, false, fraction.Length{}, 12},
		{"half a repeat, turned too", 48, 4, 2, fraction.Length{}, true, fraction.Length{}, 24},
		{"begins in the middle of a repeat", 46, 4, 4, fraction.Length{}, false, fraction.Inches(2), 11},
	} {
		long := fraction.Inches(96)
		p := Problem{
			Stock:   []Stock{{Name: "sheet", Width: fraction.Inches(c.sheet), Length: long}},
			Saw:     Saw{Kerf: c.kerf},
			Pattern: Pattern{Pitch: fraction.Inches(c.pitch), Mirrored: c.mirrored},
		}
		weights, err := DualWeights(p, []Strip{{Width: long, Height: long, Tallest: long}}, nil, 1)
		if err != nil || len(weights) == 0 {
			t.Fatal(weights, err)
		}
		parts := []Part{{Width: fraction.Inches(c.wide), Height: long, LeftPhase: c.phase}}
		g := weights[0].Game(append(parts, parts...)) // cells part where more than one part begins
		g.Meet(parts)
		if g.Best(0); math.Abs(g.Value()*c.each-1) > 1e-3 {
			t.Errorf("%s: a part counts %v of a sheet, want 1/%v", c.name, g.Value(), c.each)
		}
	}
}

// Numbers that are too fine or too large end no caller: there is no game, or the layout does not count.
func TestGameOfTooFineNumbers(t *testing.T) {
	long := fraction.Inches(96)
	p := Problem{Stock: []Stock{{Name: "sheet", Width: fraction.Inches(48), Length: long}}, Pattern: Pattern{Pitch: fraction.Inches(4)}}
	weights, err := DualWeights(p, []Strip{{Width: long, Height: long, Tallest: long}}, nil, 1)
	if err != nil || len(weights) == 0 {
		t.Fatal(weights, err)
	}
	far := []Part{{Width: long, Height: long, LeftPhase: fraction.Inches(1 << 60)}}
	if g := weights[0].Game(far); g != nil {
		t.Error("a game at 2^60 in")
	}
	g := weights[0].Game(nil)
	if g.Meet(far); len(g.layouts) != 0 {
		t.Error("a layout at 2^60 in")
	}
	if w := g.Best(0); w.Measure.Additive() || w.Relaxed(fraction.Inches(1)) <= 0 {
		t.Error("no measure where no layout was met")
	}
	p.Pattern.Pitch = fraction.Of(11, 3)
	if weights, err = DualWeights(p, []Strip{{Width: long, Height: long, Tallest: long}}, nil, 1); err != nil || weights[0].Game(nil) != nil {
		t.Error("a game with a repeat of 11/3 in", err)
	}
}
