// Command join plans the job on standard input, prints the plan, and draws its first run
// into the folder that it is run in.
package main

import (
	"context"
	"fmt"
	"io"
	"log"
	"os"

	"example.com/groovewright/wall/book"
	"example.com/groovewright/wall/drawing"
	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
)

func main() {
	if err := join(os.Stdin, os.Stdout, "."); err != nil {
		log.Fatal(err)
	}
}

func join(job io.Reader, text io.Writer, dir string) error {
	j, err := jobfile.Read(job)
	if err != nil {
		return err
	}
	p, err := plan.Make(context.Background(), j, plan.Options{})
	if err != nil {
		return err
	}
	picture, err := drawing.Elevation(p, 0)
	if err != nil {
		return err
	}
	fmt.Fprint(text, book.Text(p))
	return os.WriteFile(dir+"/"+picture.Name+".svg", picture.SVG(), 0o644)
}
