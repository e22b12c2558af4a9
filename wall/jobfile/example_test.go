package jobfile_test

import (
	"bytes"
	"fmt"
	"os"
	"strings"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
)

const hall = `{
  "profile": "beadboard 2",
  "stock": [{"name": "sheet", "width": "48", "length": "96"}],
  "runs": [{
    "name": "hall", "width": "84",
    "left": {"kind": "exposed"}, "right": {"kind": "covered"},
    "heights": [{"at": "0", "top": "36"}, {"at": "84", "top": "36 1/4"}]
  }]
}`

func ExampleRead() {
	j, err := jobfile.Read(strings.NewReader(hall))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(j.Runs[0].Name, j.Runs[0].Width, j.Profile.Pitch(), j.Saw.Kerf)
	// Output: hall 84 2 1/8
}

// Everything that is wrong comes at once, each with its place.
func ExampleRead_faults() {
	file := strings.NewReplacer(`"84"`, `"84 1/0"`, `"covered"`, `"hidden"`).Replace(hall)
	_, err := jobfile.Read(strings.NewReader(file))
	fmt.Println(err)
	// Output:
	// runs[0].width (line 5, column 30): "84 1/0": zero denominator; want a length in quotes, such as "63 1/4"
	// runs[0].right.kind (line 6, column 52): "hidden": no such word here; want one of exposed, inside corner, outside corner, covered
	// runs[0].heights[1].at (line 7, column 50): "84 1/0": zero denominator; want a length in quotes, such as "63 1/4"
}

func ExampleWrite() {
	profiles, err := jobfile.ReadProfiles(strings.NewReader(`[
		{"name": "narrow planks", "features": [{"kind": "flat", "width": "3"}, {"kind": "groove", "width": "1/4", "depth": "1/8"}], "thickness": "1/2"}
	]`))
	if err != nil {
		fmt.Println(err)
		return
	}
	j := plan.NewJob(fraction.Millimetre, profiles[0])
	mm := func(n int64) fraction.Length { return fraction.Millimetres(n, 1) }
	j.Stock = []nest.Stock{{Name: "sheet", Width: mm(1220), Length: mm(2440)}}
	j.Runs = []wall.Run{{Name: "hall", Width: mm(2100), Left: wall.End{Kind: wall.Exposed}, Right: wall.End{Kind: wall.Covered},
		Heights: []wall.Height{{Top: mm(900)}, {At: mm(2100), Top: mm(905)}}}}
	if err := jobfile.Write(os.Stdout, j); err != nil {
		fmt.Println(err)
	}
	// Output:
	// {
	//   "units": "mm",
	//   "profile": {
	//     "name": "narrow planks",
	//     "features": [{"kind": "flat", "width": "76.2"}, {"kind": "groove", "width": "6.35", "depth": "3.175"}],
	//     "thickness": "12.7"
	//   },
	//   "stock": [{"name": "sheet", "width": "1220", "length": "2440"}],
	//   "runs": [
	//     {
	//       "name": "hall",
	//       "width": "2100",
	//       "left": {"kind": "exposed"},
	//       "right": {"kind": "covered"},
	//       "heights": [{"at": "0", "top": "900"}, {"at": "2100", "top": "905"}]
	//     }
	//   ]
	// }
}

func ExampleReadProfiles() {
	profiles, err := jobfile.ReadProfiles(strings.NewReader(`[
		{"name": "narrow planks", "features": [{"kind": "flat", "width": "3"}, {"kind": "groove", "width": "1/4", "depth": "1/8"}], "thickness": "1/2"},
		{"name": "board", "features": [{"kind": "flat", "width": "94 mm"}, {"kind": "groove", "width": "6 mm"}], "thickness": "9 mm", "boards": true}
	]`))
	for _, p := range profiles {
		fmt.Println(p.Name, p.Pitch(), p.Boards)
	}
	fmt.Println(err)
	// Output:
	// narrow planks 3 1/4 false
	// board 3 119/127 true
	// <nil>
}

func ExampleSchema() {
	for line := range bytes.Lines(jobfile.Schema()) {
		if bytes.Contains(line, []byte("schema.org")) {
			fmt.Printf("%s", bytes.TrimSpace(line))
		}
	}
	// Output: "$schema": "https://json-schema.org/draft/2020-12/schema",
}
