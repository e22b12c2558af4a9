package line_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/groovewright/nest/internal/line"
)

func TestFirstFit(t *testing.T) {
	for _, tt := range []struct {
		name     string
		capacity int64
		sizes    []int64
		want     [][]int
	}{
		{"nothing", 10, nil, [][]int{}},
		{"one full", 10, []int64{10}, [][]int{{0}}},
		{"equal sizes keep their order", 10, []int64{5, 5, 5}, [][]int{{0, 1}, {2}}},
		{"falling", 10, []int64{3, 7, 6, 4}, [][]int{{1, 0}, {2, 3}}},
	} {
		if diff := cmp.Diff(tt.want, line.FirstFit(tt.capacity, tt.sizes)); diff != "" {
			t.Errorf("%s (-want +got):\n%s", tt.name, diff)
		}
	}
}

// TestBestFitPrefersTheTightest: an item that fits two bins goes into the fuller.
func TestBestFitPrefersTheTightest(t *testing.T) {
	sizes := []int64{60, 55, 40, 5} // 60+40 is full; 5 fits 55 only
	if diff := cmp.Diff([][]int{{0, 2}, {1, 3}}, line.BestFit(100, sizes)); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	sizes = []int64{50, 60, 30} // first-fit takes 60, the larger, which is also the tighter
	if diff := cmp.Diff([][]int{{1, 2}, {0}}, line.BestFit(100, sizes)); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// TestFirstFitElevenForNine: the worst case of first-fit decreasing, 11/9, from the family of D. S.
// Johnson ("Near-optimal bin packing algorithms", 1973): with e = capacity/400, sizes 1/2+e,
// 1/4+2e, 1/4+e, 1/4-2e. First-fit fills 6 x (201+102), 2 x (101+101+101), 3 x (98+98+98+98); nine
// full boards hold 6 x (201+101+98) and 3 x (102+102+98+98).
func TestFirstFitElevenForNine(t *testing.T) {
	const capacity = 400
	var sizes []int64
	for _, group := range []struct {
		count int
		size  int64
	}{{6, 201}, {6, 102}, {6, 101}, {12, 98}} {
		for range group.count {
			sizes = append(sizes, group.size)
		}
	}
	if got := len(line.FirstFit(capacity, sizes)); got != 11 {
		t.Errorf("FirstFit needs %d bins, want 11", got)
	}
	got, err := line.Pack(context.Background(), capacity, sizes, line.DefaultNodes)
	if err != nil || len(got.Bins) != 9 || !got.Proved {
		t.Errorf("Pack = %d bins, proved %v, %v, want 9 proved", len(got.Bins), got.Proved, err)
	}
}

func TestLower(t *testing.T) {
	for _, tt := range []struct {
		name     string
		capacity int64
		sizes    []int64
		want     int
		how      line.Argument
	}{
		{"nothing", 10, nil, 0, line.Area},
		{"area is enough", 10, []int64{5, 5, 5, 5}, 2, line.Area},
		{"more than half each", 10, []int64{6, 6, 6}, 3, line.DualFunction},
		{"more than a third each", 100, []int64{34, 34, 34, 34, 34}, 3, line.DualFunction},
	} {
		got, how := line.Lower(tt.capacity, tt.sizes)
		if got != tt.want || how != tt.how {
			t.Errorf("%s: Lower = %d, %d, want %d, %d", tt.name, got, how, tt.want, tt.how)
		}
	}
}

func TestCheck(t *testing.T) {
	for _, tt := range []struct {
		capacity int64
		sizes    []int64
		want     string
	}{
		{0, nil, "capacity: 0"},
		{1<<40 + 1, nil, "capacity: "},
		{10, []int64{5, 0}, "sizes[1]: 0"},
		{10, []int64{5, 6, -7}, "sizes[2]: -7"},
		{10, []int64{11}, "sizes[0]: 11"},
		{10, make([]int64, 1<<16+1), "sizes: 65537 items"},
	} {
		if _, err := line.Pack(context.Background(), tt.capacity, tt.sizes, line.DefaultNodes); err == nil ||
			!strings.HasPrefix(err.Error(), tt.want) {
			t.Errorf("Pack(%d, %d sizes) fails with %v, want %q", tt.capacity, len(tt.sizes), err, tt.want)
		}
	}
}

// The most that is accepted: 2^40, and 2^16 items. A size may be the capacity.
func TestCheckAcceptsTheMost(t *testing.T) {
	if err := line.Check(1<<40, slices.Repeat([]int64{1 << 40, 1}, 1<<15)); err != nil {
		t.Error(err)
	}
}

func TestVerifyRefuses(t *testing.T) {
	sizes := []int64{6, 5, 4}
	for _, tt := range []struct {
		name string
		bins [][]int
	}{
		{"an item is missing", [][]int{{0, 2}}},
		{"an item is packed twice", [][]int{{0, 2}, {1, 2}}},
		{"too full", [][]int{{0, 1}, {2}}},
		{"no such item", [][]int{{0, 2}, {1, 3}}},
		{"empty bin", [][]int{{0, 2}, {1}, {}}},
	} {
		if line.Verify(10, sizes, tt.bins) == nil {
			t.Errorf("%s: accepted", tt.name)
		}
	}
	if err := line.Verify(10, sizes, [][]int{{0, 2}, {1}}); err != nil {
		t.Error(err)
	}
}

// TestPackHugeCapacity: sizes near the limit overflow nothing.
func TestPackHugeCapacity(t *testing.T) {
	c := line.MaxCapacity
	sizes := []int64{c, c - 1, 1, c/2 + 1, c / 2, c / 2, c / 3, c / 3, c / 3, 2}
	got, err := line.Pack(context.Background(), c, sizes, line.DefaultNodes)
	if err != nil {
		t.Fatal(err)
	}
	if err := line.Verify(c, sizes, got.Bins); err != nil || !got.Proved || len(got.Bins) != 5 {
		t.Errorf("%d bins, proved %v, %v, want 5 proved", len(got.Bins), got.Proved, err)
	}
}

// TestPackCancelled: a cancelled context still yields a packing and a bound.
func TestPackCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	for _, in := range instances(t)[80:83] {
		got, err := line.Pack(ctx, in.Capacity, in.Sizes, line.DefaultNodes)
		if err != nil {
			t.Fatal(err)
		}
		if err := line.Verify(in.Capacity, in.Sizes, got.Bins); err != nil || got.Lower > in.Optimum {
			t.Errorf("%s: lower %d, %v", in.ID, got.Lower, err)
		}
		if got.Proved || got.Nodes > 200 {
			t.Errorf("%s: proved %v after %d nodes, want to stop at once", in.ID, got.Proved, got.Nodes)
		}
	}
}

// TestPackBudget: the nodes spent stay within the budget, and more budget never gives more bins on
// these instances.
func TestPackBudget(t *testing.T) {
	in := instances(t)[100] // 120 items in triplets
	last := len(in.Sizes)
	for _, nodes := range []int{1, 100, 1000, 20_000} {
		got, err := line.Pack(context.Background(), in.Capacity, in.Sizes, nodes)
		if err != nil {
			t.Fatal(err)
		}
		if got.Nodes > nodes || len(got.Bins) > last || got.Lower > in.Optimum {
			t.Errorf("budget %d: %d nodes, %d bins after %d, lower %d", nodes, got.Nodes, len(got.Bins), last, got.Lower)
		}
		last = len(got.Bins)
	}
}
