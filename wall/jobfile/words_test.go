package jobfile_test

import (
	"encoding/json"
	"fmt"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/jobfile"
)

func ExampleParseStock() {
	stock, err := jobfile.ParseStock("48x96+48x120=52.00", fraction.Inch)
	for _, s := range stock {
		fmt.Println(s.Name, s.Width, s.Length, s.Price.Known(), err)
	}
	_, err = jobfile.ParseStock("48 by 96", fraction.Inch)
	fmt.Println(err)
	// Output:
	// 48x96 48 96 false <nil>
	// 48x120=52.00 48 120 true <nil>
	// 48 by 96: no such value here; want a width, x and a length, and = and a price if you like, such as "48x96=24.98"
}

// By hand: 1220 mm are 48 4/127 in.
func TestParseStock(t *testing.T) {
	if s, err := jobfile.ParseStock("1220 x 2440", fraction.Millimetre); err != nil || len(s) != 1 || s[0].Width.String() != "48 4/127" || s[0].Price.Known() {
		t.Errorf("%+v, %v", s, err)
	}
	for _, text := range []string{"", "x", "48", "48x", "x96", "48x96=", "48x96=much", "48x96x3", "48x96=1=2", "48x96+", "+48x96"} {
		if s, err := jobfile.ParseStock(text, fraction.Inch); err == nil || s != nil {
			t.Errorf("%q is read as %+v", text, s)
		}
	}
}

func TestWithProfile(t *testing.T) {
	const profiles = `[{"name": "other"}, 7, {"name": "mine", "thickness": "1/4",}] // two`
	for job, profile := range map[string]string{
		`{"profile": "mine", "title": "t",} // a job`: `{"name":"mine","thickness":"1/4"}`,
		`{"profile": "nobody's"}`:                     `"nobody's"`,
		`{"profile": {"name": "mine"}}`:               `{"name": "mine"}`,
		`{"title": "t"}`:                              "",
	} {
		var file struct{ Profile json.RawMessage }
		if err := json.Unmarshal(jobfile.Standard(jobfile.WithProfile([]byte(job), []byte(profiles))), &file); err != nil || string(file.Profile) != profile {
			t.Errorf("%s: %s, %v", job, file.Profile, err)
		}
	}
	for _, wrong := range [][2]string{{`{"profile": "mine"`, profiles}, {`{"profile": "mine"}`, "{}"}, {"", ""}, {"7", "[]"}} {
		if got := jobfile.WithProfile([]byte(wrong[0]), []byte(wrong[1])); string(got) != wrong[0] {
			t.Errorf("%q: %s", wrong, got)
		}
	}
}
