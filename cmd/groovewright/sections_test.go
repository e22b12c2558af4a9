package main

import (
	"strings"
	"testing"
)

// One section at a time, with or without what stands behind it, and tables for a spreadsheet.
func TestSectionsOfAPlan(t *testing.T) {
	job := small(t)
	whole, explained := must(t, "plan", job), must(t, "plan", job, "--explain")
	for _, section := range []string{"result", "doubts", "buy", "setout", "cuts", "pieces", "order", "cautions"} {
		if part := must(t, "plan", job, "--only", section); !strings.Contains(whole, part) || section != "doubts" && part == "" {
			t.Errorf("section %s is %q", section, part)
		}
		if part := must(t, "plan", job, "--explain", "--only", section); !strings.Contains(explained, part) {
			t.Errorf("explained section %s is %q", section, part)
		}
	}
	if len(explained) < 2*len(whole) {
		t.Errorf("%d bytes explain %d", len(explained), len(whole))
	}
	for table, head := range map[string]string{"buy": "buy,pack,item,", "cuts": "sheet,stock,cut,"} {
		if got := must(t, "plan", job, "--csv", table); !strings.HasPrefix(got, head) {
			t.Errorf("--csv %s: %q", table, got)
		}
	}
	for _, args := range [][]string{{"--only", "pictures"}, {"--csv", "walls"}, {"--only", "buy", "--csv", "buy"}, {"--json", "--explain"}, {"--csv", "buy", "--json"}} {
		if _, stderr, code := try(nil, append([]string{"plan", job}, args...)...); code != wrong || !strings.Contains(stderr, "--") {
			t.Errorf("%q: exit code %d, %q", args, code, stderr)
		}
	}
}
