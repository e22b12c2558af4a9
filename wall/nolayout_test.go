package wall_test

import (
	"errors"
	"fmt"
	"os"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

// A wall taller than every sheet is found before a seam is tried, which would take ten seconds: of a
// closed room of ten runs, and also where the wall rises above the sheets only at one end of a slope.
func TestTooTallIsFoundAtOnce(t *testing.T) {
	profile, _ := groove.Find("beadboard 1-1/2")
	in := fraction.Inches
	for _, top := range []int64{97, 120} {
		room := wall.Room{Profile: profile, Closed: true, Mark: fraction.Of(1, 16), Priorities: wall.DefaultPriorities(fraction.Inch),
			Stock: []nest.Stock{{Name: "sheet", Width: in(48), Length: in(96)}, {Name: "short", Width: in(30), Length: in(40)}}}
		corner := wall.End{Kind: wall.InsideCorner}
		for r := range int64(10) {
			width := in(60).Add(fraction.Of(37*r, 8))
			room.Runs = append(room.Runs, wall.Run{Name: fmt.Sprint(r), Width: width, Left: corner, Right: corner,
				Heights: []wall.Height{{Top: in(30 + r)}, {At: in(20), Top: in(30 + r)}, {At: in(20), Top: in(40)}, {At: width, Top: in(40)}}})
		}
		last := room.Runs[9].Heights
		last[2].Top, last[3].Top = in(217-top), in(top)
		before := fractiontest.ProcessorTime(os.Getpid())
		for _, err := range wall.Layouts(t.Context(), room) {
			var none *wall.NoLayoutError
			if !errors.As(err, &none) || none.Reason != wall.TooTall || none.Run != "9" {
				t.Errorf("%d in: %v", top, err)
			}
			break
		}
		if took := (fractiontest.ProcessorTime(os.Getpid()) - before).Seconds(); took > 3 {
			t.Errorf("%d in: after %v s", top, took)
		}
	}
}
