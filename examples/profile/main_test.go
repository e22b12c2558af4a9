package main

// Two panels of 40 and 40 1/4 in lie one above the other on a sheet of 96.
func Example() {
	main()
	// Output:
	// Buy 1 of "sheet", 48 x 96. Proved: no layout of this room needs fewer (area of the walls with kerfs), and none that needs as few looks better.
}
