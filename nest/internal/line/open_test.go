package line_test

import (
	"cmp"
	"context"
	"flag"
	"maps"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/groovewright/nest/internal/line"
)

var all = flag.Bool("all", false, "pack all 160 open instances and print the table (with -v)")

// sampled says which instances run by default: two of each set, and all those where the area bound
// is not reached or the listed best was not optimal.
func sampled(i int, in instance) bool {
	return *all || i%10 == 3 || in.Optimum != in.Best || in.Optimum != in.Area
}

// set is the name of the set an instance belongs to.
func (in instance) set() string {
	name, _, _ := strings.Cut(in.ID, "_")
	return name
}

// TestFirstFitOpenData: the counts of first-fit and best-fit decreasing listed for all 160
// instances of E. Falkenauer (Journal of Heuristics 2, 1996; OR-Library), computed from the data by
// other programs.
func TestFirstFitOpenData(t *testing.T) {
	for _, in := range instances(t) {
		first := line.FirstFit(in.Capacity, in.Sizes)
		best := line.BestFit(in.Capacity, in.Sizes)
		if len(first) != in.FirstFit || len(best) != in.BestFit {
			t.Errorf("%s: first-fit %d, best-fit %d, want %d, %d",
				in.ID, len(first), len(best), in.FirstFit, in.BestFit)
		}
		for _, bins := range [][][]int{first, best} {
			if err := line.Verify(in.Capacity, in.Sizes, bins); err != nil {
				t.Errorf("%s: %v", in.ID, err)
			}
		}
	}
}

// TestFirstFitWorstCaseOpenData: 9 FFD <= 11 OPT + 6 (G. Dosa, "The tight bound of first fit
// decreasing bin-packing algorithm is FFD(I) <= 11/9 OPT(I) + 6/9", ESCAPE 2007), on every instance
// with its listed optimum.
func TestFirstFitWorstCaseOpenData(t *testing.T) {
	for _, in := range instances(t) {
		first := len(line.FirstFit(in.Capacity, in.Sizes))
		if 9*first > 11*in.Optimum+6 {
			t.Errorf("%s: first-fit %d, optimum %d", in.ID, first, in.Optimum)
		}
	}
}

// TestLowerOpenData: the bound lies between the listed bound by size and the listed optimum on all
// 160.
func TestLowerOpenData(t *testing.T) {
	for _, in := range instances(t) {
		lower, how := line.Lower(in.Capacity, in.Sizes)
		if lower < in.Area || lower > in.Optimum {
			t.Errorf("%s: Lower = %d (%v), want %d to %d", in.ID, lower, how, in.Area, in.Optimum)
		}
	}
}

// TestListedPackings: the packings listed for the four instances whose number in OR-Library is not
// optimal hold exactly the items of the instance, in as many bins as the optimum, so that the
// optimum is not taken on trust.
func TestListedPackings(t *testing.T) {
	var file struct {
		Packings []struct {
			ID   string    `json:"id"`
			Bins [][]int64 `json:"bins"`
		}
	}
	readJSON(t, "falkenauer_packings.json", &file)
	known := map[string]instance{}
	for _, in := range instances(t) {
		known[in.ID] = in
	}
	if len(file.Packings) != 4 {
		t.Fatalf("%d packings, want 4", len(file.Packings))
	}
	for _, p := range file.Packings {
		in := known[p.ID]
		var items []int64
		for _, bin := range p.Bins {
			var load int64
			for _, size := range bin {
				load += size
			}
			if load > in.Capacity {
				t.Errorf("%s: bin %v holds %d", p.ID, bin, load)
			}
			items = append(items, bin...)
		}
		want := slices.Sorted(slices.Values(in.Sizes))
		if slices.Sort(items); !slices.Equal(items, want) || len(p.Bins) != in.Optimum {
			t.Errorf("%s: not the items of the instance in %d bins", p.ID, in.Optimum)
		}
	}
}

// row is a line of the table of results.
type row struct {
	set                                  string
	instances, firstFit, packed, optimum int
	lower, proved, nodes                 int
	total, longest                       time.Duration
}

// TestPackOpenData: Pack reaches and proves the listed optimum. By default a sample runs; with -all
// -v all 160 run and the table is printed. Times are printed, never judged.
func TestPackOpenData(t *testing.T) {
	rows := map[string]*row{}
	for i, in := range instances(t) {
		if !sampled(i, in) {
			continue
		}
		begin := time.Now()
		got, err := line.Pack(context.Background(), in.Capacity, in.Sizes, line.DefaultNodes)
		took := time.Since(begin)
		if err != nil {
			t.Fatal(err)
		}
		if err := line.Verify(in.Capacity, in.Sizes, got.Bins); err != nil {
			t.Errorf("%s: %v", in.ID, err)
		}
		if len(got.Bins) != in.Optimum || !got.Proved || got.Lower != in.Optimum {
			t.Errorf("%s: %d bins, lower %d, proved %v (%v), want %d proved",
				in.ID, len(got.Bins), got.Lower, got.Proved, got.How, in.Optimum)
		}
		r := rows[in.set()]
		if r == nil {
			r = &row{set: in.set()}
			rows[in.set()] = r
		}
		r.add(in, got, took)
	}
	if *all {
		printRows(t, rows)
	}
}

// add counts one result.
func (r *row) add(in instance, got line.Result, took time.Duration) {
	r.instances++
	r.firstFit += in.FirstFit
	r.packed += len(got.Bins)
	r.optimum += in.Optimum
	r.lower += got.Lower
	if got.Proved {
		r.proved++
	}
	r.nodes += got.Nodes
	r.total += took
	r.longest = max(r.longest, took)
}

// printRows writes the table: sums over each set, times of one instance.
func printRows(t *testing.T, rows map[string]*row) {
	sorted := slices.SortedFunc(maps.Values(rows), func(a, b *row) int {
		return cmp.Or(-cmp.Compare(a.set[:1], b.set[:1]), cmp.Compare(len(a.set), len(b.set)), cmp.Compare(a.set, b.set))
	})
	t.Log("set    instances  first-fit  packed  optimum  lower  proved     nodes  mean time  longest")
	for _, r := range sorted {
		t.Logf("%-6s %9d %10d %7d %8d %6d %7d %9d %10v %8v", r.set, r.instances, r.firstFit, r.packed,
			r.optimum, r.lower, r.proved, r.nodes,
			(r.total / time.Duration(r.instances)).Round(100*time.Microsecond), r.longest.Round(time.Millisecond))
	}
}
