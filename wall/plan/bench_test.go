package plan_test

import (
	"bytes"
	"context"
	"os"
	"testing"

	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
)

func BenchmarkKitchen(b *testing.B) {
	data, err := os.ReadFile("../../examples/kitchen.json")
	if err != nil {
		b.Fatal(err)
	}
	j, err := jobfile.Read(bytes.NewReader(data))
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := plan.Make(context.Background(), j, plan.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
