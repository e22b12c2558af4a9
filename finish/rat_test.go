package finish_test

import (
	"math/big"

	"example.com/groovewright/finish"
)

func rat(text string) *big.Rat {
	x, ok := new(big.Rat).SetString(text)
	if !ok {
		panic(text)
	}
	return x
}

func unit(name string) *big.Rat { return finish.Units[name] }

func mul(a ...*big.Rat) *big.Rat {
	p := rat("1")
	for _, x := range a {
		p.Mul(p, x)
	}
	return p
}

func quo(a, b *big.Rat) *big.Rat { return new(big.Rat).Quo(a, b) }

// ounces is a volume in US fluid ounces.
func ounces(n string) *big.Rat { return mul(rat(n), unit("fl oz")) }
