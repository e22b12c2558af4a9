package book

import (
	"cmp"
	"fmt"
	"html/template"
	"slices"
	"strings"
)

// sign is a sign of the drawings: what of the markup shows it, how it looks, what it means, and the class of what
// only one of the two widths of a drawing has.
type sign struct {
	mark         string
	Ink          template.HTML
	Words, Class string
}

// signs are those that some drawings have, in the order of a legend; the small ones are as drawn for a phone.
func (b *page) signs(small []string, names ...string) []sign {
	f, p := b.Plan.Fixing, b.Plan.Profile
	const lines = `<path class="hatch" d="M18 1l-8 12M26 1l-8 12M34 1l-8 12"/>`
	const hatched, offcut = `<path class="opening" fill="none" d="M6 1h32v12h-32z"/>` + lines, `<path class="offcut" fill="none" d="M6 1h32v12h-32z"/>`
	glue := fmt.Sprintf("adhesive in %s of %s, at most %s apart", f.Glue, b.unbroken(f.GlueSize), b.unbroken(f.GlueSpacing))
	nails := fmt.Sprintf("nails on supports, at most %s apart on the outer ones, %s on others, at least %s from edges", b.unbroken(f.Edge), b.unbroken(f.Field), b.unbroken(f.Inset))
	if f.Level {
		crossings := " where a board crosses a support, at most " + b.unbroken(f.Supports) + " apart"
		glue, nails = "adhesive"+crossings, "nails"+crossings+", at least "+b.unbroken(f.Inset)+" from edges"
	}
	nails += either(b.Plan.InWall(), ", "+b.unbroken(f.Clear)+" from openings for cables or pipes", "")
	every := []sign{
		{`class="seam"`, `<path class="seam" d="M22 0V14"/>`, "seam of two " + p.Word("panels", "boards"), ""},
		{`class="datum"`, `<path class="datum" d="M0 11H44"/><path class="startmark" d="M22 11l-5 -8h10z"/>`, "level datum, heights from it", ""},
		{`class="strip"`, `<path class="strip" d="M2 7H42"/>`, "middle of a level strip behind the boards, which openings cut off", ""},
		{`class="height"`, `<path class="lead height" d="M22 14V8l-4 -6"/>`, "height over the datum, at the station that it leads to", ""},
		{`class="start"`, `<circle class="startmark" cx="6" cy="7" r="4"/><path class="start" d="M6 7H34"/><path class="startmark" d="M42 7l-9 -4v8z"/>`, "start, and which way to work", ""},
		{`class="flawtext"`, `<path class="flaw" d="M13 7l9 -6l9 6l-9 6z"/>`, "blemish, by its number in the table of leaf " + b.chapter("looks").Leaves, ""},
		{`class="halo taped"`, `<circle class="startmark" cx="22" cy="7" r="1.9"/>`, "corner of an opening, by its number among the points from taped distances", ""},
		{`<rect class="tag"`, `<path class="tag" d="M6 1h32v12h-32z"/>`, "number of a piece, name of an opening", ""},
		{`<circle class="tag"`, `<circle class="tag" cx="22" cy="7" r="6"/>`, "corner of two runs, by its letter", ""},
		{`class="bead"`, `<path class="bead" d="M18 0h8v14h-8z"/>`, "bead", ""},
		{`class="groove"`, `<path class="groove" d="M18 0h8v14h-8z"/>`, "groove", ""},
		{`-opening)`, hatched, "opening", ""},
		{`-installed)`, template.HTML(strings.NewReplacer("l-8 12", "l8 12", "M18", "M10", "M26", "M18", "M34", "M26").Replace(hatched)), "on the wall already", ""},
		{`class="cut"`, `<path class="cut" d="M2 7H42"/>`, "line of the saw", ""},
		{`class="cutnumber"`, `<circle class="cutnumber" cx="22" cy="7" r="6"/>`, "cut, by its number in the order of sawing", ""},
		{"l4 6h-8z", `<path class="edge" d="M22 13V1m-4 5l4 -5l4 5"/>`, "top of the piece is up", ""},
		{"l4 -6h-8z", `<path class="edge" d="M22 1v12m-4 -5l4 5l4 -5"/>`, "top of the piece is down: it lies turned", ""},
		{`class="edge" cx`, `<circle class="edge" cx="22" cy="7" r="3"/><path class="lead" d="M16 7h12M22 1v12"/>`, "middle of an arc", ""},
		{`class="startmark radius"`, `<path class="lead" d="M4 7h30"/><path class="startmark radius" d="M40 7l-8 -3v6z"/>`, "radius, toward its arc", ""},
		{`class="finish"`, `<path class="edge" d="M2 7H42"/><path class="finish" d="M2 7H42"/>`, "edge of the finished piece, where it is scribed", ""},
		{`class="miter"`, `<path class="hatch" d="M18 3l3 -3M25 3l3 -3M32 3l3 -3M39 3l3 -3"/><path class="miter" d="M40 12H6l9 -9H40"/>`, "section of a miter from above, the wall's side hatched", ""},
		{`r="1.9"`, `<circle class="startmark" cx="22" cy="7" r="1.9"/>`, "corner or other place with its measures in the table", ""},
		{`-now)`, `<path class="edge board" d="M6 1h32v12h-32z"/>` + template.HTML(strings.Replace(lines, "hatch", "edge", 1)), "fitted in this step", ""},
		{`-now)`, `<path class="edge board" d="M6 1h32v12h-32z"/>`, "fitted before it", ""},
		{`-now)`, `<path class="wall" d="M6 1h32v12h-32z"/>`, "bare wall", ""},
		{`-waste)`, hatched, "sawn out later", ""},
		{`-offcut)`, offcut, "left over", ""},
		{`-scribe)`, offcut + lines, "left on to scribe: cuts run on across it", ""},
		{`class="ring"`, `<rect class="ring" x="6" y="1" width="32" height="12" rx="6"/>`, "drawn again as a detail, larger", ""},
		{`class="drill"`, `<circle class="drill" cx="22" cy="7" r="4"/><path class="lead" d="M18 7h8M22 3v8"/>`, "starter hole", ""},
		{`class="weak"`, `<path class="weak" d="M22 2l5 9h-10z"/>`, "weak spot", ""},
		{`class="glue"`, `<path class="glue" stroke-width="4" d="M4 7H40"/>`, glue, ""},
		{`class="nail"`, `<path class="nail" d="M19 4l6 6m0 -6l-6 6"/>`, nails, ""},
	}
	var kept []sign
	for _, s := range every {
		wide, narrow := false, false
		for _, name := range names {
			phone := cmp.Or(b.drawn[name].small, b.drawn[name].wide)
			large := either(slices.Contains(small, name), phone, b.drawn[name].wide)
			narrow = narrow || strings.Contains(phone, s.mark)
			wide = wide || strings.Contains(large, s.mark)
		}
		if s.Class = either(wide == narrow, "", either(wide, "across", "onphone")); wide || narrow {
			kept = append(kept, s)
		}
	}
	return kept
}
