package wall_test

import (
	"context"
	"encoding"
	"fmt"
	"testing"
	"time"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/wall"
)

// FuzzWildValues calls every exported function with wild values, or with a sound room of which
// parts are wild: none panics, and what is not valid has no layout.
func FuzzWildValues(once *testing.F) {
	f := fractiontest.F{F: once}
	for part := range byte(8) {
		f.Add([]byte{}, part)
		f.Add([]byte{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25}, part)
		f.Add([]byte{2, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6}, part)
	}
	f.Fuzz(func(t *testing.T, data []byte, part byte) {
		room := steppedWall()
		var opening wall.Opening
		var rest struct {
			Objective    wall.Objective
			Layout       wall.Layout
			Arch         wall.Arch
			Plate        wall.Plate
			Corners      []cutout.Point
			Length       fraction.Length
			Ratio        fraction.Ratio
			Number       int
			End          wall.EndKind
			Kind         wall.OpeningKind
			Joint        wall.JointKind
			Blemish      wall.BlemishKind
			Place        wall.Place
			Direction    wall.Direction
			NoLayout     wall.NoLayoutError
			Each, Higher int64
		}
		filled := []any{&room, &room.Profile, &room.Runs[0], &room.Runs[0].Heights, &room.Runs[0].Openings, &room.Stock, &room.Gaps, &room.Installed}
		fractiontest.Fill(data, filled[int(part)%len(filled)], &opening, &rest)
		if part >= 128 {
			room.Runs = append(room.Runs, room.Runs...)
		}

		ctx, cancel := context.WithTimeout(t.Context(), 20*time.Millisecond)
		defer cancel()
		valid := room.Validate()
		first := func(layouts func(func(wall.Layout, error) bool)) (layout wall.Layout) {
			for l, err := range layouts {
				if err == nil && valid != nil {
					t.Fatalf("%v, but there is a layout", valid)
				}
				return l
			}
			return layout
		}
		rest.Objective.Of = func(fraction.Length) int64 { return rest.Each }
		layout := first(wall.Layouts(ctx, room))
		first(wall.LayoutsByCost(ctx, room, rest.Objective))
		for _, l := range []*wall.Layout{&layout, &rest.Layout, nil} {
			_, _ = rest.Objective.Cost(l)
			_, _ = wall.Objective{}.Cost(l)
		}
		first(wall.LayoutsByCost(ctx, room, wall.Objective{}))
		if m, err := wall.NewModel(ctx, room); err == nil {
			if m, err = m.WithStock(steppedWall().Stock); err == nil {
				first(m.LayoutsByCost(ctx, rest.Objective))
			}
		}
		_, surveyed := room.Survey()
		_, strips := room.Strips()
		if valid != nil && (surveyed == nil || strips == nil) {
			t.Fatalf("%v, but it can be surveyed (%v) and parted (%v)", valid, surveyed, strips)
		}
		_ = room.Priorities.List()

		for _, o := range []*wall.Opening{&opening, nil} {
			_, _ = o.Bounds()
			_, _ = o.Corners(), o.DeviceGangs(fraction.Millimetre)
		}
		_, _, _ = rest.Arch.Circle()
		_, _, _ = wall.Arched(rest.Corners, rest.Length, rest.Plate.Width)
		_ = wall.Head(rest.Corners)
		_, _ = wall.StandardPlate(fraction.Inch, rest.Number)
		_, _, _ = rest.Plate.Overlap(rest.Length, rest.Arch.Chord, rest.Arch.Rise)
		if n := wall.Gangs(fraction.Millimetre, rest.Length); n < 1 || n > wall.MaxGangs {
			t.Fatalf("%d gangs", n)
		}
		for _, kind := range []interface {
			fmt.Stringer
			encoding.TextMarshaler
			encoding.TextUnmarshaler
		}{&rest.End, &rest.Kind, &rest.Blemish, &rest.Place, &rest.Direction, &rest.Joint, &rest.NoLayout.Reason} {
			if text, err := kind.MarshalText(); err == nil && (string(text) != kind.String() || kind.UnmarshalText(text) != nil) {
				t.Fatalf("%s is not read back", text)
			}
			_ = kind.UnmarshalText(data)
		}
		_ = rest.NoLayout.Error()
	})
}

func TestZeroAndNilValues(t *testing.T) {
	var none *wall.Room
	for name, err := range map[string]error{
		"a nil room": none.Validate(), "the zero room": new(wall.Room).Validate(),
		"a survey of an opening without corners": func() error {
			room := steppedWall()
			room.Runs[0].Openings = []wall.Opening{{Name: "hole"}}
			_, err := room.Survey()
			return err
		}(),
		"an arch of a mile": func() error {
			mile := fraction.Inches(63_360)
			_, _, err := wall.Arched(cutout.Rectangle(fraction.Length{}, fraction.Length{}, mile, mile), mile.Div(3), fraction.Of(1, 16))
			return err
		}(),
		"strips of a nil room":    func() error { _, err := none.Strips(); return err }(),
		"strips of the zero room": func() error { _, err := new(wall.Room).Strips(); return err }(),
		"a survey of a nil room":  func() error { _, err := none.Survey(); return err }(),
		"layouts of the zero room": func() (err error) {
			for _, err = range wall.Layouts(t.Context(), wall.Room{}) {
			}
			return err
		}(), //nolint:staticcheck // that is the test
		"an objective of nothing": func() (err error) {
			for _, err = range wall.LayoutsByCost(t.Context(), steppedWall(), wall.Objective{}) {
			}
			return err
		}(),
	} {
		if err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}
