package book

import (
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/groove"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// TestMeetingOfBoards: which boards lose an edge follows from their widths: those narrower than the face of 3 1/2, at the end
// where the run starts their groove, at the other their tongue.
func TestMeetingOfBoards(t *testing.T) {
	p := hardJob(t, "boards")
	texts := &text{tape: p.TapeMeasure()}
	for edges, want := range map[groove.Edges]string{
		groove.Tongued:      "The groove is sawn off 1, 19. The tongue is sawn off 18, 42. To get the last board",
		groove.Lapped:       "lap behind the next is sawn off 18, 42.",
		groove.EdgesUnknown: "is not in the plan",
		groove.Square:       "",
	} {
		p.Profile.Edges = edges
		if got := texts.meeting(p); !strings.Contains(got, want) || (got == "") != (want == "") {
			t.Errorf("%v: %q, want %q", edges, got, want)
		}
	}
	p.Profile.Boards, p.Profile.Tongue = false, groove.TongueLeft
	for edges, want := range map[groove.Edges]string{
		groove.Tongued: "without its tongue, which no drawing shows: it stands out at the left of the face, of a turned panel at its right.",
		groove.Lapped:  "Where a panel that is up laps over the next,", groove.EdgesUnknown: "", groove.Square: "",
	} {
		p.Profile.Edges = edges
		if got := texts.meeting(p); !strings.Contains(got, want) || (got == "") != (want == "") {
			t.Errorf("sheets, %v: %q, want %q", edges, got, want)
		}
	}
	for _, piece := range p.Pieces {
		narrow := piece.Width.Less(p.Profile.Pitch)
		if at := map[string]bool{"1": true, "19": true, "18": true, "42": true}[piece.Label]; at != narrow {
			t.Errorf("piece %s: narrower than the face %v", piece.Label, narrow)
		}
	}
}

// TestTongueAtAnEnd: a board with its whole face loses its tongue where no board goes on beyond it, as at an end: without
// the board that ends the first run, the one before it ends it.
func TestTongueAtAnEnd(t *testing.T) {
	p := hardJob(t, "boards")
	last := slices.IndexFunc(p.Pieces, func(piece plan.Piece) bool { return piece.Label == "18" })
	p.Runs, p.Pieces = slices.Clone(p.Runs), slices.Delete(slices.Clone(p.Pieces), last, last+1)
	p.Runs[0].Panels = slices.DeleteFunc(slices.Clone(p.Runs[0].Panels), func(panel wall.Panel) bool { return panel.Number == 18 })
	if before := p.Pieces[last-1]; before.Width != p.Profile.Pitch {
		t.Fatalf("the board before is %v wide", before.Width)
	}
	if got, want := (&text{tape: p.TapeMeasure()}).meeting(p), "The tongue is sawn off 17, 42."; !strings.Contains(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}
