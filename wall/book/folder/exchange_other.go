//go:build !linux

package folder

import "errors"

// exchange swaps two folders at once; only Linux can.
func exchange(a, b string) error { return errors.ErrUnsupported }
