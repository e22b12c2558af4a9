package verify

import (
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

func rats() *rapid.Generator[rat] {
	return rapid.Custom(func(t *rapid.T) rat {
		return big.NewRat(rapid.Int64Range(-5000, 5000).Draw(t, "num"), rapid.Int64Range(1, 300).Draw(t, "den"))
	})
}

func TestExactTextIsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rats().Draw(t, "a")
		if got, err := readExact(text(a)); err != nil || !same(got, a) {
			t.Fatalf("%v is written %q and read as %v, %v", a, text(a), got, err)
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
		{"010 010/16", "in", ratio(85, 8)}, // not octal
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

// The lengths on middle lines add up to the area by the corners (the formula of Gauss), for the
// region of any drawn run without openings.
func TestRegionsHaveTheAreaOfTheirOutline(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j, err := readJob([]byte(RandomRoom().Draw(t, "job")))
		if err != nil {
			t.Fatal(err)
		}
		for i := range j.Runs {
			g := j.region(i, alone, alone)
			corners := zero() // under each edge, upper edges positive
			for _, e := range g.outline {
				inside := len(g.spans(g.outline, middle(e.a.X, e.b.X), fromRight)) > 0
				if !inside {
					t.Fatalf("nothing at an edge of run %d", i)
				}
				middleY := middle(e.a.Y, e.b.Y)
				sign := whole(1)
				for _, s := range g.spans(g.outline, middle(e.a.X, e.b.X), fromRight) {
					if same(s.low.y, middleY) {
						sign = whole(-1)
					}
				}
				corners = sum(corners, times(sign, times(diff(e.b.X, e.a.X), middleY)))
			}
			if got := g.area(g.outline); !same(got, corners) {
				t.Fatalf("run %d: area %v by strips, %v by corners", i, got, corners)
			}
		}
	})
}

// Rooms keep the rules for a job.
func TestDrawnRoomsAreSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for _, text := range []string{RandomRoom().Draw(t, "job"), SmallRoom().Draw(t, "small")} {
			j, err := readJob([]byte(text))
			if err != nil {
				t.Fatal(err)
			}
			if len(j.Runs) == 0 || len(j.Runs) > 4 || j.pattern == nil || len(j.Stock) == 0 {
				t.Fatalf("runs %d, stock %d", len(j.Runs), len(j.Stock))
			}
			for i, r := range j.Runs {
				sound(t, r)
				before := j.Runs[(i+len(j.Runs)-1)%len(j.Runs)]
				if r.Left.Kind == outsideCorner && before.Right.Kind != outsideCorner {
					t.Fatalf("%s: an outside corner with nothing", r.Name)
				}
				if j.Closed && r.Left.Kind != before.Right.Kind {
					t.Fatalf("%s: the room is not closed here", r.Name)
				}
			}
		}
	})
}

func sound(t *rapid.T, r run) {
	last := len(r.Heights) - 1
	if r.Heights[0].At.Sign() != 0 || !same(r.Heights[last].At, r.Width) {
		t.Fatalf("%s: heights from %v to %v, width %v", r.Name, r.Heights[0].At, r.Heights[last].At, r.Width)
	}
	for k, h := range r.Heights {
		if !less(h.Bottom, h.Top) || k > 0 && less(h.At, r.Heights[k-1].At) || k > 1 && same(h.At, r.Heights[k-2].At) {
			t.Fatalf("%s: height %d: %v", r.Name, k, h)
		}
	}
	for n, o := range r.Openings {
		if o.Points != nil {
			continue // where it is, a plan says
		}
		low, high, _ := bounds(o.taped)
		if low.X.Sign() < 0 || less(r.Width, high.X) || !less(low.Y, high.Y) {
			t.Fatalf("%s: %s from %v to %v", r.Name, o.Name, low, high)
		}
		for _, other := range r.Openings[:n] {
			from, to, known := bounds(other.taped)
			if known && less(low.X, to.X) && less(from.X, high.X) && less(low.Y, to.Y) && less(from.Y, high.Y) {
				t.Fatalf("%s: %s and %s overlap", r.Name, o.Name, other.Name)
			}
		}
	}
	for k, z := range r.Focal {
		if !less(z.From, z.To) || less(r.Width, z.To) || k > 0 && less(z.From, r.Focal[k-1].To) {
			t.Fatalf("%s: focal zone %d", r.Name, k)
		}
	}
}
