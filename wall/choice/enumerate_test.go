package choice_test

import (
	"cmp"
	"errors"
	"flag"
	"fmt"
	"maps"
	"slices"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/choice"
)

var (
	littleRooms = flag.Int("little", 60, "small rooms to compare with all their layouts and nests")
	mostLayouts = flag.Int("layouts", 300, "layouts of a small room at most")
)

// point is one choice as it counts.
type point struct {
	need    choice.Need
	blemish fraction.Ratio
}

// front returns the points that no other beats, from the least blemish up.
func front(points []point) (front []point) {
	slices.SortFunc(points, func(a, b point) int { return cmp.Or(a.blemish.Compare(b.blemish), a.need.Compare(b.need)) })
	for _, p := range points {
		if len(front) == 0 || p.need.Compare(front[len(front)-1].need) < 0 {
			front = append(front, p)
		}
	}
	return front
}

// points returns the front of choices as points.
func points(c choice.Choices) (points []point) {
	for _, f := range c.Front {
		points = append(points, point{f.Need, f.Layout.Total})
	}
	return points
}

var (
	errNone = errors.New("no layout, or not valid")
	errMany = errors.New("too many layouts, or parts")
	errHard = errors.New("a nest is not searched to its end")
)

// mostParts is how many parts a nest may have that is searched to its end.
const mostParts = 10

// enumerate returns the front of a room from all its layouts, at most so many, and the best nest of
// each. Both are held to plain enumeration where they are made.
func enumerate(t *testing.T, room wall.Room, most int) ([]point, error) {
	var layouts []wall.Layout
	for layout, err := range wall.Layouts(t.Context(), room) {
		if err != nil {
			return nil, err
		}
		if layouts = append(layouts, layout); len(layouts) > most || len(layout.Pieces) > mostParts {
			return nil, errMany
		}
	}
	var all []point
	known := map[string]*choice.Need{} // nil where stock is short
	for _, layout := range layouts {
		problem, err := choice.Nesting(room, &layout)
		if err != nil {
			return nil, err
		}
		parts := slices.Clone(problem.Parts)
		for i := range parts {
			parts[i].Number = 0
		}
		slices.SortFunc(parts, func(a, b nest.Part) int {
			return cmp.Or(a.Width.Compare(b.Width), a.Height.Compare(b.Height), a.LeftPhase.Compare(b.LeftPhase))
		})
		key := fmt.Sprint(parts)
		if _, ok := known[key]; !ok {
			if known[key], err = least(t, problem); err != nil {
				return nil, err
			}
		}
		if need := known[key]; need != nil {
			all = append(all, point{*need, layout.Total})
		}
	}
	return front(all), nil
}

// least returns what the best nest needs, nil where the stock does not give all parts.
func least(t *testing.T, problem nest.Problem) (*choice.Need, error) {
	for _, nodes := range []int{2_000, 50_000, 1_000_000, 20_000_000} { // most are easy
		r, err := nest.Search(t.Context(), problem, nest.Budget{Nodes: nodes})
		if err != nil || r.Bound.Proved && len(r.Unplaced) > 0 {
			return nil, err
		}
		if r.Bound.Proved {
			need := choice.Need{Cost: r.Cost, Sheets: len(r.Sheets)}
			for _, s := range r.Sheets {
				if problem.Stock[s.Stock].Count == nil {
					need.Bought++
				}
			}
			return &need, nil
		}
	}
	return nil, errHard
}

// TestFrontIsThatOfEnumeration compares the fronts of small rooms with those of all layouts and all
// nests: they are the same, and what is said to be proved is so. For the long run, with a table, use
// -little 10000 -layouts 1000 -timeout 2h -v.
func TestFrontIsThatOfEnumeration(t *testing.T) {
	count := map[string]int{}
	for seed := range uint64(*littleRooms) {
		room := little.draw(seed)
		want, err := enumerate(t, room, *mostLayouts)
		var none *wall.NoLayoutError
		if room.Validate() != nil || errors.As(err, &none) {
			err = errNone
		}
		if errors.Is(err, errNone) || errors.Is(err, errMany) || errors.Is(err, errHard) {
			count[err.Error()]++
			continue
		}
		var short *choice.ShortError
		c, shortErr := choice.Explore(t.Context(), room, choice.Budget{})
		if !errors.As(shortErr, &short) {
			err = errors.Join(err, shortErr)
		}
		if err != nil {
			t.Fatalf("room %d: %v", seed, err)
		}
		got := points(c)
		checkProofs(t, seed, c, want)
		equal := slices.Equal(got, want)
		if !equal {
			t.Errorf("room %d: the front is %v, not %v", seed, got, want)
			write(t, room, "front", fmt.Sprint(seed))
		}
		for name, is := range map[string]bool{
			"compared":              true,
			"front equal":           equal,
			"the stock falls short": len(want) == 0,
			"cheap end equal":       len(got) > 0 && got[len(got)-1] == want[len(want)-1],
			"looks end equal":       len(got) > 0 && got[0] == want[0],
			"need proved":           len(got) > 0 && c.Sheets().Need.Compare(c.Least) <= 0,
			"looks proved":          c.Looks().Status&choice.LooksProved != 0,
			"all of both proved":    len(got) > 0 && !slices.ContainsFunc(c.Front, func(f choice.Choice) bool { return f.Status != choice.BothProved }),
		} {
			if is {
				count[name]++
			}
		}
	}
	for _, name := range slices.Sorted(maps.Keys(count)) {
		t.Logf("%5d rooms: %s", count[name], name)
	}
	if count["all of both proved"] == 0 || *littleRooms >= 100 && count["the stock falls short"] == 0 {
		t.Error("the rooms test nothing")
	}
}

// Of the two choices of this room the one that needs less has the higher price, so that no sum of price
// and blemish lies between them.
func TestStepWithoutPrice(t *testing.T) {
	room := little.draw(165)
	want, err := enumerate(t, room, 600)
	if err != nil {
		t.Fatal(err)
	}
	if got := points(explored(t, room, 1)); !slices.Equal(got, want) {
		t.Errorf("the front is %v, not %v", got, want)
	}
}

// checkProofs compares what is said to be proved of a room with its front.
func checkProofs(t *testing.T, seed uint64, c choice.Choices, front []point) {
	for _, wrong := range beaten(c, front) {
		t.Errorf("room %d: %s", seed, wrong)
	}
	for _, f := range points(c) {
		if !slices.ContainsFunc(front, func(p point) bool { return p.need.Compare(f.need) <= 0 && p.blemish.Compare(f.blemish) <= 0 }) {
			t.Errorf("room %d: %v is better than the best of %v", seed, f, front)
		}
	}
}

// beaten returns what is said to be proved of a room, and is beaten by points that there are.
func beaten(c choice.Choices, there []point) (wrong []string) {
	for _, p := range there {
		if p.need.Compare(c.Least) < 0 {
			wrong = append(wrong, fmt.Sprintf("no layout is to need less than %v, and %v does", c.Least, p))
		}
		for _, f := range c.Front {
			needs, looks := p.need.Compare(f.Need), p.blemish.Compare(f.Layout.Total)
			if f.Status&choice.NeedProved != 0 && needs < 0 && looks <= 0 || f.Status&choice.LooksProved != 0 && needs <= 0 && looks < 0 {
				wrong = append(wrong, fmt.Sprintf("%v is proved of %v at %v, and beaten by %v", f.Status, f.Need, f.Layout.Total, p))
			}
		}
	}
	return wrong
}
