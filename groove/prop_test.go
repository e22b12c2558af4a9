package groove_test

import (
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"pgregory.net/rapid"
)

// grid draws a profile, its strip and one of the lines of the strip with its phase.
func grid(t *rapid.T) (p groove.Profile, s strip, line int, phase fraction.Length) {
	p = drawProfile().Draw(t, "profile")
	s = draw(p)
	line = rapid.IntRange(0, len(s.lines)-1).Draw(t, "line")
	return p, s, line, s.grain.Mul(int64(line))
}

func TestDrawnProfilesAreValid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		if err := drawProfile().Draw(t, "profile").Validate(); err != nil {
			t.Fatal(err)
		}
	})
}

func TestPhaseRepeatsByThePitch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProfile().Draw(t, "profile")
		x := fraction.Of(rapid.Int64Range(0, 480*16).Draw(t, "sixteenths"), 16)
		origin := fraction.Millimetres(rapid.Int64Range(0, 480*25).Draw(t, "millimetres"), 1)
		phase := fraction.Must(p.Phase(x, origin))
		if phase.Sign() < 0 || !phase.Less(p.Pitch()) {
			t.Fatalf("phase %v is not in [0, %v)", phase, p.Pitch())
		}
		repeats := rapid.Int64Range(-100, 100).Draw(t, "repeats")
		for _, other := range []fraction.Length{
			fraction.Must(p.Phase(x.Add(p.Pitch().Mul(repeats)), origin)), fraction.Must(p.Phase(x, origin.Add(p.Pitch().Mul(repeats)))),
		} {
			if other != phase {
				t.Fatalf("%d repeats on the phase is %v, not %v", repeats, other, phase)
			}
		}
		if got := fraction.Must(p.Phase(origin.Add(phase), origin)); got != phase {
			t.Fatalf("the phase of a phase is %v, not %v", got, phase)
		}
	})
}

func TestBoundariesAreWhereFeaturesStart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, s, _, _ := grid(t)
		boundaries := map[fraction.Length]bool{}
		for _, b := range p.Boundaries() {
			boundaries[b] = true
		}
		seams := map[fraction.Length]bool{}
		for _, b := range p.SeamLines() {
			seams[b] = true
		}
		for i, starts := range s.lines {
			phase := s.grain.Mul(int64(i))
			if boundaries[phase] != starts {
				t.Fatalf("boundary at %v: %t, want %t", phase, boundaries[phase], starts)
			}
			hidden := starts && (s.cells[i].Kind != groove.Flat || s.cells[s.at(i-1)].Kind != groove.Flat)
			if seams[phase] != hidden {
				t.Fatalf("seam line at %v: %t, want %t", phase, seams[phase], hidden)
			}
		}
	})
}

func TestShownIsWhatOneSees(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, s, line, phase := grid(t)
		phase = phase.Add(p.Pitch().Mul(rapid.Int64Range(-3, 3).Draw(t, "repeats")))
		for _, keep := range []groove.Side{groove.KeepLeft, groove.KeepRight} {
			step, cell := 1, line // walk from the cut into what stays, to the next line
			if keep == groove.KeepLeft {
				step, cell = -1, s.at(line-1)
			}
			n := 1
			for !s.lines[s.at(line+n*step)] {
				n++
			}
			f, width, err := p.Shown(phase, keep)
			if err != nil || f.Kind != s.cells[cell].Kind || width != s.grain.Mul(int64(n)) || f.Width.Less(width) {
				t.Fatalf("Shown(%v, %v) = %v, %v, %v", phase, keep, f, width, err)
			}
		}
	})
}

func TestDistancesEqualLooking(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, s, line, phase := grid(t)
		starts := func(i int) bool { return s.lines[i] }
		hides := func(i int) bool {
			return s.lines[i] && (s.cells[i].Kind != groove.Flat || s.cells[s.at(i-1)].Kind != groove.Flat)
		}
		toBoundary := s.grain.Mul(int64(s.nearest(line, starts)))
		if got := fraction.Must(p.DistanceToBoundary(phase)); got != toBoundary {
			t.Fatalf("DistanceToBoundary(%v) = %v, want %v", phase, got, toBoundary)
		}
		n := s.nearest(line, hides)
		got := fraction.Must(p.DistanceToSeamLine(phase))
		if got != s.grain.Mul(int64(max(n, 0))) {
			t.Fatalf("DistanceToSeamLine(%v) = %v, want %d grains", phase, got, n)
		}
	})
}

// cut returns how much an edge at line i looks cut, in halves of a grain: it walks from the edge to
// the ends of what it shows, and both ways to the nearest line that shows no groove.
func (s strip) cut(i int, keep groove.Side, wide bool) int {
	shown := func(i int) groove.Feature { // on the side that stays
		if keep == groove.KeepRight {
			return s.cells[s.at(i)]
		}
		return s.cells[s.at(i-1)]
	}
	if wide && shown(i).Kind == groove.Flat {
		toward := 1
		if keep == groove.KeepLeft {
			toward = -1
		}
		kept, lost := 1, 0
		for ; !s.lines[s.at(i+toward*kept)]; kept++ {
		}
		for ; !s.lines[s.at(i-toward*lost)]; lost++ {
		}
		return max(0, lost-kept) // half of kept+lost, less what is kept
	}
	n := s.nearest(i, func(i int) bool { return s.lines[i] && shown(i).Kind != groove.Groove })
	if n < 0 {
		n = s.nearest(i, func(i int) bool { return s.lines[i] })
	}
	return 2 * n
}

func TestCutDistanceEqualsLooking(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, s, line, phase := grid(t)
		keep := rapid.SampledFrom([]groove.Side{groove.KeepLeft, groove.KeepRight}).Draw(t, "keep")
		want := s.grain.Mul(int64(s.cut(line, keep, p.WideFlats))).Div(2)
		if got := fraction.Must(p.CutDistance(phase, keep)); got != want {
			t.Fatalf("CutDistance(%v, %v) = %v, want %v", phase, keep, got, want)
		}
		// Lean the edge, and look at each line and each cell that it passes.
		lean := rapid.IntRange(-40, 40).Draw(t, "lean")
		low, high := min(line, line+lean), max(line, line+lean)
		most := max(s.cut(low, keep, p.WideFlats), s.cut(high, keep, p.WideFlats))
		for i := low; i < high; i++ {
			if i > low && s.lines[s.at(i)] {
				most = max(most, s.cut(i, keep, p.WideFlats))
			}
			if s.cells[s.at(i)].Kind != groove.Flat {
				start, end := i, i+1
				for ; !s.lines[s.at(start)]; start-- {
				}
				for ; !s.lines[s.at(end)]; end++ {
				}
				most = max(most, 2*(end-start))
			}
		}
		got := fraction.Must(p.SlantDistance(phase, s.grain.Mul(int64(lean)), keep))
		if want := s.grain.Mul(int64(most)).Div(2); got != want {
			t.Fatalf("SlantDistance(%v, %d grains, %v) = %v, want %v", phase, lean, keep, got, want)
		}
	})
}

func TestMirrorEqualsLooking(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, s, _, _ := grid(t)
		axis, ok := p.Mirror()
		for twice := range 2 * len(s.lines) { // every axis that can be on the grid or half way between
			if s.mirrored(twice) {
				if want := s.grain.Mul(int64(twice)).Div(2); !ok || axis != want {
					t.Fatalf("Mirror = %v, %t, want %v", axis, ok, want)
				}
				return
			}
		}
		if ok {
			t.Fatalf("Mirror = %v, but nothing is symmetrical", axis)
		}
	})
}

func TestTurnedShowsTheSameBackwards(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, s, line, phase := grid(t)
		turned := fraction.Must(p.Turned(phase))
		if turned.Sign() < 0 || !turned.Less(p.Pitch()) {
			t.Fatalf("Turned(%v) = %v is not in [0, %v)", phase, turned, p.Pitch())
		}
		if _, ok := p.Mirror(); !ok {
			if turned != phase {
				t.Fatalf("Turned(%v) = %v without an axis", phase, turned)
			}
			return
		}
		if again := fraction.Must(p.Turned(turned)); again != phase {
			t.Fatalf("turned twice, %v is %v", phase, again)
		}
		// Walking right from the phase one sees what one sees walking left from the turned one.
		n, rest := turned.DivMod(s.grain)
		if !rest.IsZero() {
			t.Fatalf("Turned(%v) = %v is not on the grid", phase, turned)
		}
		for i := range s.lines {
			right, left := s.at(line+i), s.at(int(n)-i)
			if s.lines[right] != s.lines[left] || s.cells[right] != s.cells[s.at(left-1)] {
				t.Fatalf("%d grains from %v and %v the pattern differs", i, phase, turned)
			}
		}
	})
}

func TestPrimitiveIsTheShortestRepeat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, s, _, _ := grid(t)
		least := p.Primitive()
		if want := s.grain.Mul(int64(s.period())); least.Pitch() != want {
			t.Fatalf("Primitive has the pitch %v, want %v", least.Pitch(), want)
		}
		axis, ok := p.Mirror()
		if other, same := least.Mirror(); same != ok || other != axis {
			t.Fatalf("Primitive has the axis %v, %t, the profile %v, %t", other, same, axis, ok)
		}
		if again := least.Primitive().Pitch(); again != least.Pitch() {
			t.Fatalf("the primitive of the primitive has the pitch %v, not %v", again, least.Pitch())
		}
	})
}
