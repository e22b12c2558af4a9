package plan_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"example.com/groovewright/fraction"
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

// There is a plan for each choice, and the ends of the front are those that Make takes.
func TestMakeEachMakesTheChoices(t *testing.T) {
	j := jobFrom(t, steppedWall)
	plans, err := plan.MakeEach(t.Context(), j, plan.Options{})
	if err != nil || len(plans) < 2 || len(plans) != len(plans[0].Choices) {
		t.Fatalf("%d plans: %v", len(plans), err)
	}
	for i, p := range plans {
		if !p.Choices[i].Chosen {
			t.Errorf("plan %d does not take choice %d", i, i)
		}
	}
	for prefer, got := range map[plan.Preference]plan.Plan{plan.Looks: plans[0], plan.Sheets: plans[len(plans)-1]} {
		want, err := plan.Make(t.Context(), j, plan.Options{Prefer: prefer})
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
