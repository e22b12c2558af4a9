package nest

import (
	"math"
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

// Window counts of each repeat of the pattern only what lies between two phases, as much as Weight whole repeats.
type Window struct {
	From   fraction.Length // the phase at which it begins: at least 0, less than a pitch
	Width  fraction.Length // above 0, at most a pitch
	Weight int64           // above 0
}

// Start returns what counts up to a part that starts at x; left of where the pattern begins it is less than 0.
func (m Measure) Start(x fraction.Length) fraction.Length { return m.upTo(x.Sub(m.Extra.Div(2))) }

// Stop returns what counts up to the end of a part that stops at x.
func (m Measure) Stop(x fraction.Length) fraction.Length { return m.upTo(x.Add(m.Extra.Div(2))) }

func (m Measure) upTo(x fraction.Length) (sum fraction.Length) {
	if len(m.Windows) == 0 {
		return x
	}
	repeats, phase := x.DivMod(m.Pitch)
	var whole int64
	for _, w := range m.Windows {
		in := phase.Sub(w.From)
		whole += repeats * w.Weight
		if in.Sign() < 0 {
			in = in.Add(m.Pitch) // beyond the window of the repeat before
			whole -= w.Weight
		}
		if in.Less(w.Width) {
			sum = sum.Add(in.Scale(m.Pitch.Over(w.Width)).Mul(w.Weight))
		} else {
			whole += w.Weight
		}
	}
	return sum.Add(m.Pitch.Mul(whole))
}

// windowsOfRepeat is how many windows a repeat is parted into.
const windowsOfRepeat = 32

// Measured returns the same values of heights with widths counted by one window of a repeat each; where the pattern can be
// turned, by a window and its image. The windows of the first family count parts with the kerf. Those of the second
// count only parts that reach past them, so far that a sheet does not count for what it is wider than so many repeats.
// There are none where there is no pattern.
func (w DualWeight) Measured() (families [][]DualWeight) {
	if w.s == nil || w.s.job.pitch == 0 {
		return nil
	}
	j := w.s.job
	over := j.pitch
	for _, k := range j.kinds {
		over = min(over, k.w%j.pitch)
	}
	for _, extra := range []int64{j.kerf, -(over + 1)} {
		var family []DualWeight
		for _, windows := range j.windows(extra) {
			if v := w.measured(Measure{j.length(extra), j.length(j.pitch), windows}); v.buys() >= 0 {
				family = append(family, v)
			}
		}
		if len(family) > 0 {
			families = append(families, family)
		}
	}
	return families
}

// windows returns the windows of measures with this much extra: those that miss the phases which a kind of sheets shows once
// more than the others, then the parts of a repeat.
func (j *job) windows(extra int64) (all [][]Window) {
	window := func(from, width int64) Window { // in halves of marks
		return Window{j.length(floorMod(from, 2*j.pitch)).Div(2), j.length(width).Div(2), 1}
	}
	for _, k := range j.kinds {
		if k.w+extra <= 0 {
			continue
		}
		rest := (k.w + extra) % j.pitch // the phases from the left edge on are shown once more as far as this goes
		from, width := 2*k.phase-extra+2*rest, 2*(j.pitch-rest)
		if j.p.Pattern.Mirrored {
			from, width = j.symmetric(from, width)
		}
		if width > 0 {
			all = append(all, []Window{window(from, width)})
		}
	}
	width := max(1, j.pitch/windowsOfRepeat)
	for i := range int64(windowsOfRepeat) {
		from := 2 * (i * j.pitch / windowsOfRepeat)
		switch axis := 2 * j.marks(j.p.Pattern.Axis); {
		case !j.p.Pattern.Mirrored:
			all = append(all, []Window{window(from, 2*width)})
		case from+2*width <= j.pitch:
			all = append(all, []Window{window(axis+from, 2*width), window(axis-from-2*width, 2*width)})
		}
	}
	return all
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
	return first, widest
}

// measured returns the same values of heights with another measure of widths.
func (w DualWeight) measured(m Measure) DualWeight {
	s, wide := w.s, make([]int64, len(w.s.wide))
	for i, k := range s.job.kinds {
		left := s.job.length(k.phase)
		wide[i] = max(0, -s.whole(m.Start(left).Sub(m.Stop(left.Add(s.job.length(k.w)))))) // rounded up
	}
	w.Measure, w.weighing = m, s.times(w.how, wide, w.most)
	return w
}

// finestMix is how often the windows of a mixture count together, about.
const finestMix = 512

// Mixed returns the same values of heights as those of a family with the windows of all of it, each of which makes up
// a share of what a sheet holds.
func Mixed(family []DualWeight, shares []float64) DualWeight {
	var all float64
	often := make([]float64, len(family))
	for i := range family {
		often[i] = shares[i] / float64(family[i].holds[family[i].buys()])
		all += often[i]
	}
	m := family[0].Measure
	m.Windows = nil
	for i, v := range family {
		if weight := int64(math.Round(finestMix * often[i] / all)); weight > 0 {
			for _, w := range v.Measure.Windows {
				w.Weight = weight
				m.Windows = append(m.Windows, w)
			}
		}
	}
	return family[0].measured(m)
}

// Relaxed returns about what parts of this total value need if sheets can be bought in parts, of the kind that holds most
// of it for its price: the money, or the number of sheets where they have no price. It says which weights to try,
// and proves nothing.
func (w DualWeight) Relaxed(total fraction.Length) float64 {
	kind := w.buys()
	if kind < 0 {
		return 0
	}
	need := float64(w.marks(total)) / float64(w.holds[kind])
	if price := w.s.job.kinds[kind].price; price > 0 {
		need = float64(need * float64(price) / float64(w.s.job.coin)) // the same on each machine: not fused with a sum
	}
	return need
}

// buys returns the kind of stock that holds most for its price and of which there is as much as needed, or else just the
// one that holds most for its price; -1 where none holds anything.
func (w *DualWeight) buys() int {
	if w.s == nil || len(w.cheap) == 0 {
		return -1
	}
	if i := slices.IndexFunc(w.cheap, func(kind int) bool { return !w.s.job.kinds[kind].limited }); i >= 0 {
		return w.cheap[i]
	}
	return w.cheap[0]
}
