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

// faults gathers the faults of a value in the order in which they are found.
type faults struct {
	cause error
	all   []error
}

func (f *faults) add(value any, want string, path ...any) {
	text := ""
	if value != nil {
		text = fmt.Sprint(value)
	}
	f.all = append(f.all, &fault.Fault{Path: fault.Of(path...), Value: text, Want: want, Cause: f.cause})
}

func (f *faults) positive(x fraction.Length, path ...any) {
	if x.Sign() <= 0 {
		f.add(x, "more than 0", path...)
	}
}

func (f *faults) notNegative(x fraction.Length, path ...any) {
	if x.Sign() < 0 {
		f.add(x, "at least 0", path...)
	}
}

func (f *faults) err() error { return errors.Join(f.all...) }

// Validate returns every fault of the problem as a *fault.Fault, in the order of its fields, with
// [ErrProblem] as the cause.
func (p Problem) Validate() error {
	f := faults{cause: ErrProblem}
	if len(p.Stock) == 0 && len(p.Parts) > 0 {
		f.add(nil, "at least one kind of sheet", "Stock")
	}
	for i, s := range p.Stock {
		f.positive(s.Width, "Stock", i, "Width")
		f.positive(s.Length, "Stock", i, "Length")
		if s.limited() && *s.Count < 0 {
			f.add(*s.Count, "at least 0", "Stock", i, "Count")
		}
		if price, err := s.Price.Ratio(); s.Price.Known() && (err != nil || price.Sign() < 0) {
			f.add(s.Price, "an amount from 0 to 100000", "Stock", i, "Price")
		}
	}
	for i, part := range p.Parts {
		if first := slices.IndexFunc(p.Parts[:i], func(q Part) bool { return q.Number == part.Number }); first >= 0 {
			f.add(part.Number, fmt.Sprintf("another number than that of Parts[%d]", first), "Parts", i, "Number")
		}
		f.positive(part.Width, "Parts", i, "Width")
		f.positive(part.Height, "Parts", i, "Height")
	}
	f.notNegative(p.Pattern.Pitch, "Pattern", "Pitch")
	f.notNegative(p.Saw.Kerf, "Saw", "Kerf")
	f.notNegative(p.Saw.SquareUp, "Saw", "SquareUp")
	return f.err()
}
