package plan_test

import (
	"testing"

	"example.com/groovewright/wall/plan"
)

func BenchmarkKitchen(b *testing.B) {
	j := jobFrom(b, readText(b, "../../examples/kitchen.json"))
	for b.Loop() {
		if _, err := plan.Make(b.Context(), j, plan.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
