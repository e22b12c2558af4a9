package finish

// Schedule returns the steps of the work in their order. Steps that the work does not need are left out: no mains without
// boxes, no sealing without joints. A field of m that [Materials.Validate] refuses counts as its default.
func Schedule(w Work, m Materials) []Step {
	s := &scheduler{site: siteOf(w, m), steps: []Step{}}
	if len(w.Pieces) == 0 {
		return s.steps
	}
	boxes := len(w.Boxes) > 0
	s.look()
	s.rest()
	s.strips()
	s.step(StageCut, true, s.figure(ActPieces, counted(int64(len(w.Pieces)), NoUnit)), s.labels(ActClosing, w.Closing))
	s.step(StageMiter, w.Mitred)
	p := s.Paint
	s.step(StageFirstCoats, s.firstCoat(), s.coats(ActPrimer, p.Primer.Before), s.coats(ActTopCoat, p.Top.Before),
		s.coats(ActEdges, p.EdgeCoats), s.act(ActBacks, s.House.Damp))
	s.step(StageMainsOff, boxes)
	s.step(StageDryFit, true, s.act(ActExtenders, boxes))
	glue := s.Adhesive.Form
	s.step(StageFit, true, s.act(ActBeads, glue == GlueBeads), s.act(ActDots, glue == GlueDots), s.act(ActNails, !s.Nails.None),
		s.labels(ActClosing, w.Closing), s.labels(ActFitting, w.Fitting))
	s.step(StageClose, len(w.Closing) > 0, s.labels(ActClosing, w.Closing))
	sealed := s.Sealant.sealed(w.Joints)
	cover := of(s.in(s.House.Datum).Sign() > 0, ActFloor, ActCounter)
	s.step(StageTape, sealed.Sign() > 0 && times(s.Tape.SealLines) > 0, s.act(cover, true), s.figure(ActJoints, up(sealed, s.run())),
		s.coats(ActLines, s.Tape.SealLines))
	s.step(StageSeal, sealed.Sign() > 0)
	s.step(StageLastCoats, s.lastCoat(), s.coats(ActPrimer, p.Primer.After), s.coats(ActTopCoat, p.Top.After))
	s.step(StagePowerOn, boxes)
	return s.steps
}

// scheduler makes the steps.
type scheduler struct {
	site
	steps []Step
}

// step adds a step where it is needed; nil acts are left out.
func (s *scheduler) step(stage Stage, needed bool, acts ...*Act) {
	if !needed {
		return
	}
	step := Step{Stage: stage}
	for _, a := range acts {
		if a != nil {
			step.Acts = append(step.Acts, *a)
		}
	}
	s.steps = append(s.steps, step)
}

func (s *scheduler) act(kind ActKind, needed bool) *Act {
	if !needed {
		return nil
	}
	return &Act{Kind: kind}
}

func (s *scheduler) figure(kind ActKind, f Figure) *Act { return &Act{Kind: kind, Figure: f} }

func (s *scheduler) coats(kind ActKind, text Number) *Act {
	if n := times(text); n > 0 {
		return s.figure(kind, counted(n, NoUnit))
	}
	return nil
}

func (s *scheduler) labels(kind ActKind, labels []string) *Act {
	if len(labels) == 0 {
		return nil
	}
	return &Act{Kind: kind, Labels: labels}
}

func (s *scheduler) look() {
	floor := s.figure(ActAssumeFloor, s.small(counterReach.Rat()))
	if !s.guessed {
		floor = nil
	}
	s.step(StageLook, true, s.act(ActTestPaint, s.old(LeadYear)), s.act(ActFindAsbestos, s.old(AsbestosYear)), floor)
}

func (s *scheduler) rest() {
	kind := of(s.Profile.Boards, ActRestSheets, ActRestBoards)
	if s.House.Material == SolidWood {
		kind = ActRestWood
	}
	s.step(StageRest, true, s.act(kind, true))
}

// strips prepares the wall for upright boards.
func (s *scheduler) strips() {
	listed := s.Furring.Thickness != ""
	s.step(StageStrips, s.Profile.Boards && (listed || !s.Nails.None), s.figure(ActStrips, s.small(s.in(s.House.Studs))),
		s.act(of(listed, ActStripsUnlisted, ActStripsListed), true), s.act(ActSetBoxesBack, !listed && len(s.Boxes) > 0))
}
