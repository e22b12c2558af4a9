package wall

import (
	"context"
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/groove"
)

// Keep is what the person insists on for one run, in run coordinates. The zero value keeps nothing.
// A room in which not all can be kept has no layout: see [KeepUnmet].
type Keep struct {
	Origin    *fraction.Length  `json:"origin,omitzero" doc:"Where a repeat of the pattern starts; no other setting-out of the run is tried."`
	Direction *Direction        `json:"direction,omitzero" doc:"The way to work along the run."`
	Seams     []fraction.Length `json:"seams,omitzero" doc:"Where the middle of a seam's gap is, in every layout. There may be other seams too."`
	Clear     []Clear           `json:"clear,omitzero" doc:"Stretches without a seam."`
}

// Clear is a stretch From < x < To without a seam.
type Clear struct {
	From fraction.Length `json:"from"`
	To   fraction.Length `json:"to"`
}

// nothing reports whether there is nothing to keep.
func (k *Keep) nothing() bool {
	return k.Origin == nil && k.Direction == nil && len(k.Seams) == 0 && len(k.Clear) == 0
}

// clears reports whether no seam may be at x.
func (k *Keep) clears(x fraction.Length) bool {
	return slices.ContainsFunc(k.Clear, func(c Clear) bool { return c.From.Less(x) && x.Less(c.To) })
}

// checkKeep checks what is kept on run r against all but the shape of the wall.
func (room *Room) checkKeep(f *faults, r int) {
	run := &room.Runs[r]
	keep, profile := &run.Keep, &room.Profile
	at := func(steps ...any) []any { return append([]any{"Runs", r, "Keep"}, steps...) }
	if o := keep.Origin; o != nil && slices.ContainsFunc(room.Installed, func(in Installed) bool {
		return in.Run == r && groove.Modulo(in.Left.Sub(*o), profile.Pitch()) != in.LeftPhase
	}) {
		f.Add(*o, "an origin that the installed panels of the run show", at("Origin")...)
	}
	if d := keep.Direction; d != nil && int(*d) >= len(directions) {
		f.Add(*d, directions.Want(), at("Direction")...)
	} else if d != nil && boardsBy(profile) != ByNothing && (*d == Left) != (profile.Tongue == groove.TongueLeft) {
		f.Add(*d, "the way that the tongues point, as boards are worked", at("Direction")...)
	}
	if len(keep.Seams) > 0 && profile.Boards {
		f.Add(nil, "no seams where each repeat is a board of its own", at("Seams")...)
	}
	for k, x := range keep.Seams {
		switch {
		case x.Sign() <= 0 || !x.Less(run.Width):
			f.Add(x, "a place inside the run", at("Seams", k)...)
		case keep.clears(x):
			f.Add(x, "a place that clear does not keep free of seams", at("Seams", k)...)
		}
	}
	for k, c := range keep.Clear {
		if c.From.Sign() < 0 || !c.From.Less(run.Width) {
			f.Add(c.From, "a place on the run", at("Clear", k, "From")...)
		}
		if !c.From.Less(c.To) || run.Width.Less(c.To) {
			f.Add(c.To, "a place on the run, right of from", at("Clear", k, "To")...)
		}
	}
}

// checkKeptSeams checks that the seams that are kept on run r lie between panels to come.
func (room *Room) checkKeptSeams(f *faults, r int) {
	keep := &room.Runs[r].Keep
	if len(keep.Seams) == 0 {
		return
	}
	g, err := newRegion(context.Background(), room, r, fitting{})
	if err != nil {
		return // it is no fault of the seams
	}
	spans := g.spans(g.left, g.right)
	for k, x := range keep.Seams {
		inside := slices.ContainsFunc(spans, func(b span) bool { return b.left.Less(x) && x.Less(b.right) })
		if !inside || slices.ContainsFunc(room.Installed, func(in Installed) bool {
			return in.Run == r && !x.Less(in.Left) && !in.Right.Less(x)
		}) {
			f.Add(x, "a place that panels cover, beside those on the wall and the openings that part the run", "Runs", r, "Keep", "Seams", k)
		}
	}
}

// keepSeams parts the bays of the stretch at the seams that are kept. Like the seams beside installed
// panels these are not chosen, so that they break no rule.
func (s *stretch) keepSeams() error {
	run := &s.room.Runs[s.run]
	kept := slices.Compact(slices.SortedFunc(slices.Values(run.Keep.Seams), fraction.Length.Compare))
	for _, x := range kept {
		after, before := 1, -1 // where it lies as seen from the breaks at both ends
		if s.from >= 0 {
			after = x.Compare(run.Breaks[s.from].At)
		}
		if s.to < len(run.Breaks) {
			before = x.Compare(run.Breaks[s.to].At)
		}
		switch {
		case after < 0 || before > 0 || slices.Contains(s.beside, x):
			continue
		case after == 0 && s.covers(s.left) || before == 0 && s.covers(s.right):
			continue // the break is the seam
		}
		k := slices.IndexFunc(s.bays, func(b span) bool {
			return s.panelled(span{b.left, x.Sub(s.half)}) && s.panelled(span{x.Add(s.half), b.right})
		})
		if k < 0 {
			return unmet(s.room, s.run)
		}
		s.bays = slices.Insert(s.bays, k, span{s.bays[k].left, x.Sub(s.half)})
		s.bays[k+1].left = x.Add(s.half)
		s.beside = append(s.beside, x)
	}
	if !s.room.Profile.Boards && slices.ContainsFunc(s.beside, run.Keep.clears) {
		return unmet(s.room, s.run)
	}
	return nil
}

// covers reports whether a panel of the stretch has an edge at x, an end of the stretch.
func (s *stretch) covers(x fraction.Length) bool {
	return slices.ContainsFunc(s.bays, func(b span) bool { return b.left == x || b.right == x }) ||
		slices.ContainsFunc(s.installed(), func(in Installed) bool { return in.Left == x || in.Right == x })
}

// open returns the places among xs where a seam may be.
func (s *stretch) open(xs []fraction.Length) []fraction.Length {
	return slices.DeleteFunc(xs, s.room.Runs[s.run].Keep.clears)
}

// unkept says on which run no layout keeps what is asked for, where the room has layouts without;
// otherwise it returns nil, or why there is none.
func (s *search) unkept() error {
	room := *s.m.room
	var keepers []int // runs that keep something
	only := func(r int) error {
		room.Runs = slices.Clone(s.m.room.Runs)
		for i := range room.Runs {
			if i != r {
				room.Runs[i].Keep = Keep{}
			}
		}
		for _, err := range layouts(s.ctx, room, nil) {
			return err
		}
		return nil
	}
	for r := range room.Runs {
		if !room.Runs[r].Keep.nothing() {
			keepers = append(keepers, r)
		}
	}
	if len(keepers) == 0 {
		return nil
	}
	if err := only(-1); err != nil {
		return err
	}
	kept := keepers[0]
	if len(keepers) > 1 {
		if i := slices.IndexFunc(keepers, func(r int) bool { return only(r) != nil }); i >= 0 {
			kept = keepers[i]
		}
	}
	return unmet(&room, kept)
}

// unmet is the error of run r where no layout keeps all that is to be kept.
func unmet(room *Room, r int) *NoLayoutError {
	return &NoLayoutError{Run: room.Runs[r].Name, Reason: KeepUnmet, Path: fault.Of("Runs", r, "Keep")}
}
