package wall

import "fmt"

// FieldError says which field of a room makes no sense and what was expected.
type FieldError struct {
	Path string // such as runs[1].heights[2].top
	Want string // what was expected
}

func (e *FieldError) Error() string { return e.Path + ": " + e.Want }

// NoLayoutError says why no layout covers a run.
type NoLayoutError struct {
	Run string // its name
	Why string
}

func (e *NoLayoutError) Error() string {
	return fmt.Sprintf("run %q cannot be panelled: %s", e.Run, e.Why)
}
