// Package enum writes and reads the words of enumerations, the same way for all of them.
//
// An enumeration is a type of small numbers with a list of words, the word of value i at index i.
// Its three methods are one line each:
//
//	var kinds = enum.Of[Kind]("flat", "bead", "groove")
//
//	func (k Kind) String() string                   { return kinds.String(k) }
//	func (k Kind) MarshalText() ([]byte, error)     { return kinds.Marshal(k) }
//	func (k *Kind) UnmarshalText(text []byte) error { return kinds.Unmarshal(text, k) }
package enum

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/groovewright/fraction/fault"
)

// Words are the words of an enumeration.
type Words[T ~uint8] []string

// Of returns the words of the values from 0 up.
func Of[T ~uint8](words ...string) Words[T] { return words }

// String returns the word of v, or its number in brackets where it has none.
func (w Words[T]) String(v T) string {
	if int(v) < len(w) {
		return w[v]
	}
	return fmt.Sprintf("(%d)", v)
}

// Marshal returns the word of v, and fails with a *fault.Fault where it has none.
func (w Words[T]) Marshal(v T) ([]byte, error) {
	if int(v) < len(w) {
		return []byte(w[v]), nil
	}
	return nil, &fault.Fault{Value: strconv.Itoa(int(v)), Want: w.Want()}
}

// Unmarshal sets v to the value of a word, and fails with a *fault.Fault where there is no such
// word; then v stays as it was.
func (w Words[T]) Unmarshal(text []byte, v *T) error {
	i := slices.Index(w, string(text))
	if i < 0 {
		return &fault.Fault{Value: strconv.Quote(string(text)), Want: w.Want()}
	}
	*v = T(i)
	return nil
}

// Want lists the words, as a fault says what it wants.
func (w Words[T]) Want() string {
	if len(w) == 1 {
		return w[0]
	}
	return "one of " + strings.Join(w, ", ")
}
