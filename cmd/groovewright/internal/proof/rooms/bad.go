package rooms

// BadJob is an input that must be refused.
type BadJob struct {
	Name string
	JSON string
	Exit int    // 2: the input is wrong; 1: it cannot be done as given
	Path string // stands in the message; empty where the input has no fields
}

// Bad returns the table.
func Bad() []BadJob { return nil }
