package book

import (
	"cmp"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction/enum"
	"example.com/groovewright/wall/plan"
)

// Section is a part of the text of a plan.
type Section uint8

// The sections in order of use.
const (
	Result   Section = iota // what to buy, what is proved, the flaws that are most seen
	Doubts                  // what to measure again or think over before anything is bought
	Buy                     // the shopping list
	SetOut                  // where the pattern of each run starts, and the marks of its story pole
	Cuts                    // the cuts of each sheet
	Pieces                  // what is marked, drilled and sawn on each piece
	Order                   // of the work
	Cautions                // in short
)

var sections = enum.Of[Section]("result", "doubts", "buy", "setout", "cuts", "pieces", "order", "cautions")

// String returns the word of the section, or its number in brackets where it has none.
func (s Section) String() string { return sections.String(s) }

// MarshalText writes the word of the section, and fails where it has none.
func (s Section) MarshalText() ([]byte, error) { return sections.Marshal(s) }

// UnmarshalText reads the word of a section.
func (s *Section) UnmarshalText(text []byte) error { return sections.Unmarshal(text, s) }

// sectionWriters write the sections, none where it has nothing to say.
var sectionWriters = [...]func(t *text, p plan.Plan){
	Result: (*text).result,
	Doubts: func(t *text, p plan.Plan) {
		section(t, "Settle these before you buy", t.doubts(p), func(_ int, d doubt) {
			t.hang("! ", placed(cmp.Or(placeName(p, d.Warning), place(d.Warning)), d.Says))
		})
		if t.full {
			t.taped(p.Taped)
		}
	},
	Buy: (*text).shopping,
	SetOut: func(t *text, p plan.Plan) {
		section(t, "Setting out, each run from its left end", p.Runs, func(i int, r plan.Run) {
			for _, says := range []string{asTaped(p), t.meeting(p)} {
				if i == 0 && says != "" {
					t.para(says)
				}
			}
			t.run(p, i, r)
		})
	},
	Cuts:   (*text).sheets,
	Pieces: (*text).pieces,
	Order: func(t *text, p plan.Plan) {
		section(t, "Order of work", p.Order, func(i int, s finish.Step) { t.step("", i+1, step(p, s, t.full)) })
	},
	Cautions: func(t *text, p plan.Plan) {
		section(t, "Cautions", p.Cautions, func(_ int, c finish.Caution) {
			t.hang("! ", either(t.full, Caution(p, c), cautioned(p, c).First))
			for _, note := range t.manuals(p, c) {
				t.hang("  ", note)
			}
		})
	},
}

// Text returns the plan as a person takes it to the workshop, all sections in order of use: what is
// needed to buy, saw, mark and fit, in short.
func Text(p plan.Plan) string { return all(p, false) }

// Explained returns the text of [Text] and, in each section, what stands behind it: how each
// quantity was calculated, what was proved, where figures come from, the corners of each piece on its
// back, every flaw, and the cautions in full.
func Explained(p plan.Plan) string { return all(p, true) }

func all(p plan.Plan, full bool) string {
	return written(p.TapeMeasure(), full, func(t *text) {
		t.heading(cmp.Or(p.Title, "Panelling plan"))
		for _, write := range sectionWriters {
			write(t, p)
		}
	})
}

// Part returns one section of [Text], or of [Explained], which is empty where there is nothing to say.
func Part(p plan.Plan, s Section, explain bool) string {
	if int(s) >= len(sectionWriters) {
		return ""
	}
	return written(p.TapeMeasure(), explain, func(t *text) { sectionWriters[s](t, p) })
}
