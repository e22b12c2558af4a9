package book

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

var freedPiece = regexp.MustCompile(`piece (\S+)`)

// Every piece that a saw frees from its sheet is said to be free once, also
// where a cut only trims it.
func TestEveryPieceIsFreedOnce(t *testing.T) {
	for name, path := range examples(t) {
		p := planOf(t, path)
		out := &text{tape: p.TapeMeasure()}
		for _, s := range p.Sheets {
			var want, got []string
			for _, pl := range s.Placements {
				want = append(want, label(p, pl.Piece))
			}
			for i := range s.Cuts {
				for _, m := range freedPiece.FindAllStringSubmatch(out.cut(p, s, i), -1) {
					got = append(got, m[1])
				}
			}
			slices.Sort(want)
			slices.Sort(got)
			if !slices.Equal(got, want) {
				t.Errorf("%s, sheet %d: pieces %q are freed, want %q", name, s.Number, got, want)
			}
		}
	}
}

// Parts of one size can carry the pattern at different phases, so no two parts
// on the bench are called the same.
func TestPartsOfOneSizeAreToldApart(t *testing.T) {
	twins := 0
	for name, path := range examples(t) {
		p := planOf(t, path)
		out := &text{tape: p.TapeMeasure()}
		for _, s := range p.Sheets {
			called := make(map[string]int)
			for i, c := range s.Cuts {
				part := out.part(p, s, i)
				if first, twice := called[part]; twice && s.Cuts[first].Rect != c.Rect {
					t.Errorf("%s, sheet %d: cuts %d and %d are both of %q", name, s.Number, first+1, i+1, part)
				}
				called[part] = i
				if strings.Contains(part, " cut ") {
					twins++
				}
			}
		}
	}
	if twins == 0 {
		t.Error("no example has two parts of one size")
	}
}

// Both panels that meet at an outside corner reach the long point of a mitre,
// so both have to be told to be mitred, and no other.
func TestOutsideCornersAreMitred(t *testing.T) {
	corners := 0
	for name, path := range examples(t) {
		p := planOf(t, path)
		for _, run := range p.Runs {
			want := map[string]int{}
			for side, end := range map[string]plan.End{"left": run.Left, "right": run.Right} {
				if end.Kind == wall.OutsideCorner {
					want[side]++
					corners++
				}
			}
			got := map[string]int{}
			for _, piece := range p.Pieces {
				out := &text{tape: p.TapeMeasure()}
				if piece.Run == run.Name {
					out.fitted(p, run, piece)
				}
				for _, side := range []string{"left", "right"} {
					got[side] += strings.Count(out.String(), "mitre its "+side)
				}
			}
			for _, side := range []string{"left", "right"} {
				if got[side] != want[side] {
					t.Errorf("%s, %s: %d pieces are mitred at the %s, want %d", name, run.Name, got[side], side, want[side])
				}
			}
		}
	}
	if corners == 0 {
		t.Error("no example has an outside corner")
	}
}

// What is taken off along an edge is what lies outside the pieces: sawing as
// the words say leaves the kept edge on the measure.
func TestWhatIsTakenOffIncludesTheBlade(t *testing.T) {
	for name, path := range examples(t) {
		p := planOf(t, path)
		out := &text{tape: p.TapeMeasure()}
		for _, s := range p.Sheets {
			for i, c := range s.Cuts {
				k := 1
				if c.Kind == nest.Rip {
					k = 0
				}
				parts := halves(p, c)
				kept := fmt.Sprintf("take %s off", out.length(parts[1].rect[k].Sub(c.Rect[k])))
				if says := out.cut(p, s, i); !holds(p, s, parts[0]) && !strings.Contains(says, kept) {
					t.Errorf("%s, sheet %d: cut %d reads %q, want %q", name, s.Number, c.Step, says, kept)
				}
			}
		}
	}
}
