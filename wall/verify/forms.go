package verify

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
)

// forms judges how the numbers of a plan are written, wherever they stand.
func (c *checker) forms(data []byte) {
	var tree any
	decoder := json.NewDecoder(bytes.NewReader(data))
	decoder.UseNumber()
	if decoder.Decode(&tree) != nil {
		return // reported where the plan is decoded
	}
	c.form("", "", tree)
}

// The names under which a plan holds lengths or ratios, as strings or as lists
// of strings.
var numeric = []string{
	"tape", "pitch", "thickness", "width", "depth", "kerf", "square_up", "top", "bottom", "side", "seam", "box",
	"window", "length", "left_phase", "right_phase", "limits", "from", "origin", "mismatch", "lean", "outline",
	"left", "right", "at", "height", "x", "y", "rect", "amount", "weight", "cost", "blemish_total", "face", "back",
	"diameter", "value", "default",
}

// Parts of a plan in which some of these names mean something else: prose, or money.
var elsewhere = []string{"takeoff", "choices[].cost", "marks.from", "total", "warnings", "order", "cautions"}

func (c *checker) form(path, name string, node any) {
	for _, other := range elsewhere {
		if plain := indexless(path); plain == other || strings.HasSuffix(plain, "."+other) {
			return
		}
	}
	switch node := node.(type) {
	case map[string]any:
		for _, name := range slices.Sorted(maps.Keys(node)) {
			c.form(strings.TrimPrefix(path+"."+name, "."), name, node[name])
		}
	case []any:
		for i, item := range node {
			c.form(fmt.Sprintf("%s[%d]", path, i), name, item)
		}
	case string:
		if !slices.Contains(numeric, name) {
			return
		}
		if value, ok := readExact(node); !ok {
			c.fault("form", path, node, text(value), "not a mixed fraction in lowest terms")
		}
	case json.Number:
		if slices.Contains(numeric, name) {
			c.fault("form", path, node.String(), "a string", "a length or ratio written as a JSON number")
		}
	}
}

var index = regexp.MustCompile(`\[[0-9]+\]`)

// indexless returns a path with every index left out: choices[2].cost becomes
// choices[].cost.
func indexless(path string) string { return index.ReplaceAllString(path, "[]") }
