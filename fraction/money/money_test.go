package money_test

import (
	"encoding/json"
	"errors"
	"testing"

	"github.com/shopspring/decimal"

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

func TestZeroIsUnknown(t *testing.T) {
	var a money.Amount
	if a.Known() || !a.IsZero() || a.String() != "" || a.Equal(money.Of(decimal.Zero)) {
		t.Errorf("the zero Amount is %v", a)
	}
	if r, err := a.Ratio(); err != nil || !r.IsZero() {
		t.Errorf("Ratio() = %v, %v", r, err)
	}
}
