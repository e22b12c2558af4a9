package plan_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall/plan"
)

var exact = cmp.Options{cmpopts.EquateComparable(fraction.Length{}), cmpopts.EquateEmpty()}

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

// A sheet that lies on its face, worked by hand: 48 wide, two pieces of 20 x 30 from the left edge on.
// As it lies the first is at the right.
func TestBenchTurnsSheetsOver(t *testing.T) {
	in := func(text string) fraction.Length { return fraction.MustParse(text) }
	rip := func(step int, left, width, at string) nest.Cut {
		return nest.Cut{Step: step, Rect: [4]fraction.Length{in(left), in("0"), in(width), in("30")}, Kind: nest.Rip, At: in(at)}
	}
	p := plan.Plan{
		Stock:  []plan.Stock{{Stock: nest.Stock{Name: "sheet", Width: in("48"), Length: in("30")}}},
		Pieces: []plan.Piece{{Number: 1, Width: in("20"), Height: in("30")}, {Number: 2, Width: in("20"), Height: in("30")}},
		Sheets: []plan.Sheet{{Number: 1, Stock: "sheet",
			Placements: []nest.Placement{{Part: 1}, {Part: 2, X: in("20 1/8")}},
			Cuts:       []plan.Cut{{Cut: rip(1, "0", "48", "20"), Frees: [2]int{1, 0}}, {Cut: rip(2, "20 1/8", "27 7/8", "20"), From: plan.Source{Step: 1, Beyond: true}, Frees: [2]int{2, 0}}},
			Offcuts:    []nest.Offcut{{X: in("40 1/4"), Width: in("7 3/4"), Length: in("30"), LeftPhase: in("1")}},
		}},
		Saw: plan.Saw{Saw: nest.Saw{Kerf: in("1/8")}, Sawing: plan.Sawing{Face: plan.FaceUp, LeastRip: in("1/8")}},
	}
	if diff := cmp.Diff(p.Sheets[0], p.Bench(0), exact); diff != "" {
		t.Errorf("face up:\n%s", diff)
	}
	p.Saw.Face = plan.FaceDown
	want := plan.Sheet{Number: 1, Stock: "sheet",
		Placements: []nest.Placement{{Part: 1, X: in("28")}, {Part: 2, X: in("7 7/8")}},
		Cuts: []plan.Cut{{Cut: rip(1, "0", "48", "27 7/8"), Frees: [2]int{0, 1}},
			{Cut: rip(2, "0", "27 7/8", "7 3/4"), From: plan.Source{Step: 1}, Trim: plan.TrimNear, Off: in("7 7/8"), Frees: [2]int{0, 2}}},
		Offcuts: []nest.Offcut{{Width: in("7 3/4"), Length: in("30"), LeftPhase: in("1")}},
	}
	if diff := cmp.Diff(want, p.Bench(0), exact); diff != "" {
		t.Errorf("face down:\n%s", diff)
	}
	if diff := cmp.Diff(plan.Sheet{}, p.Bench(1), exact); diff != "" {
		t.Errorf("no sheet:\n%s", diff)
	}
}

// Whatever is sawn face down comes out as what is sawn face up: turned over twice, a sheet of an example is itself.
func TestSheetsTurnedOverTwice(t *testing.T) {
	for _, name := range []string{"kitchen", "bathroom", "mudroom-metric", "odd-window"} {
		j := jobFrom(t, readText(t, "../../examples/"+name+".json"))
		j.Sawing.Face = plan.FaceDown
		p, err := plan.Make(t.Context(), j, plan.Options{})
		if err != nil {
			t.Fatal(err)
		}
		up := p
		up.Sheets = nil
		for i := range p.Sheets {
			up.Sheets = append(up.Sheets, p.Bench(i))
		}
		for i, s := range p.Sheets {
			if diff := cmp.Diff(s, up.Bench(i), exact); diff != "" {
				t.Errorf("%s, sheet %d:\n%s", name, i+1, diff)
			}
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
