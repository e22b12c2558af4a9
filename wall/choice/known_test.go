package choice_test

import (
	"os"
	"path/filepath"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/choice"
	"example.com/groovewright/wall/jobfile"
)

// Rooms in which few sheets are found where the nests say which layouts to look at, and hardly
// where layouts come by blemish alone: each with a plan that there is.
func TestKnownRooms(t *testing.T) {
	for _, known := range []struct {
		name    string
		sheets  int
		blemish fraction.Ratio
	}{
		{"bathroom", 3, fraction.NewRatio(119, 48)},
		{"stair-60", 1, fraction.NewRatio(185, 256)},
		{"stair-136", 2, fraction.NewRatio(925, 512)},
	} {
		file, err := os.Open(filepath.Join("testdata", known.name+".json"))
		if err != nil {
			t.Fatal(err)
		}
		job, err := jobfile.Read(file)
		file.Close()
		if err != nil {
			t.Fatal(err)
		}
		c, err := choice.Explore(t.Context(), job.Room, choice.Budget{})
		if least := c.Sheets(); err != nil || least.Need.Sheets > known.sheets || known.blemish.Less(least.Layout.Total) {
			t.Errorf("%s: %d sheets at %s, %v; known are %d at %s", known.name, least.Need.Sheets, least.Layout.Total, err, known.sheets, known.blemish)
		}
	}
}
