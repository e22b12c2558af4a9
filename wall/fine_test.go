package wall

import (
	"math/big"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

// fine draws a length of which the exact sums and differences may not fit.
func fine(t *rapid.T, label string) fraction.Length {
	return fraction.Of(rapid.Int64Range(0, 100<<40).Draw(t, label), rapid.Int64Range(1<<39, 1<<41).Draw(t, label+" parts"))
}

func TestDifferencesTooFineAreRoundedToTheSafeSide(t *testing.T) {
	step := big.NewRat(1, nearly)
	rapid.Check(t, func(t *rapid.T) {
		high, low := fine(t, "high"), fine(t, "low")
		exact := new(big.Rat).Sub(high.Rat(), low.Rat())
		for most, got := range map[bool]fraction.Length{true: atMost(high, low), false: atLeast(high, low)} {
			over := new(big.Rat).Sub(got.Rat(), exact)
			if !most {
				over.Neg(over)
			}
			if over.Sign() < 0 || over.Cmp(step) >= 0 {
				t.Fatalf("%v above %v is %v; at most %v: got %v", high, low, exact, most, got)
			}
		}
	})
}

// A height that is too fine on the way is exact all the same.
func TestHeightOnFineLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		// Both corners lie on y = 3x + 1, so that heights on it are no finer than x.
		on := func(x fraction.Length) cutout.Point {
			return cutout.Point{X: x, Y: x.Mul(3).Add(fraction.Inches(1))}
		}
		a, b, x := fine(t, "a"), fine(t, "b"), fine(t, "x")
		if a == b {
			return
		}
		if got := heightOn(on(a), on(b), x); got != on(x).Y {
			t.Fatalf("height at %v is %v, want %v", x, got, on(x).Y)
		}
	})
}
