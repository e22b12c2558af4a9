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

// The defaults are those that the table of priorities in README.md states.
func TestDefaultsAreStated(t *testing.T) {
	want := map[string]string{"exposed_end": "8", "outside_corner": "4", "step_side": "3", "opening_side": "2", "covered_end": "0", "box_side": "0", "inside_corner": "1",
		"weak_strip": "1", "seam": "1/8", "seam_line": "8", "box_clear": "1", "whole_end": "1", "least_panel": "2", "leg_ratio": "8", "least_strip": "3/4", "least_corner": "3/2",
		"least_cover": "1/8", "height_jump": "1", "box_difference": "1/8", "out_of_plumb": "1/4", "station_distance": "48", "trim_margin": "1/4"}
	for _, p := range wall.DefaultPriorities(fraction.Inch).List() {
		if got := p.Value.Rat().RatString(); got != want[p.Name] {
			t.Errorf("%s is %s by default, want %s", p.Name, got, want[p.Name])
		}
		delete(want, p.Name)
	}
	if len(want) > 0 {
		t.Errorf("not listed: %v", want)
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
