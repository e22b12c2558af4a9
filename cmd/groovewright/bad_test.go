package main

import (
	"strings"
	"testing"

	"example.com/groovewright/wall/verify/rooms"
)

// Every bad job is refused with its exit code and the path of the field; nothing
// is printed as a result and nothing panics.
func TestBadJobs(t *testing.T) {
	bad := rooms.Bad()
	if len(bad) < 40 {
		t.Errorf("only %d kinds of bad job, want at least 40", len(bad))
	}
	for _, row := range bad {
		t.Run(row.Name, func(t *testing.T) {
			stdout, stderr, code := try(strings.NewReader(row.JSON), "plan", "-")
			if code != row.Exit || stdout != "" {
				t.Errorf("exit code %d, want %d; %d bytes on stdout; stderr:\n%s", code, row.Exit, len(stdout), stderr)
			}
			if !strings.Contains(stderr, row.Path) || strings.Contains(stderr, "internal error") {
				t.Errorf("want the path %s in:\n%s", row.Path, stderr)
			}
			if _, _, code := try(strings.NewReader(row.JSON), "check", "-"); row.Exit == wrong && code != wrong {
				t.Errorf("check: exit code %d, want %d", code, wrong)
			}
		})
	}
}
