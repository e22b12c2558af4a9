package nest_test

import (
	"cmp"
	"context"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/nest"
)

// drawStrips draws walls in strips and parts that cover them, cut at random places with a gap
// between neighbours.
func drawStrips(t *rapid.T) (p nest.Problem, strips []nest.Strip, gap fraction.Length) {
	gap = fraction.Of(rapid.Int64Range(0, 2).Draw(t, "gap"), 16)
	p = nest.Problem{
		Saw:     nest.Saw{Kerf: fraction.Of(1, 8), SquareUp: fraction.Of(rapid.Int64Range(0, 1).Draw(t, "square up"), 4)},
		Pattern: nest.Pattern{Pitch: fraction.Of(3, 2)},
		Stock:   []nest.Stock{{Name: "sheet", Width: fraction.Inches(48), Length: fraction.Inches(96), Price: money.MustParse("40")}},
	}
	if rapid.Bool().Draw(t, "offcut") {
		p.Stock = append(p.Stock, nest.Stock{Name: "offcut", Width: fraction.Inches(24), Length: fraction.Inches(40), Count: new(1)})
	}
	for range rapid.IntRange(1, 4).Draw(t, "strips") {
		height := fraction.Of(rapid.Int64Range(40, 360).Draw(t, "height"), 8)
		width := fraction.Inches(rapid.Int64Range(10, 120).Draw(t, "width"))
		strips = append(strips, nest.Strip{Width: width, Height: height, Tallest: height})
		for left := (fraction.Length{}); left.Less(width); {
			part := fraction.Min(fraction.Inches(rapid.Int64Range(4, 44).Draw(t, "part")), width.Sub(left))
			p.Parts = append(p.Parts, nest.Part{Number: len(p.Parts) + 1, Width: part, Height: height, LeftPhase: left.Mod(p.Pattern.Pitch)})
			left = left.Add(part).Add(gap)
		}
	}
	return p, strips, gap
}

// TestStripBoundHoldsHoweverPartsAreCut parts random strips at random places, nests the parts, and
// compares with the bound for the strips.
func TestStripBoundHoldsHoweverPartsAreCut(t *testing.T) {
	tight, all := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		p, strips, gap := drawStrips(t)
		least, err := nest.StripBound(p, gap, strips)
		if err != nil {
			t.Fatal(err)
		}
		r, err := nest.Search(context.Background(), p, nest.Budget{Nodes: 20_000})
		if err != nil || len(r.Unplaced) > 0 {
			t.Fatal(err, r.Unplaced)
		}
		n := bought(p, r)
		if len(r.Sheets) < least.Sheets || n < least.Bought || r.Cost.Less(least.Cost) {
			t.Fatalf("%d sheets, %d bought for %v, but the bound says %+v", len(r.Sheets), n, r.Cost, least)
		}
		all++
		if n == least.Bought {
			tight++
		}
	})
	if 4*tight < all {
		t.Errorf("the bound was met in %d of %d cases only", tight, all)
	}
}

func TestStripBoundOfNothing(t *testing.T) {
	p := nest.Problem{Stock: []nest.Stock{{Name: "sheet", Width: fraction.Inches(48), Length: fraction.Inches(96)}}}
	if l, err := nest.StripBound(p, fraction.Length{}, nil); err != nil || l.Sheets != 0 {
		t.Errorf("no strips: %+v, %v", l, err)
	}
	// A gap wider than the kerf: only one sheet is claimed.
	strips := []nest.Strip{{Width: fraction.Inches(1000), Height: fraction.Inches(20), Tallest: fraction.Inches(20)}}
	if l, err := nest.StripBound(p, fraction.Of(1, 8), strips); err != nil || l.Sheets != 1 {
		t.Errorf("wide gap: %+v, %v", l, err)
	}
}

// Short boards for nothing hold no part that is longer than they are, however many heights there are: the first weight asks for
// the money of the long ones, one for each part of over half their length.
func TestDearBoardsFirst(t *testing.T) {
	boards := func(name string, length int64, price string) nest.Stock {
		return nest.Stock{Name: name, Width: fraction.Inches(6), Length: fraction.Inches(length), Price: money.MustParse(price)}
	}
	p := nest.Problem{Stock: []nest.Stock{boards("long", 96, "10"), boards("short", 48, "0")}}
	strips := []nest.Strip{{Width: fraction.Inches(60), Height: fraction.Inches(50), Tallest: fraction.Inches(50)}}
	for i := range int64(40) { // too many to count all stacks of them
		height := fraction.Of(40+4*i, 8)
		strips = append(strips, nest.Strip{Width: fraction.Inches(12), Height: height, Tallest: height})
	}
	weights, err := nest.DualWeights(p, strips, nil, 1)
	if err != nil || len(weights) == 0 {
		t.Fatal(weights, err)
	}
	w := weights[0]
	if cost, _, _ := w.Least(fraction.Inches(60).Mul(w.Of(fraction.Inches(50)))); cost != fraction.NewRatio(100, 1) {
		t.Errorf("ten boards of 50 in cost at least %s, want 100", cost)
	}
}

// A dual weight of parts asks for what the linear programme of their heights does: on a line of 96 in stand one part of 60 in
// and one of 30 in, or three of 30 in, so these are worth 2/3 and 1/3 of a sheet, where by area it were 5/8 and 5/16.
func TestWorthOfParts(t *testing.T) {
	p := nest.Problem{Stock: []nest.Stock{{Name: "sheet", Width: fraction.Inches(48), Length: fraction.Inches(96)}}}
	tall := fraction.Inches(60)
	strips := []nest.Strip{{Width: fraction.Inches(10), Height: tall, Tallest: tall}}
	part := func(height fraction.Length) nest.Part {
		return nest.Part{Width: fraction.Inches(480), Height: height}
	}
	w, err := nest.DualWeightOf(p, strips, []nest.Part{part(tall), part(fraction.Inches(30)), part(fraction.Inches(30))})
	if err != nil {
		t.Fatal(err)
	}
	sheets := func(heights ...int64) int {
		var total fraction.Length
		for _, h := range heights {
			total = total.Add(fraction.Inches(480).Mul(w.Of(fraction.Inches(h))))
		}
		return w.LowerBound(total).Sheets
	}
	if both, high, low := sheets(60, 30, 30), sheets(60, 60), sheets(20); both != 14 || high != 14 || low != 0 {
		t.Errorf("at least %d, %d, %d sheets, want 14, 14, 0", both, high, low)
	}
	if w, err := nest.DualWeightOf(p, nil, nil); err != nil || w.Of(tall) != 0 {
		t.Errorf("of nothing: %d, %v", w.Of(tall), err)
	}
	if _, err := nest.DualWeightOf(nest.Problem{Saw: nest.Saw{Kerf: fraction.Inches(-1)}}, strips, nil); err == nil {
		t.Error("no error with a blade of -1 in")
	}
}

// What the parts of a nest are worth never asks for more than the nest takes, and the best of the
// worths often asks for as much.
func TestWorthNeverAsksForMoreThanANest(t *testing.T) {
	tight, all := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		p, strips, _ := drawStrips(t)
		var heights []fraction.Length
		for _, part := range p.Parts {
			heights = append(heights, part.Height)
		}
		r, err := nest.Search(context.Background(), p, nest.Budget{Nodes: 20_000})
		if err != nil || len(r.Unplaced) > 0 {
			t.Fatal(err, r.Unplaced)
		}
		worths, err := nest.DualWeights(p, strips, heights[:rapid.IntRange(0, len(heights)).Draw(t, "heights given")], 30)
		if err != nil {
			t.Fatal(err)
		}
		of, err := nest.DualWeightOf(p, strips, p.Parts[:rapid.IntRange(0, len(p.Parts)).Draw(t, "parts given")])
		if err != nil {
			t.Fatal(err)
		}
		best := 0
		for i, worth := range append(worths, of) {
			var total fraction.Length
			for _, part := range p.Parts {
				total = total.Add(part.Width.Add(p.Saw.Kerf).Mul(worth.Of(part.Height)))
			}
			l := worth.LowerBound(total)
			if len(r.Sheets) < l.Sheets || r.Cost.Less(l.Cost) {
				t.Fatalf("%d sheets for %v, but worth %d asks for %+v", len(r.Sheets), r.Cost, i, l)
			}
			bought := 0
			for _, s := range r.Sheets {
				if p.Stock[s.Stock].Count == nil {
					bought++
				}
			}
			cost, buys, sheets := worth.Least(total)
			if c := cmp.Or(r.Cost.Compare(cost), cmp.Compare(bought, buys), cmp.Compare(len(r.Sheets), sheets)); c < 0 || cost.Less(l.Cost) {
				t.Fatalf("%v, %d bought, %d sheets; at least %v, %d, %d by worth %d, which asks for %+v", r.Cost, bought, len(r.Sheets), cost, buys, sheets, i, l)
			}
			best = max(best, l.Sheets)
		}
		if all++; best == len(r.Sheets) {
			tight++
		}
	})
	if 4*tight < all {
		t.Errorf("the bound was met in %d of %d cases only", tight, all)
	}
}
