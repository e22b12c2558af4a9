package nest_test

import (
	"encoding/json"
	"os"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
)

// inches reads a length that a test is written with.
func inches(s string) fraction.Length { return fraction.MustParse(s) }

// backsplash is a run of 240 in, 18 in high, in five widths of a 48 x 96 sheet.
func backsplash() nest.Problem {
	p := nest.Problem{
		Stock:   []nest.Stock{{Name: "sheet", Width: inches("48"), Length: inches("96")}},
		Pattern: nest.Pattern{Pitch: inches("1-1/2")},
		Saw:     nest.Saw{Kerf: inches("1/8"), SquareUp: inches("1/4")},
	}
	for n := range 5 {
		p.Parts = append(p.Parts, nest.Part{Number: n + 1, Width: inches("48"), Height: inches("18")})
	}
	return p
}

func TestFirstFitBacksplash(t *testing.T) {
	p := backsplash()
	r, err := nest.FirstFit(p)
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Sheets) != 1 || len(r.Unplaced) > 0 || !r.Bound.Proved {
		t.Errorf("FirstFit = %d sheets, %v unplaced, bound %+v; want one sheet, proved", len(r.Sheets), r.Unplaced, r.Bound)
	}
	if err := nest.Verify(p, r); err != nil {
		t.Error(err)
	}
}

func TestFirstFitReplays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 25)
		r, err := nest.FirstFit(p)
		if err != nil {
			t.Fatal(err)
		}
		if err := nest.Verify(p, r); err != nil {
			t.Fatal(err)
		}
		again, _ := nest.FirstFit(p)
		if !reflect.DeepEqual(r, again) {
			t.Fatal("the same problem gave another nest")
		}
	})
}

// class is one of the 500 open instances of two-dimensional bin packing; see
// testdata/README.md for its source.
type class struct {
	ID    string
	Class int
	N     int
	W, H  int64
	Items [][2]int64
	HFF   int `json:"hff"`
	FBS   int `json:"fbs"`
	Low   int `json:"og_lb"`
	High  int `json:"og_ub"`
	Dual  int `json:"lb_dff"`
}

func (c class) problem() nest.Problem {
	p := nest.Problem{Stock: []nest.Stock{{Width: fraction.Inches(c.W), Length: fraction.Inches(c.H)}}}
	for i, item := range c.Items {
		p.Parts = append(p.Parts, nest.Part{Number: i, Width: fraction.Inches(item[0]), Height: fraction.Inches(item[1])})
	}
	return p
}

func readClasses(t testing.TB) []class {
	var file struct{ Instances []class }
	data, err := os.ReadFile("testdata/binpack2d/class.json")
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(data, &file); err != nil {
		t.Fatal(err)
	}
	return file.Instances
}

// The counts of hybrid first-fit are those of a routine written apart from this
// one; the bounds must hold against the published ones.
func TestFirstFitOnOpenInstances(t *testing.T) {
	sum, proved, low := 0, 0, 0
	for _, c := range readClasses(t) {
		p := c.problem()
		r, err := nest.FirstFit(p)
		if err != nil {
			t.Fatal(err)
		}
		if len(r.Sheets) != c.HFF || len(r.Unplaced) > 0 {
			t.Errorf("%s: %d sheets, want %d", c.ID, len(r.Sheets), c.HFF)
		}
		if r.Bound.Sheets > c.High || r.Bound.Sheets < c.Dual {
			t.Errorf("%s: bound %d, want %d to %d", c.ID, r.Bound.Sheets, c.Dual, c.High)
		}
		sum += len(r.Sheets)
		low += r.Bound.Sheets
		if r.Bound.Proved {
			proved++
		}
	}
	t.Logf("%d sheets, bound %d, %d proved", sum, low, proved)
}
