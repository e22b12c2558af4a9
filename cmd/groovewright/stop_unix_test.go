//go:build unix

package main

import (
	"bytes"
	"context"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// startCommand starts this program as the command.
func startCommand(t *testing.T, stdin io.Reader, stdout io.Writer, args ...string) (c *exec.Cmd, stderr *bytes.Buffer) {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	c, stderr = exec.Command(self, args...), new(bytes.Buffer)
	c.Env, c.Stdin, c.Stdout, c.Stderr = append(os.Environ(), asCommand+"=1"), stdin, stdout, stderr
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	return c, stderr
}

// pipe returns the ends of a pipe, which are closed when the test ends.
func pipe(t *testing.T) (r, w *os.File) {
	t.Helper()
	r, w, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { r.Close(); w.Close() })
	return r, w
}

// Both signals end the command also while it waits for its job, with a sentence and exit code 1.
func TestSignalsEndTheWaitForAJob(t *testing.T) {
	for _, signal := range []os.Signal{syscall.SIGINT, syscall.SIGTERM} {
		dir := t.TempDir()
		r, w := pipe(t)
		c, stderr := startCommand(t, r, nil, "plan", "-", "--out", filepath.Join(dir, "plan"))
		// No pipe holds that much: once it is written the program reads, and minds its signals.
		w.Write(bytes.Repeat([]byte(" "), 1<<18))
		start := time.Now()
		c.Process.Signal(signal)
		err := c.Wait()
		var exit *exec.ExitError
		if took := time.Since(start); !errors.As(err, &exit) || exit.ExitCode() != failed || stderr.String() != "groovewright: "+errStopped.Error()+"\n" || took > 5*time.Second {
			t.Errorf("%v: %v after %v, %q", signal, err, took, stderr)
		}
		if left, _ := os.ReadDir(dir); len(left) > 0 {
			t.Errorf("%v: left %v", signal, left)
		}
	}
}

// A second signal ends the command whatever it does, here while nobody takes what it prints.
func TestSecondSignalKills(t *testing.T) {
	r, w := pipe(t)
	c, _ := startCommand(t, nil, w, "survey", "99") // more than a pipe holds
	if _, err := r.Read(make([]byte, 1)); err != nil {
		t.Fatal(err)
	}
	ended := make(chan error, 1)
	go func() { ended <- c.Wait() }()
	for {
		c.Process.Signal(os.Interrupt)
		select {
		case <-ended:
			if status := c.ProcessState.Sys().(syscall.WaitStatus); !status.Signaled() || status.Signal() != syscall.SIGINT {
				t.Errorf("ended as %v", c.ProcessState)
			}
			return
		case <-time.After(50 * time.Millisecond): // the first signal took effect
		}
	}
}

// A reader that goes away is no failure to speak of; a full disk is one.
func TestStandardOutput(t *testing.T) {
	r, w := pipe(t)
	r.Close()
	c, stderr := startCommand(t, nil, w, "profiles")
	if c.Wait(); stderr.Len() > 0 {
		t.Errorf("a closed pipe: %q", stderr)
	}
	full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	if err != nil {
		t.Skip(err)
	}
	defer full.Close()
	c, stderr = startCommand(t, nil, full, "profiles")
	if c.Wait(); c.ProcessState.ExitCode() != failed || !strings.Contains(stderr.String(), "no space left") {
		t.Errorf("a full disk: %v, %q", c.ProcessState, stderr)
	}
}

// waiting is a reader that never has anything.
type waiting struct{}

func (waiting) Read([]byte) (int, error) { select {} }

func TestNoWaitForStdinOnceStopped(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	stop()
	var stdout, stderr bytes.Buffer
	if code := execute(ctx, []string{"check", "-"}, waiting{}, &stdout, &stderr); code != failed || !strings.Contains(stderr.String(), errStopped.Error()) {
		t.Errorf("exit code %d, %q", code, stderr.String())
	}
}

// What could command a terminal is not passed on: not from names of files, options or jobs.
func TestNothingCommandsTheTerminal(t *testing.T) {
	const evil = "\x1b[31m\u202e\a"
	job := strings.Replace(readmeJobs(t)[0], "over the counter", `over\u001b[31m\u202e\u0007`, 1)
	plan := filepath.Join(t.TempDir(), "plan.json")
	if err := os.WriteFile(plan, []byte(`{"format": "\u001b[31m\u202e\u0007", "\u001b[31m\u202e": 1}`), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{{"plan", "-"}, {"check", evil}, {evil}, {"plan", "-", "--prefer", evil}, {"plan", "-", "--out", evil + "\x00"},
		{"survey", evil}, {"verify", examples(t)["kitchen"], plan}, {"compare", evil, evil}} {
		stdout, stderr, _ := try(strings.NewReader(job), args...)
		if strings.ContainsAny(stdout+stderr, evil[:1]+"\u202e\a") {
			t.Errorf("%q: %q, %q", args, stdout, stderr)
		}
		if stderr == "" || args[0] == "verify" && !strings.Contains(stdout, "form") {
			t.Errorf("%q: no message", args)
		}
	}
}
