package book

import (
	"runtime"
	"slices"
	"strings"
	"sync"

	"example.com/groovewright/wall/drawing"
)

// rendered is a picture and its markup, as it is and as drawn for a phone, if it is.
type rendered struct {
	drawing.Picture
	shown []markup
}

// markup is that of a picture, and which signs of the legends it has.
type markup struct {
	text  string
	signs []bool
}

// render makes the markup of a picture, once.
func (b *page) render(pic drawing.Picture) rendered {
	all := []markup{b.written(pic)}
	if narrow, ok := pic.Narrow(); ok {
		all = append(all, b.written(narrow))
	}
	return rendered{pic, all}
}

// written writes a picture and looks for its signs: most are classes, which are read at once.
func (b *page) written(pic drawing.Picture) markup {
	all, classes := markup{string(pic.Element()), make([]bool, len(b.every))}, map[string]bool{} // in their quotation marks
	for _, part := range strings.Split(all.text, " class=") {
		classes[part[:strings.Index(part[1:], `"`)+2]] = true
	}
	for i, s := range b.every {
		class, ok := strings.CutPrefix(s.mark, "class=")
		all.signs[i] = classes[class] || !(ok && strings.HasSuffix(class, `"`)) && strings.Contains(all.text, s.mark)
	}
	return all
}

// inParallel does something for each of some things on all processors. What panics there panics here.
func inParallel[T any](all []T, do func(T)) {
	var workers sync.WaitGroup
	slots, caught := make(chan struct{}, runtime.GOMAXPROCS(0)), make([]any, len(all))
	for i, one := range all {
		slots <- struct{}{}
		workers.Go(func() {
			defer func() { caught[i] = recover(); <-slots }()
			do(one)
		})
	}
	workers.Wait()
	if i := slices.IndexFunc(caught, func(c any) bool { return c != nil }); i >= 0 {
		panic(caught[i])
	}
}
