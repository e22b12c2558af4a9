package fraction

import "unicode/utf8"

// number reads a decimal, a fraction, a whole number or a mixed one, without a sign.
func (r *reader) number() (value, bool) {
	if v, ok := r.character(); ok {
		return v, true
	}
	if r.next() == '.' {
		return r.decimals(value{})
	}
	start := r.at
	n, ok := r.digits()
	if !ok {
		return value{}, false
	}
	whole := value{n, 0}
	switch r.next() {
	case '.':
		return r.decimals(whole)
	case '/', '⁄':
		return r.under(n)
	case ',':
		return whole, r.fail("a comma; use a point before decimals and nothing between thousands")
	}
	if v, ok := r.character(); ok {
		return r.mixed(whole, v, start)
	}
	return r.joined(whole, start)
}

// joined reads the fraction that may follow a whole number after a dash or spaces.
func (r *reader) joined(whole value, start int) (value, bool) {
	back := r.at
	dash := r.take('-')
	if !dash {
		r.spaces()
	}
	part := r.at
	if v, ok := r.character(); ok && part > back {
		return r.mixed(whole, v, start)
	}
	if c := r.next(); part == back || c < '0' || c > '9' {
		r.at = back
		return whole, true
	}
	n, ok := r.digits()
	if !ok {
		return whole, false
	}
	if c := r.next(); c != '/' && c != '⁄' {
		r.at = part
		return whole, r.fail("only a fraction follows a whole number")
	}
	v, ok := r.under(n)
	if !ok {
		return v, false
	}
	return r.mixed(whole, v, part)
}

func (r *reader) mixed(whole, part value, start int) (value, bool) {
	if part.num > part.denMinus1 {
		r.at = start
		return whole, r.fail("the fraction after a whole number is less than one")
	}
	v, ok := sum(whole, part)
	if !ok {
		return v, r.fail(tooLong)
	}
	return v, true
}

// under reads the stroke and the denominator below n.
func (r *reader) under(n int64) (value, bool) {
	r.step()
	start := r.at
	d, ok := r.digits()
	if !ok {
		return value{}, false
	}
	if d == 0 {
		r.at = start
		return value{}, r.fail("zero denominator")
	}
	return ratio(n, d)
}

// places is the most digits after a point, since 10^18 is the last power of ten within an int64.
const places = 18

// decimals reads the point and the digits after it. Zeros at the end do not count.
func (r *reader) decimals(whole value) (value, bool) {
	r.step()
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
			return whole, r.fail("more than 18 decimal places")
		}
		for ; zeros >= 0; zeros-- {
			n, power = n*10, power*10
		}
		n, zeros = n+digit, 0
	}
	if r.at == start {
		return whole, r.fail("no digits after the point")
	}
	part, _ := ratio(n, power) // power fits, so its divisor does
	v, ok := sum(whole, part)
	if !ok {
		return v, r.fail(tooLong)
	}
	return v, true
}

// exponent reads a power of ten, if there is one, and multiplies v by it.
func (r *reader) exponent(v value) (value, bool) {
	if !r.take('e') && !r.take('E') {
		return v, true
	}
	down := r.take('-')
	if !down {
		r.take('+')
	}
	start := r.at
	n, ok := r.digits()
	if !ok {
		return v, false
	}
	if n > places {
		r.at = start
		return v, r.fail("an exponent beyond 18")
	}
	power := value{1, 0}
	for range n {
		power.num *= 10
	}
	if down {
		power = value{1, power.num - 1}
	}
	if v, ok = product(v, power); !ok {
		return v, r.fail(tooLong)
	}
	return v, true
}

// digits reads a whole number of at most 18 digits, or 19 if it fits.
func (r *reader) digits() (int64, bool) {
	const last = (1<<63 - 1 - 9) / 10
	start := r.at
	var n int64
	for ; r.at < len(r.text) && '0' <= r.text[r.at] && r.text[r.at] <= '9'; r.at++ {
		digit := int64(r.text[r.at] - '0')
		if n > last && (n > last+1 || n*10 > 1<<63-1-digit) {
			r.at = start
			return 0, r.fail(tooLong)
		}
		n = n*10 + digit
	}
	if r.at == start {
		return 0, r.fail("no number")
	}
	return n, true
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

// sign reads a minus, which stands directly before the number.
func (r *reader) sign() bool {
	if r.next() == '+' {
		r.fail("a plus sign is not used")
	}
	return r.take('-') || r.take('−')
}
