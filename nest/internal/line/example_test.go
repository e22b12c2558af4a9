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
	result, err := line.Pack(context.Background(), 96*16+kerf, sizes, line.DefaultNodes)
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
