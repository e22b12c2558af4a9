package fraction_test

import (
	"math/big"
	"testing"

	"example.com/groovewright/fraction"
	"pgregory.net/rapid"
)

func TestAdditionEqualsBigRat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := fraction.Of(rapid.Int64Range(-1e6, 1e6).Draw(t, "n"), rapid.Int64Range(1, 1e6).Draw(t, "d"))
		b := fraction.Of(rapid.Int64Range(-1e6, 1e6).Draw(t, "n"), rapid.Int64Range(1, 64).Draw(t, "d"))
		if got, want := a.Add(b).Rat(), new(big.Rat).Add(a.Rat(), b.Rat()); got.Cmp(want) != 0 {
			t.Fatalf("%v + %v = %v, want %v", a, b, got, want)
		}
		if got, want := a.Sub(b).Rat(), new(big.Rat).Sub(a.Rat(), b.Rat()); got.Cmp(want) != 0 {
			t.Fatalf("%v - %v = %v, want %v", a, b, got, want)
		}
	})
}
