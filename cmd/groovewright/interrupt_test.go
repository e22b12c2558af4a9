package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/wall/plan"
	"example.com/groovewright/wall/verify"
)

var interrupts = flag.Int("interrupts", 2, "plans of large rooms to interrupt")

// TestInterruptGivesThePlanSoFar interrupts the planning of large rooms at random moments. The
// command ends with a plan that holds and says that its search was stopped, or with a sentence where
// there is none yet. How long that takes is counted; it should be a second at most. For the long run
// use -interrupts 200 -timeout 1h -v.
func TestInterruptGivesThePlanSoFar(t *testing.T) {
	program := filepath.Join(t.TempDir(), "groovewright")
	if out, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	ended, late := map[string]int{}, 0
	var longest time.Duration
	for seed := range uint64(*interrupts) {
		r := rand.New(rand.NewPCG(seed, 3))
		job := largeRoom(r)
		after := time.Duration(math.Exp(-7*r.Float64()) * float64(10*time.Second)) // from 10 ms up, each order as likely
		how, took, err := interrupt(program, job, after, t.TempDir())
		ended[how]++
		longest = max(longest, took)
		if took > time.Second { // counted, not judged: a busy or a 32-bit machine draws more slowly
			late++
			t.Logf("room %d: %s after %v, %v after the interrupt", seed, how, after, took)
		}
		if err != nil {
			t.Errorf("room %d: %v", seed, err)
		}
	}
	t.Logf("%v; at most %v of processor time after the interrupt, %d of more than a second", ended, longest, late)
}

// interrupt plans a job, with its book, and interrupts that after a while. It returns how the
// command ended and how long it went on, and an error for an end that is not as it ought to be.
func interrupt(program string, job []byte, after time.Duration, dir string) (how string, took time.Duration, err error) {
	c := exec.Command(program, "plan", "-", "--json", "--out", dir)
	var stdout, stderr bytes.Buffer
	c.Stdout, c.Stderr = &stdout, &stderr
	stdin, err := c.StdinPipe()
	if err == nil {
		err = c.Start()
	}
	if err != nil {
		return "", 0, err
	}
	// No pipe holds that much: once it is written the program reads, and minds its signals.
	stdin.Write(append(bytes.Repeat([]byte(" "), 1<<18), job...))
	stdin.Close()
	ended := make(chan error)
	go func() { ended <- c.Wait() }()
	select {
	case err := <-ended:
		return "by itself", 0, err
	case <-time.After(after):
	}
	before, start := fractiontest.ProcessorTime(c.Process.Pid), time.Now()
	c.Process.Signal(os.Interrupt) // fails where it has just ended
	err = <-ended
	var exit *exec.ExitError
	if took = time.Since(start); before > 0 { // others may use the processor too
		took = min(took, c.ProcessState.UserTime()+c.ProcessState.SystemTime()-before)
	}
	switch {
	case errors.As(err, &exit) && exit.ExitCode() == failed:
		if err = nil; stdout.Len() > 0 || stderr.String() != "groovewright: "+errStopped.Error()+"\n" {
			err = fmt.Errorf("exit code 1 with %q and %q", stdout.String(), stderr.String())
		}
		return "without a plan", took, err
	case err != nil:
		return "otherwise", took, fmt.Errorf("%w: %s", err, stderr.String())
	}
	var p plan.Plan
	if err := json.Unmarshal(stdout.Bytes(), &p); err != nil {
		return "with half a plan", took, err
	}
	for _, f := range verify.Plan(job, stdout.Bytes()) {
		err = errors.Join(err, errors.New(f.String()))
	}
	return p.Search.End.String(), took, err
}

// largeRoom draws the job of a room of 10 to 40 coupled runs and a repeat of up to 30 features.
func largeRoom(r *rand.Rand) []byte {
	type object = map[string]any
	eighths := func(low, high int) string {
		n := 8*low + r.IntN(8*(high-low))
		return fmt.Sprintf("%d %d/8", n/8, n%8)
	}
	var features, runs []object
	n := 10 + r.IntN(31)
	for range min([]int{1, 2, 5, 15}[r.IntN(4)], 150/n) {
		features = append(features, object{"kind": "flat", "width": fmt.Sprintf("%d/16", 4+r.IntN(30))}, object{"kind": "groove", "width": "1/8"})
	}
	for i := range n {
		corner := object{"kind": "inside corner"}
		width, low, high := eighths(20, 150), eighths(20, 40), eighths(20, 40)
		run := object{"name": fmt.Sprint("wall ", i+1), "width": width, "left": corner, "right": corner,
			"heights": []object{{"at": "0", "top": low}, {"at": "10", "top": low}, {"at": "10", "top": high}, {"at": width, "top": high}}}
		if r.IntN(2) == 0 {
			run["openings"] = []object{{"name": "box", "kind": "box", "left": eighths(2, 15), "bottom": "8", "width": "2 1/4", "height": "3"}}
		}
		runs = append(runs, run)
	}
	runs[0]["left"], runs[n-1]["right"] = object{"kind": "exposed"}, object{"kind": "exposed"}
	job, _ := json.Marshal(object{"title": "Invented hall", "profile": object{"name": "invented", "thickness": "1/4", "features": features},
		"stock": []object{{"name": "sheet", "width": "48", "length": "96", "price": "31.50"}}, "runs": runs})
	return job
}
