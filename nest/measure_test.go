package nest_test

import (
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
)

// worthOf adds up what parts are worth.
func worthOf(w nest.DualWeight, parts []nest.Part) (total fraction.Length) {
	places := func(x fraction.Length) int64 {
		n, _ := x.Mul(nest.PlacesPerInch).DivMod(fraction.Inches(1))
		return n
	}
	count := w.Measure.Counter()
	for _, p := range parts {
		from := places(p.LeftPhase)
		total = total.Add(fraction.Of(count(from, from+places(p.Width)), nest.PlacesPerInch).Mul(w.Of(p.Height)))
	}
	return total
}

// A sheet of 48 in with a repeat of 5 in has room for nine repeats, and one of 32 in with a repeat of 4 in that
// begins within it for seven. How many parts a sheet gives is worked by hand, and the pattern says as much.
func TestMeasuresCountWholeRepeats(t *testing.T) {
	quarter, none := fraction.Of(1, 4), fraction.Length{}
	for _, c := range []struct {
		name               string
		sheet, pitch       int64
		kerf, phase        fraction.Length
		part               nest.Part
		parts              int
		byWidth, byPattern int // sheets
	}{
		{"45 in of 48", 48, 5, quarter, none, nest.Part{Width: fraction.Inches(45), Height: fraction.Inches(96)}, 15, 15, 15},
		{"5 in each", 48, 5, quarter, none, nest.Part{Width: fraction.Inches(5), Height: fraction.Inches(96)}, 30, 4, 6},  // the kerf takes from the next repeat: five from a sheet
		{"10 in each", 48, 5, none, none, nest.Part{Width: fraction.Inches(10), Height: fraction.Inches(96)}, 45, 10, 12}, // four from a sheet
		{"28 in of 32", 32, 4, none, fraction.Inches(2), nest.Part{Width: fraction.Inches(28), Height: fraction.Inches(96)}, 16, 14, 16},
		{"4 in each", 32, 4, none, fraction.Inches(2), nest.Part{Width: fraction.Inches(4), Height: fraction.Inches(96)}, 112, 14, 16},
	} {
		p := nest.Problem{
			Stock:   []nest.Stock{{Name: "sheet", Width: fraction.Inches(c.sheet), Length: fraction.Inches(96), LeftPhase: c.phase}},
			Saw:     nest.Saw{Kerf: c.kerf},
			Pattern: nest.Pattern{Pitch: fraction.Inches(c.pitch)},
		}
		for i := range c.parts {
			part := c.part
			part.Number = i + 1
			p.Parts = append(p.Parts, part)
		}
		strips := []nest.Strip{{Width: c.part.Width.Mul(int64(c.parts)), Height: c.part.Height, Tallest: c.part.Height}}
		weights, err := nest.DualWeights(p, strips, nil, 1)
		if err != nil || len(weights) != 1 {
			t.Fatalf("%s: %v, %v", c.name, weights, err)
		}
		game := weights[0].Game(p.Parts)
		game.Meet(p.Parts)
		best := game.Best(0)
		byPattern := best.LowerBound(worthOf(best, p.Parts)).Sheets
		if byWidth := weights[0].LowerBound(worthOf(weights[0], p.Parts)).Sheets; byWidth != c.byWidth || byPattern != c.byPattern {
			t.Errorf("%s: at least %d sheets by width, %d by the pattern, want %d and %d", c.name, byWidth, byPattern, c.byWidth, c.byPattern)
		}
	}
}

// Whatever lies side by side on one sheet, at least a kerf apart and each part with the pattern that the sheet shows
// there, upright or turned, is not worth more than the sheet.
func TestOneSheetIsEnoughForWhatLiesOnIt(t *testing.T) {
	measured := 0
	rapid.Check(t, func(t *rapid.T) {
		length := func(name string, low, high int64) fraction.Length {
			return fraction.Of(rapid.Int64Range(low, high).Draw(t, name), 16)
		}
		p := nest.Problem{Saw: nest.Saw{Kerf: length("kerf", 0, 4)}, Pattern: nest.Pattern{Pitch: length("pitch", 4, 100)}}
		if p.Pattern.Mirrored = rapid.Bool().Draw(t, "mirrored"); p.Pattern.Mirrored {
			p.Pattern.Axis = length("axis", 0, p.Pattern.Pitch.Mul(16).Num()/p.Pattern.Pitch.Mul(16).Den()-1)
		}
		high := fraction.Inches(30)
		for range rapid.IntRange(1, 2).Draw(t, "kinds") {
			p.Stock = append(p.Stock, nest.Stock{Name: "sheet", Width: length("sheet", 150, 800), Length: high, LeftPhase: length("phase", 0, 3)})
		}
		sheet := p.Stock[rapid.IntRange(0, len(p.Stock)-1).Draw(t, "of kind")]
		for x := length("start", 0, 40); ; {
			part := nest.Part{Number: len(p.Parts) + 1, Width: length("width", 1, 300), Height: high}
			end := x.Add(part.Width)
			if sheet.Width.Less(end) {
				break
			}
			if part.LeftPhase = sheet.LeftPhase.Add(x).Mod(p.Pattern.Pitch); p.Pattern.Mirrored && rapid.Bool().Draw(t, "turned") {
				part.LeftPhase = p.Pattern.Axis.Mul(2).Sub(sheet.LeftPhase).Sub(end).Mod(p.Pattern.Pitch)
			}
			p.Parts = append(p.Parts, part)
			x = end.Add(p.Saw.Kerf).Add(length("more than a kerf", 0, 20))
		}
		weights, err := nest.DualWeights(p, []nest.Strip{{Width: high, Height: high, Tallest: high}}, nil, 1)
		if err != nil {
			t.Fatal(err)
		}
		for _, w := range weights {
			all := []nest.DualWeight{w}
			for _, family := range w.Windowed() {
				shares := make([]float64, len(family))
				for i := range shares {
					shares[i] = float64(rapid.IntRange(0, 9).Draw(t, "share"))
				}
				shares[0]++
				all = append(append(all, family...), nest.Mixed(family, shares))
			}
			if game := w.Game(p.Parts); game != nil {
				for n := range rapid.IntRange(1, 3).Draw(t, "layouts") {
					game.Meet(p.Parts[n*len(p.Parts)/3:])
				}
				all = append(all, game.Best(0))
				measured++
			}
			for _, m := range all {
				if n := m.LowerBound(worthOf(m, p.Parts)).Sheets; n > 1 {
					t.Fatalf("%d sheets for what lies on one, by %+v", n, m.Measure)
				}
			}
		}
	})
	if measured == 0 {
		t.Error("no measure but the width")
	}
}
