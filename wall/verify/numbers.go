package verify

import (
	"errors"
	"math/big"
	"regexp"
	"slices"
	"strings"
)

// A rat is an exact number: inches, square inches, or pure. No function here writes to one given.
type rat = *big.Rat

func whole(n int64) rat         { return new(big.Rat).SetInt64(n) }
func ratio(num, den int64) rat  { return big.NewRat(num, den) }
func zero() rat                 { return new(big.Rat) }
func diff(a, b rat) rat         { return new(big.Rat).Sub(a, b) }
func times(a, b rat) rat        { return new(big.Rat).Mul(a, b) }
func over(a, b rat) rat         { return new(big.Rat).Quo(a, b) }
func half(a rat) rat            { return times(a, ratio(1, 2)) }
func square(a rat) rat          { return times(a, a) }
func negative(a rat) rat        { return new(big.Rat).Neg(a) }
func size(a rat) rat            { return new(big.Rat).Abs(a) }
func less(a, b rat) bool        { return a.Cmp(b) < 0 }
func same(a, b rat) bool        { return a.Cmp(b) == 0 }
func middle(a, b rat) rat       { return half(sum(a, b)) }
func within(a, low, b rat) bool { return !less(a, low) && !less(b, a) }
func least(of ...rat) rat       { return slices.MinFunc(of, rat.Cmp) }
func most(of ...rat) rat        { return slices.MaxFunc(of, rat.Cmp) }

// nearest returns the float64 that is nearest to a.
func nearest(a rat) float64 {
	near, _ := a.Float64()
	return near
}

// sum returns the sum of all terms, 0 for none.
func sum(terms ...rat) rat {
	total := zero()
	for _, term := range terms {
		total.Add(total, term)
	}
	return total
}

// mod returns a less whole multiples of p, in [0, p); 0 where p is, as on a plain sheet.
func mod(a, p rat) rat {
	if p.Sign() == 0 {
		return zero()
	}
	// Div of big.Int is Euclidean, and a denominator is positive: this rounds down.
	q := over(a, p)
	return diff(a, times(p, new(big.Rat).SetInt(new(big.Int).Div(q.Num(), q.Denom()))))
}

// down and up round to whole marks toward minus and plus infinity. A mark of 0 rounds nothing.
func down(a, mark rat) rat {
	if mark.Sign() == 0 {
		return a
	}
	return diff(a, mod(a, mark))
}

func up(a, mark rat) rat { return negative(down(negative(a), mark)) }

// snapped returns where a computed coordinate goes: to the nearest mark where that is within snap,
// else to the next one upward or downward, whichever leads into the space.
func (j *room) snapped(a rat, upward bool) rat {
	low, high := down(a, j.tape), up(a, j.tape)
	below, above := diff(a, low), diff(high, a)
	if less(below, above) && !less(j.snap, below) {
		return low
	}
	if upward || less(above, below) && !less(j.snap, above) {
		return high
	}
	return low
}

// circular returns the distance of a and b round a circle of circumference p.
func circular(a, b, p rat) rat {
	d := mod(diff(a, b), p)
	return least(d, diff(p, d))
}

// text writes a as the plan's JSON does: a mixed fraction in lowest terms.
func text(a rat) string {
	n, rest := new(big.Int).QuoRem(a.Num(), a.Denom(), new(big.Int))
	switch {
	case rest.Sign() == 0:
		return n.String()
	case n.Sign() == 0:
		return a.String()
	}
	return n.String() + " " + rest.Abs(rest).String() + "/" + a.Denom().String()
}

// perUnit is the inches of one unit; 1 in = 25.4 mm exactly (the international inch of 1959).
var perUnit = map[string]rat{
	"": whole(1), "in": whole(1), "ft": whole(12), "mm": ratio(5, 127), "cm": ratio(50, 127),
}

var typography = strings.NewReplacer(
	"½", " 1/2", "⅓", " 1/3", "⅔", " 2/3", "¼", " 1/4", "¾", " 3/4", "⅕", " 1/5",
	"⅖", " 2/5", "⅗", " 3/5", "⅘", " 4/5", "⅙", " 1/6", "⅚", " 5/6", "⅐", " 1/7",
	"⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8", "⅑", " 1/9", "⅒", " 1/10",
	"′", "'", "’", "'", "″", `"`, "”", `"`, "⁄", "/", "−", "-", "\u00a0", " ", "\u2009", " ",
)

var (
	measure = regexp.MustCompile(`^([0-9]+(?:\.[0-9]+)?|\.[0-9]+)?(?:(?:^|[ -]+)([0-9]+)/([0-9]+))?$`)
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
		return zero(), errors.New("in, mm, cm or ft")
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
		return zero(), errors.New("a number")
	}
	total := zero()
	if parts[1] != "" {
		total.SetString(parts[1])
	}
	if parts[2] != "" { // not by Rat.SetString, for which 010 is octal
		num, _ := new(big.Int).SetString(parts[2], 10)
		den, _ := new(big.Int).SetString(parts[3], 10)
		if den.Sign() == 0 {
			return total, errors.New("a denominator above 0")
		}
		total.Add(total, new(big.Rat).SetFrac(num, den))
	}
	return total, nil
}

// readExact reads a mixed fraction in lowest terms, in the one form that text gives, as in a plan.
func readExact(written string) (rat, error) {
	s, minus := strings.CutPrefix(written, "-")
	n, err := readNumber(s)
	if minus && err == nil {
		n = negative(n)
	}
	if err == nil && text(n) != written {
		err = errors.New(text(n) + ", a mixed fraction in lowest terms")
	}
	return n, err
}

// readDecimal reads an amount of money or a weight.
func readDecimal(written string) (rat, error) {
	if len(written) > longest || !decimal.MatchString(written) {
		return zero(), errors.New("a decimal number")
	}
	n, _ := new(big.Rat).SetString(written)
	return n, nil
}
