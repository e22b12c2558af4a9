package money_test

import (
	"encoding/json"
	"fmt"

	"example.com/groovewright/fraction/money"
)

func ExampleParse() {
	price, err := money.Parse("24.98")
	data, _ := json.Marshal([]money.Amount{price, {}})
	fmt.Println(price, err, string(data))
	_, err = money.Parse("-1")
	fmt.Println(err == money.ErrSyntax)
	// Output:
	// 24.98 <nil> ["24.98",null]
	// true
}
