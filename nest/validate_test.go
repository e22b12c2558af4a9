package nest_test

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/nest"
)

// paths returns the paths of all faults in an error.
func paths(err error) (all []string) {
	for _, f := range fault.All(err) {
		all = append(all, f.Path.String())
	}
	return all
}

func TestBadProblems(t *testing.T) {
	tests := []struct {
		name  string
		spoil func(*nest.Problem)
		want  []string
		kind  error
	}{
		{"no stock", func(p *nest.Problem) { p.Stock = nil }, []string{"Stock"}, nest.ErrProblem},
		{"no width", func(p *nest.Problem) { p.Stock[0].Width = fraction.Length{} }, []string{"Stock[0].Width"}, nest.ErrProblem},
		{"negative length", func(p *nest.Problem) { p.Stock[0].Length = inches("-1") }, []string{"Stock[0].Length"}, nest.ErrProblem},
		{"negative count", func(p *nest.Problem) { p.Stock[0].Count = new(-1) }, []string{"Stock[0].Count"}, nest.ErrProblem},
		{"negative price", func(p *nest.Problem) { p.Stock[0].Price = money.Of(decimal.RequireFromString("-0.5")) }, []string{"Stock[0].Price"}, nest.ErrProblem},
		{"part without size", func(p *nest.Problem) { p.Parts[1].Width, p.Parts[1].Height = fraction.Length{}, inches("-2") }, []string{"Parts[1].Width", "Parts[1].Height"}, nest.ErrProblem},
		{"number twice", func(p *nest.Problem) { p.Parts[3].Number = 1 }, []string{"Parts[3].Number"}, nest.ErrProblem},
		{"negative pitch", func(p *nest.Problem) { p.Pattern.Pitch = inches("-1") }, []string{"Pattern.Pitch"}, nest.ErrProblem},
		{"negative kerf and trim", func(p *nest.Problem) { p.Saw = nest.Saw{Kerf: inches("-1/8"), SquareUp: inches("-1/4")} }, []string{"Saw.Kerf", "Saw.SquareUp"}, nest.ErrProblem},
		{"too fine", func(p *nest.Problem) {
			p.Parts[0].Width = fraction.Of(1, 1<<20)
			p.Parts[1].Width = fraction.Of(1, 999_983)
		}, []string{"Parts[1].Width"}, nest.ErrRange},
		{"too much of parts", func(p *nest.Problem) { // each is a little below the most
			for i := range p.Parts[:4] {
				p.Parts[i].Width, p.Parts[i].Height = fraction.Inches(1<<27-1), fraction.Inches(1<<27-1)
			}
		}, []string{"Parts[2].Height"}, nest.ErrRange},
		{"too long", func(p *nest.Problem) { p.Stock[0].Length = fraction.Inches(1 << 30) }, []string{"Stock[0].Length"}, nest.ErrRange},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			p := backsplash()
			test.spoil(&p)
			_, search := nest.Search(context.Background(), p, nest.Budget{})
			_, first := nest.FirstFit(p)
			_, lower := nest.LowerBound(p)
			for name, err := range map[string]error{"Search": search, "FirstFit": first, "Lower": lower} {
				if got := paths(err); !slices.Equal(got, test.want) || !errors.Is(err, test.kind) {
					t.Errorf("%s: %v, at %q; want %v at %q", name, err, got, test.kind, test.want)
				}
			}
		})
	}
}

// What is out of range says what would not be: 2^30 marks of 1/8 in are 2^27 in.
func TestRangesAreNamed(t *testing.T) {
	p := backsplash()
	p.Stock[0].Length = fraction.Inches(1 << 30)
	_, long := nest.FirstFit(p)
	p = backsplash()
	p.Parts[0].Width, p.Parts[1].Width = fraction.Of(1, 1<<20), fraction.Of(1, 999_983)
	_, fine := nest.FirstFit(p)
	for want, err := range map[string]error{"at most 134217728 in": long, "a smaller common multiple with 1048576": fine} {
		if !strings.Contains(fmt.Sprint(err), want) {
			t.Errorf("%v, want %q", err, want)
		}
	}
}

func TestNothingToCut(t *testing.T) {
	for name, p := range map[string]nest.Problem{"zero problem": {}, "stock only": {Stock: backsplash().Stock}} {
		r, err := nest.Search(context.Background(), p, nest.Budget{})
		if err != nil || len(r.Sheets) != 0 || !r.Bound.Proved {
			t.Errorf("%s: %+v, %v", name, r, err)
		}
		if err := nest.Verify(p, r); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestUnplaced(t *testing.T) {
	tests := []struct {
		name  string
		spoil func(*nest.Problem)
		want  []nest.Unplaced
	}{
		{"wide", func(p *nest.Problem) { p.Parts[2].Width = inches("48-1/8") }, []nest.Unplaced{{3, nest.TooWide, inches("48-1/8")}}},
		{"tall", func(p *nest.Problem) { p.Parts[0].Height = inches("95-5/8") }, []nest.Unplaced{{1, nest.TooLong, inches("95-5/8")}}},
		{"just tall enough, but wide", func(p *nest.Problem) { p.Parts[2].Width, p.Parts[2].Height = inches("48-1/8"), inches("95-1/2") },
			[]nest.Unplaced{{3, nest.TooWide, inches("48-1/8")}}},
		{"just long enough for what is not wide enough", func(p *nest.Problem) {
			p.Stock = append(p.Stock, nest.Stock{Width: inches("24"), Length: inches("100-1/2")})
			p.Parts[0].Height = inches("100")
		}, []nest.Unplaced{{1, nest.TooLongForWidth, inches("100")}}},
		{"off phase", func(p *nest.Problem) { p.Parts[4].LeftPhase = inches("1/2") },
			[]nest.Unplaced{{5, nest.TooWideAtPhase, inches("48-1/2")}}},
		{"off phase and just tall enough", func(p *nest.Problem) { p.Parts[4].LeftPhase, p.Parts[4].Height = inches("1/2"), inches("95-1/2") },
			[]nest.Unplaced{{5, nest.TooWideAtPhase, inches("48-1/2")}}},
		{"off phase where it is not long enough either", func(p *nest.Problem) {
			p.Stock = append(p.Stock, nest.Stock{Width: inches("24"), Length: inches("120")})
			p.Parts[4].LeftPhase, p.Parts[4].Height = inches("1/2"), inches("100")
		}, []nest.Unplaced{{5, nest.TooWideAtPhase, inches("48-1/2")}}},
		{"used up", func(p *nest.Problem) { p.Stock[0].Count, p.Stock[0].Length = new(1), inches("73") },
			[]nest.Unplaced{{Part: 5, Why: nest.UsedUp}}},
		{"none", func(p *nest.Problem) { p.Stock[0].Count = new(0) },
			[]nest.Unplaced{{Part: 1, Why: nest.UsedUp}, {Part: 2, Why: nest.UsedUp}, {Part: 3, Why: nest.UsedUp}, {Part: 4, Why: nest.UsedUp}, {Part: 5, Why: nest.UsedUp}}},
		{"too wide or too long", func(p *nest.Problem) {
			p.Stock = append(p.Stock, nest.Stock{Width: inches("24"), Length: inches("120")})
			p.Parts[0].Height = inches("100")
		}, []nest.Unplaced{{1, nest.TooLongForWidth, inches("100")}}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			p := backsplash()
			test.spoil(&p)
			for _, find := range []func() (nest.Result, error){
				func() (nest.Result, error) { return nest.FirstFit(p) },
				func() (nest.Result, error) { return nest.Search(context.Background(), p, nest.Budget{}) },
			} {
				r, err := find()
				if err != nil {
					t.Fatal(err)
				}
				if !slices.Equal(r.Unplaced, test.want) {
					t.Errorf("unplaced %v, want %v", r.Unplaced, test.want)
				}
				if err := nest.Verify(p, r); err != nil {
					t.Error(err)
				}
			}
		})
	}
}
