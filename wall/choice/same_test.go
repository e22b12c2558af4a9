package choice_test

import (
	"fmt"
	"strings"
	"testing"

	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/wall/choice"
)

// TestFrontsStayTheSame holds the fronts of drawn rooms by little effort, and what is proved of them, down to the last
// cut. After a change of a heuristic read what got better and what worse, and use -update.
func TestFrontsStayTheSame(t *testing.T) {
	var b strings.Builder
	b.WriteString("Fronts of rooms that the test draws, by a small budget: the least need and what it rests on, layouts looked at, why it ended;\n" +
		"of each choice its need, blemish, what is proved and left open, and the beginning of its hash.\n")
	for _, size := range []scale{little, house} {
		for seed := range uint64(30) {
			c, err := choice.Explore(t.Context(), size.draw(seed), choice.Budget{Effort: 1 + int(seed)%2, Layouts: 12, Nodes: 10_000})
			if err != nil {
				fmt.Fprintf(&b, "\nroom %d: %v\n", seed, err)
				continue
			}
			fmt.Fprintf(&b, "\nroom %d: %v, %v, %d, %v\n", seed, c.Least, c.How, c.Layouts, c.End)
			for _, f := range c.Front {
				fmt.Fprintf(&b, "  %v, %s, %v, %v, %s, %s\n", f.Need, f.Layout.Total, f.Status, f.LeastNeed, f.LeastBlemish, fractiontest.HashJSON(t, f))
			}
		}
	}
	fractiontest.Golden(t, "testdata/same.txt", b.String())
}
