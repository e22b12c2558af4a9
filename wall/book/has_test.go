package book

import (
	"strings"
	"testing"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// A job without a box has no word of one but for the pack of nails, what is held to be best, and tools.
func TestTextsSayNothingOfWhatAJobHasNot(t *testing.T) {
	for line := range strings.SplitSeq(Explained(hardJob(t, "arches")), "\n") {
		line = strings.ReplaceAll(line, "box of 1000", "")
		for _, word := range []string{"box", "extender", "device", "circuit", "rims of holes", "the + is"} {
			if strings.Contains(line, word) {
				t.Errorf("without a box: %q", line)
			}
		}
	}
}

// A plain sheet has no beads or grooves to brush.
func TestPlainSheetsAreRolled(t *testing.T) {
	p, coats := hardJob(t, "arches"), finish.Step{Stage: finish.StageFirstCoats}
	if got := Step(p, coats); !strings.Contains(got, "Brush the beads first, then roll the flats;") {
		t.Error(got)
	}
	p.Profile.Features = nil
	if got := Step(p, coats); !strings.Contains(got, "Roll the faces;") || strings.Contains(got, "rush") {
		t.Error(got)
	}
}

// Strips stand along the sides of openings, where there are any but boxes.
func TestStripsBesideOpenings(t *testing.T) {
	box, door := plan.Opening{Kind: wall.Box}, plan.Opening{Kind: wall.Other}
	for want, openings := range map[string][]plan.Opening{"": nil, " ": {box}, "every opening.": {door}, "every opening but boxes.": {door, box}} {
		p := plan.Plan{Runs: []plan.Run{{Openings: openings}}}
		for _, kind := range []finish.ActKind{finish.ActStrips, finish.ActSheetStrips} {
			got := Step(p, finish.Step{Stage: finish.StageStrips, Acts: []finish.Act{{Kind: kind}}})
			if strings.Contains(got, "each side") != (len(want) > 1) || !strings.Contains(got, want) {
				t.Errorf("%v: %q", openings, got)
			}
		}
	}
}

// A place past either end of a run is said to be past it, by how much.
func TestAlong(t *testing.T) {
	out := &text{tape: fraction.Tape{Mark: fraction.Of(1, 16)}}
	width := fraction.Inches(96)
	for _, row := range []struct{ at, want string }{{"-3/4", "3/4 past the left end"}, {"0", "0"}, {"96", "96"}, {"96 3/4", "3/4 past the right end"}} {
		if got := out.along(fraction.MustParse(row.at), width); got != row.want {
			t.Errorf("along(%s) = %q, want %q", row.at, got, row.want)
		}
	}
}

func TestList(t *testing.T) {
	for want, words := range map[string][]string{"": {"", ""}, "a": {"a", ""}, "a and b": {"a", "", "b"}, "a, b and c": {"a", "b", "c"}} {
		if got := list(words...); got != want {
			t.Errorf("list(%q) = %q, want %q", words, got, want)
		}
	}
}
