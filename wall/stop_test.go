package wall_test

import (
	"context"
	"errors"
	"fmt"
	"testing"
	"time"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

// bigRoom has 25 runs round one closed room, all of them joined by inside corners, with stations,
// windows and boxes of many places: its first layout takes seconds.
func bigRoom() wall.Room {
	profile, _ := groove.Find("beadboard 1-5/8")
	in := fraction.Inches
	room := wall.Room{Profile: profile, Closed: true, Mark: fraction.Of(1, 16), Priorities: wall.DefaultPriorities(fraction.Inch),
		Stock: []nest.Stock{{Name: "sheet", Width: in(48), Length: in(96)}}}
	for r := range int64(25) {
		run := wall.Run{Name: fmt.Sprint("run ", r), Width: in(600).Add(fraction.Of(r, 16)),
			Left: wall.End{Kind: wall.InsideCorner}, Right: wall.End{Kind: wall.InsideCorner}}
		for i := range int64(12) {
			run.Heights = append(run.Heights, wall.Height{At: in(50 * i), Top: in(90).Add(fraction.Of((i*r)%7, 16))})
			switch (i + r) % 8 {
			case 0:
				run.Openings = append(run.Openings, wall.Opening{Name: fmt.Sprint("box ", i), Kind: wall.Box,
					Outline: cutout.Rectangle(in(50*i+20).Add(fraction.Of(3*r+5*i, 16)), in(40), fraction.Of(9, 4), in(4))})
			case 4:
				run.Openings = append(run.Openings, wall.Opening{Name: fmt.Sprint("window ", i), Kind: wall.Window,
					Outline: cutout.Rectangle(in(50*i+30).Add(fraction.Of(7*r+11*i, 16)), in(50), in(5), in(20))})
			}
		}
		run.Heights = append(run.Heights, wall.Height{At: run.Width, Top: in(90)})
		room.Runs = append(room.Runs, run)
	}
	return room
}

// Whoever waits for a layout of a room that is too big gets away from it.
func TestLayoutsStopWithTheContext(t *testing.T) {
	perInch := wall.Objective{Of: func(h fraction.Length) int64 { n, _ := h.DivMod(fraction.Inches(1)); return n }}
	for _, after := range []time.Duration{0, 100 * time.Millisecond} {
		for name, layouts := range map[string]func(context.Context) func(func(wall.Layout, error) bool){
			"Layouts": func(ctx context.Context) func(func(wall.Layout, error) bool) { return wall.Layouts(ctx, bigRoom()) },
			"LayoutsByCost": func(ctx context.Context) func(func(wall.Layout, error) bool) {
				return wall.LayoutsByCost(ctx, bigRoom(), perInch)
			},
		} {
			ctx, cancel := context.WithTimeout(t.Context(), after)
			defer cancel()
			start, n := time.Now(), 0
			for _, err := range layouts(ctx) {
				if n++; !errors.Is(err, context.DeadlineExceeded) || n > 1 {
					t.Errorf("%s after %v: got error %v at number %d, want that of the context alone", name, after, err, n)
					break
				}
			}
			if over := time.Since(start) - after; n != 1 || over > time.Second {
				t.Errorf("%s after %v: %d results, %v after the context's end", name, after, n, over)
			}
		}
	}
}
