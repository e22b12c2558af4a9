package fraction_test

import (
	"fmt"
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/fraction"
)

// What is left of a sum goes to the largest remainder, the first of equal ones: worked by hand, 26 6/10 up to 27 and 3 1/2 up to 4, the others to the
// nearest.
func TestApportion(t *testing.T) {
	for _, row := range []struct {
		parts, sum, want string
	}{
		{"", "0", "[]"},
		{"1/3 1/3 1/3", "1", "[1 0 0]"},
		{"100/3 100/3 100/7", "81", "[34 33 14]"},
		{"299/2 299/2 100 200", "599", "[149 150 100 200]"}, // the even ones stay
		{"107/5 21/10 31/10", "27", "[22 2 3]"},
		{"7/5 7/5 7/10", "4", "[2 1 1]"},
		{"2/5 2/5 2/5", "2", "[1 1 0]"}, // 1 1/5 up
	} {
		parts, sum := []*big.Rat{}, new(big.Int)
		for _, text := range strings.Fields(row.parts) {
			x, _ := new(big.Rat).SetString(text)
			parts = append(parts, x)
		}
		sum.SetString(row.sum, 10)
		if got := fmt.Sprint(fraction.Apportion(parts, sum)); got != row.want {
			t.Errorf("%s to %s: %s, want %s", row.parts, row.sum, got, row.want)
		}
	}
}

// The parts add up to any sum that is theirs rounded up or down, and none is then off by one or more; equal ones differ by one
// at most.
func TestApportionedPartsAreLessThanOneOff(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) *big.Rat {
			return big.NewRat(rapid.Int64Range(0, 60).Draw(t, "number"), rapid.Int64Range(1, 9).Draw(t, "of"))
		}), 1, 12).Draw(t, "parts")
		exact := new(big.Rat)
		for _, x := range parts {
			exact.Add(exact, x)
		}
		sum := new(big.Int).Div(exact.Num(), exact.Denom())
		if !exact.IsInt() && rapid.Bool().Draw(t, "up") {
			sum.Add(sum, big.NewInt(1))
		}
		rest := new(big.Int).Set(sum)
		for i, whole := range fraction.Apportion(parts, sum) {
			rest.Sub(rest, whole)
			off := new(big.Rat).SetInt(whole)
			if off.Abs(off.Sub(off, parts[i])).Cmp(big.NewRat(1, 1)) >= 0 {
				t.Errorf("%v is written %v", parts[i], whole)
			}
		}
		if rest.Sign() != 0 {
			t.Errorf("%v left of %v", rest, sum)
		}
	})
}
