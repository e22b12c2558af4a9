package book

import (
	"encoding/csv"
	"strconv"
	"strings"

	"example.com/groovewright/fraction/enum"
	"example.com/groovewright/wall/plan"
)

// Table is a table of a plan that [CSV] writes.
type Table uint8

// The tables.
const (
	BuyTable  Table = iota // a row for each row of the shopping list
	CutsTable              // a row for each cut, in the order of sawing, and for a sheet that is used whole
)

var tables = enum.Of[Table]("buy", "cuts")

// String returns the word of the table, or its number in brackets where it has none.
func (t Table) String() string { return tables.String(t) }

// MarshalText writes the word of the table, and fails where it has none.
func (t Table) MarshalText() ([]byte, error) { return tables.Marshal(t) }

// UnmarshalText reads the word of a table.
func (t *Table) UnmarshalText(text []byte) error { return tables.Unmarshal(text, t) }

// CSV returns a table of the plan for a spreadsheet, with a head, as encoding/csv writes it; nothing
// where there is no such table. Lengths are as the text has them, money is without a currency. A name
// that a spreadsheet would take for a formula stands behind an apostrophe.
func CSV(p plan.Plan, table Table) string {
	x := &text{tape: p.TapeMeasure()}
	var rows [][]string
	switch table {
	case BuyTable:
		rows = append(rows, []string{"buy", "pack", "item", "needed", "unit", "price", "cost"})
		for _, r := range p.List.Rows {
			rows = append(rows, []string{buys(p, r), r.Container, Item(r), r.Quantity.String(), r.Unit.String(), cents(r.Price, ""), cents(r.Cost, "")})
		}
	case CutsTable:
		rows = append(rows, []string{"sheet", "stock", "cut", "kind", "part width", "part length", "part", "at", "from", "take off", "frees", "wait"})
		for _, s := range p.Sheets {
			sheet := strconv.Itoa(s.Number)
			for _, c := range s.Cuts {
				length, from := measureOf(p, c)
				at, off := x.length(length), either(c.Trim == plan.NoTrim, "", x.length(c.Off))
				if c.Trim == plan.TrimNear {
					at = ""
				}
				rows = append(rows, []string{sheet, s.Stock, strconv.Itoa(c.Step), either(c.Plane, "plane", c.Kind.String()), x.length(c.Rect[2]), x.length(c.Rect[3]),
					strings.TrimSpace(fromCut(p, s, c)), at, from, off, freed(p, s, c), waits(p, c)})
			}
			for _, pl := range s.Placements {
				if len(s.Cuts) == 0 {
					rows = append(rows, []string{sheet, s.Stock, "", "", "", "", "", "", "", "", pieceName(p, s, pl.Part, ""), ""})
				}
			}
		}
	}
	for _, row := range rows {
		for i, cell := range row {
			if formula(cell) {
				row[i] = "'" + cell
			}
		}
	}
	var out strings.Builder
	w := csv.NewWriter(&out)
	_ = w.WriteAll(rows) // into memory, and the comma is one that it accepts
	return out.String()
}

// formula reports whether a spreadsheet may calculate a cell, which no number is.
func formula(cell string) bool {
	sign := strings.IndexAny(cell, "=+-@\t\r＝＋－＠") == 0
	return sign && (cell[0] != '-' || strings.Trim(cell[1:], "0123456789./ ") != "" || cell == "-")
}
