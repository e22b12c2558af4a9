//go:build unix

package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"math/rand/v2"
	"runtime"
	"syscall"
	"testing"
	"time"
)

var edges = flag.Bool("edges", false, "plan rooms at the limits and measure time and memory")

// TestRoomsAtTheLimits plans rooms that stand at one limit or more and holds each to five minutes of
// processor time and the 2 GB that the README says. Behind -edges.
func TestRoomsAtTheLimits(t *testing.T) {
	if !*edges {
		t.Skip("takes minutes: -edges")
	}
	t.Setenv("GOGC", "100") // as the command has it, unlike tests
	type object = map[string]any
	features := func(n int) []object {
		all := []object{}
		for i := range n {
			all = append(all, object{"kind": []string{"flat", "groove", "bead"}[i%3], "width": fmt.Sprintf("%d/16", 1+i%5)})
		}
		return all
	}
	kinds := func(n int, one func(i int) object) (all []object) {
		for i := range n {
			o := one(i)
			o["name"] = fmt.Sprint("kind ", i)
			all = append(all, o)
		}
		return all
	}
	sheet := []object{{"name": "sheet", "width": "48", "length": "96", "price": "31.50"}}
	for _, row := range []struct {
		name    string
		runs    int
		profile any
		stock   []object
	}{
		{"100 runs, 3 features", 100, object{"name": "invented", "thickness": "1/4", "features": features(3)}, sheet},
		{"60 runs, 5 features", 60, object{"name": "invented", "thickness": "1/4", "features": features(5)}, sheet},
		{"20 runs, 15 features", 20, object{"name": "invented", "thickness": "1/4", "features": features(15)}, sheet},
		{"3 runs, 100 features", 3, object{"name": "invented", "thickness": "1/4", "features": features(100)}, sheet},
		{"60 runs, plain", 60, object{"name": "plain", "thickness": "1/4", "features": features(0)}, sheet},
		{"3 runs, 64 kinds of sheets", 3, "beadboard 1-1/2", kinds(64, func(i int) object {
			return object{"width": fmt.Sprint(24 + i), "length": fmt.Sprint(60 + i%37), "price": fmt.Sprintf("%d.10", 20+i)}
		})},
		{"3 runs, 64 kinds of boards", 3, "tongue and groove 5-1/8", kinds(64, func(i int) object {
			return object{"width": "5 1/8", "length": fmt.Sprintf("%d 3/8", 40+i), "price": fmt.Sprintf("%d.10", 2+i%9)}
		})},
		{"60 runs, offcuts", 60, "beadboard 1-1/2", append(sheet[:1:1], kinds(63, func(i int) object {
			return object{"width": fmt.Sprint(5 + i%37), "length": fmt.Sprint(20 + i), "count": 1, "squared": true}
		})...)},
	} {
		r := rand.New(rand.NewPCG(7, 7))
		eighths := func(low, high int) string { return fmt.Sprintf("%d %d/8", low+r.IntN(high-low), r.IntN(8)) }
		corner, runs := object{"kind": "inside corner"}, []object(nil)
		for i := range row.runs {
			width, low, high := eighths(60, 120), eighths(20, 40), eighths(20, 40)
			runs = append(runs, object{"name": fmt.Sprint("wall ", i), "width": width, "left": corner, "right": corner,
				"heights":  []object{{"at": "0", "top": low}, {"at": "20", "top": low}, {"at": "20", "top": high}, {"at": width, "top": high}},
				"openings": []object{{"name": "box", "kind": "box", "left": eighths(30, 40), "bottom": "8", "width": "2 1/4", "height": "3"}}})
		}
		job, err := json.Marshal(object{"closed": true, "profile": row.profile, "stock": row.stock, "runs": runs})
		if err != nil {
			t.Fatal(err)
		}
		c, stderr := startCommand(t, bytes.NewReader(job), nil, "plan", "-", "--json")
		if err := c.Wait(); err != nil {
			t.Errorf("%s: %v: %s", row.name, err, stderr)
			continue
		}
		took, memory := c.ProcessState.UserTime()+c.ProcessState.SystemTime(), int64(c.ProcessState.SysUsage().(*syscall.Rusage).Maxrss)
		if runtime.GOOS == "linux" {
			memory *= 1024
		}
		t.Logf("%-30s %6.1f s %5d MB", row.name, took.Seconds(), memory>>20)
		if took > 5*time.Minute || memory > 2<<30 {
			t.Errorf("%s: too much", row.name)
		}
	}
}
