package nest

import (
	"encoding/json"
	"flag"
	"math"
	"os"
	"testing"
)

// cutting is one open instance of two-dimensional cutting, with its published optimum;
// testdata/cutting2d/README.md names the sources.
type cutting struct {
	ID                string
	L, W              int64
	Pieces            [][]int64
	Optimum           int64
	OptimumGuillotine int64 `json:"optimum_guillotine"`
	Unconstrained     int64 `json:"optimum_unconstrained"`
}

func readCutting(t *testing.T, name string) []cutting {
	var file struct{ Instances []cutting }
	data, err := os.ReadFile("testdata/cutting2d/" + name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(data, &file); err != nil {
		t.Fatal(err)
	}
	return file.Instances
}

// items returns the piece types; values stand last, counts before them where they are limited.
func (c cutting) items() (items []item) {
	for _, q := range c.Pieces {
		items = append(items, item{q[0], q[1], q[len(q)-1], int(q[2])})
	}
	return items
}

var largest = flag.Bool("gcut13", false, "search the largest of the gcut instances too, which takes some seconds")

// The optima for any number of pieces: gcut as published by G. Cintra, cgcut by M. Hifi and V.
// Zissimopoulos, EJOR 91 (1996) 553-564.
func TestGridGivesPublishedOptima(t *testing.T) {
	for _, set := range []string{"gcut", "cgcut"} {
		for _, c := range readCutting(t, set) {
			if c.ID == "gcut13" && !*largest {
				continue
			}
			want := c.Optimum
			if set == "cgcut" {
				want = c.Unconstrained
			}
			g := newGrid(c.items(), c.L, c.W, math.MaxInt)
			g.fill(c.items())
			if got := g.value[len(g.value)-1]; got != want {
				t.Errorf("%s: %d, want %d", c.ID, got, want)
			}
		}
	}
}

// The optima for limited numbers of pieces: cgcut as published for free cutting by A. Caprara and
// M. Monaci, OR Letters 32 (2004) 5-14, ngcut by J. E. Beasley, Operations Research 33 (1985)
// 49-64; for guillotine cutting they are the same by an exact search written apart from this one.
func TestBuildsGivePublishedOptima(t *testing.T) {
	for _, set := range []string{"ngcut", "cgcut"} {
		for _, c := range readCutting(t, set) {
			b := newBuilds(newGrid(c.items(), c.L, c.W, math.MaxInt), c.items(), c.L, c.W)
			most := b.run(0, 0, 0, 1_000_000, func() bool { return false })
			if most != c.Optimum || b.best() != most {
				t.Errorf("%s: %d found, bound %d; want %d", c.ID, b.best(), most, c.Optimum)
			}
		}
	}
}
