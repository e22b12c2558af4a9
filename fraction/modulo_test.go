package fraction_test

import (
	"math/big"
	"testing"

	"example.com/groovewright/fraction"
	"pgregory.net/rapid"
)

// floorDivision is the oracle of Mod and DivMod: math/big's Euclidean division on a common
// denominator.
func floorDivision(a, p *big.Rat) (q *big.Int, r *big.Rat) {
	x := new(big.Int).Mul(a.Num(), p.Denom())
	y := new(big.Int).Mul(p.Num(), a.Denom())
	m := new(big.Int)
	q, m = new(big.Int).DivMod(x, y, m)
	return q, new(big.Rat).SetFrac(m, new(big.Int).Mul(a.Denom(), p.Denom()))
}

func modEqualsBigRat(t *rapid.T) {
	a, p := two(t)
	if p.IsZero() {
		wantZeroDivisor(t, func() { a.Mod(p) })
		wantZeroDivisor(t, func() { a.DivMod(p) })
		wantZeroDivisor(t, func() { fraction.Circular(a, a, p) })
		return
	}
	q, r := floorDivision(a.Rat(), p.Rat())
	equals(t, "a mod p", r, func() fraction.Length { return a.Mod(p) })
	var gotQ int64
	var gotR fraction.Length
	err := func() (err error) {
		defer fraction.Catch(&err)
		gotQ, gotR = a.DivMod(p)
		return nil
	}()
	holds := fits(r) && fits(new(big.Rat).SetInt(q))
	if (err == nil) != holds {
		t.Fatalf("DivMod: %v, want %v and %v", err, q, r)
	}
	if err == nil && (gotQ != q.Int64() || gotR.Rat().Cmp(r) != 0) {
		t.Fatalf("DivMod = %v, %v, want %v, %v", gotQ, gotR, q, r)
	}
}

func TestModEqualsBigRat(t *testing.T) { rapid.Check(t, modEqualsBigRat) }

func roundEqualsBigRat(t *rapid.T) {
	a, mark := two(t)
	d := rapid.SampledFrom([]fraction.Direction{fraction.Nearest, fraction.Down, fraction.Up}).Draw(t, "direction")
	if mark.IsZero() {
		if r, over := a.Round(mark, d); r != a || !over.IsZero() {
			t.Fatalf("Round to 0 = %v, %v", r, over)
		}
		return
	}
	size := new(big.Rat).Abs(mark.Rat())
	_, rest := floorDivision(a.Rat(), size)
	want := new(big.Rat).Sub(a.Rat(), rest)
	twice := new(big.Rat).Add(rest, rest)
	if rest.Sign() > 0 && (d == fraction.Up || d == fraction.Nearest && twice.Cmp(size) >= 0) {
		want.Add(want, size)
	}
	over := new(big.Rat).Sub(want, a.Rat())
	var r, e fraction.Length
	err := func() (err error) {
		defer fraction.Catch(&err)
		r, e = a.Round(mark, d)
		return nil
	}()
	if (err == nil) != (fits(want) && fits(over)) {
		t.Fatalf("(%v).Round(%v, %v): %v, want %v and %v", a, mark, d, err, want, over)
	}
	if err == nil && (r.Rat().Cmp(want) != 0 || e.Rat().Cmp(over) != 0) {
		t.Fatalf("(%v).Round(%v, %v) = %v, %v, want %v, %v", a, mark, d, r, e, want, over)
	}
}

func TestRoundEqualsBigRat(t *testing.T) { rapid.Check(t, roundEqualsBigRat) }

func TestCircularIsTheShorterWayRound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := tapedLengths()
		a, b := g.Draw(t, "a"), g.Draw(t, "b")
		p := positiveLengths(fraction.Inches(12)).Draw(t, "p")
		got := fraction.Circular(a, b, p)
		if got.Sign() < 0 || p.Less(got.Mul(2)) {
			t.Fatalf("Circular = %v, beyond half of %v", got, p)
		}
		if there, back := a.Add(got).Sub(b).Mod(p), a.Sub(got).Sub(b).Mod(p); !there.IsZero() && !back.IsZero() {
			t.Fatalf("Circular = %v leads neither way from %v to %v", got, a, b)
		}
		if other := fraction.Circular(b, a, p); other != got {
			t.Fatalf("Circular(b, a) = %v, Circular(a, b) = %v", other, got)
		}
	})
}
