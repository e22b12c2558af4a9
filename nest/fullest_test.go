package nest

import (
	"context"
	"encoding/json"
	"os"
	"testing"
	"time"

	"example.com/groovewright/fraction"
)

// cutting is one open instance of two-dimensional cutting; see testdata/README.md
// for its source.
type cutting struct {
	ID                string
	L, W              int64
	Pieces            [][]int64
	Optimum           int64
	OptimumGuillotine int64 `json:"optimum_guillotine"`
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

func TestFullestSheetConstrained(t *testing.T) {
	for _, set := range []string{"ngcut", "cgcut", "gcut"} {
		for _, c := range readCutting(t, set) {
			p := Problem{Stock: []Stock{{Width: fraction.Inches(c.L), Length: fraction.Inches(c.W)}}}
			values := map[[2]int64]int64{}
			for _, q := range c.Pieces {
				n, v := (c.L/q[0])*(c.W/q[1]), q[2]
				if len(q) == 4 {
					n, v = q[2], q[3]
				}
				for range n {
					p.Parts = append(p.Parts, Part{Number: len(p.Parts), Width: fraction.Inches(q[0]), Height: fraction.Inches(q[1])})
				}
				values[[2]int64{q[0], q[1]}] = v
			}
			if len(p.Parts) > mostInSet {
				t.Log(c.ID, "too many", len(p.Parts))
				continue
			}
			j, err := newJob(&p)
			if err != nil {
				t.Fatal(err)
			}
			e := newExact(context.Background(), j, j.possible(), merit{})
			var value []int64
			for _, g := range e.groups {
				value = append(value, values[[2]int64{g.w, g.h}])
			}
			start := time.Now()
			_, most, ok := e.fullest(value, 0, 0, 3_000_000)
			t.Log(c.ID, most, c.Optimum, ok, e.nodes, time.Since(start))
		}
	}
}

func TestGridDebug(t *testing.T) {
	for _, set := range []string{"gcut"} {
		for _, c := range readCutting(t, set) {
			var sizes [][2]int64
			var values []int64
			for _, q := range c.Pieces {
				sizes = append(sizes, [2]int64{q[0], q[1]})
				values = append(values, q[2])
			}
			if c.ID == "gcut13" {
				continue
			}
			start := time.Now()
			g := newGrid(sizes, c.L, c.W)
			g.fill(sizes, values)
			t.Log(c.ID, g.best(), c.Optimum, g.best() == c.Optimum, time.Since(start))
		}
	}
	for _, set := range []string{"ngcut", "cgcut"} {
		for _, c := range readCutting(t, set) {
			var sizes [][2]int64
			var values []int64
			var counts []uint8
			for _, q := range c.Pieces {
				sizes = append(sizes, [2]int64{q[0], q[1]})
				values = append(values, q[3])
				counts = append(counts, uint8(q[2]))
			}
			start := time.Now()
			b := newBuilds(newGrid(sizes, c.L, c.W), sizes, values, counts, c.L, c.W)
			sure := b.run(0, 100_000_000, func() bool { return false })
			t.Log(c.ID, b.least, c.Optimum, b.least == c.Optimum, sure, len(b.closed), b.steps, time.Since(start))
		}
	}
}
