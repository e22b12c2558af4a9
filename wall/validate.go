package wall

import (
	"errors"
	"fmt"
	"slices"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

// faults collects field errors.
type faults []error

func (f *faults) add(want string, path string, args ...any) {
	*f = append(*f, &FieldError{Path: fmt.Sprintf(path, args...), Want: want})
}

// Validate returns every fault of the room that would keep it from being laid out, as [*FieldError]
// values joined in the order of the fields, or nil.
func (room *Room) Validate() (err error) {
	defer fraction.Catch(&err)
	var f faults
	if err := room.Profile.Validate(); err != nil {
		f.add(err.Error(), "profile")
		return errors.Join(f...)
	}
	if room.Mark.Sign() < 0 {
		f.add("want a mark of the tape above 0", "tape")
	}
	room.checkStock(&f)
	room.checkGaps(&f)
	room.checkPriorities(&f)
	if len(room.Runs) == 0 {
		f.add("want at least one run", "runs")
	}
	for r := range room.Runs {
		room.checkRun(&f, r)
	}
	room.checkCorners(&f)
	if len(f) == 0 {
		room.checkInstalled(&f)
	}
	return errors.Join(f...)
}

func (room *Room) checkStock(f *faults) {
	if len(room.Stock) == 0 {
		f.add("want at least one kind of sheet", "stock")
	}
	for i, s := range room.Stock {
		if s.Width.Sign() <= 0 {
			f.add("want a width above 0", "stock[%d].width", i)
		}
		if s.Usable(room.Saw).Sign() <= 0 {
			f.add("want more length than squaring up takes off", "stock[%d].length", i)
		}
		if s.LeftPhase.Sign() < 0 || !s.LeftPhase.Less(room.Profile.Pitch()) {
			f.add("want at least 0 and less than the pitch "+room.Profile.Pitch().String(), "stock[%d].left_phase", i)
		}
	}
}

func (room *Room) checkGaps(f *faults) {
	for _, g := range []struct {
		name string
		gap  fraction.Length
	}{{"top", room.Gaps.Top}, {"bottom", room.Gaps.Bottom}, {"side", room.Gaps.Side}, {"seam", room.Gaps.Seam}, {"box", room.Gaps.Box}, {"window", room.Gaps.Window}} {
		if g.gap.Sign() < 0 {
			f.add("want 0 or more", "gaps.%s", g.name)
		}
	}
}

func (room *Room) checkPriorities(f *faults) {
	for _, p := range PriorityList() {
		if p.Weight != nil && p.Weight(&room.Priorities).Sign() < 0 || p.Size != nil && p.Size(&room.Priorities).Sign() < 0 {
			f.add("want 0 or more", "priorities.%s", p.Name)
		}
	}
}

func (room *Room) checkRun(f *faults, r int) {
	run := &room.Runs[r]
	if run.Width.Sign() <= 0 {
		f.add("want a width above 0", "runs[%d].width", r)
		return
	}
	for _, e := range []struct {
		name string
		end  End
	}{{"left", run.Left}, {"right", run.Right}} {
		if int(e.end.Kind) >= len(endKinds) {
			f.add("want a kind of end", "runs[%d].%s.kind", r, e.name)
		}
		if p := e.end.Prominence; p != nil && p.Sign() < 0 {
			f.add("want 0 or more", "runs[%d].%s.prominence", r, e.name)
		}
	}
	room.checkHeights(f, r)
	for i, o := range run.Openings {
		if int(o.Kind) >= len(openingKinds) {
			f.add("want a kind of opening", "runs[%d].openings[%d].kind", r, i)
		}
		if o.Gangs < 0 || o.Gangs > MaxGangs {
			f.add(fmt.Sprintf("want 0 to %d", MaxGangs), "runs[%d].openings[%d].gangs", r, i)
		}
		if _, err := cutout.NewShape(o.Outline); err != nil {
			f.add(err.Error(), "runs[%d].openings[%d].outline", r, i)
		} else if o.Arch != nil {
			outline, arch, err := Arched(o.Corners(), o.Arch.Rise, room.Mark)
			if err != nil || *arch != *o.Arch || !slices.Equal(outline, o.Outline) {
				f.add("want the arch and the outline that Arched gives", "runs[%d].openings[%d].arch", r, i)
			}
		}
	}
	for i, fo := range run.Focal {
		if fo.To.Less(fo.From) {
			f.add("want at least from, "+fo.From.String(), "runs[%d].focal[%d].to", r, i)
		}
		if fo.Prominence.Sign() < 0 {
			f.add("want 0 or more", "runs[%d].focal[%d].prominence", r, i)
		}
	}
	at := fraction.Length{}
	for i, b := range run.Breaks {
		if !at.Add(room.Gaps.Seam).Less(b.At) || !b.At.Add(room.Gaps.Seam).Less(run.Width) {
			f.add("want breaks in order from left to right, inside the run", "runs[%d].breaks[%d].at", r, i)
		}
		if b.Prominence.Sign() < 0 {
			f.add("want 0 or more", "runs[%d].breaks[%d].prominence", r, i)
		}
		at = b.At
	}
}

func (room *Room) checkHeights(f *faults, r int) {
	run := &room.Runs[r]
	n := len(run.Heights)
	if n < 2 {
		f.add("want at least two stations, at 0 and at the width", "runs[%d].heights", r)
		return
	}
	if !run.Heights[0].At.IsZero() {
		f.add("want 0 for the first station", "runs[%d].heights[0].at", r)
	}
	if run.Heights[n-1].At != run.Width {
		f.add("want the width "+run.Width.String()+" for the last station", "runs[%d].heights[%d].at", r, n-1)
	}
	for i, h := range run.Heights {
		if !h.Bottom.Less(h.Top) {
			f.add("want a top above the bottom "+h.Bottom.String(), "runs[%d].heights[%d].top", r, i)
		}
		if i == 0 {
			continue
		}
		before := run.Heights[i-1].At
		switch {
		case h.At.Less(before):
			f.add("want stations from left to right; the one before is at "+before.String(), "runs[%d].heights[%d].at", r, i)
		case h.At == before && (i == 1 || i == n-1 || run.Heights[i-2].At == h.At):
			f.add("want two stations at one place only, for a step, and not at an end", "runs[%d].heights[%d].at", r, i)
		case before.Less(h.At) && !before.Add(room.Gaps.Side.Mul(2)).Less(h.At):
			f.add("want stations farther apart than two side gaps", "runs[%d].heights[%d].at", r, i)
		}
	}
	if !run.Left.Lean.Less(run.Heights[1].At) {
		f.add("want a lean that stays short of the next station", "runs[%d].left.lean", r)
	}
	if !run.Heights[n-2].At.Less(run.Width.Add(run.Right.Lean)) {
		f.add("want a lean that stays short of the station before", "runs[%d].right.lean", r)
	}
}

func (room *Room) checkCorners(f *faults) {
	corner := func(e End) bool { return e.Kind == InsideCorner || e.Kind == OutsideCorner }
	n := len(room.Runs)
	for r := range room.Runs {
		if r == n-1 && !room.Closed {
			break
		}
		next := (r + 1) % n
		left, right := room.Runs[next].Left, room.Runs[r].Right
		if left.Kind != right.Kind && (corner(left) && corner(right) || room.Closed && r == n-1) {
			f.add(fmt.Sprintf("want %q, as at the right end of the run before", right.Kind), "runs[%d].left.kind", next)
		}
	}
	if room.Closed && n == 1 {
		f.add("want at least two runs in a closed room", "runs")
	}
}

func (room *Room) checkInstalled(f *faults) {
	for i, in := range room.Installed {
		if in.Run < 0 || in.Run >= len(room.Runs) {
			f.add("want a run of the room", "installed[%d].run", i)
			continue
		}
		if !in.Left.Less(in.Right) {
			f.add("want more than left, "+in.Left.String(), "installed[%d].right", i)
		}
		if in.LeftPhase.Sign() < 0 || !in.LeftPhase.Less(room.Profile.Pitch()) {
			f.add("want at least 0 and less than the pitch "+room.Profile.Pitch().String(), "installed[%d].left_phase", i)
		}
		for k, other := range room.Installed[:i] {
			if other.Run == in.Run && other.Left.Less(in.Right) && in.Left.Less(other.Right) {
				f.add(fmt.Sprintf("want a panel that does not overlap installed[%d]", k), "installed[%d].left", i)
			}
		}
	}
}

// whyNone says why no layout covers the room.
func (m *model) whyNone() error {
	for r := range m.room.Runs {
		run := &m.room.Runs[r]
		s, err := m.stretch(r, -1, len(run.Breaks), fitting{})
		if err != nil {
			return err
		}
		possible, agrees := false, false
		for i := range m.residues[r] {
			o := m.origin(r, i)
			agrees = agrees || s.agrees(o)
			possible = possible || s.agrees(o) && s.solve(o).best.feasible()
		}
		switch {
		case possible:
			continue
		case !agrees && len(run.Breaks) == 0:
			return &NoLayoutError{Run: run.Name, Why: "its installed panels do not show one unbroken pattern; name a break between them"}
		case slices.ContainsFunc(m.sheets, func(sheet sheet) bool { return sheet.length.Less(s.most) }):
			return &NoLayoutError{Run: run.Name, Why: "some panel would be taller than every sheet of the stock, squared, or wider"}
		default:
			return &NoLayoutError{Run: run.Name, Why: "no sheet of the stock is wide enough at the phase that is needed"}
		}
	}
	return &NoLayoutError{Run: m.room.Runs[0].Name, Why: "no choice of origins, corners and seams covers the whole room"}
}
