// Package fractiontest helps tests: the same random draws each time, and wild values.
package fractiontest

import (
	"flag"
	"testing"
)

// Main runs the tests of a package with the same random draws each time. For other draws there is
// the flag -rapid.seed.
func Main(m *testing.M) int {
	flag.Parse()
	if seed := flag.Lookup("rapid.seed"); seed != nil && seed.Value.String() == "0" {
		if err := seed.Value.Set("1"); err != nil {
			panic(err)
		}
	}
	return m.Run()
}
