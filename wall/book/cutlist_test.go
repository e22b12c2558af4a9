package book

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

var freedPiece = regexp.MustCompile(`piece ([^ ,]+)`)

// Every piece that a saw frees from its sheet is said to be free once, also where a cut only trims
// it.
func TestEveryPieceIsFreedOnce(t *testing.T) {
	for name, p := range examplePlans(t) {
		out := &text{tape: p.TapeMeasure()}
		for _, s := range p.Sheets {
			var want, got []string
			for _, pl := range s.Placements {
				want = append(want, label(p, pl.Part))
			}
			for _, c := range s.Cuts {
				for _, m := range freedPiece.FindAllStringSubmatch(out.cut(p, s, c), -1) {
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

// Of a piece that stands free beyond the blade the side stands beside its number, before what is done with it then.
func TestSideOfAFreedPiece(t *testing.T) {
	p, seen := examplePlans(t)["bathroom"], 0
	for _, s := range p.Sheets {
		for _, pl := range s.Placements {
			piece, _ := p.Piece(pl.Part)
			then := thenMiter(p, piece)
			if then == "" {
				continue
			}
			seen++
			want := "piece " + piece.Label + either(pl.Turned, " turned", "") + " right (" + then + ")"
			if got := freed(p, s, plan.Cut{Cut: nest.Cut{Kind: nest.Rip}, Frees: [2]int{0, pl.Part}}); got != want {
				t.Errorf("%q, want %q", got, want)
			}
		}
	}
	if seen == 0 {
		t.Error("no mitered piece")
	}
}

// Parts of one size can carry the pattern at different phases, so no two parts on the bench are
// called the same.
func TestPartsOfOneSizeAreToldApart(t *testing.T) {
	twins := 0
	for name, p := range examplePlans(t) {
		out := &text{tape: p.TapeMeasure()}
		for _, s := range p.Sheets {
			called := make(map[string]int)
			for i, c := range s.Cuts {
				part := out.part(p, s, c)
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

// Both panels that meet at an outside corner reach the long point of a mitre, so both have to be
// told to be mitred, and no other.
func TestOutsideCornersAreMitred(t *testing.T) {
	corners := 0
	for name, p := range examplePlans(t) {
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
				for _, side := range []string{"left", "right"} {
					if piece.Run == run.Name && strings.Contains((&text{}).miter(p, piece), "miter its "+side) {
						got[side]++
					}
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

// What is taken off along an edge, blade included, is all that lies there outside the pieces:
// sawing as the words say leaves the kept edge on the measure.
func TestWhatIsTakenOffIncludesTheBlade(t *testing.T) {
	trims := 0
	for name, p := range examplePlans(t) {
		out := &text{tape: p.TapeMeasure()}
		for _, s := range p.Sheets {
			for _, c := range s.Cuts {
				way := 1
				if c.Kind == nest.Rip {
					way = 0
				}
				low, high := c.Rect[way], c.Rect[way].Add(c.At) // of the near side
				used := slices.ContainsFunc(s.Placements, func(pl nest.Placement) bool {
					at, across := [2]fraction.Length{pl.X, pl.Y}, c.Rect[1-way]
					return !at[way].Less(low) && at[way].Less(high) &&
						!at[1-way].Less(across) && at[1-way].Less(across.Add(c.Rect[3-way]))
				})
				says, kept := asCut(out.cut(p, s, c)), fmt.Sprintf(" %s off its ", out.length(c.At.Add(p.Saw.Kerf)))
				if trims++; used {
					trims--
					kept = " at " + out.length(c.At)
				}
				if !strings.Contains(says, kept) {
					t.Errorf("%s, sheet %d: cut %d reads %q, want %q", name, s.Number, c.Step, says, kept)
				}
			}
		}
	}
	if trims == 0 {
		t.Error("no example has a trim")
	}
}

// With the good face down each measure is the same, from the edge on the other hand: the cut list is
// that of the face, with left and right changed.
func TestCutListOfSheetsFaceDown(t *testing.T) {
	for name, p := range examplePlans(t) {
		p.Saw.Face = plan.FaceUp
		up := strings.Join(strings.Fields(Part(p, Cuts, true)), " ")
		p.Saw.Face = plan.FaceDown
		down := strings.Join(strings.Fields(Part(p, Cuts, true)), " ")
		want := strings.NewReplacer("left edge of its face", "left edge of its face", "right edge of its face", "right edge of its face",
			"left edge", "right edge", "right edge", "left edge", "left of", "right of", "right of", "left of",
			" left;", " right;", " right,", " left,", " left,", " right,", " left (", " right (", " right (", " left (", "Face up", "Face down, so that you see the back").Replace(up)
		if down != want {
			t.Errorf("%s: face down it reads\n%s\nwant\n%s", name, down, want)
		}
	}
}

// TestNoSquareEndIsCutAgain: in no job of the tests a crosscut takes a strip off the lower end of a part that an earlier
// crosscut has made square, as its pieces stand there as well.
func TestNoSquareEndIsCutAgain(t *testing.T) {
	seen := 0
	for _, n := range slices.Concat(examples(), hardJobs()) {
		for _, s := range n.plan.Sheets {
			for _, c := range s.Cuts {
				if c.Kind != nest.Crosscut || c.Rect[1].Less(n.plan.Saw.SquareUp) || c.Rect[1].IsZero() {
					continue // the factory end
				}
				if seen++; c.Trim == plan.TrimNear {
					t.Errorf("%s, sheet %d, cut %d: %s off an end that is square", n.name, s.Number, c.Step, n.plan.TapeMeasure().Format(c.Off))
				}
			}
		}
	}
	if least := map[bool]int{false: 60, true: 5}[testing.Short()]; seen < least {
		t.Errorf("only %d crosscuts of other parts than whole sheets", seen)
	}
}
