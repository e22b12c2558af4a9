package jobfile_test

import (
	"errors"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/google/go-cmp/cmp"

	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall/jobfile"
)

// A reader that fails is said, with its own error.
func TestReaderThatFails(t *testing.T) {
	pulled := errors.New("the stick was pulled out")
	if _, err := jobfile.Read(iotest.ErrReader(pulled)); !errors.Is(err, pulled) {
		t.Errorf("Read: %v", err)
	}
}

// A name of letters, digits, _ and $ stands in a path as it is, any other in quotes.
func TestNamesInPaths(t *testing.T) {
	for name, want := range map[string]string{
		"azAZ09_$": "azAZ09_$", "": `[""]`, "a b": `["a b"]`, "a/": `["a/"]`, "a:": `["a:"]`, "a@": `["a@"]`, "a[": `["a["]`, "a`": "[\"a`\"]", "a{": `["a{"]`, "é": `["é"]`,
		strings.Repeat("n", 60): strings.Repeat("n", 60), strings.Repeat("n", 61): `["` + strings.Repeat("n", 60) + `…"]`,
	} {
		_, err := jobfile.Read(strings.NewReader(strings.Replace(sound, `"title"`, `"`+name+`": 1, "title"`, 1)))
		if all := fault.All(err); len(all) != 1 || all[0].Path.String() != want {
			t.Errorf("%q: %v, want one fault at %s", name, err, want)
		}
	}
}

// A job with a taped height and a taped opening is written with both.
func TestTapedHeightAndOpeningAreWritten(t *testing.T) {
	file := withOpening(t, `"points": {"bases": [["0", "0"], ["30", "0"]], "side": "left", "corners": [
		{"distances": ["50", "40"]}, {"distances": ["40", "50"]}, {"distances": ["0", "30"]}]}`)
	const height = `{"at": "30", "bottom": "0", "top": "63 1/4"}`
	if !strings.Contains(file, height) {
		t.Fatal("the sound job has another height now")
	}
	file = strings.Replace(file, height, `{"taped": {"bases": [["0", "0"], ["30", "0"]], "side": "left", "distances": ["78", "72"]}, "bottom": "0"}`, 1)
	j, err := jobfile.Read(strings.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	if _, again := written(t, j); len(j.Taped) != 4 || cmp.Diff(j.Taped, again.Taped, sameLengths) != "" {
		t.Errorf("%d places taped, read back as\n%s", len(j.Taped), cmp.Diff(j.Taped, again.Taped, sameLengths))
	}
}

// A rectangle without a height, or with one below 0, is refused at its height, any other that is none at its width.
func TestSizeThatKeepsARectangleFromBeingOne(t *testing.T) {
	for _, row := range []struct{ width, height, at string }{
		{"2", "0", "height"}, {"0", "2", "width"}, {"0", "0", "width"}, {"2", "-3", "height"}, {"-2", "3", "width"},
	} {
		_, err := jobfile.Read(strings.NewReader(withOpening(t, `"left": "30", "bottom": "8", "width": "`+row.width+`", "height": "`+row.height+`"`)))
		if all := fault.All(err); len(all) == 0 || !strings.HasSuffix(all[0].Path.String(), "openings[0]."+row.at) {
			t.Errorf("%s by %s: %v, want a fault at the %s", row.width, row.height, err, row.at)
		}
	}
}
