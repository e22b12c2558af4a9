package line_test

import (
	"context"
	"fmt"

	"example.com/groovewright/nest/internal/line"
)

// Eight foot boards, in sixteenths of an inch, and a saw blade of an eighth.
func ExamplePack() {
	const kerf = 2
	lengths := []int64{50 * 16, 46 * 16, 40 * 16, 32 * 16, 30 * 16, 30 * 16, 30 * 16, 15 * 16}
	sizes := make([]int64, len(lengths))
	for i, length := range lengths {
		sizes[i] = length + kerf
	}
	result, err := line.Pack(context.Background(), 96*16+kerf, sizes, line.Budget{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, bin := range result.Bins {
		var inches []int64
		for _, part := range bin {
			inches = append(inches, lengths[part]/16)
		}
		fmt.Println(inches)
	}
	fmt.Println(result.Lower, result.Proved, result.How == line.Area)
	// Output:
	// [50 40]
	// [46 32 15]
	// [30 30 30]
	// 3 true true
}

// Boards of two lengths, and an offcut that is on hand.
func ExampleBoards() {
	boards := []line.Board{
		{Length: 96, Price: 700},
		{Length: 144, Price: 1000},
		{Length: 50, Limited: true, Count: 1},
	}
	cutting, err := line.Boards(context.Background(), boards, []int64{70, 70, 48, 48, 45}, line.Budget{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, cut := range cutting.Cuts {
		fmt.Println(boards[cut.Board].Length, cut.Items)
	}
	fmt.Println(cutting.Price, cutting.Proved)
	// Output:
	// 144 [0 1]
	// 96 [2 4]
	// 50 [3]
	// 1700 true
}
