package verify_test

import (
	"bytes"
	"errors"
	"flag"
	"os/exec"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/wall/verify"
	"example.com/groovewright/wall/verify/rooms"
)

// A planner to judge from outside, as a program: go test -command ./groovewright
var command = flag.String("command", "", "program that answers `plan JOB --json`, judged on random rooms and bad jobs")

// plan runs the program on a job and returns its output, messages and exit code.
func plan(t interface{ Fatal(...any) }, job []byte) (stdout, stderr string, code int) {
	run := exec.Command(*command, "plan", "-", "--json")
	var out, messages bytes.Buffer
	run.Stdin, run.Stdout, run.Stderr = bytes.NewReader(job), &out, &messages
	err := run.Run()
	var exit *exec.ExitError
	switch {
	case err == nil:
	case errors.As(err, &exit):
		code = exit.ExitCode()
	default:
		t.Fatal(err)
	}
	return out.String(), messages.String(), code
}

func needsCommand(t *testing.T) {
	if *command == "" {
		t.Skip("no -command given")
	}
}

// A random room gets a plan without faults, or the answer that it cannot be done.
func TestCommandOnRandomRooms(t *testing.T) {
	needsCommand(t)
	undone := 0
	rapid.Check(t, func(t *rapid.T) {
		job := []byte(rooms.Job().Draw(t, "job"))
		stdout, stderr, code := plan(t, job)
		switch code {
		case 0:
			for _, f := range verify.Plan(job, []byte(stdout)) {
				t.Errorf("%v", f)
			}
		case 1:
			undone++
		default:
			t.Fatalf("exit %d: %s", code, stderr)
		}
		if t.Failed() {
			t.Logf("job: %s", job)
		}
	})
	t.Logf("%d draws were rooms that cannot be done", undone)
}

// The best-looking choice has the least blemish there is.
func TestCommandFindsTheLeastBlemish(t *testing.T) {
	needsCommand(t)
	rapid.Check(t, func(t *rapid.T) {
		job := []byte(rooms.Small().Draw(t, "job"))
		want, ok := verify.LeastBlemish(job)
		if !ok {
			t.Skip("not judged")
		}
		stdout, stderr, code := plan(t, job)
		if code == 1 {
			t.Skip("cannot be done")
		}
		if code != 0 {
			t.Fatalf("exit %d: %s\n%s", code, stderr, job)
		}
		got, err := verify.BestLooking([]byte(stdout))
		if err != nil || got.Cmp(want) != 0 {
			t.Fatalf("least blemish of the choices is %v (%v), want %v\n%s", got, err, want, job)
		}
	})
}

func TestCommandOnBadJobs(t *testing.T) {
	needsCommand(t)
	for _, bad := range rooms.Bad() {
		t.Run(bad.Name, func(t *testing.T) {
			_, stderr, code := plan(t, []byte(bad.JSON))
			if code != bad.Exit || !strings.Contains(stderr, bad.Path) || strings.Contains(stderr, "goroutine ") {
				t.Errorf("exit %d, %q; want exit %d and a message with %q", code, stderr, bad.Exit, bad.Path)
			}
		})
	}
}
