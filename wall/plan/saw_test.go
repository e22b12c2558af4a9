package plan_test

import (
	"strings"
	"testing"

	"example.com/groovewright/wall/plan"
)

// Where the good face lies: down for a portable circular saw, which splinters the side where its teeth
// leave, so that one marks and cuts from the back (NAVEDTRA 14044); what the job says counts first.
func TestFaceOfTheSaw(t *testing.T) {
	for _, row := range []struct{ kind, face, want string }{
		{"", "", "up"}, {"table", "", "up"}, {"track", "", "up"}, {"circular", "", "down"}, {"hand", "", "up"},
		{"circular", "up", "up"}, {"table", "down", "down"}, {"", "down", "down"},
	} {
		j := jobFrom(t, readText(t, "../../examples/kitchen.json"))
		if err := j.Sawing.Kind.UnmarshalText([]byte(row.kind)); err != nil {
			t.Fatal(err)
		}
		if err := j.Sawing.Face.UnmarshalText([]byte(row.face)); err != nil {
			t.Fatal(err)
		}
		p, err := plan.Make(t.Context(), j, plan.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := p.Saw.Face.String(); got != row.want {
			t.Errorf("%q, %q: %s, want %s", row.kind, row.face, got, row.want)
		}
	}
}

// Of what is less than the least rip nothing is sawn: a blade has nothing to hold it there.
func TestLittleIsPlanedOff(t *testing.T) {
	planes := func(least string) (n int) {
		text := strings.Replace(readText(t, "../../examples/kitchen.json"), `"saw": {`, `"saw": {"least_rip": "`+least+`", `, 1)
		p, err := plan.Make(t.Context(), jobFrom(t, text), plan.Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range p.Sheets {
			for _, c := range s.Cuts {
				if c.Plane != (c.Trim != plan.NoTrim && c.Off.Less(p.Saw.LeastRip)) {
					t.Errorf("sheet %d, cut %d: planed is %v, %v comes off", s.Number, c.Step, c.Plane, c.Off)
				}
				if c.Plane {
					n++
				}
			}
		}
		return n
	}
	if none, all := planes("0"), planes("1 1/4"); none != 0 || all == 0 {
		t.Errorf("%d cuts planed where nothing is too little, %d where 1 1/4 is", none, all)
	}
}
