package fraction

import "unicode/utf8"

// number reads a decimal, a fraction, a whole number or a mixed one, without a sign.
func (r *reader) number() value {
	if v, ok := r.character(); ok {
		return v
	}
	if r.take('.') {
		return r.decimals(value{})
	}
	start := r.at
	n := r.digits()
	whole := value{n, 0}
	switch {
	case r.take('.'):
		return r.decimals(whole)
	case r.take('/') || r.take('⁄'):
		return r.under(n)
	case r.next() == ',':
		r.fail(r.at, "a comma; use a point before decimals and nothing between thousands")
	}
	if v, ok := r.character(); ok {
		return r.mixed(whole, v, start)
	}
	return r.joined(whole, start)
}

// joined reads the fraction that may follow a whole number after a dash or spaces.
func (r *reader) joined(whole value, start int) value {
	back := r.at
	if !r.take('-') {
		r.spaces()
	}
	part := r.at
	if v, ok := r.character(); ok && part > back {
		return r.mixed(whole, v, start)
	}
	if c := r.next(); part == back || c < '0' || c > '9' {
		r.at = back
		return whole
	}
	n := r.digits()
	if !r.take('/') && !r.take('⁄') {
		r.fail(part, "only a fraction follows a whole number")
	}
	return r.mixed(whole, r.under(n), part)
}

func (r *reader) mixed(whole, part value, start int) value {
	if part.num > part.denMinus1 {
		r.fail(start, "the fraction after a whole number is less than one")
	}
	return r.fits(sum(whole, part))
}

// under reads the denominator below n.
func (r *reader) under(n int64) value {
	start := r.at
	d := r.digits()
	if d == 0 {
		r.fail(start, "zero denominator")
	}
	return r.fits(ratio(n, d))
}

// places is the most digits after a point, since 10^18 is the last power of ten within an int64.
const places = 18

// decimals reads the digits after a point. Zeros at the end do not count.
func (r *reader) decimals(whole value) value {
	start := r.at
	var n, power int64 = 0, 1
	zeros := 0
	for ; r.at < len(r.text) && '0' <= r.text[r.at] && r.text[r.at] <= '9'; r.at++ {
		digit := int64(r.text[r.at] - '0')
		if digit == 0 {
			zeros++
			continue
		}
		if r.at-start >= places {
			r.fail(r.at, "more than 18 decimal places")
		}
		for ; zeros >= 0; zeros-- {
			n, power = n*10, power*10
		}
		n, zeros = n+digit, 0
	}
	if r.at == start {
		r.fail(r.at, "no digits after the point")
	}
	return r.fits(sum(whole, r.fits(ratio(n, power))))
}

// exponent reads a power of ten, if there is one, and multiplies v by it.
func (r *reader) exponent(v value) value {
	if !r.take('e') && !r.take('E') {
		return v
	}
	down := r.take('-')
	if !down {
		r.take('+')
	}
	start := r.at
	n := r.digits()
	if n > places {
		r.fail(start, "an exponent beyond 18")
	}
	power := value{1, 0}
	for range n {
		power.num *= 10
	}
	if down {
		power = value{1, power.num - 1}
	}
	return r.fits(product(v, power))
}

// digits reads a whole number that fits an int64.
func (r *reader) digits() int64 {
	const most = 1<<63 - 1
	start := r.at
	var n int64
	for ; r.at < len(r.text) && '0' <= r.text[r.at] && r.text[r.at] <= '9'; r.at++ {
		digit := int64(r.text[r.at] - '0')
		if n > (most-digit)/10 {
			r.fail(start, tooLong)
		}
		n = n*10 + digit
	}
	if r.at == start {
		r.fail(start, "no number")
	}
	return n
}

// character reads a fraction that is a single character.
func (r *reader) character() (value, bool) {
	c, size := utf8.DecodeRuneInString(r.text[r.at:])
	if c < '¼' {
		return value{}, false
	}
	for _, f := range characters {
		if f.character == c {
			r.at += size
			return f.value, true
		}
	}
	return value{}, false
}

var characters = [...]struct {
	character rune
	value     value
}{
	{'¼', value{1, 3}}, {'½', value{1, 1}}, {'¾', value{3, 3}},
	{'⅛', value{1, 7}}, {'⅜', value{3, 7}}, {'⅝', value{5, 7}}, {'⅞', value{7, 7}},
	{'⅓', value{1, 2}}, {'⅔', value{2, 2}}, {'⅙', value{1, 5}}, {'⅚', value{5, 5}},
	{'⅕', value{1, 4}}, {'⅖', value{2, 4}}, {'⅗', value{3, 4}}, {'⅘', value{4, 4}},
	{'⅐', value{1, 6}}, {'⅑', value{1, 8}}, {'⅒', value{1, 9}},
}
