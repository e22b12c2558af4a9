package finish_test

import (
	"encoding/json"
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fractiontest"
)

// FuzzWild calls all that the package exports with wild values: nothing panics, and a list that
// comes of them reads back equal.
func FuzzWild(once *testing.F) {
	f := fractiontest.F{F: once}
	f.Add([]byte{}, "", byte(0))
	f.Add([]byte{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16}, "cut: pieces 7; closing 3, 6", byte(1))
	f.Add([]byte{3, 200, 40, 8, 9, 10, 0, 1, 2, 3, 17, 18}, "0.71 qt", byte(2))
	f.Fuzz(func(t *testing.T, data []byte, text string, sound byte) {
		w, m := kitchen(), finish.Materials{}
		var row finish.Row
		var step finish.Step
		var list finish.List
		switch sound % 4 { // a sound work of which something is made wild, or all of it
		case 0:
			fractiontest.Fill(data, &w, &m, &row, &step, &list)
		case 1:
			fractiontest.Fill(data, &m, &row)
		case 2:
			fractiontest.Fill(data, &w.Joints[0], &w.Boxes, &w.Ends, &w.Sheets[0], &w.Pieces[1], &w.Profile, &step)
		case 3:
			fractiontest.Fill(data, &m.House, &m.Adhesive, &m.Furring, &m.Boxes, &m.Extenders, &m.Extras, &m.Tax, &m.LeftoverWorth, &w.Units, &w.Profile.Boards)
		}
		m.Validate(w.Units)
		made, doubts, err := finish.TakeOff(w, m)
		cautions, steps := finish.Cautions(w, m), finish.Schedule(w, m)
		if err == nil {
			readsBack(t, made)
			readsBack(t, doubts)
			readsBack(t, steps)
			readsBack(t, cautions)
		}
		for _, v := range []any{row, list, step, finish.Figure{Unit: finish.Unit(sound)}, finish.Decimal{}} {
			_, _ = json.Marshal(v)
			_ = fmt.Sprint(v)
		}
		quoted, _ := json.Marshal(text)
		for _, into := range []any{
			&list, &row, &step, new(finish.Stage), new(finish.ActKind), new(finish.Figure), new(finish.Decimal), new(finish.Unit), new(finish.Item), new(finish.How),
			new(finish.TermKind), new(finish.Choice), new(finish.Source), new(finish.Caution), new(finish.Material), new(finish.Backing), new(finish.GrooveShape),
			new(finish.BeadForm), new(finish.GlueForm), new(finish.Hold), new(finish.JointKind), new(finish.Number),
		} {
			_ = json.Unmarshal(data, into)
			if json.Unmarshal(quoted, into) == nil {
				_, _ = json.Marshal(into)
			}
		}
		if least, most, _ := finish.Wait(sound).Range(); least > most {
			t.Errorf("wait %d: %d to %d", sound, least, most)
		}
		finish.Defaults(fraction.Unit(sound))
	})
}

// readsBack writes a value as JSON and reads it again.
func readsBack[T any](t *testing.T, v T) {
	t.Helper()
	text, err := json.Marshal(v)
	if err != nil {
		t.Fatalf("%+v: %v", v, err)
	}
	var again T
	if err := json.Unmarshal(text, &again); err != nil {
		t.Fatalf("%s: %v", text, err)
	}
	if diff := cmp.Diff(v, again, cmp.Comparer(func(a, b fraction.Length) bool { return a == b })); diff != "" {
		t.Fatalf("(-written +read)\n%s", diff)
	}
}
