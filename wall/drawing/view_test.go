package drawing

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/plan"
)

// A thing that is moved to a place stands there, on a mirrored or a stretched sheet too; a place is inside of an outline where
// it is inside in inches.
func TestMovedViews(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := func(name string) fraction.Length { return fraction.Of(rapid.Int64Range(0, 400).Draw(t, name), 8) }
		v := view{scale: rapid.Float64Range(.5, 90).Draw(t, "scale"), left: 7, top: 11, x0: 2, y1: 60}
		if rapid.Bool().Draw(t, "mirrored") {
			v.flip = 50
		}
		if rapid.Bool().Draw(t, "stretched") {
			v.stretch = 3
		}
		p, q := plan.Point{X: length("x"), Y: length("y")}, plan.Point{X: length("across"), Y: length("up")}
		m := v.move(p)
		if x, y := v.x(p.X.Add(q.X)), v.y(p.Y.Add(q.Y)); math.Abs(m.x(q.X)-x) > 1e-6 || math.Abs(m.y(q.Y)-y) > 1e-6 {
			t.Fatalf("%v of a thing at %v lies at %v, %v, want %v, %v", q, p, m.x(q.X), m.y(q.Y), x, y)
		}
		eighths := func(n int64) fraction.Length { return fraction.Of(n, 8) }
		ring := cutout.Rectangle(eighths(80), eighths(80), eighths(160), eighths(240))
		x, y := q.X.Float64(), q.Y.Float64()
		if edge := x == 10 || x == 30 || y == 10 || y == 40; !edge {
			if in, got := 10 < x && x < 30 && 10 < y && y < 40, inside(v.at(q), v.edges(ring)); in != got {
				t.Fatalf("%v inside %v: %v", q, ring, got)
			}
		}
	})
}

// Measures beside and below a drawing leave no label room on their leads.
func TestLeadsOfMeasuresAreKeptFree(t *testing.T) {
	for _, below := range []bool{false, true} {
		c := newCanvas(kitchen(), wideInk, "x", "x")
		c.frame = box{0, 0, 600, 600}
		all := []stop{{text: line{"12"}, ink: 200}, {text: line{"13"}, ink: 203}, {text: line{"99"}, ink: 400}}
		if below {
			c.below(all, 0, 600, 300, 1, 12, 40, func(stop) {})
		} else {
			c.beside(all, 0, 600, 300, -1, 12, 40, func(stop) {})
		}
		for _, s := range all {
			lead := map[bool]box{false: centered(complex(294, s.ink), 4, 1), true: centered(complex(s.ink, 306), 1, 4)}[below]
			if _, ok := c.place(lead); ok {
				t.Errorf("below %v: a label lies on the lead of %v", below, s.text)
			}
			if mid := centered(complex(274, (s.ink+s.spot)/2), 4, 1); !below {
				if _, ok := c.place(mid); ok {
					t.Errorf("a label lies on the slanting lead of %v", s.text)
				}
			}
		}
		if _, ok := c.place(centered(500+500i, 4, 4)); !ok {
			t.Error("no label has room where nothing is")
		}
	}
}

// On a run that stays bare the room from above shows no panels, and of a panel on the wall its hatch.
func TestRoomShowsWhatIsOnTheWall(t *testing.T) {
	count := func(p plan.Plan, class string) int {
		drawn, err := Room(p)
		if err != nil {
			t.Fatal(err)
		}
		return len(drawn.named("path", class))
	}
	p := kitchen()
	bands, hatched := count(p, "tag"), count(p, "opening")
	p.Runs[0].StoryPole = nil
	if got := count(p, "tag"); got != bands-1 {
		t.Errorf("%d bands with a bare run, %d without", got, bands)
	}
	p.Runs[1].Installed = []plan.Installed{{Left: in("1"), Right: in("4")}, {Left: in("4"), Right: in("9")}}
	if got := count(p, "opening"); got != hatched+2 {
		t.Errorf("%d hatched panels, %d before two were up", got, hatched)
	}
}

// A section of a run without an outline is none; that of one with strips and a wall on its studs names both.
func TestSectionNamesWhatLiesBehind(t *testing.T) {
	p := kitchen()
	p.Fixing.Strips, p.Fixing.Wall = in("3/4"), in("1/2")
	drawn, err := Section(p, 0)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"strips 3/4", "wall on its studs 1/2"} {
		if !strings.Contains(drawn.words(), want) {
			t.Errorf("no %q among %q", want, drawn.words())
		}
	}
	p.Fixing.Strips, p.Fixing.Wall = fraction.Length{}, fraction.Length{}
	if drawn, err = Section(p, 0); err != nil || strings.Contains(drawn.words(), "strips") || strings.Contains(drawn.words(), "studs") {
		t.Errorf("what is not there is named: %q, %v", drawn.words(), err)
	}
	p.Runs[0].Outline = p.Runs[0].Outline[:2]
	if _, err := Section(p, 0); err == nil {
		t.Error("a run of two corners has a section")
	}
}
