package groove_test

import (
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"pgregory.net/rapid"
)

// drawProfile draws a valid profile of one to six features with widths of 1/8 to 6 in on eighths,
// or on whole millimetres; some are their own mirror image, some repeat within the repeat, some
// have wide flats. None is of boards.
func drawProfile() *rapid.Generator[groove.Profile] {
	return rapid.Custom(func(t *rapid.T) groove.Profile {
		mark := rapid.SampledFrom([]fraction.Length{fraction.Of(1, 8), fraction.Millimetres(1, 1)}).Draw(t, "mark")
		features := rapid.SliceOfN(drawFeature(mark), 1, 3).Draw(t, "features")
		switch rapid.IntRange(0, 3).Draw(t, "sort of profile") {
		case 0: // doubled
			features = append(features, features...)
		case 1: // there and back
			for i := len(features) - 1; i >= 0; i-- {
				features = append(features, features[i])
			}
		}
		return groove.Profile{
			Name:      "drawn",
			Features:  features,
			Thickness: fraction.Of(rapid.Int64Range(4, 12).Draw(t, "sixteenths of thickness"), 16),
			WideFlats: rapid.Bool().Draw(t, "wide flats"),
			Source:    "drawn at random",
		}
	})
}

// drawFeature draws a feature with a width of 1 to 48 marks, which fits a sheet of 1/4 in.
func drawFeature(mark fraction.Length) *rapid.Generator[groove.Feature] {
	return rapid.Custom(func(t *rapid.T) groove.Feature {
		f := groove.Feature{
			Kind:  rapid.SampledFrom([]groove.Kind{groove.Flat, groove.Flat, groove.Bead, groove.Groove}).Draw(t, "kind"),
			Width: mark.Mul(rapid.Int64Range(1, 48).Draw(t, "marks")),
		}
		if f.Kind != groove.Flat {
			f.Width = mark.Mul(rapid.Int64Range(1, 4).Draw(t, "marks of a narrow one"))
			f.Depth = fraction.Of(rapid.Int64Range(0, 8).Draw(t, "32nds of depth"), 32)
		}
		return f
	})
}
