package jobfile_test

import (
	"fmt"
	"math"
	"reflect"

	"pgregory.net/rapid"

	"example.com/groovewright/cutout"
	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// drawer draws the parts of a valid job.
type drawer struct {
	*rapid.T
	j *plan.Job
}

// length draws a length from low to high inches on a mark of the job's tape.
func (d drawer) length(low, high int, label string) fraction.Length {
	inch, unit := 16, fraction.Of(1, 16)
	if d.j.Units != fraction.Inch {
		inch, unit = 25, fraction.Millimetres(1, 1)
	}
	return unit.Mul(int64(rapid.IntRange(low*inch, high*inch).Draw(d.T, label)))
}

func (d drawer) chance(label string) bool { return rapid.Bool().Draw(d.T, label) }

// drawJob draws a valid job with any of its fields.
func drawJob(t *rapid.T) plan.Job {
	profile := rapid.SampledFrom(groove.Builtin()).Draw(t, "profile")
	j := plan.NewJob(rapid.SampledFrom([]fraction.Unit{fraction.Inch, fraction.Millimetre, fraction.Centimetre}).Draw(t, "units"), profile)
	d := drawer{t, &j}
	if d.chance("own profile") {
		j.Profile.Name = rapid.SampledFrom([]string{"own", "", "own profile", profile.Name}).Draw(t, "name of the profile")
		j.Profile.Features = append([]groove.Feature{{Kind: groove.Flat, Width: d.length(1, 2, "flat")}}, profile.Features...)
		if profile.Boards {
			j.Profile.Cover = j.Profile.Pitch()
			j.Profile.Width = j.Profile.Cover.Add(profile.Lap)
		}
	}
	j.Title = rapid.SampledFrom([]string{"", "kitchen", `"kitchen" \ <№ 1>`, "Küche am Zürichsee"}).Draw(t, "title")
	for i := range rapid.IntRange(1, 3).Draw(t, "stock") {
		s := nest.Stock{Name: fmt.Sprint("sheet ", i), Width: d.length(24, 60, "width"), Length: d.length(90, 120, "length"), Squared: d.chance("squared")}
		if d.chance("counted") {
			s.Count = new(rapid.IntRange(0, 9).Draw(t, "count"))
		}
		if d.chance("priced") {
			s.Price = money.MustParse(rapid.SampledFrom([]string{"0", "24.98", "40.00", "0.5"}).Draw(t, "price"))
		}
		if d.chance("phase") && len(profile.Features) > 0 {
			s.LeftPhase = profile.Features[0].Width.Div(2)
		}
		if profile.Boards {
			s.Width = j.Profile.Pitch()
		}
		j.Stock = append(j.Stock, s)
	}
	j.Saw, j.Bit = nest.Saw{Kerf: d.length(0, 1, "kerf"), SquareUp: d.length(0, 1, "square up"), LeastRip: d.length(0, 1, "least rip")}, d.length(1, 2, "bit")
	j.Sawing = plan.Sawing{Kind: plan.SawKind(rapid.IntRange(0, 4).Draw(t, "kind of saw")), Face: plan.Face(rapid.IntRange(0, 2).Draw(t, "face"))}
	if d.chance("gaps") {
		j.Gaps = wall.Gaps{Top: d.length(0, 1, "top"), Seam: d.length(0, 1, "seam"), Window: d.length(0, 1, "window")}
	}
	if d.chance("snap") {
		j.Snap = j.Mark.Div(rapid.Int64Range(2, 9).Draw(t, "part of a mark"))
	}
	if d.chance("scribe") {
		j.Scribe = d.length(0, 1, "scribe")
	}
	if d.chance("trims") {
		j.Trim.Bottom = &wall.EdgeTrim{Name: "baseboard", Covers: d.length(1, 4, "baseboard")}
	}
	if d.chance("plates") {
		j.Plates = map[int]wall.Plate{}
		for _, gangs := range rapid.SliceOfNDistinct(rapid.IntRange(1, wall.MaxGangs), 1, 3, rapid.ID[int]).Draw(t, "gangs of plates") {
			j.Plates[gangs] = wall.Plate{Width: d.length(3, 9, "plate's width"), Height: d.length(3, 9, "plate's height")}
		}
	}
	d.runs()
	all := reflect.ValueOf(&j.Priorities).Elem()
	switch p := all.Field(rapid.IntRange(0, all.NumField()-1).Draw(t, "priority")).Addr().Interface().(type) {
	case *fraction.Ratio:
		*p = fraction.NewRatio(int64(rapid.IntRange(0, 40).Draw(t, "weight")), 8)
	case *fraction.Length:
		*p = d.length(0, 3, "size")
	}
	j.Built = rapid.SampledFrom([]int{0, 1000, 1962, 9999}).Draw(t, "built")
	if d.chance("finish") {
		j.Finish = finish.Materials{Tax: "0.0825", House: finish.House{Damp: d.chance("damp"), Datum: "0"},
			Paint:  finish.Paint{Top: finish.Coating{Coverage: "350 ft2/gal", Containers: []finish.Container{{Name: "tin", Size: "1 qt", Price: "20"}}}},
			Nails:  finish.Nails{Lengths: []finish.Taped{"1", "1 1/2"}},
			Extras: []finish.Extra{{Item: "brush", Buy: rapid.IntRange(1, 9).Draw(t, "brushes")}}}
	}
	return j
}

// runs draws one to three runs and what lies along them.
func (d drawer) runs() {
	n := rapid.IntRange(1, 3).Draw(d.T, "runs")
	kinds := []wall.EndKind{wall.Exposed, wall.Covered, wall.InsideCorner, wall.OutsideCorner}
	first := rapid.SampledFrom(kinds).Draw(d.T, "first end")
	d.j.Closed = n > 1 && first >= wall.InsideCorner && first != wall.Covered && d.chance("closed")
	left := first
	for r := range n {
		right := rapid.SampledFrom(kinds).Draw(d.T, "end")
		if r == n-1 && d.j.Closed {
			right = first
		}
		width := d.length(40, 120, "width of the run")
		run := wall.Run{Name: fmt.Sprint("run ", r), Width: width, Left: wall.End{Kind: left}, Right: wall.End{Kind: right, Lean: d.length(-1, 1, "lean")}}
		if d.chance("prominence") {
			run.Left.Prominence = new(fraction.NewRatio(int64(rapid.IntRange(0, 80).Draw(d.T, "prominence")), 10))
		}
		run.Heights = []wall.Height{{Bottom: d.length(-1, 1, "bottom"), Top: d.length(36, 40, "top")},
			{At: width.Div(2), Top: d.length(36, 40, "top")}, {At: width.Div(2), Top: d.length(44, 48, "top of the step")},
			{At: width, Top: d.length(36, 40, "top")}}
		if d.chance("no step") {
			run.Heights = []wall.Height{run.Heights[0], run.Heights[3]}
		}
		if d.chance("focal") {
			run.Focal = []wall.Focal{{From: d.length(0, 9, "from"), To: d.length(10, 20, "to"), Prominence: fraction.NewRatio(3, 2)}}
		}
		if d.chance("break") {
			run.Breaks = []wall.Break{{At: d.length(10, 20, "break"), Prominence: fraction.NewRatio(1, 4)}}
		}
		if d.chance("cooking") {
			d.j.Cooking = append(d.j.Cooking, plan.Cooking{Run: r, From: d.length(0, 9, "from"), To: d.length(10, 20, "to")})
		}
		if d.chance("trim") {
			run.Trim.Top = &wall.EdgeTrim{Name: "cap rail", Covers: d.length(1, 2, "cap")}
		}
		if d.chance("installed") {
			d.j.Installed = append(d.j.Installed, wall.Installed{Run: r, Left: d.length(1, 4, "left"), Right: d.length(5, 9, "right")})
		}
		d.j.Runs = append(d.j.Runs, run)
		for slot := range rapid.IntRange(0, 3).Draw(d.T, "openings") {
			d.opening(r, slot)
		}
		left = right
	}
	if err := d.j.Locate(); err != nil {
		d.Fatalf("Locate: %v", err)
	}
	for r := range d.j.Runs {
		for i := range d.j.Runs[r].Openings {
			if o := &d.j.Runs[r].Openings[i]; o.Kind != wall.Box && rapid.IntRange(0, 3).Draw(d.T, "arch") == 0 {
				var err error
				if o.Outline, o.Arch, err = wall.Arched(o.Outline, d.length(1, 3, "rise"), d.j.Mark); err != nil {
					d.Fatalf("Arched: %v", err)
				}
			}
		}
	}
}

// opening draws an opening, 8 in wide at least, between 13 slot + 1 and 13 slot + 12 in.
func (d drawer) opening(r, slot int) {
	run := &d.j.Runs[r]
	i := len(run.Openings)
	o := wall.Opening{Name: fmt.Sprint("opening ", i), Kind: rapid.SampledFrom([]wall.OpeningKind{wall.Box, wall.Window, wall.Other}).Draw(d.T, "kind")}
	left, bottom := d.length(13*slot+1, 13*slot+3, "left"), d.length(2, 9, "bottom")
	width, height := d.length(8, 9, "width of the opening"), d.length(3, 9, "height of the opening")
	if o.Kind == wall.Box && d.chance("gangs") {
		o.Gangs = rapid.IntRange(1, wall.MaxGangs).Draw(d.T, "gangs")
	}
	o.Outline = cutout.Rectangle(left, bottom, width, height)
	switch rapid.IntRange(0, 2).Draw(d.T, "form") {
	case 1: // a slanted side below
		o.Outline[1].Y = o.Outline[1].Y.Sub(d.length(0, 1, "slant"))
	case 2: // its corners taped from two or three points of the level line
		bases := []cutout.Point{{}, {X: run.Width}, {X: run.Width.Div(2), Y: d.length(-20, -10, "third base")}}
		for k, p := range o.Outline {
			t := plan.TapedPoint{Run: r, Opening: i, Index: k, Side: cutout.Left}
			for _, b := range bases[:rapid.IntRange(2, 3).Draw(d.T, "bases")] {
				t.From = append(t.From, cutout.Taped{From: b, Distance: distance(d.j.Mark, b, p)})
			}
			d.j.Taped = append(d.j.Taped, t)
		}
	}
	run.Openings = append(run.Openings, o)
}

// distance returns the distance of two points to the nearest mark of the tape.
func distance(mark fraction.Length, p, q cutout.Point) fraction.Length {
	float := func(l fraction.Length) float64 { f, _ := l.Over(mark).Rat().Float64(); return f }
	return mark.Mul(int64(math.Round(math.Hypot(float(p.X.Sub(q.X)), float(p.Y.Sub(q.Y))))))
}
