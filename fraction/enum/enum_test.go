package enum_test

import (
	"encoding/json"
	"errors"
	"testing"

	"example.com/groovewright/fraction/enum"
	"example.com/groovewright/fraction/fault"
)

type kind uint8

var kinds = enum.Of[kind]("flat", "inside corner")

func (k kind) MarshalText() ([]byte, error)     { return kinds.Marshal(k) }
func (k *kind) UnmarshalText(text []byte) error { return kinds.Unmarshal(text, k) }

func TestWordsBothWays(t *testing.T) {
	for _, k := range kinds.All() {
		data, err := json.Marshal(k)
		var back kind
		if err != nil || json.Unmarshal(data, &back) != nil || back != k {
			t.Errorf("%s, %v, read back as %v", data, err, back)
		}
	}
	if got := kinds.String(7); got != "(7)" {
		t.Errorf("String(7) = %s", got)
	}
}

func TestUnknownWordsAreFaults(t *testing.T) {
	k := kind(1)
	err := k.UnmarshalText([]byte("bead"))
	if f := new(fault.Fault); !errors.As(err, &f) || f.Error() != `"bead": want one of flat, inside corner` || k != 1 {
		t.Errorf("got %v, value %d", err, k)
	}
	if _, err := kind(2).MarshalText(); err == nil {
		t.Error("an unknown value was written")
	}
}
