package warning_test

import (
	"encoding/json"
	"fmt"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/warning"
)

// The kind is declared where the warning is raised; who reads it finds the facts in the order that
// the declaration gives.
func Example() {
	const TopJump warning.Kind = "top jump" // Lengths: by
	data, err := json.Marshal(warning.Warning{
		Path: fault.Of("Runs", 1, "Heights", 3, "Top"), Kind: TopJump, Lengths: []fraction.Length{fraction.Inches(2)},
	})
	fmt.Println(string(data), err)
	// Output: {"path":"runs[1].heights[3].top","kind":"top jump","lengths":["2"]} <nil>
}
