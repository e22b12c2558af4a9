package choice_test

import (
	"cmp"
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/choice"
	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
)

var (
	propertyRooms = flag.Int("property", 0, "rooms to try each property of fronts on")
	examples      = flag.String("examples", "", "directory for rooms whose fronts are wrong, of properties the smallest")
)

// property makes two rooms from one, the second of which has a front that is no worse.
type property struct {
	name   string
	pair   func(r wall.Room) (first, second wall.Room, ok bool) // ok: there is something to compare
	effort int                                                  // times the usual, for the second
	same   bool                                                 // the fronts are equal
	bought bool                                                 // what was on hand is bought
}

var properties = []property{
	{name: "one more on hand", pair: func(r wall.Room) (wall.Room, wall.Room, bool) {
		return r, restocked(r, func(s *nest.Stock) {
			if s.Count != nil {
				n := *s.Count + 1
				s.Count = &n
			}
		}), counted(r)
	}},
	{name: "as many as needed", bought: true, pair: func(r wall.Room) (wall.Room, wall.Room, bool) {
		return r, restocked(r, func(s *nest.Stock) { s.Count = nil }), counted(r)
	}},
	{name: "wider sheets", pair: func(r wall.Room) (wall.Room, wall.Room, bool) {
		return r, restocked(r, func(s *nest.Stock) { s.Width = s.Width.Add(fraction.Of(7, 2)) }), !r.Profile.Boards
	}},
	{name: "longer sheets", pair: func(r wall.Room) (wall.Room, wall.Room, bool) {
		return r, restocked(r, func(s *nest.Stock) { s.Length = s.Length.Add(fraction.Inches(5)) }), true
	}},
	{name: "one kind more", pair: func(r wall.Room) (wall.Room, wall.Room, bool) {
		fewer := r
		fewer.Stock = r.Stock[:len(r.Stock)-1]
		return fewer, r, len(fewer.Stock) > 0
	}},
	{name: "a dearer kind more", same: true, pair: func(r wall.Room) (wall.Room, wall.Room, bool) {
		i := slices.IndexFunc(r.Stock, func(s nest.Stock) bool { return s.Count == nil })
		if i < 0 {
			return r, r, false
		}
		dearer, more := r.Stock[i], r
		price, _ := dearer.Price.Decimal()
		dearer.Name, dearer.Price = "dearer", money.Of(price.Add(decimal.New(5, 0)))
		more.Stock = append(slices.Clone(r.Stock), dearer)
		return r, more, true
	}},
	{name: "more effort", effort: 4, pair: func(r wall.Room) (wall.Room, wall.Room, bool) { return r, r, true }},
	{name: "mirrored room", same: true, pair: func(r wall.Room) (wall.Room, wall.Room, bool) {
		r.Runs = slices.Clone(r.Runs)
		for i := range r.Runs { // where no edge is seen the pattern starts at the left, in a mirror too
			if run := &r.Runs[i]; i == 0 || run.Left.Kind == wall.Covered {
				run.Left.Kind = wall.Exposed
			}
			if run := &r.Runs[i]; i == len(r.Runs)-1 || run.Right.Kind == wall.Covered {
				run.Right.Kind = wall.Exposed
			}
		}
		return r, mirrored(r), !r.Closed
	}},
}

// restocked returns the room with each kind of its stock changed.
func restocked(r wall.Room, change func(*nest.Stock)) wall.Room {
	r.Stock = slices.Clone(r.Stock)
	for i := range r.Stock {
		change(&r.Stock[i])
	}
	return r
}

// counted reports whether any stock has a count.
func counted(r wall.Room) bool {
	return slices.ContainsFunc(r.Stock, func(s nest.Stock) bool { return s.Count != nil })
}

// mirrored returns the room as a mirror shows it.
func mirrored(r wall.Room) wall.Room {
	pitch := r.Profile.Pitch()
	r = restocked(r, func(s *nest.Stock) { s.LeftPhase = s.LeftPhase.Add(s.Width).Neg().Mod(pitch) })
	r.Profile.Features = slices.Clone(r.Profile.Features)
	slices.Reverse(r.Profile.Features)
	r.Runs = slices.Clone(r.Runs)
	slices.Reverse(r.Runs)
	for i := range r.Runs {
		run := &r.Runs[i]
		across := func(x fraction.Length) fraction.Length { return run.Width.Sub(x) }
		run.Left, run.Right = run.Right, run.Left
		run.Left.Lean, run.Right.Lean = run.Left.Lean.Neg(), run.Right.Lean.Neg()
		run.Heights, run.Openings = slices.Clone(run.Heights), slices.Clone(run.Openings)
		run.Breaks, run.Focal = slices.Clone(run.Breaks), slices.Clone(run.Focal)
		slices.Reverse(run.Heights)
		slices.Reverse(run.Breaks)
		slices.Reverse(run.Focal)
		for k := range run.Heights {
			run.Heights[k].At = across(run.Heights[k].At)
		}
		for k := range run.Breaks {
			run.Breaks[k].At = across(run.Breaks[k].At)
		}
		for k, f := range run.Focal {
			run.Focal[k].From, run.Focal[k].To = across(f.To), across(f.From)
		}
		for k := range run.Openings {
			outline := slices.Clone(run.Openings[k].Outline)
			slices.Reverse(outline)
			for c := range outline {
				outline[c] = cutout.Point{X: across(outline[c].X), Y: outline[c].Y}
			}
			run.Openings[k].Outline = outline
		}
	}
	return r
}

// TestProperties counts the rooms whose fronts break a property: see the table of -v. For the long
// run use -property 500 -timeout 2h -v.
func TestProperties(t *testing.T) {
	type count struct{ compared, broken int }
	counts, smallest := map[string]*count{}, map[string]int{}
	for _, p := range properties {
		counts[p.name] = &count{}
	}
	for seed := range uint64(*propertyRooms) {
		drawn := house.draw(seed)
		if drawn.Validate() != nil {
			continue
		}
		given := explored(t, drawn, 1)
		for _, p := range properties {
			first, second, ok := p.pair(drawn)
			if !ok || first.Validate() != nil || second.Validate() != nil {
				continue
			}
			a, b := given, given
			if !reflect.DeepEqual(first, drawn) {
				a = explored(t, first, 1)
			}
			if p.effort > 0 || !reflect.DeepEqual(second, drawn) {
				b = explored(t, second, max(p.effort, 1))
			}
			if !alike(a, b) {
				continue
			}
			n := counts[p.name]
			n.compared++
			why := p.broken(points(a), points(b))
			if why == "" {
				continue
			}
			n.broken++
			t.Logf("room %d, %s: %s", seed, p.name, why)
			size := 0
			for _, run := range a.Sheets().Layout.Runs {
				size += 10 + len(run.Panels)
			}
			if before, found := smallest[p.name]; !found || size < before {
				smallest[p.name] = size
				write(t, first, p.name, "first")
				write(t, second, p.name, "second")
			}
		}
	}
	for _, p := range properties {
		n := counts[p.name]
		t.Logf("%-20s %4d rooms, %4d break it", p.name, n.compared, n.broken)
		if n.broken > 0 {
			t.Fail()
		}
	}
}

// explored returns the front of a room, which is empty where there is no plan.
func explored(t *testing.T, room wall.Room, effort int) choice.Choices {
	c, err := choice.Explore(t.Context(), room, choice.Budget{Effort: effort})
	var none *wall.NoLayoutError
	var short *choice.ShortError
	if err != nil && !errors.As(err, &none) && !errors.As(err, &short) {
		t.Fatal(err)
	}
	return c
}

// Shuffled layouts from offcuts: one round leaves this room with a sheet more than its bound, and as long as there are
// steps left others follow.
func TestRoundsGoOnWhileTheNeedIsOpen(t *testing.T) {
	for steps, want := range map[int]int{1: 4, choice.DefaultSteps: 3} {
		c, err := choice.Explore(t.Context(), houses.draw(171), choice.Budget{Steps: steps})
		if err != nil {
			t.Fatal(err)
		}
		if cheap := c.Sheets(); cheap.Need.Sheets != want || want == 3 && cheap.Status&choice.NeedProved == 0 {
			t.Errorf("%d steps: %d sheets, want %d; proved: %v", steps, cheap.Need.Sheets, want, cheap.Status)
		}
	}
}

// What sheets show of the pattern proves what their width does not: two sheets by width.
func TestPatternRaisesTheBound(t *testing.T) {
	for _, seed := range []uint64{60, 104, 161} {
		if c := explored(t, house.draw(seed), 1); c.Least.Sheets != 3 || c.Sheets().Status&choice.NeedProved == 0 {
			t.Errorf("room %d: bound %+v, proved: %v", seed, c.Least, c.Sheets().Status)
		}
	}
}

// How high the pieces of a layout are proves what the heights of the walls alone do not, which say 5 sheets.
func TestPiecesRaiseTheBound(t *testing.T) {
	if c := explored(t, houses.draw(45), 1); c.Least.Sheets != 6 || c.Sheets().Status&choice.NeedProved == 0 {
		t.Errorf("bound %+v, proved: %v", c.Least, c.Sheets().Status)
	}
}

// alike reports whether the first room has a plan and both fronts are of the same finite set of
// layouts: they break as few rules, and no seam lies off the lines, which is tried at need alone.
func alike(a, b choice.Choices) bool {
	if len(a.Front) == 0 {
		return false
	}
	for _, f := range slices.Concat(a.Front, b.Front) {
		if f.Layout.Broken != a.Front[0].Layout.Broken || slices.ContainsFunc(f.Layout.Blemishes, func(b wall.Blemish) bool {
			return b.Kind == wall.SeamOffLine && b.Amount.Sign() > 0
		}) {
			return false
		}
	}
	return true
}

// broken says what breaks the property, if anything.
func (p *property) broken(first, second []point) string {
	compare := choice.Need.Compare
	if p.bought {
		compare = func(a, b choice.Need) int { return cmp.Or(a.Cost.Compare(b.Cost), cmp.Compare(a.Sheets, b.Sheets)) }
	}
	if p.same && !slices.Equal(first, second) {
		return fmt.Sprintf("%v and %v", first, second)
	}
	for _, x := range first {
		if !slices.ContainsFunc(second, func(y point) bool { return compare(y.need, x.need) <= 0 && y.blemish.Compare(x.blemish) <= 0 }) {
			return fmt.Sprintf("%v, then %v", x, second)
		}
	}
	return ""
}

// write writes a room as a job file among the examples, if they are wanted.
func write(t *testing.T, room wall.Room, names ...string) {
	if *examples == "" {
		return
	}
	job := plan.NewJob(fraction.Inch, room.Profile)
	job.Title, job.Room = "Invented room: "+strings.Join(names, ", "), room
	file, err := os.Create(filepath.Join(*examples, strings.ReplaceAll(strings.Join(names, "-"), " ", "-")+".json"))
	if err == nil {
		err = errors.Join(jobfile.Write(file, job), file.Close())
	}
	if err != nil {
		t.Error(err)
	}
}

// TestPropertiesAreTrue: the fronts of small rooms by enumeration have the properties.
func TestPropertiesAreTrue(t *testing.T) {
	compared := 0
	for seed := range uint64(*littleRooms) / 5 {
		for _, p := range properties {
			first, second, ok := p.pair(little.draw(seed))
			if !ok || p.effort > 0 || first.Validate() != nil || second.Validate() != nil {
				continue
			}
			a, err := enumerate(t, first, *mostLayouts)
			if err != nil || len(a) == 0 {
				continue
			}
			b, err := enumerate(t, second, *mostLayouts)
			if err != nil {
				continue
			}
			if compared++; p.broken(a, b) != "" {
				t.Errorf("room %d, %s: %s", seed, p.name, p.broken(a, b))
			}
		}
	}
	if t.Logf("%d pairs of rooms", compared); compared == 0 {
		t.Error("no pair was compared")
	}
}
