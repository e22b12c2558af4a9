package proof

import (
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/cmd/groovewright/internal/proof/rooms"
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

// count tries every set of lines for seams and returns the least price: the slow
// way, for a handful of lines.
func (s *search) count(i int, g *region, origin, start, right rat, lines []rat) (best price, ok bool) {
	p, gap := s.job.pattern, half(s.job.gaps.seam)
	panel := func(to rat) (broken int, fits bool) {
		w := diff(to, start)
		if less(w, times(s.weights[leastPanel], p.pitch)) {
			broken = 1
		}
		return broken, w.Sign() > 0 && p.sheetFor(s.job.stock, w, p.phase(start, origin))
	}
	if broken, fits := panel(right); fits {
		best, ok = price{broken, zero()}, true
	}
	for k, x := range lines {
		broken, fits := panel(diff(x, gap))
		if !fits {
			continue
		}
		rest, found := s.count(i, g, origin, sum(x, gap), right, lines[k+1:])
		rest.broken += broken + s.job.nearBoxes(i, x, s.weights[boxClear])
		if !found {
			continue
		}
		rest.blemish = sum(rest.blemish, g.seamTerm(i, x, s.weights).cost())
		if !ok || rest.broken < best.broken || rest.broken == best.broken && less(rest.blemish, best.blemish) {
			best, ok = rest, true
		}
	}
	return best, ok
}

func TestSeamsAreAsCheapAsEnumeration(t *testing.T) {
	judged := 0
	rapid.Check(t, func(t *rapid.T) {
		j, err := readJob([]byte(rooms.Small().Draw(t, "job")))
		if err != nil {
			t.Fatal(err)
		}
		s := newSearch(j, false)
		for i := range j.runs {
			g := s.region(i, alone, alone)
			for _, stretch := range g.stretches() {
				left, right := stretch[0], stretch[1]
				origin := rapid.SampledFrom([]rat{zero(), left, right}).Draw(t, "origin")
				lines := j.pattern.linesBetween(origin, left, right)
				if len(lines) > 14 || j.pattern.sheetFor(j.stock, diff(right, left), j.pattern.phase(left, origin)) {
					continue
				}
				judged++
				got, ok := s.seams(i, g, origin, left, right)
				want, found := s.count(i, g, origin, left, right, lines)
				if ok != found || ok && (got.broken != want.broken || !same(got.blemish, want.blemish)) {
					t.Fatalf("run %d from %v to %v: %v, %v, counted out %v, %v", i, left, right, got, ok, want, found)
				}
			}
		}
	})
	if judged == 0 && !testing.Short() { // -short draws so few rooms that none may be
		t.Error("no stretch was short enough to count out")
	}
}

// A run of 40 in, 1 ft high, both ends exposed, repeat 1-1/8 flat and 3/8 bead:
// either end whole leaves the other 1/8 from a boundary, at 8 x 1 ft x 1/8 = 1;
// equal cuts of 1/16 cost the same. On sheets of 30 in a seam adds 1/8.
func TestLeastBlemishByHand(t *testing.T) {
	const job = `{"profile": {"name": "p", "features": [{"kind": "flat", "width": "1 1/8"}, {"kind": "bead", "width": "3/8"}], "thickness": "1/4"},
	 "stock": [{"name": "s", "width": "WIDTH", "length": "96"}],
	 "runs": [{"name": "r", "width": "40", "left": {"kind": "exposed"}, "right": {"kind": "exposed"},
	  "heights": [{"at": "0", "top": "12"}, {"at": "40", "top": "12"}]FOCAL}]}`
	for _, test := range []struct{ width, focal, want string }{
		{"48", "", "1"},
		{"30", "", "1 1/8"},
		{"30", `, "focal": [{"from": "5", "to": "35", "prominence": 4}]`, "1 1/2"}, // no seam outside the zone leaves panels of 3 in and 30 in
		{"37", `, "focal": [{"from": "4", "to": "36", "prominence": 4}]`, "1 1/8"}, // here one does
		{"30", `, "focal": [{"from": "15", "to": "35", "prominence": 0}]`, "1"},    // a seam that nobody sees
		{"30", `, "focal": [{"from": "0", "to": "40", "prominence": 0.5}]`, "1 1/16"},
	} {
		job := strings.NewReplacer("WIDTH", test.width, "FOCAL", test.focal).Replace(job)
		got, ok := LeastBlemish([]byte(job))
		if !ok || text(got) != test.want {
			t.Errorf("sheets of %s%s: %v, %v, want %s", test.width, test.focal, got, ok, test.want)
		}
	}
}

// A door in run B leaves 3 in beside the corner, two repeats, if B passes, and a
// narrow panel if it butts. A starts with a whole feature at its exposed end and
// B at the door, which leaves them 1/8 apart in the corner, 1 ft high: the panel
// must not be narrow only to have a corner that is 1/16 in lower.
func TestWhoPassesMayNotForceANarrowPanel(t *testing.T) {
	const job = `{"profile": {"name": "p", "features": [{"kind": "flat", "width": "1 1/8"}, {"kind": "bead", "width": "3/8"}], "thickness": "1/4"},
	 "stock": [{"name": "s", "width": "48", "length": "96"}],
	 "runs": [{"name": "A", "width": "10", "left": {"kind": "exposed"}, "right": {"kind": "inside corner"},
	  "heights": [{"at": "0", "top": "12"}, {"at": "10", "top": "12"}]},
	  {"name": "B", "width": "36", "left": {"kind": "inside corner"}, "right": {"kind": "covered"},
	  "heights": [{"at": "0", "top": "12"}, {"at": "36", "top": "11"}],
	  "openings": [{"name": "door", "kind": "other", "left": "DOOR", "bottom": "-1", "width": "27", "height": "20"}]}]}`
	for _, test := range []struct{ door, want string }{
		{"3", "1/8"},
		{"1 1/2", "191/1536"}, // narrow whoever passes, so the lower corner is the better one
	} {
		got, ok := LeastBlemish([]byte(strings.Replace(job, "DOOR", test.door, 1)))
		if !ok || text(got) != test.want {
			t.Errorf("door at %s: %v, %v, want %s", test.door, got, ok, test.want)
		}
	}
}

// No hand-made plan looks better than the least there is.
func TestNoPlanBeatsTheLeast(t *testing.T) {
	for _, name := range byHand {
		job, plan := fixture(t, name)
		want, ok := LeastBlemish([]byte(job))
		if !ok {
			continue
		}
		got, err := BestLooking([]byte(plan))
		if err != nil || less(got, want) {
			t.Errorf("%s: %v, %v, below the least %v", name, got, err, want)
		}
	}
}
