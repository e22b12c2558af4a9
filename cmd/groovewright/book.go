package main

import (
	"example.com/groovewright/cmd/groovewright/internal/draw"
	"example.com/groovewright/cmd/groovewright/internal/plan"
)

// bookFiles returns the files of a plan's job book, the book itself first.
// Nothing is written here: whoever calls it does, whole files or none.
func bookFiles(p plan.Plan) ([]draw.File, error) {
	return draw.Book(p)
}
