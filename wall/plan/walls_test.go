package plan_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/choice"
	"example.com/groovewright/wall/plan"
)

// Before planning, the walls are those of the plan, without all that planning adds.
func TestWallsAreThoseOfThePlan(t *testing.T) {
	j := jobFrom(t, readText(t, "../../examples/kitchen.json"))
	p, err := plan.Make(t.Context(), j, plan.Options{})
	if err != nil {
		t.Fatal(err)
	}
	walls, err := j.Walls()
	if err != nil {
		t.Fatal(err)
	}
	for i, planned := range p.Runs {
		taped := walls.Runs[i]
		if len(taped.Panels)+len(taped.StoryPole) > 0 {
			t.Errorf("run %d is laid out", i)
		}
		if diff := cmp.Diff(planned.Outline, taped.Outline, cmpopts.EquateComparable(fraction.Length{})); diff != "" {
			t.Errorf("run %d (-planned +taped):\n%s", i, diff)
		}
		if planned.Name != taped.Name || planned.Width != taped.Width || len(planned.Openings) != len(taped.Openings) || planned.Right.Lean != taped.Right.Lean {
			t.Errorf("run %d is %+v, planned as %+v", i, taped, planned)
		}
	}
}

// There is a plan for each choice, and the ends of the front are those that Make takes; so it is of sheets on hand.
func TestMakeEachMakesTheChoices(t *testing.T) {
	for name, job := range map[string]string{"bought": steppedWall, "on hand": strings.Replace(steppedWall, `"length": "96"`, `"length": "96", "count": 2`, 1)} {
		t.Run(name, func(t *testing.T) { checkEach(t, jobFrom(t, job)) })
	}
}

// checkEach checks the plans of all choices of a job of several.
func checkEach(t *testing.T, j plan.Job) {
	t.Helper()
	plans, err := plan.MakeEach(t.Context(), j, plan.Options{Budget: choice.Budget{Layouts: 40}})
	if err != nil || len(plans) < 2 || len(plans) != len(plans[0].Choices) {
		t.Fatalf("%d plans: %v", len(plans), err)
	}
	for i, p := range plans {
		checkChoices(t, p, i)
	}
	for prefer, got := range map[plan.Preference]plan.Plan{plan.Looks: plans[0], plan.Sheets: plans[len(plans)-1]} {
		want, err := plan.Make(t.Context(), j, plan.Options{Prefer: prefer, Budget: choice.Budget{Layouts: 40}})
		if err != nil {
			t.Fatal(err)
		}
		a, err := want.JSON()
		b, err2 := got.JSON()
		if err != nil || err2 != nil || string(a) != string(b) {
			t.Errorf("--prefer %v gives another plan", prefer)
		}
	}
}

// checkChoices checks what the choices of a plan, which takes number i, say beside what it says itself.
func checkChoices(t *testing.T, p plan.Plan, i int) {
	t.Helper()
	panels := 0
	for _, r := range p.Runs {
		panels += len(r.Panels)
	}
	if c := p.Choices[i]; !c.Chosen || c.Sheets != len(p.Sheets) || c.Panels != panels || !c.Cost.Equal(p.Total) || c.BlemishTotal != p.BlemishTotal ||
		c.MoreBought != 0 || c.MoreOnHand != 0 || c.MoreCost.Known() {
		t.Errorf("choice %d of the plan with %d sheets, %d panels, %v: %+v", i, len(p.Sheets), panels, p.Total, c)
	}
	if !slices.IsSortedFunc(p.Choices, func(a, b plan.Choice) int { return a.BlemishTotal.Compare(b.BlemishTotal) }) {
		t.Error("the best-looking choice is not the first")
	}
	taken := p.Chosen()
	cost, _ := taken.Cost.Decimal()
	for k, c := range p.Choices {
		its, _ := c.Cost.Decimal()
		more, known := c.MoreCost.Decimal()
		if c.Chosen != (k == i) || c.MoreBought != c.Bought-taken.Bought || c.MoreOnHand != c.OnHand()-taken.OnHand() || known == its.Equal(cost) || known && !more.Equal(its.Sub(cost)) {
			t.Errorf("beside choice %d, choice %d is %+v", i, k, c)
		}
	}
	var most []fraction.Ratio // the costs of what is seen, the greatest first
	for _, b := range p.Blemishes {
		if b.Kind != wall.Seam && !b.Cost.IsZero() {
			most = append(most, b.Cost)
		}
	}
	slices.SortFunc(most, func(a, b fraction.Ratio) int { return b.Compare(a) })
	if len(taken.SeenMost) != min(2, len(most)) {
		t.Fatalf("%d terms are seen most, of %d", len(taken.SeenMost), len(most))
	}
	for k, b := range taken.SeenMost {
		if b.Cost != most[k] {
			t.Errorf("term %d of those seen most costs %v, want %v", k, b.Cost, most[k])
		}
	}
}
