package fraction

import "testing"

// FuzzPlain: what the short way reads, the whole parser reads as the same number, and refuses where
// it is refused.
func FuzzPlain(f *testing.F) {
	for _, seed := range []string{"63", "-63.25", "7/8", "63 1/4", "63-1/4", "63 5/4", "63 /4", "63-", "5.", "-.5", "/4", "1/0", "100000.000001", "999999/9", "1/99999"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, s string) {
		for u := range Centimetre + 1 {
			got, err := Parse(s, u)
			v, fault := parse(s, true, u)
			v, fault = bounded(v, fault, s, "", "", "")
			if got != Length(v) || (err == nil) != (fault == nil) {
				t.Errorf("%q in %v reads as %v, %v; by the parser as %v, %v", s, u, got, err, Length(v), fault)
			}
		}
		got, err := ParseRatio(s)
		v, fault := parse(s, false, Inch)
		v, fault = bounded(v, fault, s, "", "", "")
		if got != Ratio(v) || (err == nil) != (fault == nil) {
			t.Errorf("%q reads as %v, %v; by the parser as %v, %v", s, got, err, Ratio(v), fault)
		}
	})
}
