package finish

import (
	"math/big"
	"slices"
)

// Schedule returns the steps that the work needs, in their order: no mains without boxes, no
// sealing without joints. A field of m that [Materials.Validate] refuses counts as its default.
func Schedule(w Work, m Materials) []Step {
	s, _ := read(w, m)
	steps := []Step{}
	if len(w.Pieces) == 0 {
		return steps
	}
	step := func(stage Stage, needed bool, acts ...[]Act) {
		if needed {
			steps = append(steps, Step{stage, slices.Concat(acts...)})
		}
	}
	boxes, boards, strips := len(w.Boxes) > 0, w.Profile.Boards, s.Furring.Thickness != ""
	glue, p, closing := s.Adhesive.Form, s.Paint, labels(ActClosing, w.Closing)
	covered := !s.Sheeting.None && s.Width.Sign() > 0
	tape := func(wet bool) []Act {
		length := s.lengthOf(func(j Joint) bool { return s.taped(j) && s.wet(j) == wet })
		if length.Sign() == 0 || times(s.Tape.SealLines) == 0 {
			return nil
		}
		return append([]Act{{Kind: ActJoints, Figure: up(length, s.run())}}, coats(ActLines, s.Tape.SealLines)...)
	}
	sealing := func(stage Stage, wet bool, first []Act) {
		length := func(sort func(Joint) bool) *big.Rat {
			return s.lengthOf(func(j Joint) bool { return sort(j) && s.wet(j) == wet })
		}
		rod := Act{Kind: ActRod, Figure: s.small(s.in(s.Sealant.Bridge))}
		step(stage, length(s.seals).Sign()+s.grooved(wet).Sign() > 0, first, when(length(s.wide).Sign() > 0, rod),
			when(s.grooved(wet).Sign() > 0, Act{Kind: ActGrooves}))
	}
	rest := of(boards, ActRestSheets, ActRestBoards)
	if s.House.Material == SolidWood {
		rest = ActRestWood
	}
	step(StageLook, true, when(w.Built < LeadYear, Act{Kind: ActTestPaint}), when(w.Built < AsbestosYear, Act{Kind: ActFindAsbestos}),
		when(s.guessed, Act{Kind: ActAssumeFloor, Figure: s.small(counterReach.Rat())}))
	step(StageRest, true, []Act{{Kind: rest}})
	step(StageStrips, s.stripped(), []Act{{Kind: of(boards, ActSheetStrips, ActStrips), Figure: s.small(s.in(s.House.Studs))},
		{Kind: of(strips, ActStripsUnlisted, ActStripsListed)}}, when(!strips && boxes, Act{Kind: ActSetBoxesBack}))
	step(StageLines, true)
	step(StageCut, true, []Act{{Kind: ActPieces, Figure: counted(int64(len(w.Pieces)), NoUnit)}}, closing)
	step(StageMiter, w.Mitred)
	step(StageMainsOff, boxes)
	step(StageDryFit, true, when(s.extended(), Act{Kind: ActExtenders}))
	step(StageFirstCoats, s.firstCoat(), coats(ActPrimer, p.Primer.Before), coats(ActEdges, p.EdgeCoats),
		coats(ActTopCoat, p.Top.Before), when(s.House.backs(), Act{Kind: ActBacks}))
	step(StageFit, true, when(glue == GlueBeads, Act{Kind: ActBeads}), when(glue == GlueDots, Act{Kind: ActDots}),
		when(glue == GlueCustom, Act{Kind: ActAdhesive, Figure: up(mul(customArea, quo(customVolume, s.customEach())), s.area())}),
		when(s.nailed(), Act{Kind: of(s.screwed(), ActNails, ActScrews)}), fitting(w))
	step(StageTrim, s.trimmed(), when(!s.Trim.None && slices.ContainsFunc(w.Ends, func(e End) bool { return e.Up }), Act{Kind: ActTrimsUp}))
	step(StageFill, s.nailed() && s.lastCoat())
	step(StageTape, covered || len(tape(false)) > 0, when(covered, Act{Kind: of(s.in(s.House.Datum).Sign() > 0, ActFloor, ActCounter)}), tape(false))
	sealing(StageSeal, false, nil)
	step(StageLastCoats, s.lastCoat(), coats(ActLines, s.Tape.PaintLines), coats(ActPrimer, p.Primer.After), coats(ActTopCoat, p.Top.After))
	sealing(StageSealWet, true, append(when(s.lastCoat(), Act{Kind: ActAfterPaint}), tape(true)...))
	step(StageDevices, boxes)
	step(StagePowerOn, boxes)
	return steps
}

// fitting lists the pieces in their order of fitting, each closing piece in an act of its own: its
// space is measured when those before it are up.
func fitting(w Work) (acts []Act) {
	closing := map[string]bool{}
	for _, l := range w.Closing {
		closing[l] = true
	}
	for _, l := range w.Fitting {
		kind := of(closing[l], ActFitting, ActClosing)
		if n := len(acts); n == 0 || kind == ActClosing || acts[n-1].Kind != kind {
			acts = append(acts, Act{Kind: kind})
		}
		last := &acts[len(acts)-1]
		last.Labels = append(last.Labels, l)
	}
	return acts
}

// when returns the act where it is needed.
func when(needed bool, a Act) []Act {
	if !needed {
		return nil
	}
	return []Act{a}
}

func coats(kind ActKind, text Number) []Act {
	n := times(text)
	return when(n > 0, Act{Kind: kind, Figure: counted(n, NoUnit)})
}

func labels(kind ActKind, labels []string) []Act {
	return when(len(labels) > 0, Act{Kind: kind, Labels: labels})
}
