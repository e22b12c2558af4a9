package fraction

import "testing"

// The short way reads numbers of six digits at most as a tape has them, and leaves all else to the whole parser.
func TestPlain(t *testing.T) {
	for text, want := range map[string]Ratio{
		"0": {}, "63": NewRatio(63, 1), "100000": NewRatio(100_000, 1), "63.25": NewRatio(253, 4), "0.123456": NewRatio(1929, 15_625), "7/8": NewRatio(7, 8), "10/3": NewRatio(10, 3),
		"63 1/4": NewRatio(253, 4), "63-1/4": NewRatio(253, 4), "-63 1/4": NewRatio(-253, 4), "-0.5": NewRatio(-1, 2),
	} {
		if v, ok := plain(text); !ok || Ratio(v) != want {
			t.Errorf("%q is %v, %v; want %v", text, Ratio(v), ok, want)
		}
	}
	for _, text := range []string{"", "-", "6:", "6/", "100001", "1234567", "0.1234567", "5.", ".5", "-.5", "/4", "1/0", "63 /4", "63-", "63 1", "63 5/4", "63 4/4", "6 in", "+6", "1/2 "} {
		if v, ok := plain(text); ok {
			t.Errorf("%q is %v", text, Ratio(v))
		}
	}
}

// FuzzPlain: what the short way reads, the whole parser reads as the same number, and refuses where
// it is refused.
func FuzzPlain(f *testing.F) {
	for _, seed := range []string{"63", "-63.25", "7/8", "63 1/4", "63-1/4", "63 5/4", "63 /4", "63-", "6:", "5.", "-.5", "/4", "1/0", "100000.000001", "999999/9", "1/99999"} {
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
