package line

import (
	"context"
	"reflect"
	"testing"

	"pgregory.net/rapid"
)

// What a memory gives is what is found without it, also again, of jobs that differ in little, and
// once it has begun afresh.
func TestMemoryGivesWhatIsFound(t *testing.T) {
	m, again := &Memory{}, 0
	rapid.Check(t, func(t *rapid.T) {
		capacity, nodes := rapid.Int64Range(20, 22).Draw(t, "capacity"), rapid.IntRange(1, 2).Draw(t, "nodes")
		sizes := rapid.SliceOfN(rapid.Int64Range(3, 6), 1, 4).Draw(t, "sizes")
		before := len(m.packed)
		got, err := m.Pack(t.Context(), capacity, sizes, nodes)
		if want, _ := Pack(t.Context(), capacity, sizes, nodes); err != nil || !reflect.DeepEqual(got, want) {
			t.Fatalf("packed %+v, %v, want %+v", got, err, want)
		}
		if len(m.packed) == before {
			again++
		}
		j := newJob(capacity, sizes)
		dual, ok := m.BestDual(capacity, j.sizes, j.counts)
		if want, found := BestDual(capacity, j.sizes, j.counts); ok != found || !reflect.DeepEqual(dual, want) {
			t.Fatalf("dual %+v, %v, want %+v, %v", dual, ok, want, found)
		}
	})
	if again == 0 || len(m.packed) > mostKnown || len(m.duals) > mostKnown {
		t.Errorf("%d jobs met again, %d and %d answers held", again, len(m.packed), len(m.duals))
	}
}

// What a search found that its context ended is not remembered.
func TestMemoryOfAnEndedSearch(t *testing.T) {
	ctx, end := context.WithCancel(t.Context())
	end()
	m := &Memory{}
	if _, err := m.Pack(ctx, 10, []int64{6, 3, 3}, 100); err != nil || len(m.packed) > 0 {
		t.Errorf("%v, %d answers held", err, len(m.packed))
	}
	if _, err := m.Pack(ctx, 0, nil, 100); err == nil {
		t.Error("no error for a capacity of 0")
	}
}
