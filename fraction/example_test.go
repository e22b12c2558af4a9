package fraction_test

import (
	"errors"
	"fmt"

	"example.com/groovewright/fraction"
)

func Example() {
	wall := fraction.MustParse(`12' 3 5/16"`)
	panel := fraction.MustParse("48")
	gap := fraction.MustParse("1/16")

	panels, rest := wall.DivMod(panel.Add(gap))
	fmt.Println(panels, "panels and", rest)

	half := rest.Div(2)
	fmt.Println("half of the rest is", half)
	fmt.Println("on the tape:", fraction.Tape{Mark: fraction.Of(1, 16)}.Format(half))
	// Output:
	// 3 panels and 3 1/8
	// half of the rest is 1 9/16
	// on the tape: 1 9/16
}

func ExampleParse() {
	for _, text := range []string{"63-1/4", `5' 3 1/4"`, "63¼", "1606.55 mm", "63 1/0"} {
		fmt.Println(fraction.Parse(text, fraction.Inch))
	}
	// Output:
	// 63 1/4 <nil>
	// 63 1/4 <nil>
	// 63 1/4 <nil>
	// 63 1/4 <nil>
	// 0 "63 1/0": zero denominator at "0"; write a length such as 63 1/4, 63-1/4, 63.25, 5' 3 1/4", 7/8, -1/2, 1606.55 mm or 160.6 cm
}

func ExampleLength_Round() {
	top := fraction.MustParse("17 29/64")
	mark := fraction.Of(1, 16)
	fmt.Println(top.Round(mark, fraction.Down)) // never cut what will not fit
	fmt.Println(top.Round(mark, fraction.Up))
	fmt.Println(top.Round(mark, fraction.Nearest))
	// Output:
	// 17 7/16 -1/64
	// 17 1/2 3/64
	// 17 7/16 -1/64
}

func ExampleCircular() {
	pitch := fraction.MustParse("1 5/8")
	fmt.Println(fraction.Circular(fraction.MustParse("1/8"), fraction.MustParse("1 1/2"), pitch))
	// Output: 1/4
}

func ExampleTape() {
	length := fraction.MustParse("1606.55 mm").Add(fraction.Of(1, 128))
	fmt.Println(length)
	fmt.Println(fraction.Tape{Mark: fraction.Of(1, 16)}.Format(length))
	fmt.Println(fraction.Tape{Mark: fraction.Millimetres(1, 1), Unit: fraction.Millimetre}.Format(length))
	// Output:
	// 63 33/128
	// 63 1/4 plus 1/128
	// 1607 mm less 0.3 mm
}

func ExampleArea() {
	wall := fraction.MustParse("10'").Times(fraction.MustParse("8'"))
	window := fraction.MustParse("36").Times(fraction.MustParse("48"))
	rest := wall.Sub(window)
	fmt.Println(rest.SquareFeet(), "ft2")
	fmt.Println(rest.SquareMetres(), "m2")
	// Output:
	// 68 ft2
	// 6 123987/390625 m2
}

func ExampleCatch() {
	widest := func(widths ...fraction.Length) (sum fraction.Length, err error) {
		defer fraction.Catch(&err)
		for _, w := range widths {
			sum = sum.Add(w)
		}
		return sum, nil
	}
	_, err := widest(fraction.Of(1, 1<<40), fraction.Of(1, 3<<40-1))
	var overflow *fraction.OverflowError
	fmt.Println(errors.As(err, &overflow), err)
	// Output: true exact result is beyond 64 bits: 1/1099511627776 + 1/3298534883327
}

// A calculation that may leave 64 bits, and one that returns an error: Catch makes the error of
// both.
func ExampleMust() {
	total := func(texts ...string) (sum fraction.Length, err error) {
		defer fraction.Catch(&err)
		for _, text := range texts {
			sum = sum.Add(fraction.Must(fraction.Parse(text, fraction.Inch)))
		}
		return sum, nil
	}
	fmt.Println(total("63 1/4", "1 3/8"))
	fmt.Println(total("63 1/4", "1 3/"))
	// Output:
	// 64 5/8 <nil>
	// 63 1/4 "1 3/": no number; write a length such as 63 1/4, 63-1/4, 63.25, 5' 3 1/4", 7/8, -1/2, 1606.55 mm or 160.6 cm
}
