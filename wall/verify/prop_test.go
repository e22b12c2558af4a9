package verify

import (
	"math/big"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/wall/verify/rooms"
)

func rats() *rapid.Generator[rat] {
	return rapid.Custom(func(t *rapid.T) rat {
		return big.NewRat(rapid.Int64Range(-5000, 5000).Draw(t, "num"), rapid.Int64Range(1, 300).Draw(t, "den"))
	})
}

func TestExactTextIsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rats().Draw(t, "a")
		if got, ok := readExact(text(a)); !ok || !same(got, a) {
			t.Fatalf("%v is written %q and read as %v, %v", a, text(a), got, ok)
		}
		if got, err := readLength(text(a), "in"); err != nil || !same(got, a) {
			t.Fatalf("a job's %q is read as %v, %v", text(a), got, err)
		}
	})
}

func TestModIsTheRestBelowThePitch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, p := rats().Draw(t, "a"), sum(size(rats().Draw(t, "p")), ratio(1, 300))
		m := mod(a, p)
		if m.Sign() < 0 || !less(m, p) || !over(diff(a, m), p).IsInt() {
			t.Fatalf("%v mod %v = %v", a, p, m)
		}
	})
}

func TestNotationsOfATape(t *testing.T) {
	for _, test := range []struct {
		written, unit string
		want          rat
	}{
		{"63 1/4", "", ratio(253, 4)},
		{"63-1/4", "in", ratio(253, 4)},
		{"63.25", "in", ratio(253, 4)},
		{`5' 3 1/4"`, "mm", ratio(253, 4)},
		{"5′ 3¼″", "in", ratio(253, 4)},
		{"8'", "in", whole(96)},
		{"7/8", "in", ratio(7, 8)},
		{"⅞", "in", ratio(7, 8)},
		{"-1/2", "in", ratio(-1, 2)},
		{"1606.55 mm", "in", ratio(253, 4)},
		{"1606.55", "mm", ratio(253, 4)},
		{"160.655cm", "in", ratio(253, 4)},
		{"25.4", "mm", whole(1)}, // the international inch, 1959
	} {
		if got, err := readLength(test.written, test.unit); err != nil || !same(got, test.want) {
			t.Errorf("readLength(%q, %q) = %v, %v, want %v", test.written, test.unit, got, err, test.want)
		}
	}
	for _, written := range []string{"", "-", "1 1/0", "one", "1 2", "1/2/3", "--1", "1 yd", "0x10", "1e3"} {
		if got, err := readLength(written, "in"); err == nil {
			t.Errorf("readLength(%q) = %v, want an error", written, got)
		}
	}
}

// The lengths on middle lines add up to the area by the corners (the formula of
// Gauss), for the region of any drawn run without openings.
func TestRegionsHaveTheAreaOfTheirOutline(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j, err := readJob([]byte(rooms.Job().Draw(t, "job")))
		if err != nil {
			t.Fatal(err)
		}
		for i := range j.runs {
			g := j.region(i, alone, alone)
			corners := zero() // under each edge, upper edges positive
			for _, e := range g.outline {
				inside := len(spans(g.outline, middle(e.a.x, e.b.x), fromRight)) > 0
				if !inside {
					t.Fatalf("nothing at an edge of run %d", i)
				}
				middleY := middle(e.a.y, e.b.y)
				sign := whole(1)
				for _, s := range spans(g.outline, middle(e.a.x, e.b.x), fromRight) {
					if same(s.low.y, middleY) {
						sign = whole(-1)
					}
				}
				corners = sum(corners, times(sign, times(diff(e.b.x, e.a.x), middleY)))
			}
			if got := area(g.outline); !same(got, corners) {
				t.Fatalf("run %d: area %v by strips, %v by corners", i, got, corners)
			}
		}
	})
}

// Rooms keep the rules for a job.
func TestDrawnRoomsAreSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for _, text := range []string{rooms.Job().Draw(t, "job"), rooms.Small().Draw(t, "small")} {
			j, err := readJob([]byte(text))
			if err != nil {
				t.Fatal(err)
			}
			if len(j.runs) == 0 || len(j.runs) > 4 || j.pattern == nil || len(j.stock) == 0 {
				t.Fatalf("runs %d, stock %d", len(j.runs), len(j.stock))
			}
			for i, r := range j.runs {
				sound(t, r)
				before := j.runs[(i+len(j.runs)-1)%len(j.runs)]
				if r.left.kind == outsideCorner && before.right.kind != outsideCorner {
					t.Fatalf("%s: an outside corner with nothing", r.name)
				}
				if j.closed && r.left.kind != before.right.kind {
					t.Fatalf("%s: the room is not closed here", r.name)
				}
			}
		}
	})
}

func sound(t *rapid.T, r run) {
	last := len(r.heights) - 1
	if r.heights[0].at.Sign() != 0 || !same(r.heights[last].at, r.width) {
		t.Fatalf("%s: heights from %v to %v, width %v", r.name, r.heights[0].at, r.heights[last].at, r.width)
	}
	for k, h := range r.heights {
		if !less(h.bottom, h.top) || k > 0 && less(h.at, r.heights[k-1].at) || k > 1 && same(h.at, r.heights[k-2].at) {
			t.Fatalf("%s: height %d: %v", r.name, k, h)
		}
	}
	right := zero()
	for _, o := range r.openings {
		low, high := loop(o.outline).bounds()
		if less(low.x, right) || less(r.width, high.x) || !less(low.y, high.y) {
			t.Fatalf("%s: %s from %v to %v", r.name, o.name, low, high)
		}
		right = high.x
	}
	for k, z := range r.focal {
		if !less(z.from, z.to) || less(r.width, z.to) || k > 0 && less(z.from, r.focal[k-1].to) {
			t.Fatalf("%s: focal zone %d", r.name, k)
		}
	}
}
