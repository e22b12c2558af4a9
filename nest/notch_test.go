package nest_test

import (
	"context"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/nest"
)

// stepped returns a shape w by h with a corner of size x by y missing.
func stepped(w, h, x, y fraction.Length, right, high bool) cutout.Shape {
	zero := fraction.Length{}
	corners := []cutout.Point{{X: x, Y: zero}, {X: w, Y: zero}, {X: w, Y: h}, {X: zero, Y: h}, {X: zero, Y: y}, {X: x, Y: y}}
	for i := range corners {
		if right {
			corners[i].X = w.Sub(corners[i].X)
		}
		if high {
			corners[i].Y = h.Sub(corners[i].Y)
		}
	}
	s, err := cutout.NewShape(corners)
	if err != nil {
		panic(err)
	}
	return s
}

// behindTheRange is a stepped panel that fills its sheet, and a piece that only
// its notch has room for.
func behindTheRange(right, high bool) nest.Problem {
	return nest.Problem{
		Stock: []nest.Stock{{Name: "sheet", Width: inches("48"), Length: inches("60"), Price: money.MustParse("30")}},
		Parts: []nest.Part{
			{Number: 1, Width: inches("48"), Height: inches("59-1/2"), Shape: stepped(inches("48"), inches("59-1/2"), inches("20"), inches("31"), right, high)},
			{Number: 2, Width: inches("15"), Height: inches("30"), LeftPhase: inches("3/4")},
		},
		Pattern: nest.Pattern{Pitch: inches("1-1/2")},
		Saw:     nest.Saw{Kerf: inches("1/8"), SquareUp: inches("1/4")},
	}
}

func TestNotchTakesAPiece(t *testing.T) {
	for _, right := range []bool{false, true} {
		for _, high := range []bool{false, true} {
			p := behindTheRange(right, high)
			r, err := nest.Search(context.Background(), p, nest.Budget{})
			if err != nil {
				t.Fatal(err)
			}
			if err := nest.Verify(p, r); err != nil {
				t.Fatal(err)
			}
			if len(r.Sheets) != 1 || !r.Bound.Proved || len(r.Sheets[0].Placements) != 2 {
				t.Fatalf("right %v, high %v: %d sheets, %+v; want one, proved", right, high, len(r.Sheets), r.Bound)
			}
			kinds := map[nest.CutKind]int{}
			for _, c := range r.Sheets[0].Cuts {
				kinds[c.Kind]++
			}
			if kinds[nest.StoppedRip] != 1 || kinds[nest.StoppedCrosscut] != 1 {
				t.Errorf("cuts %v, want one stopped rip and one stopped crosscut", kinds)
			}
			first, err := nest.FirstFit(p)
			if err != nil || len(first.Sheets) != 2 {
				t.Errorf("first fit uses no notches: %d sheets, %v", len(first.Sheets), err)
			}
		}
	}
}

// TestNotchTooSmall: one kerf is lost on each inner side of a notch, and the
// piece has to find its phase in what is left.
func TestNotchTooSmall(t *testing.T) {
	for name, test := range map[string]struct {
		change func(p *nest.Problem)
		sheets int
	}{
		"fits to a hair":          {func(p *nest.Problem) { p.Parts[1].Width, p.Parts[1].LeftPhase = inches("19-7/8"), inches("0") }, 1},
		"kerf across":             {func(p *nest.Problem) { p.Parts[1].Width, p.Parts[1].LeftPhase = inches("19-15/16"), inches("0") }, 2},
		"as high as the notch":    {func(p *nest.Problem) { p.Parts[1].Height = inches("31") }, 2},
		"kerf along":              {func(p *nest.Problem) { p.Parts[1].Height = inches("30-7/8") }, 1},
		"phase pushes it too far": {func(p *nest.Problem) { p.Parts[1].Width = inches("19-1/2") }, 2},
		"a hole is no notch": {func(p *nest.Problem) {
			hole := cutout.Rectangle(inches("10"), inches("10"), inches("20"), inches("35"))
			s, err := cutout.NewShape(cutout.Rectangle(fraction.Length{}, fraction.Length{}, inches("48"), inches("59-1/2")), hole)
			if err != nil {
				panic(err)
			}
			p.Parts[0].Shape = s
		}, 2},
	} {
		t.Run(name, func(t *testing.T) {
			p := behindTheRange(false, false)
			test.change(&p)
			r, err := nest.Search(context.Background(), p, nest.Budget{})
			if err != nil {
				t.Fatal(err)
			}
			if err := nest.Verify(p, r); err != nil {
				t.Fatal(err)
			}
			if len(r.Sheets) != test.sheets || !r.Bound.Proved {
				t.Errorf("%d sheets, %+v, want %d", len(r.Sheets), r.Bound, test.sheets)
			}
		})
	}
}

// TestVerifyFindsNotchFaults spoils a nest that uses a notch.
func TestVerifyFindsNotchFaults(t *testing.T) {
	last := func(r *nest.Result, back int) *nest.Cut { return &r.Sheets[0].Cuts[len(r.Sheets[0].Cuts)-back] }
	find := func(r *nest.Result, kind nest.CutKind) *nest.Cut {
		for i := range r.Sheets[0].Cuts {
			if c := &r.Sheets[0].Cuts[i]; c.Kind == kind {
				return c
			}
		}
		panic("no such cut")
	}
	for name, spoil := range map[string]func(p *nest.Problem, r *nest.Result){
		"rip goes too far":        func(_ *nest.Problem, r *nest.Result) { find(r, nest.StoppedRip).To = inches("32") },
		"rip in the piece":        func(_ *nest.Problem, r *nest.Result) { find(r, nest.StoppedRip).At = inches("21") },
		"crosscut from inside":    func(_ *nest.Problem, r *nest.Result) { find(r, nest.StoppedCrosscut).From = inches("1") },
		"crosscut missing":        func(_ *nest.Problem, r *nest.Result) { find(r, nest.StoppedCrosscut).Kind = nest.Crosscut },
		"shape without a notch":   func(p *nest.Problem, _ *nest.Result) { p.Parts[0].Shape = cutout.Shape{} },
		"notch in another corner": func(p *nest.Problem, _ *nest.Result) { p.Parts[0].Shape = behindTheRange(true, true).Parts[0].Shape },
		"notch not so deep": func(p *nest.Problem, _ *nest.Result) {
			p.Parts[0].Shape = stepped(inches("48"), inches("59-1/2"), inches("20"), inches("30"), false, false)
		},
		"last cut of the rest out": func(_ *nest.Problem, r *nest.Result) { last(r, 1).At = inches("1") },
	} {
		t.Run(name, func(t *testing.T) {
			p := behindTheRange(false, false)
			r, err := nest.Search(context.Background(), p, nest.Budget{})
			if err != nil {
				t.Fatal(err)
			}
			if err := nest.Verify(p, r); err != nil {
				t.Fatal(err)
			}
			spoil(&p, &r)
			if err := nest.Verify(p, r); err == nil {
				t.Error("Verify finds no fault")
			}
		})
	}
}

// drawStepped draws a job of some stepped parts with large notches and some
// small parts, and the same job with the steps forgotten.
func drawStepped(t *rapid.T) (p, plain nest.Problem) {
	p = drawProblem(t, 0)
	for n := range rapid.IntRange(1, 3).Draw(t, "hosts") {
		w, h := rapid.Int64Range(40, 180).Draw(t, "host width"), rapid.Int64Range(40, 200).Draw(t, "host height")
		x, y := rapid.Int64Range(w/3, w-1).Draw(t, "notch width"), rapid.Int64Range(h/3, h-1).Draw(t, "notch height")
		q := nest.Part{Number: n + 1, Width: fraction.Of(w, 8), Height: fraction.Of(h, 8), LeftPhase: fraction.Of(rapid.Int64Range(0, 24).Draw(t, "phase"), 8)}
		q.Shape = stepped(q.Width, q.Height, fraction.Of(x, 8), fraction.Of(y, 8), rapid.Bool().Draw(t, "right"), rapid.Bool().Draw(t, "high"))
		p.Parts = append(p.Parts, q)
	}
	for range rapid.IntRange(1, 5).Draw(t, "small parts") {
		p.Parts = append(p.Parts, nest.Part{
			Number: len(p.Parts) + 1,
			Width:  fraction.Of(rapid.Int64Range(4, 60).Draw(t, "width"), 8), Height: fraction.Of(rapid.Int64Range(4, 60).Draw(t, "height"), 8),
			LeftPhase: fraction.Of(rapid.Int64Range(0, 24).Draw(t, "phase"), 8),
		})
	}
	plain = p
	plain.Parts = append([]nest.Part{}, p.Parts...)
	for i := range plain.Parts {
		plain.Parts[i].Shape = cutout.Shape{}
	}
	return p, plain
}

// TestNotchesNeverHurt: with shapes a nest replays, and is no worse than without.
func TestNotchesNeverHurt(t *testing.T) {
	used, saved := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		p, plain := drawStepped(t)
		r, err := nest.Search(context.Background(), p, nest.Budget{})
		if err != nil {
			t.Fatal(err)
		}
		if err := nest.Verify(p, r); err != nil {
			t.Fatal(err)
		}
		without, err := nest.Search(context.Background(), plain, nest.Budget{})
		if err != nil {
			t.Fatal(err)
		}
		if r.Bound.Proved && meritOf(plain, without).less(meritOf(p, r)) {
			t.Fatalf("with notches %v, without %v", meritOf(p, r), meritOf(plain, without))
		}
		if meritOf(p, r).less(meritOf(plain, without)) {
			saved++
		}
		b, err := nest.Lower(p)
		if err != nil || len(r.Unplaced) == 0 && (b.Sheets > len(r.Sheets) || b.Cost.Compare(r.Cost) > 0) {
			t.Fatalf("bound %+v above %d sheets for %v (%v)", b, len(r.Sheets), r.Cost, err)
		}
		for _, s := range r.Sheets {
			for _, c := range s.Cuts {
				if c.Kind == nest.StoppedRip {
					used++
				}
			}
		}
	})
	if used == 0 {
		t.Error("no notch was ever used")
	}
	t.Logf("notches were used %d times and saved something %d times", used, saved)
}
