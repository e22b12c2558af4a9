package nest_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/nest"
)

// TestNestsStayTheSame holds what little effort finds for some jobs of each sort, down to the last cut.
// After a change of a heuristic read what got better and what worse, and use -update.
func TestNestsStayTheSame(t *testing.T) {
	var b strings.Builder
	b.WriteString(`Nests of jobs that the test draws, by a small budget: sheets of FirstFit; sheets, parts left over, cost, bound, whether
proved, and steps of Search; the beginning of the hash of both; what the bound rests on.

job       n parts first sheets left      cost bound proved  steps hash     by
`)
	drawn := rapid.Custom(func(t *rapid.T) nest.Problem { return drawProblem(t, 30) })
	for i := range 12 {
		r := rand.New(rand.NewPCG(uint64(i), 7))
		jobs := map[string]nest.Problem{"plain": plain(r, 6+6*i), "kitchen": kitchen(r, 5+4*i, i%2 == 0), "drawn": drawn.Example(i)}
		var kinds []plank
		for k := range 1 + i%3 {
			kinds = append(kinds, plank{length: 60 + r.Int64N(60), price: int64(k + 3), count: k * (2 + i)})
		}
		kinds[0].count = -1
		sizes := make([]int64, 4+6*i)
		for k := range sizes {
			sizes[k] = 10 + r.Int64N(40)
		}
		jobs["boards"] = planks(kinds, sizes)
		for _, name := range []string{"plain", "kitchen", "drawn", "boards"} {
			p := jobs[name]
			first, err := nest.FirstFit(p)
			if err != nil {
				t.Fatal(err)
			}
			found, err := nest.Search(context.Background(), p, nest.Budget{Nodes: 150_000, Draft: i%4 == 3})
			if err != nil {
				t.Fatal(err)
			}
			hash := fractiontest.HashJSON(t, []nest.Result{first, found})
			fmt.Fprintf(&b, "%-8s %2d %5d %5d %6d %4d %9s %5d %6t %6d %s %s\n", name, i, len(p.Parts), len(first.Sheets), len(found.Sheets), len(found.Unplaced),
				found.Cost, found.Bound.Sheets, found.Bound.Proved, found.Nodes, hash, found.Bound.How)
		}
	}
	b.WriteString(`
StripBound of strips that the test draws: sheets, bought, cost, what it rests on; the DualWeights of parts that are
5, 9 … 45 in high, and the LowerBound that a total gives.

`)
	type walls struct {
		p      nest.Problem
		strips []nest.Strip
		gap    fraction.Length
	}
	strips := rapid.Custom(func(t *rapid.T) (w walls) {
		w.p, w.strips, w.gap = drawStrips(t)
		return w
	})
	for i := range 20 {
		w := strips.Example(i)
		bound, err := nest.StripBound(w.p, w.gap, w.strips)
		if err != nil {
			t.Fatal(err)
		}
		weights, err := nest.DualWeights(w.p, w.strips, []fraction.Length{fraction.Inches(7), fraction.Inches(31)}, 5)
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&b, "%v %v %v %v, %d weights\n", bound.Sheets, bound.Bought, bound.Cost, bound.How, len(weights))
		for _, v := range weights {
			b.WriteString(" ")
			for h := range int64(11) {
				fmt.Fprintf(&b, " %d", v.Of(fraction.Inches(4*h+5)))
			}
			least := v.LowerBound(fraction.Inches(100_000).Mul(1 + v.Of(fraction.Inches(30))))
			fmt.Fprintf(&b, ": %d sheets, %d bought, %v\n", least.Sheets, least.Bought, least.Cost)
		}
	}
	fractiontest.Golden(t, "testdata/same.txt", b.String())
}
