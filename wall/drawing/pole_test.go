package drawing

import (
	"strings"
	"testing"

	"example.com/groovewright/wall/plan"
)

// TestStoryPoleKeepsEveryWord: what a mark says stands whole on a story pole, however long,
// unless there are more marks than lines.
func TestStoryPoleKeepsEveryWord(t *testing.T) {
	p := kitchen()
	long := "the box beside the window that the neighbour's cat likes to sit under, left, with its extender"
	p.Runs[1].StoryPole[2] = plan.Mark{At: p.Runs[1].StoryPole[2].At, Kind: plan.OpeningRight, Opening: long}
	drawn, err := StoryPole(p, 1)
	if err != nil {
		t.Fatal(err)
	}
	e := string(drawn.SVG())
	for _, m := range p.Runs[1].StoryPole {
		for _, word := range strings.Fields(m.Name(p.Profile)) {
			if !strings.Contains(e, strings.ReplaceAll(word, "'", "&#39;")) {
				t.Errorf("%q of %+v is missing", word, m)
			}
		}
	}
	if strings.Contains(e, "…") {
		t.Error("a text was cut off")
	}
}

// TestManyBoardsStayOnTheDrawing: a wall of more boards than there is room for figures writes some
// of them, each within the drawing.
func TestManyBoardsStayOnTheDrawing(t *testing.T) {
	for _, width := range []float64{wideInk, halfInk} {
		p := kitchen()
		run := &p.Runs[1]
		run.StoryPole = nil
		for i := range int64(120) {
			run.StoryPole = append(run.StoryPole, plan.Mark{At: in("1").Mul(i), Kind: plan.PanelsMeet})
		}
		e := newElevation(p, 1, width, "x", "x")
		lines := 0
		texts, what := e.texts(e.run.PolePlaces())
		for _, text := range texts {
			lines += len(text)
		}
		if want := map[float64]string{wideInk: "one in 3;", halfInk: "one in 6;"}[width]; !strings.Contains(what, want) {
			t.Errorf("it is said %q of them, want %q", what, want)
		}
		if room := int((width-16)/poleGap) + 1; lines < room/2 || lines > room {
			t.Errorf("%d of 120 marks are written on a drawing %v wide, want %d to %d", lines, width, room/2, room)
		}
	}
}
