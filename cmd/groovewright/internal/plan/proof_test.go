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

// TestBestLookingChoiceIsLeast holds that the best-looking choice has exactly the
// least blemish that the checker finds by exhaustive search of small rooms: more
// would mean that the planner missed a layout, less that it takes one which the
// contract does not have.
func TestBestLookingChoiceIsLeast(t *testing.T) {
	compared, failed := 0, false
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
		compared++
		if got.Cmp(want) != 0 {
			t.Fatalf("least blemish of the choices is %v, want %v\n%s", got, want, file)
		}
	})
	if compared == 0 {
		t.Error("no room was compared")
	}
	t.Logf("%d rooms compared", compared)
}
