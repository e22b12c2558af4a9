package book

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/warning"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall/plan"
)

// Check says what a sound job file holds and what is doubtful in it.
func Check(j plan.Job, doubts []warning.Warning) string {
	return written(fraction.Tape{Mark: j.Room.Mark, Unit: j.Units}, true, func(t *text) {
		t.para(fmt.Sprintf("%s: %s, profile %s, %s of stock; every field is sound.", cmp.Or(j.Title, "The job"), count(len(j.Room.Runs), "run"),
			j.Room.Profile.Name, count(len(j.Room.Stock), "kind")))
		taped, _ := j.Located() // of a sound job they are where they were found before
		for _, p := range taped {
			t.hang("  ", fmt.Sprintf("%s: taped point at %s from the run's left end, %s up", pointName(p), t.length(p.At.X), t.length(p.At.Y)))
		}
		again := count(len(doubts), "measurement") + " to look at again:"
		t.para(either(len(doubts) > 0, again, "Nothing in the measurements looks doubtful."))
		for _, d := range doubts {
			t.hang("  ! ", t.warned(d))
		}
	})
}

// Profiles lists profiles, each with one repeat from left to right.
func Profiles(profiles []groove.Profile) string {
	return written(fraction.Tape{}, true, func(t *text) {
		for _, p := range profiles {
			t.tape = fraction.Tape{Mark: fraction.Of(1, 64)}
			if _, off := cmp.Or(p.Pitch(), p.Thickness).Round(t.tape.Mark, fraction.Nearest); !off.IsZero() {
				t.tape = fraction.Tape{Mark: fraction.Millimetres(1, 10), Unit: fraction.Millimetre}
			}
			t.gap()
			repeats := either(len(p.Features) == 0, "no pattern", "repeats every "+t.length(p.Pitch()))
			t.para(fmt.Sprintf("%s: %s, %s thick", p.Name, repeats, t.length(p.Thickness)))
			var rows [][]string
			for i, f := range p.Features {
				deep := either(f.Depth.IsZero(), "", t.length(f.Depth)+" deep")
				rows = append(rows, []string{strconv.Itoa(i + 1), f.Kind.String(), t.length(f.Width) + " wide", deep})
			}
			t.table(4, nil, rows)
			if p.Turns() {
				t.hang("    ", "its own mirror image: a piece may be turned end for end")
			}
			if p.WideFlats {
				t.hang("    ", "wide flats: one that is cut to half its width or more does not show")
			}
			if p.Boards {
				t.hang("    ", "each repeat is a board of its own; its joints are the pattern")
			}
			t.hang("    ", sold(t, p))
			if p.Source != "" {
				t.hang("    ", p.Status.String()+"; figures: "+p.Source)
			}
		}
	})
}

// sold says how a sheet or board is sold and how its edges meet, as far as that is known.
func sold(t *text, p groove.Profile) string {
	var says []string
	say := func(known bool, what string) {
		if known {
			says = append(says, what)
		}
	}
	say(!p.Cover.IsZero(), "covers "+t.length(p.Cover))
	say(!p.Width.IsZero() && p.Width != p.Cover, t.length(p.Width)+" wide overall")
	say(p.Edges != groove.EdgesUnknown, p.Edges.String()+" edges")
	say(p.Tongue != groove.TongueUnknown, "tongue at the "+p.Tongue.String())
	say(!p.Lap.IsZero(), "lap "+t.length(p.Lap))
	if len(p.Lengths) > 0 {
		lengths := make([]string, len(p.Lengths))
		for i, l := range p.Lengths {
			lengths[i] = t.length(l)
		}
		say(true, "sold in lengths of "+strings.Join(lengths, ", "))
	}
	return strings.Join(says, ", ")
}
