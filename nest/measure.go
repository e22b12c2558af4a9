package nest

import (
	"slices"

	"example.com/groovewright/fraction"
)

// Measure says how the width of a part counts in a bound: as the windows count it, one after another. With an Extra of
// at most a kerf the parts side by side on a sheet count together no more than the sheet does, since they show the
// pattern where the sheet does: a conservative scale (S. P. Fekete and J. Schepers, "A general framework for bounds
// for higher-dimensional orthogonal packing problems", Mathematical Methods of Operations Research 60, 2004). The
// zero Measure counts the width itself.
type Measure struct {
	Extra   fraction.Length // a part counts from half of it before its left edge to half of it beyond its right one; may be less than 0
	Pitch   fraction.Length // one repeat, read only if there are windows
	Windows []Window        // the count is the sum of theirs
}

// Window counts of each repeat of the pattern only what lies between two phases, as much as the whole repeat.
type Window struct {
	From  fraction.Length // the phase at which it begins
	Width fraction.Length // above 0, at most a pitch
}

// Start returns what counts up to a part that starts at x; left of where the pattern begins it is less than 0.
func (m Measure) Start(x fraction.Length) fraction.Length { return m.upTo(x.Sub(m.Extra.Div(2))) }

// Stop returns what counts up to the end of a part that stops at x.
func (m Measure) Stop(x fraction.Length) fraction.Length { return m.upTo(x.Add(m.Extra.Div(2))) }

func (m Measure) upTo(x fraction.Length) (sum fraction.Length) {
	if len(m.Windows) == 0 {
		return x
	}
	for _, w := range m.Windows {
		repeats, rest := x.Sub(w.From).DivMod(m.Pitch)
		sum = sum.Add(m.Pitch.Mul(repeats)).Add(fraction.Min(rest, w.Width).Scale(m.Pitch.Over(w.Width)))
	}
	return sum
}

// measure returns the measure with this much extra by which sheets count for less than their width: its windows miss
// the phases that a kind of sheets shows once more than the others. It has none where the sheets fit the pattern.
func (s *stripper) measure(extra int64) Measure {
	j := s.job
	m := Measure{Extra: j.length(extra), Pitch: j.length(j.pitch)}
	for _, k := range j.kinds {
		if k.w+extra <= 0 {
			continue
		}
		rest := (k.w + extra) % j.pitch                                              // the phases from the left edge on are shown once more as far as this goes
		from, width := floorMod(2*k.phase-extra+2*rest, 2*j.pitch), 2*(j.pitch-rest) // in halves of marks
		if j.p.Pattern.Mirrored {
			from, width = j.symmetric(from, width)
		}
		w := Window{j.length(from).Div(2), j.length(width).Div(2)}
		if width > 0 && !slices.Contains(m.Windows, w) {
			m.Windows = append(m.Windows, w)
		}
	}
	return m
}

// symmetric returns the widest part of a window that is its own image about an axis of the pattern, in halves
// of marks.
func (j *job) symmetric(from, width int64) (first, widest int64) {
	axis, turn := 2*j.marks(j.p.Pattern.Axis), 2*j.pitch
	for _, a := range []int64{axis, axis + j.pitch} {
		before := floorMod(a-from, turn) // the axis lies so far beyond the window's start
		if half := min(before, width-before); 2*half > widest {
			first, widest = a-half, 2*half
		}
	}
	return floorMod(first, turn), widest
}

// Measured returns the same values of heights with widths counted as sheets show the pattern: with the kerf, and with
// a little less than the parts, so that a sheet does not count for what it is wider than so many repeats.
// There are none where the sheets fit the pattern.
func (w DualWeight) Measured() (all []DualWeight) {
	if w.s == nil || w.s.job.pitch == 0 {
		return nil
	}
	j := w.s.job
	over := j.pitch
	for _, k := range j.kinds {
		over = min(over, k.w%j.pitch)
	}
	for _, extra := range []int64{j.kerf, -(over + 1)} {
		if m := w.s.measure(extra); len(m.Windows) > 0 {
			if v := w.measured(m); v.loosest() < w.loosest() {
				all = append(all, v)
			}
		}
	}
	return all
}

// measured returns the same values of heights with another measure of widths.
func (w DualWeight) measured(m Measure) DualWeight {
	s, wide := w.s, make([]int64, len(w.s.wide))
	for i, k := range s.job.kinds {
		left := s.job.length(k.phase)
		wide[i] = -s.whole(m.Start(left).Sub(m.Stop(left.Add(s.job.length(k.w))))) // rounded up
	}
	w.Measure, w.weighing = m, s.times(w.how, wide, w.most)
	return w
}

// loosest returns the most that a kind of sheet holds for each inch of its width and of the windows.
func (w *DualWeight) loosest() (most float64) {
	for i, holds := range w.holds {
		most = max(most, float64(holds)/float64(w.s.wide[i])/float64(max(1, w.most[i]))/float64(max(1, len(w.Measure.Windows))))
	}
	return most
}
