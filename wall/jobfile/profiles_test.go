package jobfile_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall/jobfile"
)

func TestReadProfiles(t *testing.T) {
	profiles, err := jobfile.ReadProfiles(strings.NewReader(`[` + ownProfile + `,
		{"name": "wide", "features": [{"kind": "flat", "width": "94 mm"}, {"kind": "groove", "width": "6 mm", "depth": "3 mm"}], "thickness": "9 mm", "wide_flats": true, "source": "taped"}]`))
	if err != nil || len(profiles) != 2 {
		t.Fatalf("%v, %v", profiles, err)
	}
	if p := profiles[1]; p.Name != "wide" || !p.WideFlats || p.Source != "taped" || p.Pitch() != fraction.Millimetres(100, 1) {
		t.Errorf("second profile: %+v", p)
	}
}

func TestReadProfilesFaults(t *testing.T) {
	for _, row := range []struct {
		name, old, new, path string
		kind                 error
	}{
		{"no list", ownProfile, `{}`, "[0].features", jobfile.ErrMissing},
		{"no name", `"name": "own", `, ``, "[0].name", jobfile.ErrValue},
		{"two of one name", ownProfile, ownProfile + ", " + ownProfile, "[1].name", jobfile.ErrValue},
		{"a length that is none", `"1 1/4"`, `"wide"`, "[0].features[0].width", jobfile.ErrValue},
		{"deeper than the board", `"1/16"`, `"2"`, "[0].features[1].depth", jobfile.ErrRoom},
		{"a name of a ready one", ownProfile, `"beadboard 2"`, "[0]", jobfile.ErrType},
	} {
		list := "[" + strings.Replace(ownProfile, row.old, row.new, 1) + "]"
		profiles, err := jobfile.ReadProfiles(strings.NewReader(list))
		if profiles != nil || !slices.ContainsFunc(fault.All(err), func(f *fault.Fault) bool {
			return f.Path.String() == row.path && errors.Is(f, row.kind) && f.Line == 1
		}) {
			t.Errorf("%s: %v, want a fault at %s", row.name, err, row.path)
		}
	}
	if _, err := jobfile.ReadProfiles(strings.NewReader(`{}`)); !errors.Is(err, jobfile.ErrType) {
		t.Errorf("an object in place of the list: %v", err)
	}
	if profiles, err := jobfile.ReadProfiles(strings.NewReader(`[`)); profiles != nil || !errors.Is(err, jobfile.ErrSyntax) {
		t.Errorf("no JSON: %v, %v", profiles, err)
	}
}
