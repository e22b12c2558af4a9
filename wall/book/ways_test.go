package book

import (
	"strings"
	"testing"
)

// A line to saw along an edge is named by the corners at both of its ends, and each time alike.
func TestWaysHaveTwoEnds(t *testing.T) {
	named := 0
	for _, n := range plans() {
		for _, piece := range n.plan.Pieces {
			for _, way := range piece.Marks.Strokes() {
				name := wayName(n.plan, piece.Marks, way)
				if name == "" {
					continue
				}
				named++
				if !strings.Contains(name, "–") {
					t.Errorf("%s, piece %s: a line named %q alone", n.name, piece.Label, name)
				}
				for range 20 {
					if again := wayName(n.plan, piece.Marks, way); again != name {
						t.Fatalf("%s, piece %s: %q, and then %q", n.name, piece.Label, name, again)
					}
				}
			}
		}
	}
	if named == 0 {
		t.Error("no line has a name")
	}
}
