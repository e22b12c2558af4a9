package verify

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// count tries every set of lines for seams and returns the least price: the slow way, for a handful
// of lines.
func (s *search) count(i int, g *region, origin, start, right rat, lines []rat) (best price, ok bool) {
	p, gap := s.job.pattern, half(s.job.Gaps.Seam)
	panel := func(to rat) (broken int, fits bool) {
		w := diff(to, start)
		if less(w, p.narrowest(s.weights)) {
			broken = 1
		}
		return broken, w.Sign() > 0 && p.sheetFor(s.job.Stock, w, p.phase(start, origin))
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
		rest.broken += broken + s.job.nearBoxes(i, x, s.weights["box_clear"])
		if !found {
			continue
		}
		rest.blemish = sum(rest.blemish, s.seam(i, g, x))
		if !ok || rest.broken < best.broken || rest.broken == best.broken && less(rest.blemish, best.blemish) {
			best, ok = rest, true
		}
	}
	return best, ok
}

func TestSeamsAreAsCheapAsEnumeration(t *testing.T) {
	t.Parallel()
	judged := 0
	rapid.Check(t, func(t *rapid.T) {
		j, err := readJob([]byte(SmallRoom().Draw(t, "job")))
		if err != nil {
			t.Fatal(err)
		}
		s := newSearch(j, false)
		for i := range j.Runs {
			g := s.region(i, alone, alone)
			for _, stretch := range g.stretches() {
				left, right := stretch[0], stretch[1]
				origin := rapid.SampledFrom([]rat{zero(), left, right}).Draw(t, "origin")
				lines := j.linesBetween(origin, left, right)
				if len(lines) > 14 || j.pattern.sheetFor(j.Stock, diff(right, left), j.pattern.phase(left, origin)) {
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

// A run of 40 in, 1 ft high, both ends exposed, repeat 1-1/8 flat and 3/8 bead: either end whole
// leaves the other 1/8 from a boundary, at 8 x 1 ft x 1/8 = 1; equal cuts of 1/16 cost the same. On
// sheets of 30 in a seam adds 1/8.
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

// A door in run B leaves 3 in beside the corner, two repeats, if B passes, and a narrow panel if it
// butts. A starts with a whole feature at its exposed end and B at the door, which leaves them 1/8
// apart in the corner, 1 ft high: the panel must not be narrow only to have a corner that is 1/16
// in lower.
func TestWhoPassesMayNotForceANarrowPanel(t *testing.T) {
	const job = `{"profile": {"name": "p", "features": [{"kind": "flat", "width": "1 1/8"}, {"kind": "bead", "width": "3/8"}], "thickness": "1/4"},
	 "stock": [{"name": "s", "width": "48", "length": "96"}],
	 "runs": [{"name": "A", "width": "10", "left": {"kind": "exposed"}, "right": {"kind": "inside corner"},
	  "heights": [{"at": "0", "top": "12"}, {"at": "10", "top": "12"}]},
	  {"name": "B", "width": "36", "left": {"kind": "inside corner"}, "right": {"kind": "covered"},
	  "heights": [{"at": "0", "top": "12"}, {"at": "36", "top": "8"}],
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
	judged := 0
	for _, name := range byHand {
		job, plan := fixture(t, name)
		want, ok := LeastBlemish([]byte(job))
		if !ok {
			continue
		}
		judged++
		got, err := BestLooking([]byte(plan))
		if err != nil || less(got, want) {
			t.Errorf("%s: %v, %v, below the least %v", name, got, err, want)
		}
	}
	if judged < 3 {
		t.Errorf("only %d of the plans are judged", judged)
	}
}
