package line_test

import (
	"context"
	"flag"
	"strings"
	"testing"
	"time"

	"example.com/groovewright/nest/internal/line"
)

var all = flag.Bool("all", false, "pack all 160 open instances and print the table")
var only = flag.String("only", "", "part of the names of the instances to pack")

func TestPackOpenData(t *testing.T) {
	for _, in := range instances(t) {
		if *only != "" && !strings.Contains(in.ID, *only) {
			continue
		}
		begin := time.Now()
		got, err := line.Pack(context.Background(), in.Capacity, in.Sizes, line.Budget{})
		took := time.Since(begin)
		if err != nil {
			t.Fatal(err)
		}
		if err := line.Verify(in.Capacity, in.Sizes, got.Bins); err != nil {
			t.Errorf("%s: %v", in.ID, err)
		}
		mark := ""
		if len(got.Bins) != in.Optimum || !got.Proved {
			mark = "  <<<"
		}
		t.Logf("%s opt %d ffd %d got %d lower %d proved %v nodes %d %v %s%s", in.ID, in.Optimum, in.FirstFit, len(got.Bins), got.Lower, got.Proved, got.Nodes, took.Round(time.Millisecond), got.How, mark)
	}
}
