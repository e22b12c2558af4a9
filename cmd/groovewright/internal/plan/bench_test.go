package plan_test

import (
	"context"
	"os"
	"testing"

	"example.com/groovewright/cmd/groovewright/internal/job"
	"example.com/groovewright/cmd/groovewright/internal/plan"
)

func BenchmarkKitchen(b *testing.B) {
	data, err := os.ReadFile("../../../../examples/kitchen.json")
	if err != nil {
		b.Fatal(err)
	}
	j, err := job.Read(data)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := plan.Make(context.Background(), j, plan.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
