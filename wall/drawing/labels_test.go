package drawing

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
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
			if err != nil {
				t.Fatal(i, err)
			}
			both := []Picture{large}
			if small, ok := large.Narrow(); ok {
				both = append(both, small)
			}
			for _, drawn := range both {
				e, _ := fitElevation(p, i, drawn.Width, map[float64]float64{halfInk: math.Inf(1), wideInk: elevationPage, landInk: landPage}[drawn.Width], strings.Contains(drawn.words(), "named in its table"))
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

// TestManyBoxesAreTold: of more boxes than have room for their names each has a letter that is nearer to it than to any
// other, and the list under the drawing has its name by that letter.
func TestManyBoxesAreTold(t *testing.T) {
	p := kitchen()
	run := &p.Runs[1]
	run.Outline, run.Openings, run.StoryPole = ring("0", "0", "120", "0", "120", "48", "0", "48"), nil, nil
	for n := range int64(40) {
		x, y := in("6").Add(in("11").Mul(n%10)), in("4").Add(in("11").Mul(n/10))
		run.Openings = append(run.Openings, plan.Opening{Name: fmt.Sprintf("box number %d", n+1), Outline: []plan.Point{
			{X: x, Y: y}, {X: x.Add(in("2 1/4")), Y: y}, {X: x.Add(in("2 1/4")), Y: y.Add(in("3 7/8"))}, {X: x, Y: y.Add(in("3 7/8"))}}})
	}
	p.Pieces, p.Blemishes = nil, nil
	e, _ := fitElevation(p, 1, wideInk, elevationPage, true)
	listed := e.Picture.texts()
	for _, o := range run.Openings {
		letter := run.Code(o.Name)
		if want := letter + "\u00a0" + o.Name; !slices.Contains(listed, want) {
			t.Errorf("%q is not in the list", want)
		}
		at := slices.IndexFunc(e.kids, func(n *node) bool { return n.name == "text" && n.words() == letter })
		if at < 0 {
			t.Errorf("%s has no letter", o.Name)
			continue
		}
		x, _ := strconv.ParseFloat(e.kids[at].value("x"), 64)
		y, _ := strconv.ParseFloat(e.kids[at].value("y"), 64)
		nearest := slices.MinFunc(run.Openings, func(a, b plan.Opening) int {
			far := func(o plan.Opening) float64 { return e.around(o.Outline).away(box{x, y - typeSize*.36, 0, 0}) }
			return cmp.Compare(far(a), far(b))
		})
		if nearest.Name != o.Name {
			t.Errorf("%s, the letter of %s, is nearer to %s", letter, o.Name, nearest.Name)
		}
	}
	if pic, err := Elevation(p, 1); err != nil || pic.narrow != nil {
		t.Errorf("a phone has a drawing of its own, or %v", err)
	}
}
