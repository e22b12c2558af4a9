package wall

import (
	"errors"
	"math/big"
	"slices"
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

// Costs are compared field by field, the first that differs decides; of whole sheets and of the narrowest panel more is
// better. What decides first are the rules that are broken, the price and the blemish.
func TestCostsAreComparedFieldByField(t *testing.T) {
	var all []cost
	for n := range 1 << 7 {
		bit := func(i int) int64 { return int64(n >> i & 1) }
		c := cost{blemish: bit(0), price: bit(1), uneven: bit(2), narrow: bit(3)}
		c.broken, c.pieces, c.whole = int32(bit(4)), int32(bit(5)), int32(bit(6))
		all = append(all, c)
	}
	fields := func(c cost) []int64 {
		return []int64{int64(c.broken), c.price, c.blemish, int64(c.pieces), c.uneven, -int64(c.whole), -c.narrow}
	}
	for _, a := range all {
		for _, b := range all {
			if got, want := a.compare(&b), slices.Compare(fields(a), fields(b)); got != want {
				t.Fatalf("%+v beside %+v: %d, want %d", a, b, got, want)
			}
			if got, want := a.exceeds(&b), slices.Compare(fields(a)[:3], fields(b)[:3]) > 0; got != want {
				t.Fatalf("%+v exceeds %+v: %v", a, b, got)
			}
			sum := a.plus(b)
			if sum.broken != a.broken+b.broken || sum.price != a.price+b.price || sum.blemish != a.blemish+b.blemish || sum.uneven != a.uneven+b.uneven ||
				sum.pieces != a.pieces+b.pieces || sum.whole != a.whole+b.whole || sum.narrow != min(a.narrow, b.narrow) {
				t.Fatalf("%+v and %+v are %+v", a, b, sum)
			}
		}
	}
}
