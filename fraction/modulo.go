package fraction

import "math"

// split is a division with remainder on a common denominator:
//
//	a/p = quotient + remainder/step   with 0 <= remainder < step,
//
// where the number remainder/scale is what is left of a, and step/scale is |p|. The quotient is
// rounded towards minus infinity and taken for |p|.
type split struct {
	quotient               uint128
	negative               bool // the quotient
	remainder, step, scale uint128
}

// divide splits a by |p|; p is not 0. With g the common divisor of the two denominators every part
// has at most 126 bits.
func divide(a, p value) split {
	da, dp := uint64(a.den()), uint64(p.den())
	g := gcd(da, dp)
	s := split{
		step:  times64(magnitude(p.num), da/g),
		scale: times64(da, dp/g),
	}
	s.quotient, s.remainder = times64(magnitude(a.num), dp/g).divMod(s.step)
	if a.num < 0 {
		s.negative = true
		if !s.remainder.isZero() {
			s.remainder = s.step.sub(s.remainder)
			s.quotient = s.quotient.add(uint128{0, 1})
		}
	}
	return s
}

// mod returns a less the greatest whole multiple of |p| that does not exceed it.
func mod(a, p value) value {
	if p.num == 0 {
		divideByZero(a)
	}
	if p.num > 0 && dyadic(a, p) {
		da, dp := a.denMinus1+1, p.denMinus1+1
		step := p.num * da
		r := (a.num * dp) % step
		if r < 0 {
			r += step
		}
		return reducePow2(r, da*dp)
	}
	s := divide(a, p)
	r, ok := lowest128(false, s.remainder, s.scale)
	if !ok {
		overflow("mod", a, p)
	}
	return r
}

// divMod returns the whole number q and the remainder r in [0, |p|) with a = q*p + r.
func divMod(a, p value) (int64, value) {
	if p.num == 0 {
		divideByZero(a)
	}
	s := divide(a, p)
	r, ok := lowest128(false, s.remainder, s.scale)
	negative := s.negative != (p.num < 0)
	if !ok || s.quotient.hi != 0 || s.quotient.lo > math.MaxInt64 {
		overflow("divmod", a, p)
	}
	if negative {
		return -int64(s.quotient.lo), r
	}
	return int64(s.quotient.lo), r
}

// round returns the multiple of |mark| that d asks for, and how far it lies above a.
func round(a, mark value, d Direction) (rounded, over value) {
	if mark.num == 0 {
		return a, value{}
	}
	s := divide(a, mark)
	if s.remainder.isZero() {
		return a, value{}
	}
	rest := s.step.sub(s.remainder)
	up := d == Up || d == Nearest && !s.remainder.less(rest)
	var ok bool
	if up {
		over, ok = lowest128(false, rest, s.scale)
	} else {
		over, ok = lowest128(true, s.remainder, s.scale)
	}
	if ok {
		rounded, ok = sum(a, over)
	}
	if !ok {
		overflow("round to", a, mark)
	}
	return rounded, over
}
