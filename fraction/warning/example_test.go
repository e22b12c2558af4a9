package warning_test

import (
	"fmt"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/warning"
)

// A package doubts its own part; whoever holds the part adds the steps before it.
func ExampleUnder() {
	jump := warning.Warning{Path: fault.Of("Top"), Kind: "top jump", Lengths: []fraction.Length{fraction.Inches(2)}}
	for _, w := range warning.Under([]warning.Warning{jump}, "Heights", 3) {
		fmt.Println(w.Path, w.Kind, w.Lengths)
	}
	// Output: Heights[3].Top top jump [2]
}
