package wall_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/wall"
)

// Plate sizes of one to ten gangs as printed in an architects' reference to NEMA WD 6, which rounds
// the second to 4-1/2; another article gives it as 4.56.
func TestStandardPlate(t *testing.T) {
	want := []string{"2 3/4", "4 9/16", "6 3/8", "8 3/16", "10", "11 13/16", "13 5/8", "15 7/16", "17 1/4", "19 1/16"}
	for i, width := range want {
		plate, err := wall.StandardPlate(fraction.Inch, i+1)
		if err != nil || plate.Width.String() != width || plate.Height != fraction.Of(9, 2) {
			t.Errorf("StandardPlate(%d) = %v, %v, want %s wide", i+1, plate, err, width)
		}
	}
	for _, gangs := range []int{-1, 0, 11} {
		if _, err := wall.StandardPlate(fraction.Inch, gangs); !errors.Is(err, wall.ErrGangs) {
			t.Errorf("StandardPlate(%d): %v", gangs, err)
		}
	}
}

func TestGangs(t *testing.T) {
	for width, want := range map[string]int{"-1": 1, "0": 1, "2": 1, "2 3/4": 1, "2 29/32": 1, "2 15/16": 2, "3 13/16": 2, "4": 2, "5 5/8": 3, "18 5/16": 10, "40": 10} {
		if got := wall.Gangs(fraction.Inch, fraction.MustParse(width)); got != want {
			t.Errorf("Gangs(%s) = %d, want %d", width, got, want)
		}
	}
}

// A box holds the devices that it is said to hold, else those of its width; one wider than all numbers holds the most.
func TestDeviceGangs(t *testing.T) {
	wide := []cutout.Point{{X: fraction.Inches(math.MinInt64 + 1)}, {X: fraction.Inches(math.MaxInt64)}, {Y: fraction.Inches(1)}}
	for _, row := range []struct {
		box  wall.Opening
		want int
	}{
		{wall.Opening{Outline: wide}, wall.MaxGangs}, {wall.Opening{Outline: wide, Gangs: 3}, 3}, {wall.Opening{}, 1},
		{wall.Opening{Outline: cutout.Rectangle(fraction.Inches(7), fraction.Inches(5), fraction.Inches(4), fraction.Inches(9))}, 2},
	} {
		if got := row.box.DeviceGangs(fraction.Inch); got != row.want {
			t.Errorf("%+v holds %d devices, want %d", row.box, got, row.want)
		}
	}
}

// A plate of 2-3/4 by 4-1/2 over a box of 2 by 3 in, cut to the box and 1/8 and 1/4 larger on each
// side; two gangs with their opening of 3-13/16. Sizes from a home-repair article, the overlaps
// worked by hand.
func TestOverlapWorkedExamples(t *testing.T) {
	one, _ := wall.StandardPlate(fraction.Inch, 1)
	two, _ := wall.StandardPlate(fraction.Inch, 2)
	for _, test := range []struct {
		name, width, gap string
		plate            wall.Plate
		side, above      string
	}{
		{"cut to the box", "2", "0", one, "3/8", "3/4"},
		{"1/8 larger", "2", "1/8", one, "1/4", "5/8"},
		{"1/8 larger, plate 4.490 high", "2", "1/8", wall.Plate{Width: one.Width, Height: fraction.Of(449, 100)}, "1/4", "0.62"},
		{"1/4 larger", "2", "1/4", one, "1/8", "1/2"},
		{"two gangs", "3 13/16", "0", two, "3/8", "3/4"},
		{"too big: seen at the sides", "2", "1/2", one, "-1/8", "1/4"},
	} {
		side, above, err := test.plate.Overlap(fraction.MustParse(test.width), fraction.Inches(3), fraction.MustParse(test.gap))
		if err != nil || side != fraction.MustParse(test.side) || above != fraction.MustParse(test.above) {
			t.Errorf("%s: %v, %v, %v, want %s, %s", test.name, side, above, err, test.side, test.above)
		}
	}
	var overflow *fraction.OverflowError
	if _, _, err := one.Overlap(fraction.Of(1, 1<<62-1), fraction.Inches(3), fraction.Of(1, 1<<61-1)); !errors.As(err, &overflow) {
		t.Errorf("huge denominators: %v", err)
	}
}

// The plate of one gang over a box 2 by 3 in that is cut out 1/8 in larger on every side.
func ExamplePlate_Overlap() {
	plate, err := wall.StandardPlate(fraction.Inch, wall.Gangs(fraction.Inch, fraction.Inches(2)))
	if err != nil {
		fmt.Println(err)
		return
	}
	side, above, err := plate.Overlap(fraction.Inches(2), fraction.Inches(3), fraction.Of(1, 8))
	fmt.Println(side, above, err)
	// Output:
	// 1/4 5/8 <nil>
}

// TestMetricPlate has the sizes of metric regions: holes of 68 mm with centres 71 mm apart, frames
// of 80 mm (from memory).
func TestMetricPlate(t *testing.T) {
	mm := func(n int64) fraction.Length { return fraction.Millimetres(n, 1) }
	for gangs, width := range map[int]int64{1: 80, 2: 151, 3: 222} {
		plate, err := wall.StandardPlate(fraction.Centimetre, gangs)
		if err != nil || plate.Width != mm(width) || plate.Height != mm(80) {
			t.Errorf("%d gangs: %v, %v", gangs, plate, err)
		}
		if got := wall.Gangs(fraction.Millimetre, mm(width-12)); got != gangs {
			t.Errorf("a box %d mm wide holds %d, want %d", width-12, got, gangs)
		}
	}
}
