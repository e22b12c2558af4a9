package rooms_test

import (
	"encoding/json"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/wall/verify/rooms"
)

func TestBadJobsAreBad(t *testing.T) {
	if !json.Valid([]byte(rooms.Sound)) {
		t.Fatal("the sound job is no JSON")
	}
	seen := map[string]string{}
	for _, bad := range rooms.Bad() {
		if bad.JSON == rooms.Sound {
			t.Errorf("%s: nothing is bad in it", bad.Name)
		}
		if other, twice := seen[bad.JSON]; twice {
			t.Errorf("%s is the same as %s", bad.Name, other)
		}
		seen[bad.JSON] = bad.Name
		if bad.Exit != 1 && bad.Exit != 2 {
			t.Errorf("%s: exit %d", bad.Name, bad.Exit)
		}
	}
	if len(seen) < 45 {
		t.Errorf("%d bad jobs, want 45 or more", len(seen))
	}
}

func TestDrawsAreJSON(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for _, job := range []string{rooms.Job().Draw(t, "job"), rooms.Small().Draw(t, "small job")} {
			if !json.Valid([]byte(job)) {
				t.Fatalf("no JSON: %s", job)
			}
		}
	})
}
