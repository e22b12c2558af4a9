package book

import (
	"html/template"
	"regexp"
	"strconv"
	"strings"
)

// chapter is a part of the book: its name in the page, its title, and the numbers of its leaves, since
// browsers cannot number the pages of a print reliably. A part without leaves of its own is leaf A1, A2 …
type chapter struct{ ID, Title, Leaves string }

// contents lists the parts of the book in their order.
func (b *page) contents() (all []chapter) {
	p, general := b.Plan, 0
	var runs, clad []string
	for i, run := range p.Runs {
		if runs = append(runs, strconv.Itoa(i+1)); !run.Bare() {
			clad = append(clad, runs[i])
		}
	}
	missing := map[string]bool{"room": len(p.Runs) == 0, "doubts": len(p.Warnings) == 0, "taped": len(p.Taped) == 0,
		"odd": len(b.odd)+len(slanted(p)) == 0, "labels": len(p.Pieces) == 0, "full": len(p.Cautions) == 0}
	for _, c := range []chapter{{"room", "The room at a glance", ""}, {"shopping", "Shopping list", ""}, {"doubts", "Doubts to settle first", ""},
		{"taped", "Points from taped distances", ""}, {"cautions", "Cautions", ""}, {"order", "Order of work", ""},
		{"runs", "Runs, one by one", either(len(runs) > 1, "R1, ", "") + leaves("E", runs)}, {"details", "Ends, corners, sections and marks", leaves("D", clad)}, {"cutlist", "Cut list", ""},
		{"sheets", capital(sheetWord(p)) + "s", leaves("S", b.sheets)}, {"odd", "Odd pieces", leaves("P", b.odd)},
		{"full", "Cautions in full", ""}, {"looks", "Looks, and why so", ""}, {"labels", "Labels for the backs, to cut out", ""}} {
		if missing[c.ID] {
			continue
		}
		if c.Leaves == "" {
			general++
			c.Leaves = "A" + strconv.Itoa(general)
		}
		all = append(all, c)
	}
	return all
}

// chapter returns a part of the book; the zero chapter where the book has none.
func (b *page) chapter(id string) (found chapter) {
	for _, c := range b.Contents {
		if c.ID == id {
			found = c
		}
	}
	return found
}

// heading is that of a part of the book; of one without leaves of its own with its leaf, to stand on each
// page of a print that it goes on to.
func (b *page) heading(id string) template.HTML {
	c := b.chapter(id)
	title := template.HTMLEscapeString(c.Title) + "</h2>"
	if strings.HasPrefix(c.Leaves, "A") {
		return template.HTML(`<div class="head"><h2 id="h-` + id + `"><span class="no">` + c.Leaves + `</span> ` + title + `</div>`)
	}
	return template.HTML(`<h2 id="h-` + id + `">` + title)
}

var eachNumber = regexp.MustCompile(`\b\d`)

// leaves names the leaves of a kind for some numbers: E1 to E3, E5.
func leaves(letter string, numbers []string) string {
	return eachNumber.ReplaceAllString(ranges(numbers), letter+"$0")
}
