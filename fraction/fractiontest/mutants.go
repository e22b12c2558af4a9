package fractiontest

import (
	"flag"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"
)

var mutants = flag.Int("mutants", 0, "inputs that each fuzz target tries besides those added, the same in each run")

// F is a fuzz target that tries mutants of the inputs added to it, the same in each run, where the
// flag -mutants asks for some. The fuzzer's own inputs are others each time, which only a long run may be.
type F struct {
	*testing.F
	added [][]reflect.Value
}

// Add adds an input.
func (f *F) Add(args ...any) {
	f.F.Helper()
	f.F.Add(args...)
	var values []reflect.Value
	for _, arg := range args {
		values = append(values, reflect.ValueOf(arg))
	}
	f.added = append(f.added, values)
}

// Fuzz runs the target.
func (f *F) Fuzz(target any) {
	f.F.Helper()
	r, of := rand.New(rand.NewPCG(1, 2)), reflect.TypeOf(target)
	for range *mutants {
		args := make([]any, of.NumIn()-1)
		for i := range args {
			to := of.In(i + 1)
			old, other := reflect.Zero(to), reflect.Zero(to)
			if len(f.added) > 0 {
				old, other = f.added[r.IntN(len(f.added))][i], f.added[r.IntN(len(f.added))][i]
			}
			args[i] = mutant(r, old, other).Convert(to).Interface()
		}
		f.F.Add(args...)
	}
	f.F.Fuzz(target)
}

// mutant changes a value in one of the ways of fuzzers: parts go, come twice, come from another, and
// single ones get any value.
func mutant(r *rand.Rand, old, other reflect.Value) reflect.Value {
	bytes := reflect.TypeFor[[]byte]()
	switch old.Kind() {
	case reflect.Bool:
		return reflect.ValueOf(r.IntN(2) == 0)
	case reflect.String, reflect.Slice:
		data, more := slices.Clone(old.Convert(bytes).Bytes()), other.Convert(bytes).Bytes()
		part := func(of []byte) (from, to int) {
			from = r.IntN(len(of) + 1)
			return from, from + r.IntN(min(16, len(of)-from)+1)
		}
		for range 1 + r.IntN(4) {
			from, to := part(data)
			switch start, end := part(more); r.IntN(5) {
			case 0:
				data = slices.Delete(data, from, to)
			case 1:
				data = slices.Insert(data, from, data[from:to]...)
			case 2:
				data = slices.Insert(data, from, more[start:end]...)
			case 3:
				data = slices.Insert(data, from, byte(r.Uint32()))
			case 4:
				if from < to {
					data[from] = byte(r.Uint32())
				}
			}
		}
		return reflect.ValueOf(data)
	}
	return reflect.ValueOf(r.Int64() >> r.IntN(64))
}
