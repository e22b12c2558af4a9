package book

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/groovewright/wall/plan"
)

// void are the elements that have no end (HTML Standard, 13.1.2), of those that the pages use.
var void = regexp.MustCompile(`<(meta|input|br|link|hr|img)\b([^<>]*[^<>/])?>`)

// parents are the only elements in which some may stand (HTML Standard, 4.4 and 4.9).
var parents = map[string][]string{"li": {"ul", "ol"}, "thead": {"table"}, "tbody": {"table"}, "tr": {"thead", "tbody"}, "th": {"tr"}, "td": {"tr"},
	"figcaption": {"figure"}, "title": {"head", "svg"}, "desc": {"svg"}, "main": {"body"}}

// phrasing are elements that hold no others than each other (HTML Standard, 3.2.5.2.5), and some of those that they
// may not hold.
var phrasing = []string{"p", "b", "small", "span", "h1", "h2", "h3", "label", "a"}
var flow = []string{"p", "div", "ul", "ol", "li", "table", "figure", "section", "article", "h1", "h2", "h3", "header", "main"}

// htmlFaults reads a page strictly and returns what is wrong with its markup: tags out of balance, elements where
// none of their kind may stand, rows of a table that differ in width, ids that stand twice and links to none.
func htmlFaults(page string) (faults []string) {
	fault := func(format string, args ...any) { faults = append(faults, fmt.Sprintf(format, args...)) }
	d := xml.NewDecoder(strings.NewReader(void.ReplaceAllString(page, "<$1$2/>")))
	var open []string
	ids, links := map[string]int{}, map[string]bool{}
	columns, row := 0, 0
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return append(faults, err.Error())
		}
		switch v := token.(type) {
		case xml.StartElement:
			name, within := v.Name.Local, ""
			if len(open) > 0 {
				within = open[len(open)-1]
			}
			if may, known := parents[name]; known && !slices.Contains(may, within) {
				fault("%s in %s", name, within)
			}
			if slices.Contains(phrasing, within) && slices.Contains(flow, name) {
				fault("%s in %s", name, within)
			}
			wide := 1
			for _, a := range v.Attr {
				switch {
				case a.Name.Local == "id":
					ids[a.Value]++
				case a.Name.Local == "aria-labelledby":
					for id := range strings.FieldsSeq(a.Value) {
						links[id] = true
					}
				case a.Name.Local == "href" && strings.HasPrefix(a.Value, "#"):
					links[a.Value[1:]] = true
				case a.Name.Local == "colspan":
					wide, _ = strconv.Atoi(a.Value)
				}
			}
			switch name {
			case "table":
				columns = 0
			case "tr":
				row = 0
			case "th", "td":
				row += wide
			}
			open = append(open, name)
		case xml.EndElement:
			if v.Name.Local == "tr" {
				if columns != 0 && row != columns {
					fault("a row of %d columns in a table of %d", row, columns)
				}
				columns = row
			}
			open = open[:len(open)-1]
		}
	}
	for id, n := range ids {
		if n > 1 {
			fault("id %s stands %d times", id, n)
		}
	}
	for id := range links {
		if ids[id] == 0 {
			fault("no %s is there", id)
		}
	}
	return faults
}

// TestPagesAreValid reads the pages of every book, its templates and the measuring sheet.
func TestPagesAreValid(t *testing.T) {
	sheet, err := Survey(3)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range htmlFaults(string(sheet)) {
		t.Errorf("measuring sheet: %s", f)
	}
	forEachPlan(t, func(t *testing.T, _ plan.Plan, files []File) {
		for _, f := range files {
			if !strings.HasSuffix(f.Name, ".html") {
				continue
			}
			for _, fault := range htmlFaults(string(f.Body)) {
				t.Errorf("%s: %s", f.Name, fault)
			}
		}
	})
}

// Each kind of fault is found.
func TestFaultsOfPagesAreFound(t *testing.T) {
	for body, want := range map[string]string{
		`<p><b>bold</p>`: "element <b> closed by </p>", `<p>`: "element <p> closed by </body>", `<p class=x>a</p>`: "unquoted",
		`<p>a & b</p>`: "invalid character entity", `<div><li>a</li></div>`: "li in div", `<p><ul><li>a</li></ul></p>`: "ul in p",
		`<table><tr><td>a</td></tr></table>`:                                             "tr in table",
		`<table><tbody><tr><td>a</td><td>b</td></tr><tr><td>c</td></tr></tbody></table>`: "a row of 1 columns in a table of 2",
		`<i id="a">a</i><i id="a">b</i>`:                                                 "id a stands 2 times", `<a href="#a">a</a>`: "no a is there", `<i aria-labelledby="a b" id="a">a</i>`: "no b is there",
	} {
		if got := strings.Join(htmlFaults("<!DOCTYPE html><body>"+body+"<br></body>"), "; "); !strings.Contains(got, want) {
			t.Errorf("%s: %q, want %q", body, got, want)
		}
	}
	if got := htmlFaults(`<!DOCTYPE html><html><body><table><tbody><tr><td colspan="2">a<br></td></tr><tr><td>b</td><td><input type="checkbox"></td></tr></tbody></table></body></html>`); got != nil {
		t.Errorf("a sound page: %v", got)
	}
}
