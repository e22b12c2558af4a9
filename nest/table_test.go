package nest_test

import (
	"context"
	"flag"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.com/groovewright/nest"
)

var (
	full  = flag.Bool("full", false, "search all 500 open instances instead of a sample")
	nodes = flag.Int("nodes", 0, "budget of each search on the open instances, 0 for the default")
	only  = flag.Int("class", 0, "search only this class")
)

// row sums the results of one class.
type classRow struct {
	name                                    string
	n, ffd, found, bound, proved, low, high int
	time, longest                           time.Duration
}

func (r *classRow) add(s classRow) {
	r.n += s.n
	r.ffd += s.ffd
	r.found += s.found
	r.bound += s.bound
	r.proved += s.proved
	r.low += s.low
	r.high += s.high
	r.time += s.time
	r.longest = max(r.longest, s.longest)
}

func (r classRow) String() string {
	return fmt.Sprintf("%5s %4d %6d %6d %6d %6d %6d %6d %9.2f %9.2f", r.name, r.n, r.low, r.high, r.ffd, r.found, r.bound, r.proved,
		r.time.Seconds(), r.longest.Seconds())
}

func TestTable(t *testing.T) {
	rows := make([]classRow, 11)
	total := classRow{name: "all"}
	for i, c := range readClasses(t) {
		if !*full && i%17 != 0 || *only > 0 && c.Class != *only {
			continue
		}
		p := c.problem()
		first, err := nest.FirstFit(p)
		if err != nil {
			t.Fatal(err)
		}
		start := time.Now()
		r, err := nest.Search(context.Background(), p, nest.Budget{Nodes: *nodes})
		if err != nil {
			t.Fatal(err)
		}
		took := time.Since(start)
		if err := nest.Verify(p, r); err != nil {
			t.Errorf("%s: %v", c.ID, err)
		}
		if len(r.Sheets) < c.Low || len(r.Sheets) > c.High {
			t.Errorf("%s: %d sheets, want %d to %d", c.ID, len(r.Sheets), c.Low, c.High)
		}
		row := classRow{n: 1, ffd: len(first.Sheets), found: len(r.Sheets), bound: r.Bound.Sheets, low: c.Low, high: c.High, time: took, longest: took}
		if r.Bound.Proved {
			row.proved = 1
		}
		rows[c.Class].name = fmt.Sprint(c.Class)
		rows[c.Class].add(row)
		total.add(row)
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%5s %4s %6s %6s %6s %6s %6s %6s %9s %9s\n", "class", "n", "og_lb", "og_ub", "first", "found", "bound", "proved", "seconds", "longest")
	for _, r := range rows[1:] {
		if r.n > 0 {
			fmt.Fprintln(&b, r)
		}
	}
	fmt.Fprintln(&b, total)
	t.Log("\n" + b.String())
}
