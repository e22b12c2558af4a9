package plan_test

import (
	"context"
	"encoding/json"
	"errors"
	"flag"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/cmd/groovewright/internal/job"
	"example.com/groovewright/cmd/groovewright/internal/plan"
	"example.com/groovewright/cmd/groovewright/internal/proof"
	"example.com/groovewright/cmd/groovewright/internal/proof/rooms"
	"example.com/groovewright/wall"
)

// mostRooms keeps the default tests short: rooms after so many are drawn and
// left, unless one has failed, since rapid then looks for a smaller one that does.
// A long run gives both flags: -rooms 2000 -rapid.checks 2000.
var mostRooms = flag.Int("rooms", 25, "random rooms to plan in each test at most")

// makePlan plans a drawn job, or reports that it cannot be done as given.
func makePlan(t *rapid.T, file []byte, prefer plan.Preference) (data []byte, done bool) {
	j, err := job.Read(file)
	if err != nil {
		t.Fatalf("the job is refused: %v\n%s", err, file)
	}
	p, err := plan.Make(context.Background(), j, plan.Options{Prefer: prefer, Layouts: 4, Nodes: 20_000})
	var short *plan.ShortError
	var none *wall.NoLayoutError
	switch {
	case errors.As(err, &short) || errors.As(err, &none):
		return nil, false
	case err != nil:
		t.Fatalf("%v\n%s", err, file)
	}
	if data, err = json.Marshal(p); err != nil {
		t.Fatal(err)
	}
	return data, true
}

// TestPlansOfRandomRoomsHold has the independent checker judge the plans of
// random rooms: pieces cover each region once, phases follow across seams,
// exposed ends are whole, placements show the pattern they need, replaying the
// cuts frees every part.
func TestPlansOfRandomRoomsHold(t *testing.T) {
	planned, undone, failed := 0, 0, false
	rapid.Check(t, func(t *rapid.T) {
		file := []byte(rooms.Job().Draw(t, "job"))
		if planned+undone >= *mostRooms && !failed {
			return
		}
		defer func() { failed = failed || t.Failed() }()
		data, done := makePlan(t, file, plan.Sheets)
		if !done {
			undone++
			return
		}
		planned++
		for _, f := range proof.Check(file, data) {
			t.Errorf("%v", f)
		}
		if t.Failed() {
			t.Logf("job: %s", file)
		}
	})
	if planned <= undone {
		t.Errorf("%d rooms planned, %d cannot be done as given", planned, undone)
	}
	t.Logf("%d rooms planned, %d cannot be done as given", planned, undone)
}

// TestBestLookingChoiceIsLeast compares with the least blemish that the checker
// finds by exhaustive search of small rooms.
func TestBestLookingChoiceIsLeast(t *testing.T) {
	compared, better, failed := 0, 0, false
	rapid.Check(t, func(t *rapid.T) {
		file := []byte(rooms.Small().Draw(t, "job"))
		if compared >= *mostRooms && !failed {
			return
		}
		defer func() { failed = failed || t.Failed() }()
		want, ok := proof.LeastBlemish(file)
		if !ok {
			t.Skip("not judged")
		}
		data, done := makePlan(t, file, plan.Looks)
		if !done {
			t.Skip("cannot be done")
		}
		got, err := proof.BestLooking(data)
		if err != nil {
			t.Fatal(err)
		}
		// The planner tries a few more origins than the checker, which is no
		// fault if the layout it finds stands up to the checker otherwise.
		if got.Cmp(want) < 0 {
			better++
			for _, f := range proof.Check(file, data) {
				t.Errorf("blemish %v, less than %v, with a fault: %v\n%s", got, want, f, file)
			}
			return
		}
		compared++
		if got.Cmp(want) != 0 {
			t.Fatalf("least blemish of the choices is %v, want %v\n%s", got, want, file)
		}
	})
	if compared <= better {
		t.Errorf("%d rooms compared, in %d the planner found less: the checker's search is no check", compared, better)
	}
	t.Logf("%d rooms compared; in %d more the planner found less", compared, better)
}
