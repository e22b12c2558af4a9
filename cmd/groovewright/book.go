package main

import (
	"example.com/groovewright/cmd/groovewright/internal/draw"
	"example.com/groovewright/cmd/groovewright/internal/plan"
)

// drawBook returns the files of a plan's job book, the book itself first.
// Nothing is written here: whoever calls it does, whole files or none.
func drawBook(p plan.Plan) ([]file, error) {
	drawn, err := draw.Book(p)
	if err != nil {
		return nil, err
	}
	var files []file
	for _, f := range drawn {
		files = append(files, file{f.Name, f.Body})
	}
	return files, nil
}
