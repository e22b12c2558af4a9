//go:build !unix

package nest_test

import "time"

var began = time.Now()

// processorTime is the time on the clock where the processor's is not to be had.
func processorTime() time.Duration { return time.Since(began) }
