package nest

import (
	"errors"
	"fmt"
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
)

// Kinds of failure, for errors.Is: the causes of the faults that this package finds.
var (
	ErrProblem = errors.New("nesting problem not valid")
	ErrRange   = errors.New("too large or too fine to be calculated with")
	ErrResult  = errors.New("nest not valid")
)

// faults are those of a problem.
type faults struct{ fault.List }

// sign adds a fault unless x is more than 0 or, with least 0, at least 0.
func (f *faults) sign(x fraction.Length, least int, path ...any) {
	if x.Sign() < least {
		f.Add(x, [...]string{"at least 0", "more than 0"}[least], path...)
	}
}

// Validate returns every fault, field by field, as a *fault.Fault with the cause [ErrProblem].
func (p Problem) Validate() error {
	f := faults{fault.List{Cause: ErrProblem}}
	if len(p.Stock) == 0 && len(p.Parts) > 0 {
		f.Add(nil, "at least one kind of sheet", "Stock")
	}
	for i, s := range p.Stock {
		f.sign(s.Width, 1, "Stock", i, "Width")
		f.sign(s.Length, 1, "Stock", i, "Length")
		if s.Count != nil && *s.Count < 0 {
			f.Add(*s.Count, "at least 0", "Stock", i, "Count")
		}
		if price, err := s.Price.Ratio(); s.Price.Known() && (err != nil || price.Sign() < 0) {
			f.Add(s.Price, "an amount from 0 to 100000", "Stock", i, "Price")
		}
	}
	for i, part := range p.Parts {
		if first := slices.IndexFunc(p.Parts[:i], func(q Part) bool { return q.Number == part.Number }); first >= 0 {
			f.Add(part.Number, fmt.Sprintf("another number than that of Parts[%d]", first), "Parts", i, "Number")
		}
		f.sign(part.Width, 1, "Parts", i, "Width")
		f.sign(part.Height, 1, "Parts", i, "Height")
	}
	f.sign(p.Pattern.Pitch, 0, "Pattern", "Pitch")
	f.sign(p.Saw.Kerf, 0, "Saw", "Kerf")
	f.sign(p.Saw.SquareUp, 0, "Saw", "SquareUp")
	f.sign(p.Saw.LeastRip, 0, "Saw", "LeastRip")
	return f.Err()
}
