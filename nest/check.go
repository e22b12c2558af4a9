package nest

import (
	"errors"
	"fmt"

	"example.com/groovewright/fraction"
)

// Kinds of failure, for errors.Is.
var (
	ErrProblem = errors.New("nesting problem not valid")
	ErrRange   = errors.New("lengths too large or too fine to be reckoned together")
	ErrResult  = errors.New("nest not valid")
)

// FieldError is a fault in one field of a Problem or a Result.
type FieldError struct {
	Path  string // such as stock[0].width
	Value string // what was there, if that helps
	Want  string // what would be right
	Kind  error  // ErrProblem, ErrRange or ErrResult
}

func (e *FieldError) Error() string {
	if e.Value == "" {
		return e.Path + ": " + e.Want
	}
	return fmt.Sprintf("%s: %q: %s", e.Path, e.Value, e.Want)
}

func (e *FieldError) Unwrap() error { return e.Kind }

// faults gathers the faults of a value in the order in which they are found.
type faults struct {
	kind error
	all  []error
}

func (f *faults) add(path, value, want string) {
	f.all = append(f.all, &FieldError{path, value, want, f.kind})
}

func (f *faults) positive(path string, x fraction.Length) {
	if x.Sign() <= 0 {
		f.add(path, x.String(), "must be above 0")
	}
}

func (f *faults) notNegative(path string, x fraction.Length) {
	if x.Sign() < 0 {
		f.add(path, x.String(), "must not be below 0")
	}
}

func (f *faults) err() error { return errors.Join(f.all...) }

// Validate reports every fault of the problem, in the order of its fields.
func (p Problem) Validate() (err error) {
	defer fraction.Catch(&err)
	f := faults{kind: ErrProblem}
	if len(p.Stock) == 0 && len(p.Parts) > 0 {
		f.add("stock", "", "needs at least one kind of sheet")
	}
	for i, s := range p.Stock {
		path := fmt.Sprintf("stock[%d].", i)
		f.positive(path+"width", s.Width)
		f.positive(path+"length", s.Length)
		if s.limited() && *s.Count < 0 {
			f.add(path+"count", fmt.Sprint(*s.Count), "must not be below 0")
		}
		if price, err := s.Price.Ratio(); err != nil {
			f.add(path+"price", s.Price.String(), "too large or too fine")
		} else if price.Sign() < 0 {
			f.add(path+"price", s.Price.String(), "must not be below 0")
		}
	}
	seen := make(map[int]int, len(p.Parts))
	for i, part := range p.Parts {
		path := fmt.Sprintf("parts[%d].", i)
		if first, twice := seen[part.Number]; twice {
			f.add(path+"number", fmt.Sprint(part.Number), fmt.Sprintf("is the number of parts[%d] already", first))
		} else {
			seen[part.Number] = i
		}
		f.positive(path+"width", part.Width)
		f.positive(path+"height", part.Height)
	}
	f.notNegative("pattern.pitch", p.Pattern.Pitch)
	f.notNegative("saw.kerf", p.Saw.Kerf)
	f.notNegative("saw.square_up", p.Saw.SquareUp)
	return f.err()
}
