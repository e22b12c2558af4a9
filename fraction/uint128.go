package fraction

import "math/bits"

// uint128 is an unsigned number of 128 bits: what two 64-bit factors can make.
type uint128 struct{ hi, lo uint64 }

func times64(a, b uint64) uint128 {
	hi, lo := bits.Mul64(a, b)
	return uint128{hi, lo}
}

func (x uint128) less(y uint128) bool { return x.hi < y.hi || x.hi == y.hi && x.lo < y.lo }

func (x uint128) isZero() bool { return x.hi|x.lo == 0 }

// add returns x+y; its callers' numbers have at most 127 bits.
func (x uint128) add(y uint128) uint128 {
	lo, carry := bits.Add64(x.lo, y.lo, 0)
	return uint128{x.hi + y.hi + carry, lo}
}

// sub returns x-y; y is at most x.
func (x uint128) sub(y uint128) uint128 {
	lo, borrow := bits.Sub64(x.lo, y.lo, 0)
	return uint128{x.hi - y.hi - borrow, lo}
}

func (x uint128) shiftLeft(n int) uint128 {
	if n >= 64 {
		return uint128{x.lo << (n - 64), 0}
	}
	return uint128{x.hi<<n | x.lo>>(64-n), x.lo << n}
}

func (x uint128) bitLen() int {
	if x.hi != 0 {
		return 64 + bits.Len64(x.hi)
	}
	return bits.Len64(x.lo)
}

// mod64 returns x mod m; m is not 0.
func (x uint128) mod64(m uint64) uint64 { return bits.Rem64(x.hi, x.lo, m) }

// divMod is long division in base two, left to the processor where it can; y is not 0.
func (x uint128) divMod(y uint128) (quotient, remainder uint128) {
	if x.hi|y.hi == 0 {
		return uint128{0, x.lo / y.lo}, uint128{0, x.lo % y.lo}
	}
	for shift := x.bitLen() - y.bitLen(); shift >= 0; shift-- {
		quotient = quotient.shiftLeft(1)
		if part := y.shiftLeft(shift); !x.less(part) {
			x = x.sub(part)
			quotient.lo |= 1
		}
	}
	return quotient, x
}

// gcd128 is Euclid's algorithm for what [gcd] cannot hold; not both are 0.
func gcd128(a, b uint128) uint128 {
	for a.hi|b.hi != 0 && !b.isZero() {
		_, rest := a.divMod(b)
		a, b = b, rest
	}
	if b.isZero() {
		return a
	}
	return uint128{0, gcd(a.lo, b.lo)}
}

// addSigned adds two numbers given as sign and magnitude, each of at most 127 bits.
func addSigned(aNegative bool, a uint128, bNegative bool, b uint128) (negative bool, sum uint128) {
	switch {
	case aNegative == bNegative:
		return aNegative, a.add(b)
	case a.less(b):
		return bNegative, b.sub(a)
	}
	return aNegative, a.sub(b)
}

// lowest128 returns n/d with the sign in lowest terms, and whether it fits. d is not 0.
func lowest128(negative bool, n, d uint128) (value, bool) {
	g := gcd128(n, d)
	n, _ = n.divMod(g)
	d, _ = d.divMod(g)
	if n.hi|d.hi != 0 {
		return value{}, false
	}
	return fit(negative, n.lo, d.lo)
}
