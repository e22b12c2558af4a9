package fraction

// plain reads what nearly all texts are, without the calls that parse makes for each character: 63,
// 63.25, 7/8, 63 1/4 or 63-1/4, also below 0, of numbers of at most six digits. It reports false
// for all else, and for what is wrong or beyond [MaxInput], so that parse alone finds faults.
func plain(s string) (v value, ok bool) {
	negative := s != "" && s[0] == '-'
	if negative {
		s = s[1:]
	}
	num, rest := few(s)
	whole, den := int64(0), int64(1)
	if rest != "" {
		part := rest[1:]
		switch rest[0] {
		case '/':
			den, rest = few(part)
		case '.':
			whole = num
			num, rest = few(part)
			den = powers[len(part)-len(rest)]
		case ' ', '-':
			whole = num
			if num, rest = few(part); len(rest) == len(part) || rest == "" || rest[0] != '/' {
				return v, false
			}
			if den, rest = few(rest[1:]); num >= den {
				return v, false
			}
		}
	}
	if num += whole * den; s == "" || s[0] < '0' || rest != "" || den == 0 || num > MaxInput*den {
		return v, false
	}
	if negative {
		num = -num
	}
	if den&(den-1) == 0 {
		return reducePow2(num, den), true
	}
	return ratio(num, den)
}

// powers are those of ten; no digits after a point are a fault.
var powers = [...]int64{0, 10, 100, 1000, 10_000, 100_000, 1_000_000}

// few reads the digits that s begins with, at most six, and returns what follows them.
func few(s string) (n int64, rest string) {
	i := 0
	for ; i < len(s) && i < len(powers)-1 && s[i]-'0' <= 9; i++ {
		n = n*10 + int64(s[i]-'0')
	}
	return n, s[i:]
}
