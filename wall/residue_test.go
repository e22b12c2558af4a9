package wall

import (
	"context"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/fraction"
)

// Where no edge of a room is seen, what a run starts with is phase 0 at the left limit of some run
// as it is in that very layout, carried round the corners between the two. The left limit that a
// run would have if it butted is none of a layout in which it passes, or of a run that meets a bare
// wall.
func TestUnseenPatternStartsAtALeftLimitOfItsLayout(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := drawRoom(t)
		for i := range room.Runs {
			run := &room.Runs[i]
			run.Openings, run.Heights = nil, []Height{{Top: fraction.Inches(12)}, {At: run.Width, Top: fraction.Inches(13)}}
			for _, e := range []*End{&run.Left, &run.Right} {
				if e.Kind == OutsideCorner || e.Kind == Exposed {
					e.Kind = InsideCorner
				}
			}
		}
		for n, layout := range firstLayouts(t, Layouts(context.Background(), room), 20) {
			wanted := startsOf(&room, &layout)
			for r, run := range layout.Runs {
				origins := []fraction.Length{run.SetOut.Origin}
				for _, restart := range run.Restarts {
					origins = append(origins, restart.Origin)
				}
				for _, o := range origins {
					if o = o.Mod(room.Profile.Pitch()); !slices.Contains(wanted[r], o) {
						t.Fatalf("layout %d: run %d starts at %v, want one of %v", n, r, o, wanted[r])
					}
				}
			}
		}
	})
}

// startsOf returns by run the origins that the left limits of the layout give.
func startsOf(room *Room, layout *Layout) [][]fraction.Length {
	n, pitch := len(room.Runs), room.Profile.Pitch()
	joined := func(r int) bool { // at its right
		next := room.Runs[(r+1)%n]
		return (room.Closed || r < n-1) && room.Runs[r].Right.Kind == InsideCorner && next.Left.Kind == InsideCorner
	}
	over := func(r int) fraction.Length { return room.Profile.Thickness.Mul(2).Sub(room.Runs[r].Width) }
	out := make([][]fraction.Length, n)
	for q, run := range layout.Runs {
		o := run.Limits[0]
		out[q] = append(out[q], o.Mod(pitch))
		for k, r := 0, q; k < n-1 && joined(r); k, r = k+1, (r+1)%n {
			o = o.Add(over(r))
			out[(r+1)%n] = append(out[(r+1)%n], o.Mod(pitch))
		}
		o = run.Limits[0]
		for k, r := 0, (q+n-1)%n; k < n-1 && joined(r); k, r = k+1, (r+n-1)%n {
			o = o.Sub(over(r))
			out[r] = append(out[r], o.Mod(pitch))
		}
	}
	return out
}
