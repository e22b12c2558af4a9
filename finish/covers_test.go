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

// What a door parts of a baseboard is named once, each length of it by itself.
func TestLengthsOfOneWallAreNamedOnce(t *testing.T) {
	var w finish.Work
	for _, c := range []finish.Covering{{Along: "hall"}, {Along: "hall"}, {Along: "end"}, {Along: "hall"}} {
		c.Name, c.Length = "baseboard", fraction.Inches(23)
		w.Covers = append(w.Covers, c)
	}
	row := takeOff(t, w, bare()).Rows[0]
	got := ""
	for _, term := range row.Terms {
		got += term.Name + " " + term.Value.Value.String() + ", "
	}
	if want := "hall 1.96,  1.96, end 1.96, hall 1.96,  0.5, "; got != want || row.Buy != 1 {
		t.Errorf("buy %d: %s; want %s", row.Buy, got, want)
	}
}
