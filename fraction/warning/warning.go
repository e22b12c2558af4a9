// Package warning has the one value by which every package says that something is sound and yet
// looks like a mistake, or should be thought over before anything is cut.
//
// A [Warning] holds facts and no sentence: its kind says which facts to expect. Each package
// declares the kinds it raises; wall/book has the words for all of them.
package warning

import (
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
)

// Kind says what looks like a mistake, such as "top jump".
type Kind string

// Warning is one thing to think over. The declaration of its kind says which of the facts there
// are, and in what order.
type Warning struct {
	Path    fault.Path        `json:"path"` // of the field or the thing that it concerns
	Kind    Kind              `json:"kind"`
	Names   []string          `json:"names,omitempty"`   // of runs, openings, boxes and the like
	Lengths []fraction.Length `json:"lengths,omitempty"` // inches
	Counts  []int             `json:"counts,omitempty"`  // how many of something, or its number
}
