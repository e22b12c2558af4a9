package finish_test

import (
	"testing"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
)

// A trim that hides edges is sold as the job says for its name, else as the sticks of other trim. Two of 40 are cut from one of
// 96, not from one of 60 or 50.
func TestCoveringsAreSoldByTheirName(t *testing.T) {
	m := bare()
	m.Trim.Stick = finish.Roll{Name: "stick", Length: "96"}
	m.Trim.Covers = []finish.Roll{{Name: "cap", Length: "60"}, {Name: "shoe", Length: "50"}}
	var w finish.Work
	for _, name := range []string{"cap", "shoe", "casing", "cap", "shoe", "casing"} {
		w.Covers = append(w.Covers, finish.Covering{Name: name, Length: fraction.Inches(40)})
	}
	got := map[string]int{}
	for _, r := range takeOff(t, w, m).Rows {
		got[r.Name] = r.Buy
	}
	if len(got) != 3 || got["cap"] != 2 || got["shoe"] != 2 || got["casing"] != 1 {
		t.Errorf("bought: %v", got)
	}
}
