package enum_test

import (
	"encoding/json"
	"fmt"

	"example.com/groovewright/fraction/enum"
)

type Color uint8

const (
	Red Color = iota
	Green
)

var colors = enum.Of[Color]("red", "green")

func (c Color) String() string                   { return colors.String(c) }
func (c Color) MarshalText() ([]byte, error)     { return colors.Marshal(c) }
func (c *Color) UnmarshalText(text []byte) error { return colors.Unmarshal(text, c) }

func Example() {
	data, err := json.Marshal([]Color{Red, Green})
	fmt.Println(string(data), err, Color(7))
	var c Color
	fmt.Println(c.UnmarshalText([]byte("blue")))
	// Output:
	// ["red","green"] <nil> (7)
	// "blue": want one of red, green
}
