package book

import (
	"encoding/csv"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/drawing"
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
// is not on the edge of its sheet's part or on an arc stands in the piece's lines.
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
			for _, o := range append(outlines, piece.Marks.Holes...) {
				for _, c := range o.Face {
					if drawing.OnArc(piece, c) {
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
