package main

// By hand. A tile in the middle: 97 3/8 less 5 7/8 is 91 1/2, half of it 45 3/4; a joint and
// seven tiles with their joints, 42 1/8, leave 3 5/8. A joint in the middle: half of 97 3/8
// less 1/8 is 48 5/8; eight tiles with their joints, 48, leave 5/8.
func Example() {
	main()
	// Unordered output:
	// tile in the middle: cut tiles of 3 5/8 and 3 5/8 at the ends
	// joint in the middle: cut tiles of 5/8 and 5/8 at the ends
}
