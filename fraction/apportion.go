package fraction

import "math/big"

// Apportion rounds numbers so that they add up to sum, by the method of largest remainders: each goes to the nearest whole
// number, a half away from zero, and what then lacks of the sum, or is too much, goes by ones to those that it brings nearest to
// what they are, the first of these. Where sum is their exact one rounded, in whatever direction, each is less than one off.
func Apportion(parts []*big.Rat, sum *big.Int) []*big.Int {
	whole, lack := make([]*big.Int, len(parts)), new(big.Int).Set(sum)
	for i, x := range parts {
		whole[i], _ = new(big.Int).SetString(x.FloatString(0), 10)
		lack.Sub(lack, whole[i])
	}
	step := big.NewInt(int64(lack.Sign()))
	short := func(i int) *big.Rat { // by how much part i is short of what it is, in the direction of a step
		off := new(big.Rat).SetInt(whole[i])
		return off.Mul(off.Sub(parts[i], off), new(big.Rat).SetInt(step))
	}
	for ; lack.Sign() != 0 && len(parts) > 0; lack.Sub(lack, step) {
		best := 0
		for i := range parts {
			if short(i).Cmp(short(best)) > 0 {
				best = i
			}
		}
		whole[best].Add(whole[best], step)
	}
	return whole
}
