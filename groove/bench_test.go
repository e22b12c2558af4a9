package groove_test

import (
	"testing"

	"example.com/groovewright/groove"
)

func BenchmarkProfile(b *testing.B) {
	p, ok := groove.Find("beadboard 2")
	if !ok {
		b.Fatal("no such profile")
	}
	x, origin, phase := inch("61 5/16"), inch("3/8"), inch("1 3/4")
	for _, method := range []struct {
		name string
		f    func()
	}{
		{"Phase", func() { p.Phase(x, origin) }},
		{"CutDistance", func() { p.CutDistance(phase, groove.KeepLeft) }},
		{"DistanceToSeamLine", func() { p.DistanceToSeamLine(phase) }},
		{"Mirror", func() { p.Mirror() }},
		{"Validate", func() { p.Validate() }},
	} {
		b.Run(method.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				method.f()
			}
		})
	}
}

func TestNoAllocs(t *testing.T) {
	p, _ := groove.Find("beadboard 2")
	x, origin, phase := inch("61 5/16"), inch("3/8"), inch("1 3/4")
	for name, f := range map[string]func(){
		"Pitch":              func() { p.Pitch() },
		"Phase":              func() { p.Phase(x, origin) },
		"DistanceToBoundary": func() { p.DistanceToBoundary(phase) },
		"DistanceToSeamLine": func() { p.DistanceToSeamLine(phase) },
		"Shown":              func() { p.Shown(phase, groove.KeepRight) },
		"CutDistance":        func() { p.CutDistance(phase, groove.KeepLeft) },
		"Mirror":             func() { p.Mirror() },
		"Turned":             func() { p.Turned(phase) },
		"Primitive":          func() { p.Primitive() },
		"Validate":           func() { p.Validate() },
	} {
		if got := testing.AllocsPerRun(100, f); got != 0 {
			t.Errorf("%s allocates %v times", name, got)
		}
	}
}
