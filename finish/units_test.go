package finish

import (
	"math/big"
	"testing"
)

// The units by their definitions: an inch is 25.4 mm, a foot 12 inches, a liter 1000 cubic centimeters, a gallon 231 cubic inches, 4
// quarts, 8 pints or 128 fluid ounces (16 CFR 500.19 and NIST Handbook 44, appendix C).
func TestSizesOfUnits(t *testing.T) {
	rat := func(text string) *big.Rat {
		x, ok := new(big.Rat).SetString(text)
		if !ok {
			t.Fatal(text)
		}
		return x
	}
	size := func(unit string) *big.Rat { return scales[unit].size }
	for _, row := range []struct {
		n, unit, of string
	}{
		{"1", "in", "in"}, {"25.4", "mm", "in"}, {"12", "in", "ft"}, {"1000", "mm", "m"}, {"1", "in2", "in2"}, {"645.16", "mm2", "in2"}, {"144", "in2", "ft2"}, {"1000000", "mm2", "m2"},
		{"231", "repeats", "gal"}, {"4", "qt", "gal"}, {"8", "pt", "gal"}, {"128", "fl oz", "gal"}, {"1000", "mL", "L"}, {"1", "repeats", "in"},
	} {
		if got := mul(rat(row.n), size(row.unit)); got.Cmp(size(row.of)) != 0 {
			t.Errorf("%s %s are %v, %s is %v", row.n, row.unit, got, row.of, size(row.of))
		}
	}
	cube := mul(mul(rat("2.54"), rat("2.54")), rat("2.54")) // milliliters of a cubic inch
	if got := mul(cube, size("mL")); got.Cmp(rat("1")) != 0 {
		t.Errorf("%v mL are %v cubic inches", cube, got)
	}
	for spread, of := range map[string][2]string{"ft2/gal": {"ft2", "gal"}, "m2/L": {"m2", "L"}} {
		if want := quo(size(of[0]), size(of[1])); size(spread).Cmp(want) != 0 {
			t.Errorf("%s is %v, want %v", spread, size(spread), want)
		}
	}
	for unit, scale := range scales {
		if scale.step != nil && scale.step.Sign() <= 0 {
			t.Errorf("%s is rounded to %v", unit, scale.step)
		}
	}
}

// What is left is rounded down to the step of its unit, and is itself where it is on one already.
func TestDown(t *testing.T) {
	for _, row := range []struct {
		x    *big.Rat
		unit string
		want string
	}{
		{part(3, 64), "in", "0.046875"}, {part(13, 256), "in", "0.046875"}, {part(15, 256), "in", "0.046875"}, {part(1, 128), "in", "0"},
		{whole(12), "ft", "1"}, {part(1201, 100), "ft", "1"}, {part(1199, 100), "ft", "0.99"}, {whole(0), "ft", "0"},
	} {
		var u Unit
		if err := u.UnmarshalText([]byte(row.unit)); err != nil {
			t.Fatal(err)
		}
		if got := down(row.x, u).Value.String(); got != row.want {
			t.Errorf("%v in %s is %s, want %s", row.x, row.unit, got, row.want)
		}
	}
}
