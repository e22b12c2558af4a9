package plan

import (
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall"
)

// The bounds of a job.
const (
	MaxText  = 200     // bytes of a title or a name
	MaxItems = 2500    // items of a list
	MaxCount = 100_000 // sheets of one kind on hand
)

// Validate returns everything that keeps the job from being planned, as *fault.Fault values that
// are joined, or nil. What the parts check by themselves comes from [wall.Room.Validate] and
// [finish.Materials.Validate]; how the parts fit together is looked at only where each is sound.
//
// It takes time in proportion to the job, but for the pairs of openings, of focal zones and of
// installed panels of a run.
func (j Job) Validate() (err error) {
	defer fraction.Catch(&err)
	var f faults
	f.texts(reflect.ValueOf(j), nil)
	if f.Err() != nil {
		return f.Err()
	}
	j.checkValues(&f)
	f.Join(j.Room.Validate())
	f.Join(j.Finish.Validate(j.Units), "Finish")
	if f.Err() == nil {
		for r := range j.Runs {
			j.checkRun(&f, r)
		}
		j.checkInstalled(&f)
		j.checkBoxes(&f)
		j.checkTaped(&f)
	}
	return f.Err()
}

// faults collects what is wrong with a job.
type faults struct{ fault.List }

func (f *faults) positive(l fraction.Length, steps ...any) {
	if l.Sign() <= 0 {
		f.Add(l, "a length above 0", steps...)
	}
}

func (f *faults) between(n, least, most int, steps ...any) {
	if n < least || n > most {
		f.Add(n, fmt.Sprintf("a whole number from %d to %d", least, most), steps...)
	}
}

// texts checks each text and the length of each list in a value.
func (f *faults) texts(v reflect.Value, steps []any) {
	at := func(last any) []any { return append(steps[:len(steps):len(steps)], last) }
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			switch field := v.Type().Field(i); {
			case field.Anonymous:
				f.texts(v.Field(i), steps)
			case field.IsExported():
				f.texts(v.Field(i), at(field.Name))
			}
		}
	case reflect.Slice:
		if v.Len() > MaxItems {
			f.Add(v.Len(), fmt.Sprintf("a list of at most %d", MaxItems), steps...)
			return
		}
		for i := range v.Len() {
			f.texts(v.Index(i), at(i))
		}
	case reflect.String:
		switch s := v.String(); {
		case len(s) > MaxText:
			f.Add(s[:20]+"…", fmt.Sprintf("at most %d bytes of text", MaxText), steps...)
		case !utf8.ValidString(s) || strings.ContainsFunc(s, hidden):
			f.Add(s, "one line of text that can be printed", steps...)
		}
	}
}

// hidden reports whether a character cannot be printed or would turn the text around it. The
// joiners that some scripts need are let through.
func hidden(c rune) bool {
	return !unicode.IsPrint(c) && c != '\u200c' && c != '\u200d'
}

// checkValues checks what can be said of each value by itself.
func (j *Job) checkValues(f *faults) {
	if j.Units > fraction.Centimetre {
		f.Add(j.Units, "in, mm or cm", "Units")
	}
	f.positive(j.Mark, "Mark")
	f.positive(j.Profile.Thickness, "Profile", "Thickness")
	f.positive(j.Bit, "Bit")
	f.between(int(j.Sawing.Kind), 0, int(Hand), "Sawing", "Kind")
	f.between(int(j.Sawing.Face), 0, int(FaceDown), "Sawing", "Face")
	if j.Built != 0 {
		f.between(j.Built, 1000, 9999, "Built")
	}
	for _, gangs := range slices.Sorted(maps.Keys(j.Plates)) {
		p := j.Plates[gangs]
		f.between(gangs, 1, wall.MaxGangs, "Plates", gangs)
		f.positive(p.Width, "Plates", gangs, "Width")
		f.positive(p.Height, "Plates", gangs, "Height")
	}
	names := map[string]bool{}
	for i, s := range j.Stock {
		if strings.TrimSpace(s.Name) == "" || names[s.Name] {
			f.Add(s.Name, "a name that no other stock has", "Stock", i, "Name")
		}
		names[s.Name] = true
		if s.Count != nil {
			f.between(*s.Count, 0, MaxCount, "Stock", i, "Count")
		}
	}
	if last := len(j.Runs) - 1; j.Closed && last >= 0 && !j.Runs[last].Right.Kind.IsCorner() {
		f.Add(j.Runs[last].Right.Kind, "an inside or outside corner with the first run, as the room is closed", "Runs", last, "Right", "Kind")
	}
	for i, c := range j.Cooking {
		f.between(c.Run, 0, len(j.Runs)-1, "Cooking", i, "Run")
		if i > 0 && c.Run < j.Cooking[i-1].Run {
			f.Add(c.Run, "stretches in the order of their runs", "Cooking", i, "Run")
		}
	}
}

// checkRun checks that what lies along a run lies on it.
func (j *Job) checkRun(f *faults, r int) {
	tape := j.Tape()
	run := &j.Runs[r]
	stretch := func(from, to fraction.Length, steps ...any) {
		if from.Sign() < 0 {
			f.Add(from, "0 or more", append(steps, "From")...)
		}
		if !from.Less(to) || run.Width.Less(to) {
			f.Add(to, fmt.Sprintf("a place to the right of %s, and within the run, which is %s wide", tape.Format(from), tape.Format(run.Width)), append(steps, "To")...)
		}
	}
	for i, a := range run.Focal {
		stretch(a.From, a.To, "Runs", r, "Focal", i)
		if slices.ContainsFunc(run.Focal[:i], func(b wall.Focal) bool { return a.From.Less(b.To) && b.From.Less(a.To) }) {
			f.Add(nil, "focal zones that do not overlap", "Runs", r, "Focal", i)
		}
	}
	for i, c := range j.Cooking {
		if c.Run == r {
			stretch(c.From, c.To, "Cooking", i)
		}
	}
	bottom, top := cutout.Bounds(wallOutline(run))
	for i := range run.Openings {
		j.checkOpening(f, r, i, bottom.Y, top.Y)
	}
}

// checkOpening checks that an opening lies on its run, whose wall reaches from bottom to top, and
// that no box overlaps another opening. A window or a door that cuts through rises past the top or
// reaches below the bottom.
func (j *Job) checkOpening(f *faults, r, i int, bottom, top fraction.Length) {
	run, tape := &j.Runs[r], j.Tape()
	o := &run.Openings[i]
	lo, hi := o.Bounds()
	for k, p := range o.Outline {
		if p.X.Sign() < 0 || run.Width.Less(p.X) {
			f.Add(p.X, fmt.Sprintf("an opening inside the run, which is %s wide; this goes from %s to %s", tape.Format(run.Width), tape.Format(lo.X), tape.Format(hi.X)),
				"Runs", r, "Openings", i, "Outline", k, "X")
			break
		}
	}
	if !lo.Y.Less(top) || !bottom.Less(hi.Y) {
		f.Add(lo.Y, fmt.Sprintf("an opening that the wall has a part of, between %s and %s", tape.Format(bottom), tape.Format(top)),
			"Runs", r, "Openings", i, "Outline", 0, "Y")
	}
	for _, other := range run.Openings[:i] {
		if (o.Kind == wall.Box || other.Kind == wall.Box) && overlap(o, &other) {
			f.Add(nil, fmt.Sprintf("boxes and openings clear of each other; this overlaps the %s %q", other.Kind, other.Name), "Runs", r, "Openings", i)
		}
	}
}

// overlap reports whether two openings have more than edges in common.
func overlap(a, b *wall.Opening) bool {
	if !cutout.BoundsOverlap(a.Outline, b.Outline) {
		return false // the usual case, at little cost
	}
	shape, err := cutout.NewShape(a.Outline)
	if err != nil {
		return false
	}
	both, err := shape.Within(b.Outline)
	return err == nil && len(both) > 0
}

// checkBoxes checks that what is noted of boxes is noted of such as there are.
func (j *Job) checkBoxes(f *faults) {
	for i, note := range j.Finish.Boxes {
		named := func(o wall.Opening) bool { return o.Kind == wall.Box && o.Name == note.Name }
		if !slices.ContainsFunc(j.Runs, func(run wall.Run) bool { return slices.ContainsFunc(run.Openings, named) }) {
			f.Add(note.Name, "the name of a box of the room", "Finish", "Boxes", i, "Name")
		}
	}
}

// checkInstalled checks that installed panels lie on their runs.
func (j *Job) checkInstalled(f *faults) {
	tape := j.Tape()
	for i, p := range j.Installed {
		run := &j.Runs[p.Run]
		// An end that leans away from the run reaches past its foot.
		begin := fraction.Min(run.Left.Lean, fraction.Length{})
		end := run.Width.Add(fraction.Max(run.Right.Lean, fraction.Length{}))
		if run.Left.Kind == wall.OutsideCorner { // mitred, one thickness past the wall
			begin = begin.Sub(j.Profile.Thickness)
		}
		if run.Right.Kind == wall.OutsideCorner {
			end = end.Add(j.Profile.Thickness)
		}
		if p.Left.Add(j.Snap).Less(begin) {
			f.Add(p.Left, "a panel on the run, which starts at "+tape.Format(begin), "Installed", i, "Left")
		}
		if end.Add(j.Snap).Less(p.Right) {
			f.Add(p.Right, "a panel on the run, which ends at "+tape.Format(end), "Installed", i, "Right")
		}
	}
}

// checkTaped checks that the room has the places that the taped distances give.
func (j *Job) checkTaped(f *faults) {
	places, err := j.places()
	if err != nil {
		f.Join(err)
		return
	}
	for _, t := range j.Taped {
		run := &j.Runs[t.Run]
		if t.Opening < 0 {
			if h, p := run.Heights[t.Index], places.heights[spot{t.Run, t.Index}]; p.X != h.At || p.Y != h.Top {
				f.Add(h.At, "the place that its taped distances give, as Job.Locate sets it", "Runs", t.Run, "Heights", t.Index, "At")
			}
		} else if t.Index == 0 { // once for each opening
			o, outline := &run.Openings[t.Opening], places.corners[spot{t.Run, t.Opening}]
			if o.Arch != nil {
				outline, _, err = wall.Arched(outline, o.Arch.Rise, j.Mark)
			}
			if err != nil || !slices.Equal(outline, o.Outline) {
				f.Add(nil, "the corners that its taped distances give, as Job.Locate sets them", "Runs", t.Run, "Openings", t.Opening, "Outline")
			}
		}
	}
}
