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
