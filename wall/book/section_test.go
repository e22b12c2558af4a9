package book

import (
	"encoding/csv"
	"html"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// The plan of the kitchen, three runs, is short enough to take along: at most 170 lines
// of 80 characters.
func TestKitchenIsShort(t *testing.T) {
	text := Text(examplePlans(t)["kitchen"])
	if lines := strings.Count(text, "\n"); lines > 170 {
		t.Errorf("%d lines", lines)
	}
	tooWide(t, text)
}

// What a job notes from the manual of a cooking appliance silences a doubt, so it stands with the cautions in the
// text, in short and in full, and in the book.
func TestManualsStand(t *testing.T) {
	p := examplePlans(t)["kitchen"]
	note := p.Runs[1].Cooking[0].Manual
	if note == "" {
		t.Fatal("the kitchen notes no manual")
	}
	for _, text := range []string{Part(p, Cautions, false), Part(p, Cautions, true), html.UnescapeString(string(fraction.Must(Files(p))[0].Body))} {
		if !strings.Contains(strings.Join(strings.Fields(text), " "), note) {
			t.Errorf("%q does not stand in %.200s", note, text)
		}
	}
}

// figures are the numbers in a text, a fraction with its whole number.
var figures = regexp.MustCompile(`\d+(?: \d+/\d+|/\d+|\.\d+)?`)

func numbers(text string) []string {
	return figures.FindAllString(strings.Join(strings.Fields(text), " "), -1)
}

func TestShortTextSaysNothingThatTheExplainedDoesNot(t *testing.T) {
	for name, p := range examplePlans(t) {
		for s := Result; s <= Cautions; s++ {
			known := numbers(Part(p, s, true))
			for _, n := range numbers(Part(p, s, false)) {
				if !slices.Contains(known, n) {
					t.Errorf("%s, %v: %s is in the short text alone", name, s, n)
				}
			}
		}
	}
}

func TestSectionsMakeTheText(t *testing.T) {
	for name, p := range examplePlans(t) {
		for explain, whole := range map[bool]string{false: Text(p), true: Explained(p)} {
			for s := Result; s <= Cautions; s++ {
				if part := Part(p, s, explain); !strings.Contains(whole, part) {
					t.Errorf("%s: the text lacks its section %v", name, s)
				}
			}
			tooWide(t, whole)
			if strings.ContainsAny(whole, "~[{") && regexp.MustCompile(`~|\[\[|\]\]|[{}]`).MatchString(whole) {
				t.Errorf("%s: a sign of the program's own is left", name)
			}
		}
	}
	if Part(plan.Plan{}, Cautions+1, false) != "" {
		t.Error("a section that is none says something")
	}
}

// With the short text alone each corner of each piece can be marked: every measure of a corner that
// is not on the edge of its sheet's part or on an arc, or so nearly in line that drawings leave it out, stands in
// the piece's lines.
func TestShortTextMarksEveryCorner(t *testing.T) {
	marked := 0
	for name, p := range examplePlans(t) {
		lines := "\n" + Part(p, Pieces, false)
		x := &text{tape: p.TapeMeasure()}
		for _, piece := range p.Pieces {
			if piece.Plain() {
				continue
			}
			_, part, ok := strings.Cut(lines, "\nPiece "+piece.Label+", ")
			part, _, _ = strings.Cut(part, "\nPiece ")
			known := numbers(part)
			run, _ := p.Run(piece.Run)
			outlines := []plan.HoleMarks{{Corners: piece.Marks.Corners}}
			rings := piece.Marks.Named(p.Snap)
			for r, o := range append(outlines, piece.Marks.Holes...) {
				for i, c := range o.Face {
					if inLine := rings[r][i].Name == "" && !(r > 0 && plan.Level(o.Face)); inLine || plan.ArcAt(piece.Marks.Arcs, c) != nil {
						continue
					}
					across := c.X
					if piece.Closing && run.SetOut.Direction == wall.Left {
						across = piece.Width.Sub(across)
					}
					for at, most := range map[fraction.Length]fraction.Length{across: piece.Width, c.Y: piece.Height} {
						if at.IsZero() || at == most {
							continue
						}
						for _, n := range numbers(x.length(at)) {
							if marked++; !ok || !slices.Contains(known, n) {
								t.Errorf("%s, piece %s: nothing says %s:\n%s", name, piece.Label, n, part)
							}
						}
					}
				}
			}
		}
	}
	if marked < 50 {
		t.Errorf("only %d measures of corners", marked)
	}
}

// The tables read back as CSV: a row for each row of the list, and one for each cut, whatever the
// names hold.
func TestTablesReadBack(t *testing.T) {
	for name, p := range examplePlans(t) {
		p.List.Rows = slices.Clone(p.List.Rows)
		p.List.Rows[0].Name = "a \"name\",\nof two lines"
		cuts, whole := 0, 0
		for _, s := range p.Sheets {
			if cuts += len(s.Cuts); len(s.Cuts) == 0 {
				whole += len(s.Placements)
			}
		}
		for table, want := range map[Table]int{BuyTable: len(p.List.Rows), CutsTable: cuts + whole} {
			rows, err := csv.NewReader(strings.NewReader(CSV(p, table))).ReadAll()
			if err != nil || len(rows) != want+1 {
				t.Errorf("%s, %v: %d rows, want %d and the head: %v", name, table, len(rows), want, err)
			}
			if table == BuyTable && !strings.Contains(rows[1][2], p.List.Rows[0].Name) {
				t.Errorf("%s: %q lacks the name", name, rows[1])
			}
		}
	}
	if CSV(plan.Plan{}, CutsTable+1) != "" {
		t.Error("a table that is none has rows")
	}
}

// inCutList reads a line of the cut list as a person does.
var inCutList = regexp.MustCompile(`^ *(\d+) \[ \] (crosscut|rip) (the sheet|the board|(\S.*?) x (\S.*?))( below| above| left of| right of)?( cut (\d+))?(: (.+?) off its (?:lower end|left edge)(?:, leaving .+?)?| at (.+?)(, which trims .+? off its (?:upper end|right edge))?)(?:; frees (.+))?$`)

// planed is a line of the cut list that takes off too little to saw; it is read as the cut that it stands for.
var planed = regexp.MustCompile(`plane (.+?) off the (lower end|left edge|upper end|right edge) of (.+?)(?:, to (.+?))?(; frees .+)?$`)

func asCut(line string) string {
	m := planed.FindStringSubmatch(line)
	if m == nil {
		return line
	}
	kind := either(strings.HasSuffix(m[2], "end"), "crosscut ", "rip ")
	cut := either(m[4] == "", ": "+m[1]+" off its "+m[2], " at "+m[4]+", which trims "+m[1]+" off its "+m[2])
	return strings.Replace(line, m[0], kind+m[3]+cut+m[5], 1)
}

// onBench is a part of a sheet while it is sawn.
type onBench struct {
	width, height fraction.Length
	cut           string // that it comes from
	side          string
}

// Who has the short text alone can saw every sheet: each line names one part that is there, and what it
// frees has the size that the list of pieces gives.
func TestShortTextSawsEverySheet(t *testing.T) {
	sawn := 0
	for name, p := range examplePlans(t) {
		tape := p.TapeMeasure()
		read := func(text string) fraction.Length {
			number, more, _ := strings.Cut(text, " plus ")
			number, less, _ := strings.Cut(number, " less ")
			return fraction.MustParse(number).Add(fraction.MustParse(or(more, "0"))).Sub(fraction.MustParse(or(less, "0")))
		}
		pieces := map[string]plan.Piece{}
		for _, piece := range p.Pieces {
			pieces[piece.Label] = piece
		}
		for _, s := range p.Sheets {
			kind, _ := p.StockNamed(s.Stock)
			parts := []onBench{{width: kind.Width, height: kind.Length}}
			text := unfolded(Part(plan.Plan{Profile: p.Profile, Units: p.Units, Tape: p.Tape, Saw: p.Saw, Stock: p.Stock, Pieces: p.Pieces, Sheets: []plan.Sheet{s}}, Cuts, false))
			for _, line := range strings.Split(text, "\n") {
				m := inCutList.FindStringSubmatch(asCut(line))
				if m == nil {
					continue
				}
				var at []int
				for i, part := range parts {
					whole := strings.HasPrefix(m[3], "the ") && len(parts) == 1
					named := m[4] == tape.Format(part.width) && m[5] == tape.Format(part.height) && (m[6] == "" || strings.TrimSpace(m[6]) == part.side && m[8] == part.cut)
					if whole || named {
						at = append(at, i)
					}
				}
				if len(at) != 1 {
					t.Fatalf("%s, sheet %d: %d parts on the bench for %q", name, s.Number, len(at), line)
				}
				part := parts[at[0]]
				parts = slices.Delete(parts, at[0], at[0]+1)
				near, beyond := part, part
				near.cut, beyond.cut = m[1], m[1]
				cut := func(length *fraction.Length, nearLength *fraction.Length) {
					if m[10] != "" {
						*nearLength, *length = fraction.Length{}, length.Sub(read(m[10]))
						return
					}
					*nearLength, *length = read(m[11]), length.Sub(read(m[11])).Sub(p.Saw.Kerf)
				}
				if m[2] == "rip" {
					near.side, beyond.side = "left of", "right of"
					cut(&beyond.width, &near.width)
				} else {
					near.side, beyond.side = "below", "above"
					cut(&beyond.height, &near.height)
				}
				for _, freed := range strings.Split(m[13], ", ") {
					if freed == "" {
						continue
					}
					words := strings.Fields(freed)
					free, side := &near, words[len(words)-1]
					if m[10] != "" || side == "above" || side == "right" {
						free = &beyond
					}
					piece := pieces[words[1]]
					if over := free.width.Sub(piece.Width); free.height != piece.Height || !over.IsZero() && !(piece.Closing && over.Sign() > 0) {
						t.Errorf("%s, sheet %d: %q leaves %v x %v, and the piece is %v x %v", name, s.Number, line, free.width, free.height, piece.Width, piece.Height)
					}
					*free = onBench{}
					sawn++
				}
				for _, left := range []onBench{near, beyond} {
					if left.width.Sign() > 0 && left.height.Sign() > 0 {
						parts = append(parts, left)
					}
				}
			}
		}
	}
	if sawn < 20 {
		t.Errorf("only %d pieces sawn", sawn)
	}
}

func or(text, other string) string {
	if text == "" {
		return other
	}
	return text
}

// unfolded joins the lines of a step.
func unfolded(text string) string { return strings.ReplaceAll(text, "\n       ", " ") }

// inPieceList reads a rectangle to saw out as a person does.
var inPieceList = regexp.MustCompile(`^  .*: (\S.*?) to (\S.*?) (across|from right), (\S.*?) to (\S.*?) up$`)

// What the short text has sawn out of a piece by rectangles alone leaves its shape: every corner of a
// rectangle that lies inside the piece's own is a corner of its shape, and the areas agree.
func TestShortTextShapesPiecesOfRectangles(t *testing.T) {
	plans := examplePlans(t)
	text, err := os.ReadFile("../../examples/kitchen.json")
	if err != nil {
		t.Fatal(err)
	}
	trim := `{"trim": {"top": {"name": "cap rail", "covers": "3/4"}, "bottom": {"name": "base strip", "covers": "3/4"}},`
	if plans["trimmed kitchen"], err = madePlan(strings.NewReader(strings.Replace(string(text), "{", trim, 1))); err != nil {
		t.Fatal(err)
	}
	shaped := 0
	for name, p := range plans {
		for _, piece := range p.Pieces {
			shown := p
			shown.Pieces = []plan.Piece{piece}
			area := piece.Width.Times(piece.Height)
			lines := strings.Split(Part(shown, Pieces, false), "\n")
			from := slices.IndexFunc(lines, func(line string) bool { return strings.HasPrefix(line, "Piece ") })
			plain := true
			for _, line := range lines[from+1:] {
				m := inPieceList.FindStringSubmatch(line)
				if plain = plain && (m != nil || !strings.HasPrefix(line, "  ")); m == nil {
					continue
				}
				var at [4]fraction.Length
				for i, text := range []string{m[1], m[2], m[4], m[5]} {
					at[i] = fraction.MustParse(text)
				}
				if m[3] == "from right" {
					at[0], at[1] = piece.Width.Sub(at[1]), piece.Width.Sub(at[0])
				}
				area = area.Sub(at[1].Sub(at[0]).Times(at[3].Sub(at[2])))
				for _, corner := range []plan.Point{{X: at[0], Y: at[2]}, {X: at[1], Y: at[2]}, {X: at[1], Y: at[3]}, {X: at[0], Y: at[3]}} {
					inside := corner.X.Sign() > 0 && corner.X.Less(piece.Width) && corner.Y.Sign() > 0 && corner.Y.Less(piece.Height)
					known := slices.Contains(piece.Outline, corner)
					for _, h := range piece.Holes {
						known = known || slices.Contains(h.Outline, corner)
					}
					if inside && !known {
						t.Errorf("%s, piece %s: no corner at %v:\n%s", name, piece.Label, corner, line)
					}
				}
			}
			if !plain || len(piece.Marks.Order) == 0 {
				continue
			}
			shaped++
			shape, err := cutout.NewShape(piece.Outline)
			for _, h := range piece.Holes {
				if err == nil {
					shape = fraction.Must(shape.Minus(h.Outline))[0]
				}
			}
			if err != nil || fraction.Must(shape.Area()) != area {
				t.Errorf("%s, piece %s: the lines leave %v, the piece has %v, %v:\n%s", name, piece.Label, area, fraction.Must(shape.Area()), err, strings.Join(lines, "\n"))
			}
		}
	}
	if shaped < 5 {
		t.Errorf("only %d pieces shaped", shaped)
	}
}

// No name of a job becomes a formula in a spreadsheet; numbers stay numbers. The characters are those
// that the OWASP page "CSV Injection" lists, from memory.
func TestNoCellIsAFormula(t *testing.T) {
	for cell, want := range map[string]bool{"=1+1": true, "+1": true, "-cmd": true, "@SUM(A1)": true, "\t=1": true, "\r=1": true, "＝1": true, "-": true, "-1+2": true,
		"": false, "-1/2": false, "-1 1/2": false, "-12.5": false, "1": false, "sheet": false, "a=b": false, "'=1": false} {
		if got := formula(cell); got != want {
			t.Errorf("formula(%q) = %v", cell, got)
		}
	}
	p := examplePlans(t)["kitchen"]
	p.Sheets, p.List.Rows = slices.Clone(p.Sheets), slices.Clone(p.List.Rows)
	p.Sheets[0].Stock, p.List.Rows[0].Container = "=HYPERLINK(1)", "@pack"
	for table, want := range map[Table]string{BuyTable: "'@pack", CutsTable: "'=HYPERLINK(1)"} {
		if got := CSV(p, table); !strings.Contains(got, want) {
			t.Errorf("no %s in\n%s", want, got)
		}
	}
}
