package main

import (
	"os"
	"testing"

	"example.com/groovewright/fraction/fractiontest"
)

// asCommand in its environment says that a test program is to be the command itself.
const asCommand = "GROOVEWRIGHT_TEST_COMMAND"

// TestMain draws the same random cases at each run.
func TestMain(m *testing.M) {
	if os.Getenv(asCommand) != "" {
		main()
	}
	os.Exit(fractiontest.Main(m))
}
