package main

import (
	"fmt"
	"io"
	"os"
	"time"
)

// progressEvery is how often a person at a terminal sees that the search goes on; a quick plan ends
// before the first time.
const progressEvery = time.Second

// progress shows a person at a terminal that work goes on, until stop is called. Where stderr is no
// terminal it is quiet. It only looks on: what is planned does not depend on the clock.
func progress(stderr io.Writer, what string) (stop func()) {
	if !terminal(stderr) {
		return func() {}
	}
	ticker := time.NewTicker(progressEvery)
	over, quiet := make(chan struct{}), make(chan struct{})
	go func() {
		tell(stderr, what, ticker.C, over)
		close(quiet)
	}()
	return func() {
		ticker.Stop()
		close(over)
		<-quiet
	}
}

// tell rewrites one line at each tick, and clears it at the end.
func tell(w io.Writer, what string, ticks <-chan time.Time, over <-chan struct{}) {
	for n := 0; ; {
		select {
		case <-ticks:
			n++
			fmt.Fprintf(w, "\rgroovewright: %s, %d s (Ctrl-C takes the best so far) ", what, n)
		case <-over:
			if n > 0 {
				fmt.Fprintf(w, "\r%*s\r", 79, "")
			}
			return
		}
	}
}

// terminal reports whether a person reads what is written.
func terminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}
