package enum_test

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"example.com/groovewright/fraction/enum"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/fractiontest"
)

type kind uint8

var kinds = enum.Of[kind]("flat", "inside corner")

func (k kind) MarshalText() ([]byte, error)     { return kinds.Marshal(k) }
func (k *kind) UnmarshalText(text []byte) error { return kinds.Unmarshal(text, k) }

func TestWordsBothWays(t *testing.T) {
	for i := range kinds {
		k := kind(i)
		data, err := json.Marshal(k)
		var back kind
		if err != nil || json.Unmarshal(data, &back) != nil || back != k {
			t.Errorf("%s, %v, read back as %v", data, err, back)
		}
	}
	for k, want := range []string{"flat", "inside corner", "(2)", "(3)"} {
		if got := kinds.String(kind(k)); got != want {
			t.Errorf("String(%d) = %s, want %s", k, got, want)
		}
	}
}

func TestUnknownWordsAreFaults(t *testing.T) {
	k := kind(1)
	err := k.UnmarshalText([]byte("bead"))
	if f := new(fault.Fault); !errors.As(err, &f) || f.Error() != `"bead": want one of flat, inside corner` || k != 1 {
		t.Errorf("got %v, value %d", err, k)
	}
	if text, err := kind(2).MarshalText(); text != nil || err == nil || err.Error() != "2: want one of flat, inside corner" {
		t.Errorf("an unknown value was written as %s, %v", text, err)
	}
	if got := enum.Of[kind]("flat").Want(); got != "flat" {
		t.Errorf("one word wants %q", got)
	}
}

// FuzzWords gives any value and any word to words of any number.
func FuzzWords(once *testing.F) {
	f := fractiontest.F{F: once}
	f.Add(uint8(1), uint8(2), "b")
	f.Add(uint8(9), uint8(0), "")
	f.Fuzz(func(t *testing.T, v, n uint8, text string) {
		type letter uint8
		words := enum.Of[letter](strings.Split("abcdefgh", "")[:n%9]...)
		data, err := words.Marshal(letter(v))
		if (err == nil) != (int(v) < len(words)) || err == nil && string(data) != words.String(letter(v)) {
			t.Fatalf("%d of %v: %q, %v", v, words, data, err)
		}
		got := letter(v)
		if err := words.Unmarshal([]byte(text), &got); err == nil && words.String(got) != text || err != nil && got != letter(v) {
			t.Fatalf("%q of %v: %d, %v", text, words, got, err)
		}
		if words.Want() == "" {
			t.Fatalf("%v want nothing", words)
		}
	})
}
