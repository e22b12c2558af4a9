package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestOutWritesTheSamePlan(t *testing.T) {
	job := small(t)
	dir := filepath.Join(t.TempDir(), "new", "folder")
	said := must(t, "plan", job, "--out", dir)
	for name, args := range map[string][]string{"plan.txt": {"plan", job}, "plan.json": {"plan", job, "--json"}} {
		got, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil || string(got) != must(t, args...) {
			t.Errorf("%s is not what is printed: %v", name, err)
		}
		if !strings.Contains(said, name) {
			t.Errorf("%q does not name %s", said, name)
		}
	}
}

func TestFailedRunWritesNothing(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	if _, _, code := try(strings.NewReader("{}"), "plan", "-", "--out", dir); code != wrong {
		t.Fatalf("exit code %d, want %d", code, wrong)
	}
	if _, err := os.Stat(dir); !os.IsNotExist(err) {
		t.Errorf("the folder was made: %v", err)
	}
}

func TestOutputFolderInTheWayOfAFile(t *testing.T) {
	name := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(name, []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	_, stderr, code := try(nil, "plan", small(t), "--out", name)
	if code != failed || !strings.Contains(stderr, "output folder") {
		t.Errorf("exit code %d, stderr %q", code, stderr)
	}
	if got, _ := os.ReadFile(name); string(got) != "mine" {
		t.Errorf("the file was changed to %q", got)
	}
}
