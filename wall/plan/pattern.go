package plan

import (
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
)

// mostStripes is the most features over one width: more would be too fine to see.
const mostStripes = 20000

// Stripe is one feature of the pattern where it lies on a board.
type Stripe struct {
	groove.Feature
	Index       int // in the repeat
	Left, Right fraction.Length
}

// Stripes returns the features between two places of a board, of which the first has a phase; the
// outermost may run past them. There is none where the pattern has no width or is far too fine, or where
// a place is beyond exact arithmetic.
func (p Profile) Stripes(from, to, phase fraction.Length) (found []Stripe) {
	var err error
	defer fraction.Catch(&err)
	var repeat fraction.Length
	for _, f := range p.Features {
		if f.Width.Sign() < 0 {
			return nil
		}
		repeat = repeat.Add(f.Width)
	}
	start := from.Sub(phase)
	most := to.Sub(start).Float64() / repeat.Float64() * float64(len(p.Features))
	if repeat.Sign() <= 0 || most > mostStripes {
		return nil
	}
	found = make([]Stripe, 0, max(0, int(most)+len(p.Features)))
	for n := 0; start.Less(to); n = (n + 1) % len(p.Features) {
		s := Stripe{p.Features[n], n, start, start.Add(p.Features[n].Width)}
		if start = s.Right; from.Less(s.Right) {
			found = append(found, s)
		}
	}
	return found
}
