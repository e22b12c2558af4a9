package drawing

import (
	"strconv"
	"testing"

	"example.com/groovewright/wall/plan"
)

// TestNoTagCoversASmallOpening looks at every elevation: what is too small to hold its own name is
// covered by no name and no number.
func TestNoTagCoversASmallOpening(t *testing.T) {
	looked := 0
	forEachPlan(t, func(t *testing.T, p plan.Plan) {
		for i := range p.Runs {
			large, err := Elevation(p, i)
			small, ok := large.Narrow()
			if err != nil || !ok {
				t.Fatalf("run %d: %v, narrow too: %v", i, err, ok)
			}
			for _, drawn := range []Picture{large, small} {
				e := drawElevation(p, i, drawn.Width, map[bool]float64{false: elevationPage, true: landPage}[drawn.Width == landInk])
				for _, o := range p.Runs[i].Openings {
					spot := e.around(o.Outline)
					if spot.w > 40 || spot.h > 40 {
						continue
					}
					looked++
					for _, n := range drawn.kids {
						if n.name == "rect" && n.value("class") == "tag" && n.box().overlaps(spot) {
							t.Errorf("%s, %v wide: the tag at %v covers %s at %v", p.Runs[i].Name, drawn.Width, n.box(), o.Name, spot)
						}
					}
				}
			}
		}
	})
	if looked < 20 {
		t.Errorf("only %d small openings were looked at", looked)
	}
}

// value is an attribute of a node.
func (n *node) value(name string) string {
	for i := 0; i+1 < len(n.attrs); i += 2 {
		if n.attrs[i] == name {
			return n.attrs[i+1]
		}
	}
	return ""
}

// box is where a rectangle stands.
func (n *node) box() box {
	at := func(name string) float64 {
		v, _ := strconv.ParseFloat(n.value(name), 64)
		return v
	}
	return box{at("x"), at("y"), at("width"), at("height")}
}
