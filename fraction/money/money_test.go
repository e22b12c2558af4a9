package money_test

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/fraction/money"
)

func TestJSONDoesNotDependOnGlobals(t *testing.T) {
	decimal.MarshalJSONWithoutQuotes = true
	defer func() { decimal.MarshalJSONWithoutQuotes = false }()
	type row struct {
		Price, None money.Amount
	}
	data, err := json.Marshal(row{Price: money.MustParse("24.98")})
	if err != nil || string(data) != `{"Price":"24.98","None":null}` {
		t.Fatalf("got %s, %v", data, err)
	}
	var back row
	if err := json.Unmarshal(data, &back); err != nil || !back.Price.Equal(money.MustParse("24.980")) || back.None.Known() {
		t.Errorf("got %v, %v", back, err)
	}
}

func TestParseRefuses(t *testing.T) {
	for _, s := range []string{"", ".", "1.", ".5", "-1", "+1", "1e3", "1,5", " 1", "1234567890", "0x1", "1.1234567890"} {
		if a, err := money.Parse(s); !errors.Is(err, money.ErrSyntax) {
			t.Errorf("Parse(%q) = %v, %v; want ErrSyntax", s, a, err)
		}
	}
}

func TestJSONOfAmounts(t *testing.T) {
	digits := strings.Repeat("9", 30)
	for _, text := range []string{`"0"`, `"-12.5"`, `"` + digits + `.` + digits + `"`, `null`} {
		var a money.Amount
		err := json.Unmarshal([]byte(text), &a)
		if back, _ := json.Marshal(a); err != nil || string(back) != text {
			t.Errorf("%s is read as %v, %v", text, a, err)
		}
	}
	for _, text := range []string{``, `"`, `""`, `"-"`, `"--1"`, `"1e3"`, `12`, `12"`, `"12`, `"1` + digits + `"`, `"1.1` + digits + `"`} {
		a := money.MustParse("1")
		if err := a.UnmarshalJSON([]byte(text)); !errors.Is(err, money.ErrSyntax) || a.String() != "1" {
			t.Errorf("%s is read as %v, %v; want ErrSyntax", text, a, err)
		}
	}
}

func TestMustParsePanics(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("no panic")
		}
	}()
	money.MustParse("free")
}

func TestZeroIsUnknown(t *testing.T) {
	var a money.Amount
	if a.Known() || !a.IsZero() || a.String() != "" || a.Equal(money.Of(decimal.Zero)) {
		t.Errorf("the zero Amount is %v", a)
	}
	if r, err := a.Ratio(); err != nil || !r.IsZero() {
		t.Errorf("Ratio() = %v, %v", r, err)
	}
}

// FuzzAmount reads any text: what is an amount writes itself so that it reads back.
func FuzzAmount(once *testing.F) {
	f := fractiontest.F{F: once}
	for _, seed := range []string{"24.98", "0", "", "-1", "1e9", "999999999.999999999", `"-12.5"`, "null", `"`} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		parsed, _ := money.Parse(text)
		var read money.Amount
		_ = read.UnmarshalJSON([]byte(text))
		for _, a := range []money.Amount{{}, parsed, read} {
			data, err := a.MarshalJSON()
			var back money.Amount
			if err != nil || back.UnmarshalJSON(data) != nil || !back.Equal(a) {
				t.Fatalf("%q is written as %s, %v, and reads back as %v", text, data, err, back)
			}
			_, _ = a.Ratio()
			if d, known := a.Decimal(); known != a.Known() || known && !money.Of(d).Equal(a) || a.IsZero() == known {
				t.Fatalf("%v is known: %t", a, known)
			}
		}
	})
}

// A decimal of a huge exponent would take gigabytes to write.
func TestHugeDecimalsAreNotKnown(t *testing.T) {
	for _, d := range []decimal.Decimal{decimal.New(1, 1<<30), decimal.New(1, -1<<30), decimal.New(1, 30), decimal.New(1, -31)} {
		if a := money.Of(d); a.Known() {
			t.Errorf("an amount with exponent %d is known", d.Exponent())
		}
	}
	for _, d := range []decimal.Decimal{decimal.New(-2498, -2), decimal.New(1, 29), decimal.New(1, -30), {}} {
		if a := money.Of(d); !a.Known() {
			t.Errorf("an amount with exponent %d is not known", d.Exponent())
		}
	}
}
