package nest_test

import (
	"context"
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"example.com/groovewright/nest"
)

var (
	table = flag.Bool("table", false, "search all 500 open instances and write testdata/open_instances.txt")
	nodes = flag.Int("nodes", 0, "with -table: budget of each search, 0 for the default")
	only  = flag.Int("class", 0, "with -table: only this class, and write no file")
)

// tally sums the results of one class of instances.
type tally struct {
	name                                    string
	n, low, high, ffd, found, bound, proved int
	time, longest                           time.Duration
}

func (r *tally) add(s tally) {
	r.n += s.n
	r.low += s.low
	r.high += s.high
	r.ffd += s.ffd
	r.found += s.found
	r.bound += s.bound
	r.proved += s.proved
	r.time += s.time
	r.longest = max(r.longest, s.longest)
}

func (r tally) String() string {
	return fmt.Sprintf("%5s %9d %6d %6d %11d %6d %6d %6d %8.1f %8.2f",
		r.name, r.n, r.low, r.high, r.ffd, r.found, r.bound, r.proved, r.time.Seconds(), r.longest.Seconds())
}

const tableHead = `Fewest sheets for the 500 open instances of two-dimensional bin packing, oriented,
straight cuts from edge to edge, no kerf, no pattern; sums over the instances of
each class. Made by: go test ./nest -run OpenInstances -table -timeout 60m
The times are seconds of processor time of one run, in all and for the longest search;
all else is the same in every run.

known low, known high: bounds known before (testdata/binpack2d/README.md)
first: FirstFit; found: Search; bound: its lower bound; proved: instances proved

class instances  known  known       first  found  bound proved  seconds  longest
                   low   high
`

// TestSearchOnOpenInstances: never fewer sheets than are known to be needed, nor more than are
// known to be enough; bounds likewise.
func TestSearchOnOpenInstances(t *testing.T) {
	budget := nest.Budget{Nodes: *nodes}
	if !*table {
		budget.Nodes = 100_000
	}
	rows, total := make([]tally, 11), tally{name: "all"}
	for i, c := range readClasses(t) {
		if !*table && i%23 != 0 || *only > 0 && c.Class != *only {
			continue
		}
		p := c.problem()
		first, err := nest.FirstFit(p)
		if err != nil {
			t.Fatal(err)
		}
		start := processorTime()
		r, err := nest.Search(context.Background(), p, budget)
		if err != nil {
			t.Fatal(err)
		}
		took := processorTime() - start
		if err := nest.Verify(p, r); err != nil {
			t.Errorf("%s: %v", c.ID, err)
		}
		if n := len(r.Sheets); n < c.Low || n > c.High || r.Bound.Sheets > c.High || r.Bound.Sheets < c.Dual || r.Bound.Proved && r.Bound.Sheets != n {
			t.Errorf("%s: %d sheets, bound %+v; known are %d to %d", c.ID, n, r.Bound, c.Low, c.High)
		}
		one := tally{n: 1, ffd: len(first.Sheets), found: len(r.Sheets), bound: r.Bound.Sheets, low: c.Low, high: c.High, time: took, longest: took}
		if r.Bound.Proved {
			one.proved = 1
		}
		rows[c.Class].name = fmt.Sprint(c.Class)
		rows[c.Class].add(one)
		total.add(one)
	}
	if !*table {
		return
	}
	var b strings.Builder
	b.WriteString(tableHead)
	for _, r := range append(rows[1:], total) {
		if r.n > 0 {
			fmt.Fprintln(&b, r)
		}
	}
	t.Log("\n" + b.String())
	if *only > 0 {
		return
	}
	if total.found > 7260 || total.proved < 450 {
		t.Errorf("%d sheets, %d proved: worse than before", total.found, total.proved)
	}
	if err := os.WriteFile("testdata/open_instances.txt", []byte(b.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}
