//go:build unix

package nest_test

import (
	"syscall"
	"time"
)

// processorTime is what this process has spent on the processor, collector and all, which other
// work on the machine does not change.
func processorTime() time.Duration {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return 0
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}
