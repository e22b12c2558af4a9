// Package fractiontest helps tests: the same random draws each time, wild values, golden files, contexts that end.
package fractiontest

import (
	"context"
	"flag"
	"math"
	"os"
	"reflect"
	"runtime/debug"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/fraction/warning"
)

// Fill sets every exported field that the pointers lead to, at any depth, to wild values
// that data chooses: lengths of zero, below zero, everyday and huge; numbers at their limits;
// nil and short lists; empty, long and odd texts. Where data ends, zero values are left.
// Functions, channels and interfaces stay nil.
func Fill(data []byte, pointers ...any) {
	w := wild{data}
	for _, p := range pointers {
		w.fill(reflect.ValueOf(p).Elem(), 0)
	}
}

// FillPart makes one of the parts of a sound value wild, which are pointers into it: the first for
// 1. For 0, and below, the whole is cleared and made wild all over; numbers above begin anew.
func FillPart(data []byte, part int, whole any, parts ...any) {
	if part %= len(parts) + 1; part > 0 {
		Fill(data, parts[part-1])
		return
	}
	reflect.ValueOf(whole).Elem().SetZero()
	Fill(data, whole)
}

// wild takes choices from the bytes of a fuzzer.
type wild struct{ data []byte }

// deepest bounds how deep structs and lists are filled.
const deepest = 7

// take returns a choice below n.
func (w *wild) take(n int) int {
	if len(w.data) == 0 {
		return 0
	}
	b := w.data[0]
	w.data = w.data[1:]
	return int(b) % n
}

var wildLengths = []fraction.Length{
	{}, fraction.Inches(1), fraction.Of(1, 16), fraction.Of(-1, 16), fraction.Of(3, 4), fraction.Of(21, 4), fraction.Inches(18), fraction.Inches(36),
	fraction.Inches(48), fraction.Inches(96), fraction.Inches(-1), fraction.Of(1, 999_983), fraction.Millimetres(1, 1), fraction.Inches(12),
	fraction.Inches(1_000_000), fraction.Inches(1 << 40), fraction.Inches(-1 << 40), fraction.Of(math.MaxInt64, 3), fraction.Of(1, math.MaxInt64),
}

var wildNumbers = []int64{0, 1, 2, 3, -1, 10, 100_000, math.MaxInt32, math.MinInt32, math.MaxInt64, math.MinInt64, 7, 4, 5}

var wildTexts = []string{"", "a", "b", "mdf", "1/4\"", "2 mm", "-1", "1 gal", "250 ft2/gal", "0.1", "\x00\xff", "<b>&\"'", "\u202ename", "9999999999999999999999", "beads"}

func (w *wild) fill(v reflect.Value, depth int) {
	if depth > deepest || len(w.data) == 0 || !v.CanSet() {
		return
	}
	switch v.Addr().Interface().(type) {
	case *fraction.Length:
		v.Set(reflect.ValueOf(wildLengths[w.take(len(wildLengths))]))
		return
	case *fraction.Ratio:
		v.Set(reflect.ValueOf(wildLengths[w.take(len(wildLengths))].Over(fraction.Inches(1))))
		return
	case *money.Amount:
		if amount, err := money.Parse(wildTexts[w.take(len(wildTexts))]); err == nil {
			v.Set(reflect.ValueOf(amount))
		}
		return
	}
	switch v.Kind() {
	case reflect.Bool:
		v.SetBool(w.take(2) == 1)
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		v.SetInt(wildNumbers[w.take(len(wildNumbers))])
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		v.SetUint(uint64(w.take(12)))
	case reflect.String:
		v.SetString(wildTexts[w.take(len(wildTexts))])
	case reflect.Pointer:
		if w.take(3) > 0 {
			v.Set(reflect.New(v.Type().Elem()))
			w.fill(v.Elem(), depth+1)
		}
	case reflect.Slice:
		n := w.take(5)
		v.Set(reflect.MakeSlice(v.Type(), n, n))
		for i := range n {
			w.fill(v.Index(i), depth+1)
		}
	case reflect.Array:
		for i := range v.Len() {
			w.fill(v.Index(i), depth+1)
		}
	case reflect.Map:
		v.Set(reflect.MakeMap(v.Type()))
		for range w.take(3) {
			key, value := reflect.New(v.Type().Key()).Elem(), reflect.New(v.Type().Elem()).Elem()
			w.fill(key, depth+1)
			w.fill(value, depth+1)
			v.SetMapIndex(key, value)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			w.fill(v.Field(i), depth+1)
		}
	}
}

// garbage is how large the garbage may become before it is collected, in percent of what is in use.
const garbage = 400

// Main runs the tests of a package with the same random draws each time. For other draws there is
// the flag -rapid.seed. Garbage is collected less often than by default, which takes a quarter of the time of
// all tests; the environment variable GOGC goes before.
func Main(m *testing.M) int {
	flag.Parse()
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(garbage)
	}
	if seed := flag.Lookup("rapid.seed"); seed != nil && seed.Value.String() == "0" {
		if err := seed.Value.Set("1"); err != nil {
			panic(err)
		}
	}
	return m.Run()
}

// Doubts returns the paths of the doubts of a kind.
func Doubts(t *testing.T, of interface {
	Doubts() ([]warning.Warning, error)
}, kind warning.Kind) (paths []string) {
	t.Helper()
	all, err := of.Doubts()
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range all {
		if d.Kind == kind {
			paths = append(paths, d.Path.String())
		}
	}
	return paths
}

// ending is a context that ends when it has been asked for its error so many times.
type ending struct {
	context.Context
	left int
}

// Ending returns a context that ends when it has been asked for its error so many times.
func Ending(parent context.Context, asked int) context.Context { return &ending{parent, asked} }

func (e *ending) Err() error {
	if e.left--; e.left < 0 {
		return context.Canceled
	}
	return nil
}
