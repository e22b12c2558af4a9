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
	for _, row := range edgeRooms() {
		t.Run(row.name, func(t *testing.T) {
			job, err := json.Marshal(row.job)
			if err != nil {
				t.Fatal(err)
			}
			c, stderr := startCommand(t, bytes.NewReader(job), nil, "plan", "-", "--json")
			if err := c.Wait(); err != nil {
				t.Fatalf("%v: %s", err, stderr)
			}
			took, memory := c.ProcessState.UserTime()+c.ProcessState.SystemTime(), int64(c.ProcessState.SysUsage().(*syscall.Rusage).Maxrss)
			if runtime.GOOS == "linux" {
				memory *= 1024
			}
			t.Logf("%.1f s, %d MB", took.Seconds(), memory>>20)
			if took > 5*time.Minute || memory > 2<<30 {
				t.Error("too much")
			}
		})
	}
}

type object = map[string]any

// edgeRoom is a job at a limit.
type edgeRoom struct {
	name string
	job  object
}

// edgeRooms are closed rooms of like runs, drawn from a fixed seed, and long walls with as much of one thing as may be.
func edgeRooms() (all []edgeRoom) {
	pattern := func(n int) object {
		features := make([]object, n)
		for i := range features {
			features[i] = object{"kind": []string{"flat", "groove", "bead"}[i%3], "width": fmt.Sprintf("%d/16", 1+i%5)}
		}
		return object{"name": "invented", "thickness": "1/4", "features": features}
	}
	kinds := func(n int, one func(i int) object) (all []object) {
		for i := range n {
			o := one(i)
			o["name"] = fmt.Sprint("kind ", i)
			all = append(all, o)
		}
		return all
	}
	const beads, boards = "beadboard 1-1/2", "tongue and groove 5-1/8"
	sheet := []object{{"name": "sheet", "width": "48", "length": "96", "price": "31.50"}}
	offcuts := append(sheet[:1:1], kinds(63, func(i int) object {
		return object{"width": fmt.Sprint(5 + i%37), "length": fmt.Sprint(20 + i), "count": 1, "squared": true}
	})...)
	room := func(name string, runs, steps, boxes int, profile any, stock []object) {
		r := rand.New(rand.NewPCG(7, 7))
		eighths := func(low, high int) string { return fmt.Sprintf("%d %d/8", low+r.IntN(high-low), r.IntN(8)) }
		corner, walls := object{"kind": "inside corner"}, []object(nil)
		for i := range runs {
			width, top := eighths(60, 120), eighths(20, 40)
			heights, openings := []object{{"at": "0", "top": top}}, []object(nil)
			for k := range steps {
				at := fmt.Sprint(20 + 4*k)
				heights = append(heights, object{"at": at, "top": top})
				top = eighths(20, 40)
				heights = append(heights, object{"at": at, "top": top})
			}
			heights = append(heights, object{"at": width, "top": top})
			for k := range boxes {
				openings = append(openings, object{"name": fmt.Sprint("box ", k), "kind": "box", "left": eighths(30+10*k, 35+10*k), "bottom": "8", "width": "2 1/4", "height": "3"})
			}
			walls = append(walls, object{"name": fmt.Sprint("wall ", i), "width": width, "left": corner, "right": corner, "heights": heights, "openings": openings})
		}
		all = append(all, edgeRoom{name, object{"closed": true, "profile": profile, "stock": stock, "runs": walls}})
	}
	room("60 runs, 960 stations, 180 openings, 63 offcuts", 60, 7, 3, beads, offcuts)
	room("100 runs, 3 features of the pattern", 100, 1, 1, pattern(3), sheet)
	room("60 runs, plain sheets", 60, 1, 1, pattern(0), sheet)
	room("60 runs, 5 features", 60, 1, 1, pattern(5), sheet)
	room("20 runs, 15 features", 20, 1, 1, pattern(15), sheet)
	room("3 runs, 100 features", 3, 1, 1, pattern(100), sheet)
	room("3 runs, 64 kinds of boards", 3, 1, 1, boards, kinds(64, func(i int) object {
		return object{"width": "5 1/8", "length": fmt.Sprintf("%d 3/8", 40+i), "price": fmt.Sprintf("%d.10", 2+i%9)}
	}))
	room("3 runs, 64 kinds of sheets", 3, 1, 1, beads, kinds(64, func(i int) object {
		return object{"width": fmt.Sprint(24 + i), "length": fmt.Sprint(60 + i%37), "price": fmt.Sprintf("%d.10", 20+i)}
	}))
	room("60 runs, 63 offcuts", 60, 1, 1, beads, offcuts)
	room("3 runs, 63 offcuts", 3, 1, 1, beads, offcuts)

	wall := func(name string, width int, profile any, change func(job, run object)) {
		run := object{"name": "wall", "left": object{"kind": "exposed"}, "right": object{"kind": "exposed"}, "width": fmt.Sprint(width), "heights": []object{{"at": "0", "top": "40"}, {"at": fmt.Sprint(width), "top": "40"}}}
		stock := sheet
		if profile == boards {
			stock = []object{{"name": "board", "width": "5 1/8", "length": "96", "price": "5.10"}}
		}
		job := object{"profile": profile, "stock": stock, "runs": []object{run}}
		change(job, run)
		all = append(all, edgeRoom{name, job})
	}
	list := func(n int, one func(i int) object) (all []object) {
		for i := range n {
			all = append(all, one(i))
		}
		return all
	}
	as := func(job, run object) {}
	slope := func(job, run object) {
		run["heights"] = list(1000, func(i int) object { return object{"at": fmt.Sprint(i), "top": fmt.Sprintf("%d %d/16", 30+i/100, i%7)} })
	}
	boxes := func(job, run object) {
		run["openings"] = list(200, func(i int) object {
			return object{"name": fmt.Sprint("box ", i), "kind": "box", "left": fmt.Sprint(2 + 5*i), "bottom": "8", "width": "2 1/4", "height": "3"}
		})
	}
	zones := func(job, run object) {
		run["breaks"] = list(10, func(i int) object { return object{"at": fmt.Sprint(9 + 95*i), "prominence": 0.5} })
		run["focal"] = list(500, func(i int) object {
			return object{"from": fmt.Sprint(2 * i), "to": fmt.Sprint(2*i + 1), "prominence": 1 + i%3}
		})
	}
	wall("1000 stations on a slope of many kinks", 999, beads, slope)
	wall("200 boxes", 1010, beads, boxes)
	wall("10 breaks, 500 focal zones", 999, beads, zones)
	for _, few := range []struct{ features, width, openings, stations int }{{14, 2200, 85, 85}, {5, 6200, 199, 280}} {
		wall(fmt.Sprintf("%d features, %d openings, %d stations, breaks, zones", few.features, few.openings, few.stations), few.width, pattern(few.features), func(job, run object) {
			sixteenths := func(n int) string { return fmt.Sprintf("%d %d/16", n/16, n%16) }
			run["heights"] = list(few.stations, func(i int) object {
				return object{"at": sixteenths(few.width * 16 * i / (few.stations - 1)), "top": fmt.Sprintf("%d %d/16", 30+10*i/few.stations, i%7)}
			})
			run["openings"] = list(few.openings, func(i int) object {
				return object{"name": fmt.Sprint("box ", i), "kind": "box", "left": fmt.Sprintf("%d 1/8", 2+(few.width-6)*i/few.openings), "bottom": "8", "width": "2 1/4", "height": "3"}
			})
			zones(job, run)
			run["breaks"] = list(10, func(i int) object { return object{"at": fmt.Sprint(9 + (few.width-20)*i/10), "prominence": 0.5} })
		})
	}
	wall("1000 stations, 499 steps", 1000, beads, func(job, run object) {
		run["heights"] = list(1000, func(i int) object {
			return object{"at": fmt.Sprint((i + 1) / 2 * 2), "top": fmt.Sprint(30 + i/2%9)}
		})
	})
	wall("1000 panels on the wall", 12*1000+900, beads, func(job, run object) {
		job["installed"] = list(1000, func(i int) object {
			return object{"run": "wall", "left": fmt.Sprint(12 * i), "right": fmt.Sprint(12*i + 12), "left_phase": "0"}
		})
	})
	wall("325 sheets side by side", 325*48, beads, as)
	wall("980 plain sheets", 980*48, pattern(0), as)
	wall("750 boards under a slope", 750*5, boards, func(job, run object) { run["heights"].([]object)[1]["top"] = "90" })
	wall("plain sheets, a tape of 1/1024", 900, pattern(0), func(job, run object) { job["tape"] = "1/1024" })
	wall("an opening of 2400 corners", 2500, beads, func(job, run object) {
		outline := [][2]string{}
		for i := range 1200 {
			outline = append(outline, [2]string{fmt.Sprint(2 * i), fmt.Sprintf("%d/16", i%5)})
		}
		for i := range 1200 {
			outline = append(outline, [2]string{fmt.Sprint(2 * (1199 - i)), fmt.Sprintf("20 %d/16", i%7)})
		}
		run["openings"] = []object{{"name": "glass", "kind": "window", "left": "20", "bottom": "10", "outline": outline}}
	})
	return all
}
