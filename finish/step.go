package finish

import (
	"strings"

	"example.com/groovewright/fraction/enum"
)

// Step is a stage of the work and what in it depends on the job; "cut: pieces 7; closing 3, 6, 7".
type Step struct {
	Stage Stage
	Acts  []Act
}

// Act is something to do, to know or to do it with.
type Act struct {
	Kind   ActKind
	Labels []string // of pieces, where the kind has them; no label holds a comma or a semicolon
	Figure Figure   // where the kind has one
}

// Stage is a part of the work.
type Stage uint8

// The stages, in working order.
const (
	StageLook Stage = iota
	StageRest
	StageStrips
	StageLines // a plumb line where each run starts, a level line across
	StageCut
	StageMiter
	StageMainsOff // and boxes made safe
	StageDryFit
	StageFirstCoats // before fitting
	StageFit        // piece by piece, closing ones among them
	StageTrim
	StageFill
	StageTape
	StageSeal
	StageLastCoats // after sealing
	StageSealWet   // with the sealant of kitchens and baths
	StageDevices
	StagePowerOn
)

var stages = enum.Of[Stage]("look", "rest", "strips", "lines", "cut", "miter", "mains off", "dry fit", "first coats", "fit",
	"trim", "fill", "tape", "seal", "last coats", "seal wet", "devices", "power on")

// String returns the word of the stage, or its number in brackets where it has none.
func (s Stage) String() string { return stages.String(s) }

// MarshalText writes the word of the stage, and fails where it has none.
func (s Stage) MarshalText() ([]byte, error) { return stages.Marshal(s) }

// UnmarshalText reads the word of a stage.
func (s *Stage) UnmarshalText(t []byte) error { return stages.Unmarshal(t, s) }

// ActKind is a kind of act.
type ActKind uint8

// The kinds of acts, by the stages in which they stand.
const (
	ActTestPaint      ActKind = iota // look: for lead
	ActFindAsbestos                  // look
	ActAssumeFloor                   // look: the datum is the floor; Figure: all runs reach higher
	ActRestSheets                    // rest
	ActRestBoards                    // rest
	ActRestWood                      // rest
	ActStrips                        // strips; Figure: at most so far apart
	ActSheetStrips                   // strips: behind sheets; Figure: at most so far apart
	ActStripsListed                  // strips: the list has them
	ActStripsUnlisted                // strips: the job does not give their thickness
	ActSetBoxesBack                  // strips: by those that are not on the list
	ActPieces                        // cut; Figure: how many
	ActClosing                       // cut, fit; Labels: pieces to measure again on the wall
	ActPrimer                        // first and last coats; Figure: coats
	ActTopCoat                       // first and last coats; Figure: coats
	ActEdges                         // first coats, with the first paint; Figure: coats
	ActBacks                         // first coats
	ActExtenders                     // dry fit
	ActBeads                         // fit: of adhesive
	ActDots                          // fit: of adhesive
	ActAdhesive                      // fit: as the tube says; Figure: the area of about a cartridge
	ActNails                         // fit
	ActScrews                        // fit: in place of nails
	ActFitting                       // fit; Labels: the pieces that come next, but for closing ones
	ActCounter                       // tape: cover counter and floor
	ActFloor                         // tape: cover the floor
	ActJoints                        // tape, seal wet; Figure: length
	ActLines                         // tape, seal wet; Figure: along each joint; last coats: along what stays bare
	ActAfterPaint                    // seal wet: paint does not hold on it
	ActRod                           // seal, seal wet; Figure: behind gaps wider than this
	ActGrooves                       // seal, seal wet: fill their open ends first
	ActTrimsUp                       // trim: those bought with panels that are up
)

var actKinds = enum.Of[ActKind]("test paint", "find asbestos", "assume floor", "rest sheets", "rest boards", "rest wood",
	"strips", "sheet strips", "strips listed", "strips unlisted", "set boxes back", "pieces", "closing", "primer", "top coat", "edges", "backs", "extenders",
	"beads", "dots", "adhesive", "nails", "screws", "fitting", "counter", "floor", "joints", "lines", "after paint", "rod", "grooves", "trims up")

// String returns the word of the kind, or its number in brackets where it has none.
func (k ActKind) String() string { return actKinds.String(k) }

// MarshalText writes the word of the kind, and fails where it has none.
func (k ActKind) MarshalText() ([]byte, error) { return actKinds.Marshal(k) }

// UnmarshalText reads the word of a kind.
func (k *ActKind) UnmarshalText(t []byte) error { return actKinds.Unmarshal(t, k) }

// labeled reports whether acts of the kind have labels.
func (k ActKind) labeled() bool { return k == ActClosing || k == ActFitting }

// String returns the kind with its labels or its figure.
func (a Act) String() string {
	switch {
	case a.Kind.labeled():
		return a.Kind.String() + " " + strings.Join(a.Labels, ", ")
	case a.Figure.Unit != NoUnit || !a.Figure.Value.IsZero():
		return a.Kind.String() + " " + a.Figure.String()
	}
	return a.Kind.String()
}

// String returns the text of the step.
func (s Step) String() string {
	text := s.Stage.String()
	for i, a := range s.Acts {
		text += of(i == 0, "; ", ": ") + a.String()
	}
	return text
}

// MarshalText writes the step as String does, and fails where its stage or an act has no word.
func (s Step) MarshalText() ([]byte, error) {
	_, err := s.Stage.MarshalText()
	for _, a := range s.Acts {
		if _, wrong := a.Kind.MarshalText(); wrong != nil {
			err = wrong
		}
	}
	return []byte(s.String()), err
}

// UnmarshalText reads what MarshalText writes.
func (s *Step) UnmarshalText(text []byte) error {
	stage, acts, some := strings.Cut(string(text), ": ")
	var read Step
	err := read.Stage.UnmarshalText([]byte(stage))
	for part := range strings.SplitSeq(acts, "; ") {
		if !some || err != nil {
			break
		}
		var a Act
		err = a.read(part)
		read.Acts = append(read.Acts, a)
	}
	if err == nil {
		*s = read
	}
	return err
}

// read reads what String writes.
func (a *Act) read(text string) error {
	kind := text
	for kind != "" && a.Kind.UnmarshalText([]byte(kind)) != nil { // the longest that is a kind
		kind = kind[:max(0, strings.LastIndexByte(kind, ' '))]
	}
	rest := strings.TrimPrefix(text[len(kind):], " ")
	switch {
	case kind == "":
		return a.Kind.UnmarshalText([]byte(text))
	case a.Kind.labeled():
		a.Labels = strings.Split(rest, ", ")
	case rest != "":
		return a.Figure.UnmarshalText([]byte(rest))
	}
	return nil
}

// Wait is a time that the work takes by itself.
type Wait uint8

// The waits.
const (
	RestSheets  Wait = iota // in the room where they will hang
	RestBoards              // tongue and groove
	RestWood                // solid, with stickers between
	DryPrimer               // waterborne, before the next coat
	DryCoat                 // of waterborne enamel, before the next
	HardenCoat              // before painted pieces are stacked or leaned on
	HoldGlue                // before anything pulls at glued panels
	SkinSealant             // in which a bead can be tooled
	CureSealant             // before a bead takes paint
)

// The lengths of the waits in minutes.
const hour, day = 60, 24 * 60

var waits = [...]struct {
	least, most int
	source      Source
}{
	RestSheets:  {2 * day, 3 * day, MakerText}, // at least 48 h; of fiberboard "a few days"
	RestBoards:  {2 * day, 3 * day, HowTo},
	RestWood:    {7 * day, 10 * day, TradeLeaflet},
	DryPrimer:   {hour, 4 * hour, PaintText},
	DryCoat:     {4 * hour, day, PaintText},
	HardenCoat:  {12 * hour, 2 * day, TinLabel},
	HoldGlue:    {day, 7 * day, TubeText},      // 24 h; 2 to 7 days for one
	SkinSealant: {5, 20, TubeText},             // 5; within 20
	CureSealant: {4 * hour, 2 * day, TubeText}, // at least 4 h for one; 30 min to days
}

// Range returns the wait in minutes and where it comes from. After the least one may go on if the
// label and a touch agree, after the most one may count on it in a dry, warm room; the label
// decides. It is 0 for what is no wait.
func (w Wait) Range() (least, most int, source Source) {
	if int(w) >= len(waits) {
		return 0, 0, NoSource
	}
	return waits[w].least, waits[w].most, waits[w].source
}
