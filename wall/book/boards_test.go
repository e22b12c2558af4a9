package book

import (
	"strings"
	"testing"

	"example.com/groovewright/groove"
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
	for _, piece := range p.Pieces {
		narrow := piece.Width.Less(p.Profile.Pitch)
		if at := map[string]bool{"1": true, "19": true, "18": true, "42": true}[piece.Label]; at != narrow {
			t.Errorf("piece %s: narrower than the face %v", piece.Label, narrow)
		}
	}
}
