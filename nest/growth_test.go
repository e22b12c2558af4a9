package nest_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
)

const growthHead = `Fewest sheets for jobs of more and more parts. Plain: sides uniform in 1 to 100 on sheets of 100,
as class 5 of the open instances. Kitchen: invented jobs with kerf and pattern. Both are drawn here.
Made by: go test ./nest -run Growth -table -timeout 60m
The times are seconds of processor time of one run; all else is the same in every run.

job     parts  first  found  bound  gap per cent  seconds
`

// plain draws a job without kerf or pattern.
func plain(r *rand.Rand, n int) nest.Problem {
	p := nest.Problem{Stock: []nest.Stock{{Width: fraction.Inches(100), Length: fraction.Inches(100)}}}
	for i := range n {
		p.Parts = append(p.Parts, nest.Part{Number: i, Width: fraction.Inches(1 + r.Int64N(100)), Height: fraction.Inches(1 + r.Int64N(100))})
	}
	return p
}

// TestGrowth: more parts than the exact search takes are searched as well as fewer: nest and bound are
// one sheet or five per cent apart at most.
func TestGrowth(t *testing.T) {
	var b strings.Builder
	b.WriteString(growthHead)
	budget := nest.Budget{Nodes: *nodes, Draft: true}
	sizes := []int{64, 120, 136, 200, 400}
	if !*table {
		budget.Nodes, sizes = 2_000_000, []int{120, 136}
	}
	for _, name := range []string{"plain", "kitchen"} {
		for _, n := range sizes {
			r := rand.New(rand.NewPCG(3, uint64(n)))
			p := kitchen(r, n, false)
			if name == "plain" {
				p = plain(r, n)
			}
			first, err := nest.FirstFit(p)
			if err != nil {
				t.Fatal(err)
			}
			start := processorTime()
			found, err := nest.Search(context.Background(), p, budget)
			if err != nil {
				t.Fatal(err)
			}
			took := processorTime() - start
			if err := nest.Verify(p, found); err != nil {
				t.Error(err)
			}
			sheets, bound := len(found.Sheets), found.Bound.Sheets
			gap := 100 * float64(sheets-bound) / float64(bound)
			if sheets > bound+1 && gap > 5 {
				t.Errorf("%s of %d parts: %d sheets, bound %d", name, n, sheets, bound)
			}
			fmt.Fprintf(&b, "%-8s%5d %6d %6d %6d %13.1f %8.1f\n", name, n, len(first.Sheets), sheets, bound, gap, took.Seconds())
		}
	}
	t.Log("\n" + b.String())
	if *table {
		if err := os.WriteFile("testdata/growth.txt", []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
