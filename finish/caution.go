package finish

import (
	"strings"

	"example.com/groovewright/fraction"
)

// Caution is one thing that can hurt someone, or later the house. It is advice in plain words and never a permission:
// the local code, the maker's instructions and licensed practice decide. What goes on the wall is called panels, or boards where each
// repeat of the profile is a board of its own.
type Caution struct {
	Name   string `json:"name"`
	When   string `json:"when"` // the condition that raises it
	Advice string `json:"advice"`
	Defers string `json:"defers"` // who decides
	Source string `json:"source"` // what the advice goes back to
}

// rule is a caution with its condition.
type rule struct {
	raised func(site) bool
	Caution
}

// site is what the conditions look at.
type site struct {
	Work
	settings
}

func (s site) pieces() bool { return len(s.Pieces) > 0 }

// old reports whether the house is from before the year, as one is of which the year is not known: its Built is 0.
func (s site) old(year int) bool { return s.pieces() && s.Built < year }

func (s site) nailed() bool { return s.pieces() && !s.nails.none }

func (s site) painted() bool {
	p := s.paint
	return s.pieces() && p.primer.before+p.primer.after+p.top.before+p.top.after > 0
}

func (s site) fibre() bool { return s.pieces() && s.house.woodFibre() }

// resin reports whether the panels are bound with resin.
func (s site) resin() bool {
	return s.pieces() && (s.house.material == "mdf" || s.house.material == "plywood")
}

const (
	// LeadYear is the year before which paint in US houses may hold lead: 40 CFR part 745.
	LeadYear = 1978
	// AsbestosYear is a year before which boards, textures, flooring glue and insulation may well hold asbestos; from memory.
	// Some materials held it later.
	AsbestosYear = 1990
)

var (
	// ThinPanel is the thickness below which wood-veneer and hardboard panelling wants gypsum behind it: IRC R702.5.
	ThinPanel = fraction.Of(1, 4)
	// LadderHeight is what most people reach from the floor with a tool in hand; judgement.
	LadderHeight = fraction.Inches(72)
)

// rules are all cautions, the most pressing first.
var rules = []rule{
	{func(s site) bool { return len(s.Boxes) > 0 }, Caution{
		Name: "power",
		When: "there is an electrical box in the work",
		Advice: "Before a cover comes off, switch the circuit off at its breaker or fuse, keep others from switching it on again, and prove every wire in the box dead with a tester at the box itself; " +
			"try the tester on a live point before and after. One box can hold two circuits. Where you are not sure, stop and call an electrician.",
		Defers: "the electrical code in force, the local inspector, a licensed electrician",
		Source: "29 CFR 1910.333 (de-energise, lock or tag; what is not tagged counts as live); prove dead at the point of work: NFPA 70E, from memory",
	}},
	{func(s site) bool { return len(s.Boxes) > 0 && s.house.combustible() }, Caution{
		Name: "box flush",
		When: "there is an electrical box behind a face that can burn",
		Advice: "The front of each box, with a ring or extender listed for it, has to come out to the face of the {panels} or stand proud of it. A box that was right behind plaster is wrong behind wood. " +
			"Metal extenders are earthed, the screws are long enough to hold the device, and no wood is left between box and cover.",
		Defers: "the electrical code in force (model text: NEC 314.20), the local inspector",
		Source: "NEC 314.20, 2014 and 2017 texts compared in a renewal course; a trade magazine's case of panelling over gypsum board",
	}},
	{func(s site) bool { return len(s.Boxes) > 0 }, Caution{
		Name:   "box open",
		When:   "there is an electrical box in the work",
		Advice: "Cut close: the gap round a box stays within 1/8 in (3 mm), and a bigger cover does not cure a bigger gap. Never bury a box, not even a blank one: it has to stay within reach without tools on the wall.",
		Defers: "the electrical code in force (model texts: NEC 314.21 for faces that cannot burn, NEC 314.29), the local inspector",
		Source: "NEC 314.21 as quoted by inspectors; NEC 314.29 from memory",
	}},
	{func(s site) bool { return s.Cooking && s.pieces() }, Caution{
		Name: "heat",
		When: "a cooking appliance stands at the {panels}",
		Advice: "Keep wood, fibreboard and plastic out of the zone that the maker of the appliance reserves at its sides, behind it and above it; where the manual is lost, use a finish there that cannot burn. " +
			"Overhead, model codes want at least 30 in (762 mm) from the cooking top to bare wood. A gas line or its valve is moved by a licensed fitter only.",
		Defers: "the listing and instructions of the appliance, the residential and fuel-gas codes in force (model text: IRC M1901.1)",
		Source: "IRC M1901.1, 2018 text of Ohio",
	}},
	{func(s site) bool { return s.old(LeadYear) }, Caution{
		Name: "lead",
		When: "the house was built before 1978, or nobody knows when",
		Advice: "Old paint may hold lead until a test shows that it does not. Where it is disturbed: no dry sanding, no torch, no heat gun; wet the work, tape off with plastic sheet, keep children and pregnant women out, " +
			"wear a fitted respirator, clean with a HEPA vacuum and wet cloths. Paid work in such a house is bound by rules of its own.",
		Defers: "40 CFR part 745 (EPA) and state programmes; a certified renovator or inspector",
		Source: "EPA answers on 40 CFR 745.83 and on owners who work in their own home; EPA sheet on lead-safe renovation",
	}},
	{func(s site) bool { return s.old(AsbestosYear) }, Caution{
		Name:   "asbestos",
		When:   "the house was built before 1990, or nobody knows when",
		Advice: "Find out before you cut, drill, sand or scrape old boards, textures, tile glue or pipe lagging whether there is asbestos in them. Leave sound material alone. Do not sweep or vacuum debris. Trained people take samples and remove it.",
		Defers: "EPA and state asbestos rules; accredited inspectors and contractors",
		Source: "EPA dos and don'ts for the home; EPA, CPSC and ALA brochure of 1990; the year from memory",
	}},
	{func(s site) bool { return s.nailed() }, Caution{
		Name: "cables and pipes",
		When: "nails go into the wall",
		Advice: "Find cables and pipes before you nail or screw: they run up from switches and boxes, along to the next one, and to taps and drains. A cable may lawfully lie 1-1/4 in (32 mm) behind the face of a stud without a steel plate, " +
			"and one that was fished in may lie anywhere. Keep nails short, and use glue alone beside boxes and pipes.",
		Defers: "the electrical and plumbing codes in force (model text: NEC 300.4)",
		Source: "NEC 300.4(A) and (D) with the exception for fished cables",
	}},
	{func(s site) bool { return s.fibre() }, Caution{
		Name:   "dust",
		When:   "{panels} of wood or wood fibre are sawn or sanded",
		Advice: "Saw outdoors or with extraction at the blade, wear a fitted respirator (N95 class or better) and eye protection, and do not blow dust off with air. Wood dust can cause cancer, and in the air it can burn.",
		Defers: "OSHA and NIOSH limits for wood dust",
		Source: "OSHA wood-dust page: 15 mg/m3 total and 5 respirable, NIOSH 1 mg/m3; the class of the respirator from memory",
	}},
	{func(s site) bool { return s.resin() }, Caution{
		Name:   "resin",
		When:   "{panels} are bound with resin",
		Advice: "Buy {panels} that are labelled as meeting the formaldehyde limits, air the room while they rest in it, and coat edges and backs where you can.",
		Defers: "the formaldehyde rules for composite wood in force (40 CFR part 770)",
		Source: "Pub. L. 111-199: MDF 0.11 ppm, hardwood plywood 0.05 ppm",
	}},
	{func(s site) bool { return s.pieces() }, Caution{
		Name: "saws",
		When: "pieces are sawn",
		Advice: "Support both parts of each cut so that the blade cannot bind, stand beside the line of the blade, keep guards on and hands clear, unplug before changing a blade, wear eye and ear protection. " +
			"Narrow strips want a push stick or a guided saw, not fingers.",
		Defers: "the tool's manual; 29 CFR 1926.102 on eye protection",
		Source: "NIOSH limit of 85 dBA over 8 hours, quoted in an article; the rest common practice, no source",
	}},
	{func(s site) bool { return s.nailed() }, Caution{
		Name:   "nailer",
		When:   "nails are driven",
		Advice: "Choose the single-shot sequential trigger, keep the other hand a foot away and never hold a piece in the line of fire, take the air or battery off before clearing a jam, wear eye protection. Short brads turn in hard spots and come out at the side.",
		Defers: "the tool's manual, the OSHA and NIOSH guide on nail guns",
		Source: "summary of the OSHA and NIOSH guide: about twice the injuries with contact triggers",
	}},
	{func(s site) bool { return s.pieces() && s.high() }, Caution{
		Name:   "ladder",
		When:   "{panels} reach higher than 6 ft (1.8 m) above the floor",
		Advice: "Use a stepladder fully open with its spreaders locked, on a level floor, never leaned closed against the wall, and do not stand on the counter instead.",
		Defers: "the ladder's label; 29 CFR 1926.1053",
		Source: "OSHA letter of 21 January 2010 on 29 CFR 1926.1053(b)(4)",
	}},
	{func(s site) bool { return s.fibre() }, Caution{
		Name:   "fire spread",
		When:   "the face of a wall is clad with something that can burn",
		Advice: "Ask for the flame-spread figure of the {panels}: wall finishes are limited (model code: flame spread at most 200, smoke at most 450), and escape routes and shared buildings more strictly.",
		Defers: "the building code in force (model text: IRC R302.9)",
		Source: "IRC R302.9 in a study guide",
	}},
	{func(s site) bool { return s.fibre() && s.thin() }, Caution{
		Name:   "thin panel",
		When:   "{panels} thinner than 1/4 in (6 mm) go straight onto studs",
		Advice: "Put 3/8 in gypsum board or thicker behind them first: thin {panels} on open studs burn through quickly and dent.",
		Defers: "the building code in force (model text: IRC R702.5)",
		Source: "IRC R702.5 as quoted",
	}},
	{func(s site) bool { return s.painted() || s.pieces() && s.adhesive.form != "none" }, Caution{
		Name:   "fumes",
		When:   "paint, sealant or adhesive is used",
		Advice: "Read the label, open windows, and keep flames and pilot lights off while solvents dry. Spread oily rags out flat outdoors to dry: in a heap they can catch fire by themselves.",
		Defers: "the label and safety sheet of each product",
		Source: "common practice, no source",
	}},
	{func(s site) bool { return s.pieces() && s.house.damp }, Caution{
		Name:   "damp",
		When:   "moisture reaches the {panels}",
		Advice: "Find where the water comes from and let the wall dry before it is covered: {panels} over a damp wall swell, and mould grows behind them unseen.",
		Defers: "the building code in force on moisture; local practice",
		Source: "common practice, no source",
	}},
}

// high reports whether the work goes beyond the reach from the floor.
func (s site) high() bool {
	return add(s.Highest.Rat(), s.house.datum).Cmp(LadderHeight.Rat()) > 0
}

// thin reports whether thin panels have nothing behind them.
func (s site) thin() bool {
	return s.house.backing == "studs" && s.Profile.Thickness.Less(ThinPanel)
}

// AllCautions returns every caution there is, raised or not, the most pressing first.
func AllCautions() []Caution {
	all := make([]Caution, len(rules))
	for i, r := range rules {
		all[i] = r.called("panels")
	}
	return all
}

// called returns the caution with the word for what goes on the wall.
func (c Caution) called(panels string) Caution {
	c.When, c.Advice = strings.ReplaceAll(c.When, "{panels}", panels), strings.ReplaceAll(c.Advice, "{panels}", panels)
	return c
}

// Cautions returns those that the work raises, the most pressing first. A field of m that [Materials.Validate] refuses counts as its default.
func Cautions(w Work, m Materials) []Caution {
	s := site{w, readFor(w).read(m)}
	var raised []Caution
	for _, r := range rules {
		if r.raised(s) {
			raised = append(raised, r.called(w.board("panels", "boards")))
		}
	}
	return raised
}

// String is the caution in one paragraph.
func (c Caution) String() string {
	return c.Advice + " (Raised because " + c.When + ". Decided by " + c.Defers + ".)"
}
