package fault_test

import (
	"fmt"

	"example.com/groovewright/fraction/fault"
)

// A package collects the faults of its own part; whoever holds the part adds the steps before it.
func Example() {
	var faults fault.List
	faults.Add("63 1/0", "a length above 0", "Heights", 2, "Top")
	faults.Add(nil, "a name", "Name")
	err := fault.Under(faults.Err(), "Runs", 1)
	for _, f := range fault.All(err) {
		path, _ := f.Path.MarshalText()
		fmt.Println(f, "at", string(path))
	}
	// Output:
	// Runs[1].Heights[2].Top: "63 1/0": want a length above 0 at runs[1].heights[2].top
	// Runs[1].Name: want a name at runs[1].name
}
