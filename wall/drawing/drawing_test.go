package drawing

import (
	"path/filepath"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/wall/plan"
)

// TestDrawingsAreGolden holds some drawings of the made-up kitchen, byte for byte. After a change
// that is meant, look at the drawings and use -update.
func TestDrawingsAreGolden(t *testing.T) {
	p := kitchen()
	tiles := cutLines(p)[2].tile(Papers()[0], 3)
	drawn := map[string]Picture{"survey": Survey(1), "template": *drawTile(p, tiles, tiles.tiles[0]), "map": drawMap(tiles)}
	keep := func(name string) func(pic Picture, err error) {
		return func(pic Picture, err error) {
			if err != nil {
				t.Errorf("%s: %v", name, err)
			}
			drawn[name] = pic
		}
	}
	keep("room")(Room(p))
	keep("unfolded")(Unfolded(p))
	keep("preview")(Preview(p))
	keep("run-2-fitting")(FittingStrip(p, 1))
	keep("run-1")(Elevation(p, 0))
	keep("run-2")(Elevation(p, 1))
	keep("corner-1")(Corner(p, 0))
	keep("run-1-section")(Section(p, 0))
	keep("sheet-1")(Sheet(p, 0))
	keep("piece-4-face")(Piece(p, 3, false, 250))
	keep("piece-1-back")(Piece(p, 0, true, 250))
	for name, pic := range drawn {
		fractiontest.Golden(t, filepath.Join("testdata", name+".svg"), string(pic.SVG()))
	}
}

// TestEmptyPlanIsAnError draws things that a plan does not have.
func TestEmptyPlanIsAnError(t *testing.T) {
	for _, p := range []plan.Plan{{}, kitchen()} {
		for _, i := range []int{-1, 100} {
			for name, draw := range map[string]func() (Picture, error){
				"elevation": func() (Picture, error) { return Elevation(p, i) },
				"end":       func() (Picture, error) { return End(p, i, true) },
				"corner":    func() (Picture, error) { return Corner(p, i) },
				"fitting":   func() (Picture, error) { return FittingStrip(p, i) },
				"section":   func() (Picture, error) { return Section(p, i) },
				"sheet":     func() (Picture, error) { return Sheet(p, i) },
				"piece":     func() (Picture, error) { return Piece(p, i, false, 250) },
			} {
				if _, err := draw(); err == nil {
					t.Errorf("%s %d gave a picture", name, i)
				}
			}
		}
	}
	for name, draw := range map[string]func(plan.Plan) (Picture, error){"room": Room, "unfolded": Unfolded, "preview": Preview} {
		if _, err := draw(plan.Plan{}); err == nil {
			t.Errorf("a plan without runs gave a picture: %s", name)
		}
	}
}

// TestBlemishNumber counts only what costs something.
func TestBlemishNumber(t *testing.T) {
	costs := plan.Blemish{Cost: fraction.NewRatio(1, 1)}
	p := plan.Plan{Blemishes: []plan.Blemish{{}, costs, {}, costs, {}}}
	for i, want := range map[int]int{-1: 0, 0: 0, 1: 1, 2: 0, 3: 2, 4: 0, 5: 0} {
		if got := p.BlemishNumber(i); got != want {
			t.Errorf("blemish %d has number %d, want %d", i, got, want)
		}
	}
}
