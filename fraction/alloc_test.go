package fraction_test

import (
	"math"
	"testing"

	"example.com/groovewright/fraction"
)

func TestNoAllocs(t *testing.T) {
	a, b := fraction.MustParse("63 5/16"), fraction.MustParse("1606.55 mm").Add(fraction.Millimetres(1, 100))
	wide, narrow := fraction.Of(math.MaxInt64, 3), fraction.Of(1, math.MaxInt64)
	r, s := a.Over(b), fraction.NewRatio(1, 8)
	x, y := a.Times(b), a.Times(a)
	tape := fraction.Tape{Mark: fraction.Of(1, 16)}
	var length fraction.Length
	var area fraction.Area
	var ratio fraction.Ratio
	var n int64
	for _, test := range []struct {
		name string
		f    func()
		want float64
	}{
		{"Add", func() { length = a.Add(b) }, 0},
		{"Add wide", func() { length = wide.Add(fraction.Of(-1, 3)) }, 0},
		{"Sub", func() { length = a.Sub(b) }, 0},
		{"Mul", func() { length = b.Mul(7) }, 0},
		{"Div", func() { length = b.Div(7) }, 0},
		{"Times", func() { area = a.Times(b) }, 0},
		{"Scale", func() { length = a.Scale(s) }, 0},
		{"Over", func() { ratio = a.Over(b) }, 0},
		{"Mod", func() { length = a.Mod(b) }, 0},
		{"Mod wide", func() { length = wide.Mod(fraction.Of(2, 3)) }, 0},
		{"DivMod", func() { n, length = a.DivMod(b) }, 0},
		{"Compare", func() { n = int64(a.Compare(b)) }, 0},
		{"Compare wide", func() { n = int64(wide.Compare(narrow)) }, 0},
		{"Round", func() { length, _ = b.Round(tape.Mark, fraction.Down) }, 0},
		{"Circular", func() { length = fraction.Circular(a, b, fraction.Inches(2)) }, 0},
		{"Min", func() { length = fraction.Min(a, b, wide) }, 0},
		{"Of", func() { length = fraction.Of(34, 16) }, 0},
		{"Millimetres", func() { length = fraction.Millimetres(34, 10) }, 0},
		{"Float64", func() { n = int64(a.Float64()) }, 0},
		{"Area.Add", func() { area = x.Add(y) }, 0},
		{"Area.Over", func() { length = x.Over(a) }, 0},
		{"Area.SquareFeet", func() { ratio = x.SquareFeet() }, 0},
		{"Area.SquareMetres", func() { ratio = x.SquareMetres() }, 0},
		{"Ratio.Add", func() { ratio = r.Add(s) }, 0},
		{"Ratio.Div", func() { ratio = r.Div(s) }, 0},
		{"Parse", func() { length, _ = fraction.Parse("-63 1/4", fraction.Inch) }, 0},
		{"Parse feet", func() { length, _ = fraction.Parse("5′ - 3¼″", fraction.Inch) }, 0},
		{"Parse millimetres", func() { length, _ = fraction.Parse("1606.55 millimetres", fraction.Inch) }, 0},
		{"ParseRatio", func() { ratio, _ = fraction.ParseRatio("2.5e-1") }, 0},
		{"String", func() { _ = b.String() }, 1}, // the string itself
		{"Tape.Format", func() { _ = tape.Format(b) }, 1},
	} {
		if got := testing.AllocsPerRun(100, test.f); got > test.want {
			t.Errorf("%s allocates %v times, want %v", test.name, got, test.want)
		}
	}
	_, _, _, _ = length, area, ratio, n
}
