package choice_test

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/choice"
)

var (
	table      = flag.Bool("table", false, "plan random rooms and write testdata/rooms.txt")
	tableRooms = flag.Int("rooms", 500, "with -table: how many rooms")
	hundred    = flag.Bool("hundredfold", false, "with -table: compare with a hundred times the effort")
)

// The columns of whole numbers.
const (
	colRooms = iota
	colShort
	colSheets
	colBound
	colNeed
	colLooks
	colEnds
	colEqual
	colBeaten
	columns
)

// row sums rooms.
type row struct {
	class        string
	from         int // the least size of the class
	sum          [columns]int
	money, least fraction.Ratio
	seconds      float64
}

func (r *row) add(s row) {
	for i, n := range s.sum {
		r.sum[i] += n
	}
	r.money, r.least, r.seconds = r.money.Add(s.money), r.least.Add(s.least), r.seconds+s.seconds
}

func (r row) String() string {
	n, more := r.sum, ""
	if *hundred {
		more = fmt.Sprintf(" %5d %6d", n[colEqual], n[colBeaten])
	}
	return fmt.Sprintf("%-14s %5d %5d %6d %6d %9.2f %9.2f %5d %5d %5d%s %8.1f\n", r.class, n[colRooms], n[colShort],
		n[colSheets], n[colBound], r.money.Float64(), r.least.Float64(), n[colNeed], n[colLooks], n[colEnds], more, r.seconds)
}

// classes returns empty rows for sizes from each on.
func classes(of string, from ...int) (rows []row) {
	for i, low := range from {
		class := fmt.Sprintf("%s %d up", of, low)
		if i+1 < len(from) {
			class = fmt.Sprintf("%s %d to %d", of, low, from[i+1]-1)
		}
		rows = append(rows, row{class: class, from: low})
	}
	return rows
}

// place adds a room of a size to its class.
func place(rows []row, size int, s row) {
	for i := len(rows) - 1; i >= 0; i-- {
		if size >= rows[i].from {
			rows[i].add(s)
			return
		}
	}
}

// TestRoomsTable writes how random rooms come out, by their runs and by their parts.
func TestRoomsTable(t *testing.T) {
	if !*table {
		t.Skip("a long run: -table")
	}
	byRuns, byParts, all := classes("runs", 1, 2, 3, 4, 6, 9, 12), classes("parts", 0, 9, 17, 33, 65), row{class: "all"}
	for seed := uint64(0); all.sum[colRooms] < *tableRooms; seed++ {
		room := houses.draw(seed)
		if room.Validate() != nil {
			continue
		}
		before := fractiontest.ProcessorTime(os.Getpid())
		c, err := choice.Explore(t.Context(), room, choice.Budget{})
		s := row{seconds: (fractiontest.ProcessorTime(os.Getpid()) - before).Seconds()}
		if errors.As(err, new(*wall.NoLayoutError)) {
			continue
		}
		s.sum[colRooms] = 1
		cheap, looks := c.Sheets(), c.Looks()
		if errors.As(err, new(*choice.ShortError)) {
			s.sum[colShort] = 1
		} else if err != nil {
			t.Fatalf("room %d: %v", seed, err)
		} else {
			s.sum[colSheets], s.sum[colBound], s.money, s.least = cheap.Need.Sheets, c.Least.Sheets, cheap.Need.Cost, c.Least.Cost
			least := cheap.Need.Compare(c.Least) <= 0
			for column, is := range map[int]bool{
				colNeed: least, colLooks: cheap.Status&choice.LooksProved != 0,
				colEnds: least && cheap.Status == choice.BothProved && looks.Status == choice.BothProved,
			} {
				if is {
					s.sum[column] = 1
				}
			}
		}
		if *hundred {
			long := points(explored(t, room, 100))
			if short := points(c); len(short) == len(long) && len(long) == 0 || len(short)*len(long) > 0 && short[len(short)-1] == long[len(long)-1] {
				s.sum[colEqual] = 1
			}
			for _, wrong := range beaten(c, long) {
				t.Errorf("room %d: %s", seed, wrong)
				s.sum[colBeaten] = 1
			}
		}
		all.add(s)
		place(byRuns, len(room.Runs), s)
		place(byParts, len(cheap.Layout.Pieces), s)
	}
	writeTable(t, append(append(byRuns, byParts...), all))
}

// writeTable writes the rows with what they mean.
func writeTable(t *testing.T, rows []row) {
	option, head, about := "", "", ""
	if *hundred {
		option, head = " -hundredfold", " equal beaten"
		about = "equal: a hundred times the effort finds the same choice of least need; beaten: it finds one\nthat a proof of the default effort excludes\n"
	}
	var b strings.Builder
	fmt.Fprintf(&b, `Random invented rooms of 1 to 14 runs, drawn from fixed seeds (draw_test.go), with the default effort.
Made by: go test ./wall/choice -run RoomsTable -table%s -rooms %d -timeout 3h
The seconds are processor time of one run; all else is the same in every run.

short: rooms for which no plan was found; sheets, money: of the choices of least need, each beside
its bound, which no layout of the room goes below; need: rooms where that of the choice of least
need is proved least of all; looks: where its blemish is proved least at that need; ends: where both are, and both of the
best-looking choice; parts 0: no plan
%s
%-14s rooms short sheets  bound     money     bound  need looks  ends%s  seconds
`, option, *tableRooms, about, "", head)
	for _, r := range rows {
		b.WriteString(r.String())
	}
	name := filepath.Join("testdata", "rooms.txt")
	err := os.MkdirAll(filepath.Dir(name), 0o777)
	if err == nil {
		err = os.WriteFile(name, []byte(b.String()), 0o644)
	}
	if err != nil {
		t.Fatal(err)
	}
	t.Log("\n" + b.String())
}
