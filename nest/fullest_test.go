package nest

import (
	"context"
	"encoding/json"
	"flag"
	"os"
	"testing"

	"example.com/groovewright/fraction"
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
		items = append(items, item{q[0], q[1], q[len(q)-1], uint8(q[2])})
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
			g := newGrid(c.items(), c.L, c.W)
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
			b := newBuilds(newGrid(c.items(), c.L, c.W), c.items(), c.L, c.W)
			sure := b.run(0, 1_000_000, func() bool { return false })
			if !sure || b.least != c.Optimum {
				t.Errorf("%s: %d, sure %v; want %d", c.ID, b.least, sure, c.Optimum)
			}
		}
	}
}

// The search by sets, which knows of patterns, must find the same where there is none. cgcut2 has
// too many small pieces for it.
func TestFullestBySetsGivesPublishedOptima(t *testing.T) {
	for _, set := range []string{"ngcut", "cgcut"} {
		for _, c := range readCutting(t, set) {
			if c.ID == "cgcut2" {
				continue
			}
			e, value := c.exact(t)
			s, most, sure := e.fullestBySets(value, 0, 0, 3_000_000)
			if !sure || most != c.Optimum {
				t.Errorf("%s: %d, sure %v; want %d", c.ID, most, sure, c.Optimum)
			}
			var worth int64
			for g, n := range e.count(s) {
				worth += value[g] * int64(n)
			}
			if worth != most || e.one.fit(s, &e.job.kinds[0]) < 0 {
				t.Errorf("%s: the set is worth %d, not %d, or does not fit", c.ID, worth, most)
			}
		}
	}
}

// exact makes a job of the instance and gives its groups their values.
func (c cutting) exact(t *testing.T) (*exact, []int64) {
	p := Problem{Stock: []Stock{{Width: fraction.Inches(c.L), Length: fraction.Inches(c.W)}}}
	values := map[[2]int64]int64{}
	for _, q := range c.Pieces {
		for range q[2] {
			p.Parts = append(p.Parts, Part{Number: len(p.Parts), Width: fraction.Inches(q[0]), Height: fraction.Inches(q[1])})
		}
		values[[2]int64{q[0], q[1]}] = q[3]
	}
	j, err := newJob(&p)
	if err != nil {
		t.Fatal(err)
	}
	_, relax := j.lower()
	e := newExact(context.Background(), j, relax, objective{})
	e.limit = 10_000_000
	var value []int64
	for _, g := range e.groups {
		value = append(value, values[[2]int64{g.w, g.h}])
	}
	return e, value
}
