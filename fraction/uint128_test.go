package fraction

import (
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

func (x uint128) big() *big.Int {
	hi := new(big.Int).Lsh(new(big.Int).SetUint64(x.hi), 64)
	return hi.Or(hi, new(big.Int).SetUint64(x.lo))
}

// draw128 draws numbers of every length up to 127 bits, with many zeros at the end now and then.
func draw128(t *rapid.T, label string) uint128 {
	x := uint128{rapid.Uint64().Draw(t, label+" upper"), rapid.Uint64().Draw(t, label+" lower")}
	if short := rapid.IntRange(1, 127).Draw(t, label+" shortened by"); short >= 64 {
		x = uint128{0, x.hi >> (short - 64)}
	} else {
		x = uint128{x.hi >> short, x.lo>>short | x.hi<<(64-short)}
	}
	if rapid.Bool().Draw(t, label+" even") {
		x = x.shiftLeft(rapid.IntRange(0, 127-x.bitLen()).Draw(t, label+" zeros"))
	}
	return x
}

func Test128BitArithmeticEqualsBigInt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x, y := draw128(t, "x"), draw128(t, "y")
		if got, want := x.less(y), x.big().Cmp(y.big()) < 0; got != want {
			t.Fatalf("less = %t, want %t", got, want)
		}
		if got, want := x.add(y).big(), new(big.Int).Add(x.big(), y.big()); got.Cmp(want) != 0 {
			t.Fatalf("x+y = %v, want %v", got, want)
		}
		if !x.less(y) {
			if got, want := x.sub(y).big(), new(big.Int).Sub(x.big(), y.big()); got.Cmp(want) != 0 {
				t.Fatalf("x-y = %v, want %v", got, want)
			}
		}
		if x.bitLen() != x.big().BitLen() {
			t.Fatalf("bitLen = %d, want %d", x.bitLen(), x.big().BitLen())
		}
		if y.isZero() {
			return
		}
		q, r := x.divMod(y)
		wantQ, wantR := new(big.Int).QuoRem(x.big(), y.big(), new(big.Int))
		if q.big().Cmp(wantQ) != 0 || r.big().Cmp(wantR) != 0 {
			t.Fatalf("divMod = %v, %v, want %v, %v", q.big(), r.big(), wantQ, wantR)
		}
		if got, want := gcd128(x, y).big(), new(big.Int).GCD(nil, nil, x.big(), y.big()); got.Cmp(want) != 0 {
			t.Fatalf("gcd = %v, want %v", got, want)
		}
		if m := y.lo | 1; new(big.Int).SetUint64(x.mod64(m)).Cmp(new(big.Int).Mod(x.big(), new(big.Int).SetUint64(m))) != 0 {
			t.Fatalf("mod64 = %d", x.mod64(m))
		}
	})
}

func TestCommonDivisorEqualsBigInt(t *testing.T) {
	check := func(a, b uint64) bool {
		want := new(big.Int).GCD(nil, nil, new(big.Int).SetUint64(a), new(big.Int).SetUint64(b))
		return gcd(a, b) == want.Uint64()
	}
	for a := range uint64(2 * shortcut) { // everything in the table and about it
		for b := range uint64(2 * shortcut) {
			if !check(a, b) {
				t.Fatalf("gcd(%d, %d) = %d", a, b, gcd(a, b))
			}
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.Uint64().Draw(t, "a"), rapid.Uint64().Draw(t, "b")
		if !check(a, b) {
			t.Fatalf("gcd(%d, %d) = %d", a, b, gcd(a, b))
		}
	})
}
