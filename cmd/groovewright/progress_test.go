package main

import (
	"bytes"
	"strings"
	"testing"
	"time"
)

func TestProgressIsOneLineAndClearsIt(t *testing.T) {
	var out bytes.Buffer
	ticks, over, told := make(chan time.Time), make(chan struct{}), make(chan struct{})
	go func() {
		tell(&out, "searching", ticks, over)
		close(told)
	}()
	ticks <- time.Time{}
	ticks <- time.Time{}
	close(over)
	<-told
	if got := out.String(); !strings.Contains(got, "searching, 2 s") || strings.Contains(got, "\n") || !strings.HasSuffix(got, " \r") {
		t.Errorf("told %q", got)
	}
}

func TestProgressIsQuietOffATerminal(t *testing.T) {
	var out bytes.Buffer
	progress(&out, "searching")()
	if out.Len() > 0 {
		t.Errorf("told %q", out.String())
	}
}
