package nest

// filling is the choice of the other pieces for one sheet.
type filling struct {
	*exact
	kind    int
	rest    set
	used    objective
	lead    int   // group of the piece that the sheet is for
	skipped []int // groups with a further piece that fitted and was not taken
}

// extend tries all numbers of pieces of the group and of those after it. in and over tally the set
// and the pieces that this sheet surely leaves over.
func (f *filling) extend(s set, from int, in, over tally) {
	if f.over() {
		return
	}
	g := from
	for g < len(f.groups) && f.groups[g].of(f.rest) <= f.groups[g].of(s) {
		g++
	}
	if g == len(f.groups) {
		f.close(s, in)
		return
	}
	group, each := &f.groups[g], f.weigh.each[g]
	have, most := group.of(s), group.of(f.rest)
	n := have
	for n < most {
		next := s.plus(group.lowest(n + 1))
		sum := in.plus(each.times(n + 1 - have))
		if !f.fits(next, &sum, f.kind) {
			break
		}
		n++
	}
	for top := n; n >= have; n-- {
		left := over.plus(each.times(most - n))
		if n < most && f.used.plus(f.weigh.bound(&left, f.stock)).compare(f.best) >= 0 {
			return // what this sheet leaves over is too much for the others
		}
		more := s.plus(group.lowest(n))
		skipped := f.skipped
		if n < top {
			f.skipped = append(f.skipped, g)
		}
		f.extend(more, g+1, in.plus(each.times(n-have)), left)
		f.skipped = skipped
	}
}

// close ends a sheet, if its set is one that has to be tried.
func (f *filling) close(s set, in tally) {
	for _, g := range f.skipped {
		sum := in.plus(f.weigh.each[g])
		if f.fits(s.plus(f.groups[g].lowest(f.groups[g].of(s)+1)), &sum, f.kind) {
			return
		}
	}
	for g := range f.groups {
		have := f.groups[g].of(s)
		if have == 0 || g == f.lead && have == 1 {
			continue
		}
		without := s.minus(f.groups[g].lowest(have)).plus(f.groups[g].lowest(have - 1))
		for _, l := range f.larger[g] {
			n := f.groups[l].of(s)
			if f.groups[l].of(f.rest) <= n {
				continue
			}
			swapped := without.plus(f.groups[l].lowest(n + 1))
			if sum := f.tally(swapped); f.fits(swapped, &sum, f.kind) {
				return
			}
		}
	}
	left := f.one.canonical(f.rest.minus(s))
	f.chosen = append(f.chosen, choice{f.kind, s})
	f.exact.search(left, f.used)
	f.chosen = f.chosen[:len(f.chosen)-1]
}
