package book

import (
	"strings"

	"example.com/groovewright/finish"
	"example.com/groovewright/wall/plan"
)

// caution is what a caution says.
type caution struct {
	When   string // what raises it
	First  string // the first thing to do
	Rest   string
	Defers string // who decides
}

// cautionWords has the words of each caution. What goes on the wall stands as {panels}.
var cautionWords = map[finish.Caution]caution{
	finish.Power: {
		When: "there is an electrical box in the work",
		First: "Before a cover comes off, switch the circuit off at its breaker or fuse, keep others from switching it on again, " +
			"and prove every wire in the box dead with a tester at the box itself; try the tester on a live point before and after.",
		Rest:   "One box can hold two circuits. Where you are not sure, stop and call an electrician.",
		Defers: "the electrical code in force, the local inspector, a licensed electrician",
	},
	finish.BoxFlush: {
		When:  "there is an electrical box behind a face that can burn",
		First: "The front of each box, with a ring or extender listed for it, has to come out to the face of the {panels} or stand proud of it.",
		Rest: "A box that was right behind plaster is wrong behind wood. Metal extenders are grounded, the screws are long enough to hold the " +
			"device, and no wood is left between box and cover.",
		Defers: "the electrical code in force (model text: NEC 314.20), the local inspector",
	},
	finish.BoxOpen: {
		When:  "there is an electrical box in the work",
		First: "Cut close: the gap around a box stays within 1/8 in (3 mm), and a bigger cover does not cure a bigger gap.",
		Rest:  "Never bury a box, not even a blank one: it has to stay within reach without tools on the wall.",
		Defers: "the electrical code in force (model texts: NEC 314.21 for faces that cannot burn, NEC 314.29), " +
			"the local inspector",
	},
	finish.Heat: {
		When: "a cooking appliance stands at the {panels}",
		First: "Keep wood, fiberboard and plastic out of the zone that the maker of the appliance reserves at its sides, behind it and above it; " +
			"where the manual is lost, use a finish there that cannot burn.",
		Rest: "Overhead, model codes want at least 30 in (762 mm) from the cooking top to bare wood. A gas line or its valve is moved by a " +
			"licensed fitter only.",
		Defers: "the listing and instructions of the appliance, the residential and fuel-gas codes in force (model text: IRC M1901.1)",
	},
	finish.Lead: {
		When:  "the house was built before 1978, or nobody knows when",
		First: "Old paint may hold lead until a test shows that it does not.",
		Rest: "Where it is disturbed: no dry sanding, no torch, no heat gun; wet the work, tape off with plastic sheet, keep children and pregnant " +
			"women out, wear a fitted respirator, clean with a HEPA vacuum and wet cloths. Paid work in such a house is bound by rules of its own.",
		Defers: "40 CFR part 745 (EPA) and state programs; a certified renovator or inspector",
	},
	finish.Asbestos: {
		When: "the house was built before 1990, or nobody knows when",
		First: "Find out before you cut, drill, sand or scrape old boards, textures, tile glue or pipe insulation whether there is asbestos " +
			"in them.",
		Rest:   "Leave sound material alone. Do not sweep or vacuum debris. Trained people take samples and remove it.",
		Defers: "EPA and state asbestos rules; accredited inspectors and contractors",
	},
	finish.CablesAndPipes: {
		When: "nails go into the wall",
		First: "Find cables and pipes before you nail or screw: they run up from switches and boxes, along to the next one, and to faucets " +
			"and drains.",
		Rest: "A cable may lawfully lie 1-1/4 in (32 mm) behind the face of a stud without a steel plate, and one that was fished in may lie " +
			"anywhere. Keep nails short, and use glue alone beside boxes and pipes.",
		Defers: "the electrical and plumbing codes in force (model text: NEC 300.4)",
	},
	finish.Dust: {
		When: "{panels} of wood or wood fiber are sawn or sanded",
		First: "Saw outdoors or with extraction at the blade, wear a fitted respirator (N95 class or better) and eye protection, and do not blow " +
			"dust off with air.",
		Rest:   "Wood dust can cause cancer, and in the air it can burn.",
		Defers: "OSHA and NIOSH limits for wood dust",
	},
	finish.Resin: {
		When: "{panels} are bound with resin",
		First: "Buy {panels} that are labeled as meeting the formaldehyde limits, air the room while they rest in it, and coat edges and backs " +
			"where you can.",
		Defers: "the formaldehyde rules for composite wood in force (40 CFR part 770)",
	},
	finish.Saws: {
		When: "pieces are sawn",
		First: "Support both parts of each cut so that the blade cannot bind, stand beside the line of the blade, keep guards on and hands clear, " +
			"unplug before changing a blade, wear eye and ear protection.",
		Rest:   "Narrow strips want a push stick or a guided saw, not fingers.",
		Defers: "the tool's manual; 29 CFR 1926.102 on eye protection",
	},
	finish.Nailer: {
		When: "nails are driven",
		First: "Choose the single-shot sequential trigger, keep the other hand a foot away and never hold a piece in the line of fire, take the " +
			"air or battery off before clearing a jam, wear eye protection.",
		Rest:   "Short brads turn in hard spots and come out at the side.",
		Defers: "the tool's manual, the OSHA and NIOSH guide on nail guns",
	},
	finish.Ladder: {
		When: "{panels} reach higher than 6 ft (1.8 m) above the floor",
		First: "Use a stepladder fully open with its spreaders locked, on a level floor, never leaned closed against the wall, and do not stand on " +
			"the counter instead.",
		Defers: "the ladder's label; 29 CFR 1926.1053",
	},
	finish.FireSpread: {
		When: "the face of a wall is clad with something that can burn",
		First: "Ask for the flame-spread figure of the {panels}: wall finishes are limited (model code: flame spread at most 200, smoke at most " +
			"450), and escape routes and shared buildings more strictly.",
		Defers: "the building code in force (model text: IRC R302.9)",
	},
	finish.ThinPanel: {
		When:   "{panels} thinner than 1/4 in (6 mm) go straight onto studs",
		First:  "Put 3/8 in gypsum board or thicker behind them first: thin {panels} on open studs burn through quickly and dent.",
		Defers: "the building code in force (model text: IRC R702.5)",
	},
	finish.Fumes: {
		When:   "paint, sealant or adhesive is used",
		First:  "Read the label, open windows, and keep flames and pilot lights off while solvents dry.",
		Rest:   "Spread oily rags out flat outdoors to dry: in a heap they can catch fire by themselves.",
		Defers: "the label and safety sheet of each product",
	},
	finish.Damp: {
		When: "moisture reaches the {panels}",
		First: "Find where the water comes from and let the wall dry before it is covered: {panels} over a damp wall swell, and mold grows behind " +
			"them unseen.",
		Defers: "the building code in force on moisture; local practice",
	},
}

// Caution returns what a caution says in a plan, in one paragraph.
func Caution(p plan.Plan, c finish.Caution) string {
	words := cautioned(p, c)
	return strings.Join(strings.Fields(words.First+" "+words.Rest+" "+words.Reason()), " ")
}

// cautioned returns the parts of a caution.
func cautioned(p plan.Plan, c finish.Caution) caution {
	panels := strings.NewReplacer("{panels}", panelWord(p)+"s")
	words := cautionWords[c]
	return caution{panels.Replace(words.When), panels.Replace(words.First), panels.Replace(words.Rest), words.Defers}
}

// Reason says why the caution is there and who decides.
func (c caution) Reason() string {
	return "(Raised because " + c.When + ". Decided by " + c.Defers + ".)"
}
