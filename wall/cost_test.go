package wall

import (
	"errors"
	"math/big"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/fraction"
)

func TestUnitsAreRoundedDownOrRefused(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		num := rapid.Int64Min(-1<<62).Draw(t, "num")
		den, units := rapid.Int64Range(1, 1<<62).Draw(t, "den"), rapid.Int64Range(0, 1<<62).Draw(t, "units")
		exact := new(big.Int).Mul(big.NewInt(num), big.NewInt(units))
		floor, rest := new(big.Int).DivMod(exact, big.NewInt(den), new(big.Int)) // a modulus is never below 0
		size := new(big.Int).Abs(exact)
		fits := size.Div(size, big.NewInt(den)).Cmp(big.NewInt(mostCost)) < 0
		got, err := func() (got int64, err error) {
			defer fraction.Catch(&err)
			return inUnits(num, den, units), nil
		}()
		var overflow *fraction.OverflowError
		switch {
		case fits && (err != nil || floor.Cmp(big.NewInt(got)) != 0):
			t.Fatalf("got %d, %v; want %v, rest %v", got, err, floor, rest)
		case !fits && !errors.As(err, &overflow):
			t.Fatalf("got %d, %v for %v", got, err, floor)
		}
	})
}

func TestSumsOfCostsAreRefusedBeforeTheyWrap(t *testing.T) {
	big := cost{blemish: mostCost - 1}
	for name, c := range map[string]cost{"price": {price: mostCost}, "blemish": {blemish: 2}, "uneven": {uneven: mostCost}} {
		err := func() (err error) {
			defer fraction.Catch(&err)
			c.plus(c).plus(big)
			return nil
		}()
		var overflow *fraction.OverflowError
		if !errors.As(err, &overflow) {
			t.Errorf("%s: got %v, want an overflow", name, err)
		}
	}
}
