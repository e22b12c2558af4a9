package fraction

// OverflowError says that the exact result of an operation does not fit: in lowest terms its
// numerator or its denominator is beyond math.MaxInt64. Arithmetic panics with a *OverflowError,
// and [Catch] makes an error of it.
type OverflowError struct {
	Operation   string // as it is written between the operands, such as "+" or "mod"
	Left, Right string // the operands
}

// Error says which operation did not fit.
func (e *OverflowError) Error() string {
	return "exact result is beyond 64 bits: " + e.Left + " " + e.Operation + " " + e.Right
}

// ZeroDivisorError says that a number was to be divided by zero. Division, Mod, DivMod and Circular
// panic with a *ZeroDivisorError, and [Catch] makes an error of it.
type ZeroDivisorError struct {
	Dividend string // as String writes it
}

// Error says what was to be divided.
func (e *ZeroDivisorError) Error() string { return "division of " + e.Dividend + " by zero" }

// Catch turns a panic of this package's arithmetic, or of [Must], into an error, and lets every
// other panic pass. It stands at the entry points of packages that calculate:
//
//	func Plan(room Room) (plan Layout, err error) {
//		defer fraction.Catch(&err)
//		…
func Catch(err *error) {
	switch caught := recover().(type) {
	case nil:
	case thrown:
		*err = caught.error
	case *OverflowError, *ZeroDivisorError:
		*err = caught.(error)
	default:
		panic(caught)
	}
}

// Must returns v, and panics where there is an error. It is for calculations on whose behalf
// [Catch] is deferred, which makes the same error of the panic again.
func Must[T any](v T, err error) T {
	if err != nil {
		panic(thrown{err})
	}
	return v
}

// thrown is what Must panics with.
type thrown struct{ error }

// The panics stand in functions of their own, so that the arithmetic around them stays short.

//go:noinline
func overflow(operation string, a, b value) {
	panic(&OverflowError{operation, a.string(), b.string()})
}

//go:noinline
func divideByZero(a value) {
	panic(&ZeroDivisorError{a.string()})
}
