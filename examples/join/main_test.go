package main

// Three panels for one wall, all from one sheet.
func Example() {
	main()
	// Output:
	// set out from 0 to the right; a repeat starts at 0
	// piece 1: 33 x 30 at 0
	// piece 2: 33 x 30 1/16 at 33
	// piece 3: 34 1/4 x 30 1/8 at 66
	// sheets: 1, proved best
	// buy 1 quart for primer
	// buy 1 quart for top coat
	// buy 1 9 x 12 ft sheet for sheeting for counter and floor
}
