package wall_test

import (
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall"
)

// TestMetricDefaultsAreRound: every size that a metric job is judged by is a whole number of
// millimetres within a tenth of the one in inches, but for what decides the layout, which is the same.
func TestMetricDefaultsAreRound(t *testing.T) {
	metric, inches := wall.DefaultPriorities(fraction.Millimetre), wall.DefaultPriorities(fraction.Inch)
	want := inches.List()
	for k, p := range metric.List() {
		m, i := p.Value, want[k].Value
		switch millimetres := m.Mul(fraction.NewRatio(127, 5)).Rat(); {
		case p.Unit != "in" || p.Name == "seam" || p.Name == "box_clear":
			if m != i {
				t.Errorf("%s is another one in mm", p.Name)
			}
		case !millimetres.IsInt():
			t.Errorf("%s is %s mm", p.Name, millimetres.RatString())
		case i.Div(fraction.NewRatio(10, 1)).Less(m.Sub(i).Abs()):
			t.Errorf("%s is %v in mm and %v in inches", p.Name, m, i)
		}
	}
}

// Priorities are listed with their values, weights by height and distance, sizes in inches: those of the contract.
func TestPrioritiesAreListed(t *testing.T) {
	listed := map[string]wall.Priority{}
	for _, p := range wall.DefaultPriorities(fraction.Inch).List() {
		listed[p.Name] = p
	}
	for name, want := range map[string]wall.Priority{
		"exposed_end":   {Unit: "per ft and in", Value: fraction.NewRatio(8, 1)},
		"inside_corner": {Unit: "per ft and in", Value: fraction.NewRatio(1, 1)},
		"box_clear":     {Unit: "in", Value: fraction.NewRatio(1, 1)},
		"least_strip":   {Unit: "in", Value: fraction.NewRatio(3, 4)},
	} {
		if got := listed[name]; got.Unit != want.Unit || got.Value != want.Value || got.Description == "" {
			t.Errorf("%s: %+v, want %+v", name, got, want)
		}
	}
}
