package cutout_test

import (
	"os"
	"testing"

	"example.com/groovewright/fraction/fractiontest"
)

// TestMain draws the same random cases at each run.
func TestMain(m *testing.M) { os.Exit(fractiontest.Main(m)) }
