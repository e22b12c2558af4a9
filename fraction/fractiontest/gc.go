package fractiontest

import (
	"os"
	"runtime/debug"
	"slices"
	"strings"
)

// roomier is how large the heap of a test may get beyond what is in use, in percent. Exact arithmetic
// leaves much behind that is small and soon dead: with 400 for the usual 100, tests of plans take about
// 40 % less processor time.
const roomier = 400

func init() {
	benchmark := func(arg string) bool { return strings.HasPrefix(arg, "-test.bench=") }
	if os.Getenv("GOGC") == "" && !slices.ContainsFunc(os.Args, benchmark) {
		debug.SetGCPercent(roomier)
	}
}
