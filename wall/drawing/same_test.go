package drawing

import (
	"bytes"
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"example.com/groovewright/fraction/fractiontest"
)

// TestDrawingsStayTheSame holds every drawing of the plans that are stored for it, byte for byte. After a change look
// at the drawings that it names, and use -update.
func TestDrawingsStayTheSame(t *testing.T) {
	stored, err := filepath.Glob("testdata/plans/*.json")
	if err != nil || len(stored) < 5 {
		t.Fatal(stored, err)
	}
	var b strings.Builder
	b.WriteString("Drawings of stored plans: width, height, elements, and the beginning of the hash.\n")
	for _, file := range append(stored, "testdata/fixture.json", "testdata/boards.json") {
		p := readPlan(file)
		fmt.Fprintf(&b, "\n%s\n", filepath.ToSlash(file))
		keep := func(name string) func(pic Picture, err error) {
			return func(pic Picture, err error) {
				if err != nil {
					fmt.Fprintf(&b, "%s: %v\n", name, err)
					return
				}
				svg := pic.SVG()
				fmt.Fprintf(&b, "%s: %.1f x %.1f, %d, %s\n", name, pic.Width, pic.Height, bytes.Count(svg, []byte{'<'}), fractiontest.Hash(svg))
			}
		}
		keep("room")(Room(p))
		keep("unfolded")(Unfolded(p))
		keep("preview")(Preview(p))
		for i := range p.Runs {
			keep(fmt.Sprint("run ", i))(Elevation(p, i))
			keep(fmt.Sprint("pole ", i))(StoryPole(p, i))
			keep(fmt.Sprint("section ", i))(Section(p, i))
			keep(fmt.Sprint("fitting strip ", i))(FittingStrip(p, i))
			keep(fmt.Sprint("corner ", i))(Corner(p, i))
			keep(fmt.Sprint("left end ", i))(End(p, i, false))
			keep(fmt.Sprint("right end ", i))(End(p, i, true))
		}
		for i := range p.Sheets {
			keep(fmt.Sprint("sheet ", i))(Sheet(p, i))
		}
		for i := range p.Pieces {
			keep(fmt.Sprint("face ", i))(Piece(p, i, false, 250))
			keep(fmt.Sprint("back ", i))(Piece(p, i, true, 250))
		}
		for _, paper := range Papers() {
			set, err := Templates(p, paper)
			keep(paper.Name+" square")(set.Square, err)
			for i, m := range set.Maps {
				keep(fmt.Sprintf("%s map %d, %s, %d pages", paper.Name, i, m.Name, len(m.Pages)))(m.Picture, nil)
			}
			for i, page := range set.Pages {
				for _, on := range page {
					keep(fmt.Sprintf("%s page %d at %.1f, %.1f", paper.Name, i, on.X, on.Y))(on.Picture, nil)
				}
			}
		}
	}
	for i := range 4 {
		fmt.Fprintf(&b, "survey %d: %s\n", i, fractiontest.Hash(Survey(i).SVG()))
	}
	fractiontest.Golden(t, "testdata/same.txt", b.String())
}
