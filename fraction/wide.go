package fraction

import "math/bits"

// wide is an unsigned number of 128 bits: what two 64-bit factors can make.
type wide struct{ hi, lo uint64 }

func times64(a, b uint64) wide {
	hi, lo := bits.Mul64(a, b)
	return wide{hi, lo}
}

func (x wide) compare(y wide) int {
	switch {
	case x.hi < y.hi || x.hi == y.hi && x.lo < y.lo:
		return -1
	case x == y:
		return 0
	}
	return 1
}

func (x wide) isZero() bool { return x.hi|x.lo == 0 }

// add returns x+y; its callers' numbers have at most 127 bits.
func (x wide) add(y wide) wide {
	lo, carry := bits.Add64(x.lo, y.lo, 0)
	hi, _ := bits.Add64(x.hi, y.hi, carry)
	return wide{hi, lo}
}

// sub returns x-y; y is at most x.
func (x wide) sub(y wide) wide {
	lo, borrow := bits.Sub64(x.lo, y.lo, 0)
	hi, _ := bits.Sub64(x.hi, y.hi, borrow)
	return wide{hi, lo}
}

func (x wide) shiftLeft(n int) wide {
	if n >= 64 {
		return wide{x.lo << (n - 64), 0}
	}
	return wide{x.hi<<n | x.lo>>(64-n), x.lo << n}
}

func (x wide) shiftRight(n int) wide {
	if n >= 64 {
		return wide{0, x.hi >> (n - 64)}
	}
	return wide{x.hi >> n, x.lo>>n | x.hi<<(64-n)}
}

func (x wide) bitLen() int {
	if x.hi != 0 {
		return 64 + bits.Len64(x.hi)
	}
	return bits.Len64(x.lo)
}

func (x wide) trailingZeros() int {
	if x.lo != 0 {
		return bits.TrailingZeros64(x.lo)
	}
	return 64 + bits.TrailingZeros64(x.hi)
}

// mod64 returns x mod m; m is not 0.
func (x wide) mod64(m uint64) uint64 { return bits.Rem64(x.hi, x.lo, m) }

// divMod is long division in base two, left to the processor where it can; y is not 0.
func (x wide) divMod(y wide) (quotient, remainder wide) {
	if x.hi|y.hi == 0 {
		return wide{0, x.lo / y.lo}, wide{0, x.lo % y.lo}
	}
	for shift := x.bitLen() - y.bitLen(); shift >= 0; shift-- {
		quotient = quotient.shiftLeft(1)
		if part := y.shiftLeft(shift); x.compare(part) >= 0 {
			x = x.sub(part)
			quotient.lo |= 1
		}
	}
	return quotient, x
}

// gcdWide is Stein's binary algorithm for what [gcd] cannot hold; b is not 0.
func gcdWide(a, b wide) wide {
	if a.hi|b.hi == 0 {
		return wide{0, gcd(a.lo, b.lo)}
	}
	if a.isZero() {
		return b
	}
	twos := min(a.trailingZeros(), b.trailingZeros())
	a = a.shiftRight(a.trailingZeros())
	for !b.isZero() {
		b = b.shiftRight(b.trailingZeros())
		if a.compare(b) > 0 {
			a, b = b, a
		}
		b = b.sub(a)
	}
	return a.shiftLeft(twos)
}

// addSigned adds two numbers given as sign and magnitude, each of at most 127 bits.
func addSigned(aNegative bool, a wide, bNegative bool, b wide) (negative bool, sum wide) {
	switch {
	case aNegative == bNegative:
		return aNegative, a.add(b)
	case a.compare(b) >= 0:
		return aNegative, a.sub(b)
	}
	return bNegative, b.sub(a)
}

// lowestWide returns n/d with the sign in lowest terms, and whether it fits. d is not 0.
func lowestWide(negative bool, n, d wide) (value, bool) {
	g := gcdWide(n, d)
	n, _ = n.divMod(g)
	d, _ = d.divMod(g)
	if n.hi|d.hi != 0 {
		return value{}, false
	}
	return fit(negative, n.lo, d.lo)
}
