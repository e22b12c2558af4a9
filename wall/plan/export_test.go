package plan

import "example.com/groovewright/fraction"

// Supports is supports, for tests from outside.
func Supports(p Plan, run Run) []fraction.Length { return p.supports(run) }
