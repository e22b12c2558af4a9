package nest_test

import (
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/nest"
)

// drawProblem draws a small valid job: one to three kinds of stock, kerf, trim, a pattern that may
// be mirrored, parts in a few sizes so that some are alike.
func drawProblem(t *rapid.T, maxParts int) nest.Problem {
	eighths := func(name string, low, high int64) fraction.Length {
		return fraction.Of(rapid.Int64Range(low, high).Draw(t, name), 8)
	}
	var p nest.Problem
	p.Saw.Kerf = eighths("kerf", 0, 3)
	p.Saw.SquareUp = eighths("square_up", 0, 4)
	if rapid.IntRange(0, 3).Draw(t, "patterned") > 0 {
		p.Pattern.Pitch = eighths("pitch", 8, 24)
		p.Pattern.Mirrored = rapid.Bool().Draw(t, "mirrored")
		p.Pattern.Axis = fraction.Of(rapid.Int64Range(0, 40).Draw(t, "axis"), 16)
	}
	for i := range rapid.IntRange(1, 3).Draw(t, "kinds") {
		s := nest.Stock{
			Width: eighths("stock width", 60, 200), Length: eighths("stock length", 60, 300),
			LeftPhase: eighths("stock phase", 0, 24), Squared: rapid.Bool().Draw(t, "squared"),
			Price: money.Of(decimal.New(25*rapid.Int64Range(0, 6).Draw(t, "price"), -2)),
		}
		if i > 0 {
			s.Count = new(rapid.IntRange(0, 3).Draw(t, "count"))
		}
		p.Stock = append(p.Stock, s)
	}
	sizes := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) nest.Part {
		return nest.Part{
			Width: eighths("width", 4, 180), Height: eighths("height", 4, 240),
			LeftPhase: eighths("phase", 0, 24),
		}
	}), 1, 4).Draw(t, "sizes")
	for i := range rapid.IntRange(0, maxParts).Draw(t, "parts") {
		part := rapid.SampledFrom(sizes).Draw(t, "size")
		part.Number = i + 1
		p.Parts = append(p.Parts, part)
	}
	return p
}
