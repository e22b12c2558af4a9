package main

import (
	"example.com/groovewright/wall/drawing"
	"example.com/groovewright/wall/plan"
)

// drawBook returns the files of a plan's job book, the book itself first.
// Nothing is written here: whoever calls it does, whole files or none.
func drawBook(p plan.Plan) ([]file, error) {
	drawn, err := drawing.Book(p)
	if err != nil {
		return nil, err
	}
	var files []file
	for _, f := range drawn {
		files = append(files, file{f.Name, f.Body})
	}
	return files, nil
}
