package book

import (
	"html"
	"html/template"
	"slices"
	"strings"

	"example.com/groovewright/fraction"
)

// sign is a sign of the drawings: what of the markup shows it, how it looks, what it means, and the class of what
// only one of the two widths of a drawing has.
type sign struct {
	mark         string
	Ink          template.HTML
	Words, Class string
}

// legend reads all signs of the drawings.
func (b *page) legend() (all []sign) {
	for row := range strings.Lines(string(fraction.Must(execute("legend.tmpl", b.funcs(), b)))) {
		if part := strings.Split(strings.TrimSpace(row), " | "); len(part) == 3 {
			all = append(all, sign{mark: part[0], Ink: template.HTML(part[1]), Words: html.UnescapeString(part[2])})
		}
	}
	return all
}

// signs are those that some drawings have; the small ones are as drawn for a phone.
func (b *page) signs(small []string, names ...string) (kept []sign) {
	for i, s := range b.every {
		wide, narrow := false, false
		for _, name := range names {
			has := b.drawn[name].shown[either(slices.Contains(small, name), 1, 0):]
			wide, narrow = wide || has[0].signs[i], narrow || has[len(has)-1].signs[i]
		}
		if s.Class = either(wide == narrow, "", either(wide, "across", "onphone")); wide || narrow {
			kept = append(kept, s)
		}
	}
	return kept
}
