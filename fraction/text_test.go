package fraction_test

import (
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"
	"unsafe"

	"example.com/groovewright/fraction"
)

func TestString(t *testing.T) {
	for _, test := range []struct {
		length fraction.Length
		want   string
	}{
		{fraction.Length{}, "0"},
		{fraction.Of(259, 16), "16 3/16"},
		{fraction.Of(-1, 2), "-1/2"},
		{fraction.Of(-5, 2), "-2 1/2"},
		{fraction.Of(6, -4), "-1 1/2"},
		{fraction.Of(10, 5), "2"},
		{fraction.Of(math.MaxInt64, 2), "4611686018427387903 1/2"},
		{fraction.Of(-math.MaxInt64, math.MaxInt64-1), "-1 1/9223372036854775806"},
	} {
		if got := test.length.String(); got != test.want {
			t.Errorf("String = %q, want %q", got, test.want)
		}
		if text, err := test.length.MarshalText(); string(text) != test.want || err != nil {
			t.Errorf("MarshalText = %q, %v, want %q", text, err, test.want)
		}
	}
}

func TestJSON(t *testing.T) {
	type doc struct {
		Length fraction.Length            `json:"length"`
		Absent fraction.Length            `json:"absent,omitzero"`
		Area   fraction.Area              `json:"area"`
		Ratio  fraction.Ratio             `json:"ratio"`
		Unit   fraction.Unit              `json:"unit"`
		Keys   map[fraction.Length]string `json:"keys"`
	}
	in := doc{
		Length: fraction.Of(259, 16),
		Area:   fraction.Of(1, 2).Times(fraction.Inches(3)),
		Ratio:  fraction.NewRatio(-1, 8),
		Unit:   fraction.Millimetre,
		Keys:   map[fraction.Length]string{fraction.Of(1, 2): "half"},
	}
	text, err := json.Marshal(in)
	const want = `{"length":"16 3/16","area":"1 1/2","ratio":"-1/8","unit":"mm","keys":{"1/2":"half"}}`
	if err != nil || string(text) != want {
		t.Fatalf("Marshal = %s, %v, want %s", text, err, want)
	}
	var out doc
	if err := json.Unmarshal(text, &out); err != nil {
		t.Fatal(err)
	}
	if out.Length != in.Length || out.Area != in.Area || out.Ratio != in.Ratio || out.Unit != in.Unit || out.Keys[fraction.Of(1, 2)] != "half" {
		t.Errorf("Unmarshal = %+v, want %+v", out, in)
	}
}

func TestJSONRefusesNumbers(t *testing.T) {
	for _, target := range []any{new(fraction.Length), new(fraction.Area), new(fraction.Ratio)} {
		for _, text := range []string{"63.25", "63", "-1e3", "true", "{}", "[]"} {
			err := json.Unmarshal([]byte(text), target)
			var wrong *json.UnmarshalTypeError
			if !errors.As(err, &wrong) {
				t.Errorf("Unmarshal(%s) into %T: %v, want an error", text, target, err)
			}
		}
		var parse *fraction.ParseError
		if err := json.Unmarshal([]byte(`"1/0"`), target); !errors.As(err, &parse) {
			t.Errorf("Unmarshal(\"1/0\") into %T: %v, want a *ParseError", target, err)
		}
		if err := json.Unmarshal([]byte(`null`), target); err != nil {
			t.Errorf("Unmarshal(null) into %T: %v", target, err)
		}
	}
	kept := fraction.Inches(7)
	if err := json.Unmarshal([]byte(`"x"`), &kept); err == nil || kept != fraction.Inches(7) {
		t.Errorf("a failed Unmarshal leaves %v, %v", kept, err)
	}
}

// Everything about a value that says it is one: its size, its zero, ==.
func TestValues(t *testing.T) {
	if size := unsafe.Sizeof(fraction.Length{}); size != 16 {
		t.Errorf("a Length has %d bytes, want 16", size)
	}
	seen := map[fraction.Length]bool{fraction.Of(1, 2): true}
	if !seen[fraction.Of(8, 16)] || !seen[fraction.Of(-3, -6)] {
		t.Error("equal lengths are different keys")
	}
	var zero fraction.Length
	if zero != fraction.Inches(0) || zero != fraction.Of(0, -5) || zero != fraction.Millimetres(0, 3) || zero != fraction.Of(1, 2).Sub(fraction.Of(1, 2)) {
		t.Error("there is more than one zero")
	}
}

// Each method of the zero values works without anything being set.
func TestZeroValues(t *testing.T) {
	var a fraction.Length
	var b fraction.Area
	var r fraction.Ratio
	one := fraction.Inches(1)
	for name, got := range map[string]fraction.Length{
		"Add": a.Add(a), "Sub": a.Sub(a), "Neg": a.Neg(), "Abs": a.Abs(), "Mul": a.Mul(7), "Div": a.Div(7), "Scale": a.Scale(r), "Mod": a.Mod(one),
		"Over": b.Over(one), "Min": fraction.Min(a), "Max": fraction.Max(a, a), "Circular": fraction.Circular(a, a, one),
	} {
		if !got.IsZero() || got.String() != "0" || got.Den() != 1 || got.Num() != 0 || got.Float64() != 0 || got.Sign() != 0 {
			t.Errorf("%s = %v, want 0", name, got)
		}
	}
	for name, got := range map[string]fraction.Ratio{
		"Add": r.Add(r), "Sub": r.Sub(r), "Neg": r.Neg(), "Abs": r.Abs(), "Mul": r.Mul(r), "Div": r.Div(fraction.NewRatio(1, 1)), "Over": a.Over(one),
		"SquareFeet": b.SquareFeet(), "SquareMetres": b.SquareMetres(),
	} {
		if !got.IsZero() || got.String() != "0" {
			t.Errorf("%s = %v, want 0", name, got)
		}
	}
	if q, m := a.DivMod(one); q != 0 || !m.IsZero() {
		t.Errorf("DivMod = %d, %v", q, m)
	}
	if m, over := a.Round(one, fraction.Up); !m.IsZero() || !over.IsZero() {
		t.Errorf("Round = %v, %v", m, over)
	}
	if b.Add(b) != b || b.Sub(b) != b || b.Neg() != b || b.Scale(r) != b || b.String() != "0" || a.Times(a) != b || b.Compare(b) != 0 {
		t.Error("a zero area is not zero")
	}
	if a.Less(a) || a.Compare(a) != 0 {
		t.Error("0 is less than 0")
	}
}

func TestAreasAndRatiosWriteAsLengthsDo(t *testing.T) {
	r := fraction.NewRatio(-259, 16)
	a := fraction.Of(-259, 16).Times(fraction.Inches(1))
	x, err := r.MarshalText()
	y, fault := a.MarshalText()
	if string(x) != "-16 3/16" || string(y) != "-16 3/16" || err != nil || fault != nil {
		t.Errorf("MarshalText = %q, %q", x, y)
	}
	if r.Sign() != -1 || r.Num() != -259 || r.Den() != 16 || r.Float64() != -16.1875 || a.Float64() != -16.1875 {
		t.Errorf("%v has sign %d, %d/%d, %v", r, r.Sign(), r.Num(), r.Den(), r.Float64())
	}
}

func TestNames(t *testing.T) {
	for got, want := range map[string]string{
		fraction.Nearest.String(): "nearest", fraction.Down.String(): "down", fraction.Up.String(): "up", fraction.Direction(7).String(): "(7)",
		fraction.Inch.String(): "in", fraction.Millimetre.String(): "mm", fraction.Centimetre.String(): "cm", fraction.Unit(9).String(): "(9)",
	} {
		if got != want {
			t.Errorf("String = %q, want %q", got, want)
		}
	}
}

func TestCatch(t *testing.T) {
	most := fraction.Of(math.MaxInt64, 1)
	err := func() (err error) {
		defer fraction.Catch(&err)
		most.Add(fraction.Of(1, 2))
		return nil
	}()
	var overflow *fraction.OverflowError
	if !errors.As(err, &overflow) || overflow.Operation != "+" || overflow.Left != most.String() || overflow.Right != "1/2" {
		t.Errorf("err = %#v, want an overflow of + with both operands", err)
	}
	if !strings.Contains(err.Error(), "64 bits") {
		t.Errorf("err = %v", err)
	}
	err = func() (err error) {
		defer fraction.Catch(&err)
		fraction.Of(1, math.MinInt64)
		return nil
	}()
	if !errors.As(err, &overflow) || overflow.Operation != "/" || overflow.Left != "1" || overflow.Right != "-9223372036854775808" {
		t.Errorf("err = %#v, want an overflow of / with both operands", err)
	}
	err = func() (err error) {
		defer fraction.Catch(&err)
		most.Div(0)
		return nil
	}()
	var divisor *fraction.ZeroDivisorError
	if !errors.As(err, &divisor) || divisor.Dividend != most.String() || !strings.Contains(err.Error(), "by zero") {
		t.Errorf("err = %#v, want a *ZeroDivisorError", err)
	}
	was := errors.New("as it was")
	if err := func() (err error) {
		defer fraction.Catch(&err)
		return was
	}(); err != was {
		t.Errorf("without a panic Catch makes %v of %v", err, was)
	}
	defer func() {
		if recover() != "another" {
			t.Error("Catch stops panics that are not its own")
		}
	}()
	func() {
		var err error
		defer fraction.Catch(&err)
		panic("another")
	}()
}
