package wall

import (
	"context"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/groove"
)

// The finest that a room may be, so that its seams can be tried in memory.
const (
	mostMarks   = 1 << 20 // marks of the tape, or widths of a repeat, along one run
	mostRepeats = 1 << 16
)

// The largest room that is planned, so that each plan ends within bounded time and memory.
const (
	MaxKinds    = 64 // of stock
	MaxRuns     = 100
	MaxFeatures = 300     // of the pattern, times the runs and breaks
	MaxLines    = 500_000 // marks of the tape along all runs together, times the features of the pattern
	MaxPlaces   = 2500    // features of the pattern, times the stations and openings of all runs together
	MaxPanels   = 1000    // of the widest stock, side by side along all runs together; installed panels
	MaxStations = 1000    // of all runs together
	MaxOpenings = 200     // of all runs together
	MaxCorners  = 5000    // of the outlines of all openings together, those of arched heads too
	MaxBreaks   = 10      // of all runs together
	MaxFocal    = 500     // zones of all runs together
)

// checkLimits refuses a room that is too large to be planned.
func (room *Room) checkLimits(f *faults) {
	most := func(n, most int, what string, steps ...any) {
		if n > most {
			f.Add(n, fmt.Sprintf("at most %d %s", most, what), steps...)
		}
	}
	most(len(room.Stock), MaxKinds, "kinds of stock", "Stock")
	most(len(room.Runs), MaxRuns, "runs", "Runs")
	most(len(room.Installed), MaxPanels, "installed panels", "Installed")
	features, fitted, places := len(room.Profile.Features), len(room.Runs), 0
	for _, run := range room.Runs {
		fitted += len(run.Breaks)
		places += len(run.Heights) + len(run.Openings)
	}
	most(features*fitted, MaxFeatures, "features of the pattern times runs and breaks", "Profile", "Features")
	most(features*places, MaxPlaces, "features of the pattern times stations and openings", "Profile", "Features")
	widest, wide := fraction.Length{}, fraction.Length{}
	for _, s := range room.Stock {
		widest = fraction.Max(widest, s.Width)
	}
	var sums [5]int
	for r, run := range room.Runs {
		corners := 0
		for _, o := range run.Openings {
			corners += len(o.Outline)
		}
		for i, part := range [len(sums)]struct {
			n, most     int
			what, field string
		}{
			{len(run.Heights), MaxStations, "stations in all runs together", "Heights"}, {len(run.Openings), MaxOpenings, "openings in all runs together", "Openings"},
			{corners, MaxCorners, "corners of openings in all runs together", "Openings"}, {len(run.Breaks), MaxBreaks, "breaks in all runs together", "Breaks"},
			{len(run.Focal), MaxFocal, "focal zones in all runs together", "Focal"},
		} {
			if sums[i] <= part.most {
				sums[i] += part.n
				most(sums[i], part.most, part.what, "Runs", r, part.field)
			}
		}
		before, lines := wide, fraction.Length{}
		if wide = wide.Add(fraction.Max(run.Width, fraction.Length{})); features > 0 && room.Mark.Less(wide) {
			lines = room.Mark.Mul(int64(MaxLines / features))
		}
		for _, limit := range []struct {
			width fraction.Length // none where it is 0
			want  string
		}{
			{widest.Mul(MaxPanels), fmt.Sprintf("runs together at most as wide as %d of the widest stock", MaxPanels)},
			{lines, fmt.Sprintf("at most %d marks of the tape along all runs together times features of the pattern", MaxLines)},
		} {
			if limit.width.Sign() > 0 && before.Compare(limit.width) <= 0 && limit.width.Less(wide) {
				f.Add(run.Width, limit.want, "Runs", r, "Width")
			}
		}
	}
}

// Validate returns every fault of the room that would keep it from being laid out, as *fault.Fault
// values joined in the order of the fields, or nil.
func (room *Room) Validate() (err error) {
	defer fraction.Catch(&err)
	var f faults
	if room == nil {
		return &fault.Fault{Want: "a room"}
	}
	if room.checkLimits(&f); f.Err() != nil {
		return f.Err()
	}
	if err := room.Profile.Validate(); err != nil {
		return fault.Under(err, "Profile")
	}
	f.notBelow0(room.Mark, "Mark")
	f.notBelow0(room.Snap, "Snap")
	f.notBelow0(room.Scribe, "Scribe")
	if room.Mark.Div(2).Less(room.Snap) {
		f.Add(room.Snap, "at most half a mark of the tape", "Snap")
	}
	room.checkStock(&f)
	f.fields(room.Saw, "Saw")
	f.fields(room.Gaps, "Gaps")
	f.checkTrim(&room.Trim, "Trim")
	f.fields(room.Priorities, "Priorities")
	if len(room.Runs) == 0 {
		f.Add(nil, "at least one run", "Runs")
	}
	names := names{}
	for r := range room.Runs {
		names.check(&f, room.Runs[r].Name, "Runs", r, "Name")
		room.checkRun(&f, r)
	}
	room.checkCorners(&f)
	for r := range room.Runs {
		if f.Err() == nil {
			room.checkLeans(&f, r)
		}
	}
	if f.Err() == nil {
		room.checkInstalled(&f)
	}
	for r := range room.Runs {
		if f.Err() == nil {
			room.checkKeptSeams(&f, r)
		}
	}
	if f.Err() == nil {
		room.checkLeft(&f)
	}
	return f.Err()
}

// staysBare reports whether gaps and openings leave nothing of a run. Its region is made only where
// they are together as wide as the run, but for less than a mark of the tape between them.
func (room *Room) staysBare(r int) bool {
	run := &room.Runs[r]
	taken := room.Gaps.Side.Mul(2).Add(run.Left.Lean.Abs()).Add(run.Right.Lean.Abs()).Add(room.Mark)
	for _, o := range run.Openings {
		lo, hi := o.Bounds()
		taken = taken.Add(hi.X.Sub(lo.X)).Add(room.Gaps.Around(o.Kind).Mul(2)).Add(room.Mark)
	}
	if taken.Less(run.Width) {
		return false
	}
	_, err := newRegion(context.Background(), room, r, fitting{})
	return leavesNothing(err)
}

// checkLeft refuses a room whose openings leave nothing to panel on any run.
func (room *Room) checkLeft(f *faults) {
	for r := range room.Runs {
		if !room.staysBare(r) {
			return
		}
	}
	for r := range room.Runs {
		f.Add(nil, "openings that leave something to panel, on one run at least", "Runs", r, "Openings")
	}
}

// faults collects what is wrong with a room.
type faults struct{ fault.List }

// number is a length or a ratio.
type number interface{ Sign() int }

func (f *faults) notBelow0(x number, steps ...any) {
	if x.Sign() < 0 {
		f.Add(x, "0 or more", steps...)
	}
}

// fields checks the numbers of a struct.
func (f *faults) fields(part any, step string) {
	v := reflect.ValueOf(part)
	for i := range v.NumField() {
		f.notBelow0(v.Field(i).Interface().(number), step, v.Type().Field(i).Name)
	}
}

// phase checks that x is a phase of the room's profile.
func (f *faults) phase(room *Room, x fraction.Length, steps ...any) {
	if pitch := room.Profile.Pitch(); x != groove.Modulo(x, pitch) {
		f.Add(x, "0 or more and less than one repeat of the pattern", steps...)
	}
}

// names are the names that there are already.
type names map[string]bool

// check refuses an empty name and one that is there already.
func (n names) check(f *faults, name string, steps ...any) {
	if strings.TrimSpace(name) == "" || n[name] {
		f.Add(name, "a name that nothing beside it has", steps...)
	}
	n[name] = true
}

func (room *Room) checkStock(f *faults) {
	if len(room.Stock) == 0 {
		f.Add(nil, "at least one kind of sheet", "Stock")
	}
	for i, s := range room.Stock {
		if s.Width.Sign() <= 0 {
			f.Add(s.Width, "a width above 0", "Stock", i, "Width")
		} else if shows := room.Profile.Shows(); s.Width != shows && shows.Sign() > 0 &&
			(s.Width == room.Profile.Width || room.Profile.Boards && room.Profile.Edges > groove.Square && shows.Less(s.Width)) {
			what := "what a sheet shows, the cover of its profile"
			if room.Profile.Boards {
				what = "what a board shows, one repeat of the pattern"
			}
			f.Add(s.Width, what+": the planner does not saw tongues and laps", "Stock", i, "Width")
		}
		if s.Usable(room.Saw).Sign() <= 0 {
			f.Add(s.Length, "more length than squaring up takes off", "Stock", i, "Length")
		}
		f.phase(room, s.LeftPhase, "Stock", i, "LeftPhase")
	}
}

func (room *Room) checkRun(f *faults, r int) {
	run := &room.Runs[r]
	f.checkTrim(&run.Trim, "Runs", r, "Trim")
	if run.Width.Sign() <= 0 {
		f.Add(run.Width, "a width above 0", "Runs", r, "Width")
		return
	}
	along := func(step fraction.Length) (n int64) {
		if !step.IsZero() {
			n, _ = run.Width.DivMod(step)
		}
		return n
	}
	if along(room.Mark) > mostMarks || along(room.Profile.Pitch()) > mostRepeats {
		f.Add(run.Width, fmt.Sprintf("at most %d repeats of the pattern and %d marks of the tape", mostRepeats, mostMarks), "Runs", r, "Width")
		return
	}
	end := func(e End, side string) {
		if int(e.Kind) >= len(endKinds) {
			f.Add(e.Kind, endKinds.Want(), "Runs", r, side, "Kind")
		}
		if e.Prominence != nil {
			f.notBelow0(*e.Prominence, "Runs", r, side, "Prominence")
		}
	}
	end(run.Left, "Left")
	end(run.Right, "Right")
	room.checkHeights(f, r)
	names := names{}
	for i, o := range run.Openings {
		names.check(f, o.Name, "Runs", r, "Openings", i, "Name")
		if int(o.Kind) >= len(openingKinds) {
			f.Add(o.Kind, openingKinds.Want(), "Runs", r, "Openings", i, "Kind")
		}
		if o.Gangs < 0 || o.Gangs > MaxGangs || o.Gangs != 0 && o.Kind != Box {
			f.Add(o.Gangs, fmt.Sprintf("0 to %d, and 0 but for a box", MaxGangs), "Runs", r, "Openings", i, "Gangs")
		}
		if _, err := cutout.NewShape(o.Outline); err != nil {
			for _, wrong := range fault.All(fault.Under(err, "Runs", r, "Openings", i)) {
				wrong.Want = "the corners of one outline, in order round it"
				f.Join(wrong)
			}
		} else if o.Arch != nil {
			outline, arch, err := Arched(o.Corners(), o.Arch.Rise, room.Mark)
			if err != nil || *arch != *o.Arch || !slices.Equal(outline, o.Outline) {
				f.Add(nil, "the arch and the outline that Arched gives", "Runs", r, "Openings", i, "Arch")
			}
		}
	}
	for i, zone := range run.Focal {
		if zone.To.Less(zone.From) {
			f.Add(zone.To, "a place that is not left of from", "Runs", r, "Focal", i, "To")
		}
		f.notBelow0(zone.Prominence, "Runs", r, "Focal", i, "Prominence")
	}
	at := fraction.Length{}
	for i, b := range run.Breaks {
		if !at.Add(room.Gaps.Seam).Less(b.At) || !b.At.Add(room.Gaps.Seam).Less(run.Width) {
			f.Add(b.At, "breaks in order from left to right, inside the run", "Runs", r, "Breaks", i, "At")
		}
		f.notBelow0(b.Prominence, "Runs", r, "Breaks", i, "Prominence")
		at = b.At
	}
	room.checkKeep(f, r)
}

func (room *Room) checkHeights(f *faults, r int) {
	run := &room.Runs[r]
	last := len(run.Heights) - 1
	if last < 1 {
		f.Add(nil, "at least two stations, at 0 and at the width", "Runs", r, "Heights")
		return
	}
	sound := true // so that leans are judged by stations that are right
	for i, h := range run.Heights {
		before, want := run.Heights[max(i-1, 0)].At, ""
		switch {
		case i == 0 && !h.At.IsZero():
			want = "0 for the first station"
		case i == 0:
		case i == last && h.At != run.Width:
			want = "the width of the run for the last station"
		case h.At.Less(before):
			want = "stations in order from left to right"
		case h.At == before && (i == 1 || i == last || run.Heights[i-2].At == h.At):
			want = "two stations at one place only, for a step, and not at an end"
		case before.Less(h.At) && !before.Add(room.Gaps.Side.Mul(2)).Less(h.At):
			want = "stations farther apart than two side gaps"
		}
		if want != "" {
			sound = false
			f.Add(h.At, want, "Runs", r, "Heights", i, "At")
		}
		if !h.Bottom.Less(h.Top) {
			f.Add(h.Top, "a top above the bottom", "Runs", r, "Heights", i, "Top")
		} else if !h.Bottom.Add(room.Gaps.Bottom).Add(room.Gaps.Top).Less(h.Top) {
			f.Add(h.Top, "a top above the bottom by more than the gaps there", "Runs", r, "Heights", i, "Top")
		}
	}
	if sound && !run.Left.Lean.Less(run.Heights[1].At) {
		f.Add(run.Left.Lean, "a lean that stays short of the next station", "Runs", r, "Left", "Lean")
	}
	if sound && !run.Heights[last-1].At.Less(run.Width.Add(run.Right.Lean)) {
		f.Add(run.Right.Lean, "a lean that stays short of the station before", "Runs", r, "Right", "Lean")
	}
}

// leanClear is how many marks of the tape an opening keeps clear of where an end leans.
const leanClear = 2

// checkLeans refuses an opening where an end of the run leans, whether the run passes there or butts, but
// for one that takes the whole end: what is left between the two no saw makes.
func (room *Room) checkLeans(f *faults, r int) {
	run, clear := &room.Runs[r], room.Mark.Mul(leanClear)
	for i, o := range run.Openings {
		gap, wrong := room.Gaps.Around(o.Kind), false
		lo, hi := o.Bounds()
		if lo.X.Sign() < 0 || run.Width.Less(hi.X) {
			continue // past the end, whose line its level edges meet; no job file has such
		}
		from, to := lo.X.Sub(gap), hi.X.Add(gap)
		for _, butts := range []bool{false, true} {
			left, right := endLines(room, run, fitting{butts, butts})
			for _, end := range []endLine{left, right} {
				least, most := fraction.Min(end.foot.X, end.top.X), fraction.Max(end.foot.X, end.top.X)
				apart := to.Compare(least.Sub(clear)) <= 0 || most.Add(clear).Compare(from) <= 0
				takes := !end.foot.Y.Less(lo.Y.Sub(gap)) && !hi.Y.Add(gap).Less(end.top.Y) &&
					(end == left && from.Compare(least) <= 0 && most.Add(clear).Compare(to) <= 0 ||
						end == right && most.Compare(to) <= 0 && from.Compare(least.Sub(clear)) <= 0)
				wrong = wrong || !end.upright() && !apart && !takes
			}
		}
		if wrong {
			f.Add(nil, fmt.Sprintf("an opening %d marks of the tape clear of where the end of the run leans, or that takes that whole, or no lean there", leanClear), "Runs", r, "Openings", i)
		}
	}
}

// IsCorner reports whether an end of this kind meets another run.
func (k EndKind) IsCorner() bool { return k == InsideCorner || k == OutsideCorner }

func (room *Room) checkCorners(f *faults) {
	n := len(room.Runs)
	for r := range room.Runs {
		closing := r == n-1
		if closing && !room.Closed {
			break
		}
		next := (r + 1) % n
		left, right := room.Runs[next].Left.Kind, room.Runs[r].Right.Kind
		want := fmt.Sprintf("%q, as at the right end of the run before", right)
		if !right.IsCorner() {
			want = "an inside or outside corner, and the same at the right end of the last run, as the room is closed"
		}
		if left != right && (left.IsCorner() && right.IsCorner() || closing) {
			f.Add(left, want, "Runs", next, "Left", "Kind")
		}
	}
	if room.Closed && n == 1 {
		f.Add(nil, "at least two runs in a closed room", "Runs")
	}
}

func (room *Room) checkInstalled(f *faults) {
	for i, in := range room.Installed {
		if in.Run < 0 || in.Run >= len(room.Runs) {
			f.Add(in.Run, "a run of the room", "Installed", i, "Run")
			continue
		}
		if !in.Left.Less(in.Right) {
			f.Add(in.Right, "more than left", "Installed", i, "Right")
		}
		f.phase(room, in.LeftPhase, "Installed", i, "LeftPhase")
		if slices.ContainsFunc(room.Installed[:i], func(other Installed) bool {
			return other.Run == in.Run && other.Left.Less(in.Right) && in.Left.Less(other.Right)
		}) {
			f.Add(in.Left, "a panel that overlaps no other", "Installed", i, "Left")
		}
	}
}
