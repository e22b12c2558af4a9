package book

import (
	"fmt"
	"html/template"
	"slices"
	"strconv"
)

// chapter is a part of the book: its name in the page, its title, and the numbers of its leaves, since
// browsers cannot number the pages of a print reliably. A part without leaves of its own is leaf A1, A2 …
type chapter struct{ ID, Title, Leaves string }

// contents lists the parts of the book in their order.
func (b *page) contents() (all []chapter) {
	p, general := b.Plan, 0
	add := func(needed bool, id, title, leaves string) {
		if needed && leaves == "" {
			general++
			leaves = fmt.Sprint("A", general)
		}
		if needed {
			all = append(all, chapter{id, title, leaves})
		}
	}
	var runs, clad []string
	for i, run := range p.Runs {
		if runs = append(runs, strconv.Itoa(i+1)); !run.Bare() {
			clad = append(clad, strconv.Itoa(i+1))
		}
	}
	add(len(p.Runs) > 0, "room", "The room at a glance", "")
	add(true, "shopping", "Shopping list", "")
	add(len(p.Warnings) > 0, "doubts", "Doubts to settle first", "")
	add(len(p.Taped) > 0, "taped", "Points from taped distances", "")
	add(true, "cautions", "Cautions", "")
	add(true, "order", "Order of work", "")
	add(true, "runs", "Runs, one by one", leaves("E", runs))
	add(true, "details", "Ends, corners, sections and marks", leaves("D", clad))
	add(true, "cutlist", "Cut list", "")
	add(true, "sheets", capital(sheetWord(p))+"s", leaves("S", b.sheets))
	add(len(b.odd)+len(slanted(p)) > 0, "odd", "Odd pieces", leaves("P", b.odd))
	add(len(p.Pieces) > 0, "labels", "Labels for the backs, to cut out", "")
	add(len(p.Cautions) > 0, "full", "Cautions in full", "")
	add(true, "looks", "Looks, and why so", "")
	return all
}

// chapter returns a part of the book; the zero chapter where the book has none.
func (b *page) chapter(id string) (found chapter) {
	all := b.contents()
	if i := slices.IndexFunc(all, func(c chapter) bool { return c.ID == id }); i >= 0 {
		found = all[i]
	}
	return found
}

// heading is that of a part of the book, with its leaf where it has no leaves of its own.
func (b *page) heading(id string) template.HTML {
	c, no := b.chapter(id), ""
	if c.Leaves != "" && c.Leaves[0] == 'A' {
		no = `<span class="no">` + c.Leaves + `</span> `
	}
	return template.HTML(fmt.Sprintf(`<h2 id="h-%s">%s%s</h2>`, id, no, template.HTMLEscapeString(c.Title)))
}
