package verify

import (
	"errors"
	"fmt"
	"math/big"
	"regexp"
	"strings"
)

// perUnit says how many inches one unit is; 1 in = 25.4 mm exactly (the international inch of 1959).
var perUnit = map[string]rat{
	"":   whole(1),
	"in": whole(1),
	"mm": ratio(5, 127),
	"cm": ratio(50, 127),
	"ft": whole(12),
}

var typography = strings.NewReplacer(
	"½", " 1/2", "⅓", " 1/3", "⅔", " 2/3", "¼", " 1/4", "¾", " 3/4", "⅕", " 1/5",
	"⅖", " 2/5", "⅗", " 3/5", "⅘", " 4/5", "⅙", " 1/6", "⅚", " 5/6", "⅐", " 1/7",
	"⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8", "⅑", " 1/9", "⅒", " 1/10",
	"′", "'", "’", "'", "″", `"`, "”", `"`, "⁄", "/", "−", "-", "\u00a0", " ", "\u2009", " ",
)

var (
	measure = regexp.MustCompile(`^([0-9]+(?:\.[0-9]+)?|\.[0-9]+)?(?:(^|[ -]+)([0-9]+)/([0-9]+))?$`)
	decimal = regexp.MustCompile(`^-?[0-9]*\.?[0-9]+([eE][-+]?[0-9]{1,2})?$`)
)

// longest is the most characters of a number, so that no file makes the arithmetic slow.
const longest = 64

// readLength reads a length as a job writes it, into inches. A bare number counts the given unit.
func readLength(written, unit string) (rat, error) {
	s := strings.TrimSpace(typography.Replace(written))
	s, minus := strings.CutPrefix(s, "-")
	s = strings.TrimSpace(s)
	for _, suffix := range []string{"mm", "cm", "in", "ft"} {
		if rest, ok := strings.CutSuffix(s, suffix); ok {
			s, unit = strings.TrimSpace(rest), suffix
			break
		}
	}
	total := zero()
	if feet, rest, ok := strings.Cut(s, "'"); ok {
		n, err := readNumber(strings.TrimSpace(feet))
		if err != nil {
			return zero(), err
		}
		total = times(n, whole(12))
		s, unit = strings.TrimLeft(rest, " -"), "in"
	}
	if rest, ok := strings.CutSuffix(s, `"`); ok {
		s, unit = strings.TrimSpace(rest), "in"
	} else if s == "" && total.Sign() > 0 {
		s = "0"
	}
	n, err := readNumber(s)
	if err != nil {
		return zero(), err
	}
	inches, known := perUnit[unit]
	if !known {
		return zero(), fmt.Errorf("unit %q is not known", unit)
	}
	total = sum(total, times(n, inches))
	if minus {
		total = negative(total)
	}
	return total, nil
}

// readNumber reads a number without a sign: whole, decimal, fraction or mixed.
func readNumber(s string) (rat, error) {
	parts := measure.FindStringSubmatch(s)
	if s == "" || len(s) > longest || parts == nil {
		return zero(), errors.New("want a number")
	}
	total := zero()
	if parts[1] != "" {
		total.SetString(parts[1])
	}
	if parts[3] != "" {
		num, _ := new(big.Int).SetString(parts[3], 10)
		den, _ := new(big.Int).SetString(parts[4], 10)
		if den.Sign() == 0 {
			return zero(), errors.New("zero denominator")
		}
		total.Add(total, new(big.Rat).SetFrac(num, den))
	}
	return total, nil
}

// readExact reads a number as a plan must write it: a mixed fraction in lowest terms and in the
// one form that text gives.
func readExact(written string) (rat, error) {
	s, minus := strings.CutPrefix(written, "-")
	n, err := readNumber(s)
	if minus && err == nil {
		n = negative(n)
	}
	if err == nil && text(n) != written {
		err = fmt.Errorf("want %s: a mixed fraction in lowest terms", text(n))
	}
	return n, err
}

// readDecimal reads an amount of money or a weight.
func readDecimal(written string) (rat, error) {
	if len(written) > longest || !decimal.MatchString(written) {
		return zero(), errors.New("want a decimal number")
	}
	n, _ := new(big.Rat).SetString(written)
	return n, nil
}
