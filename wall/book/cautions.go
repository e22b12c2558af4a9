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
		Rest: "One box can hold two circuits. Until the devices are back for good, each wire has its cap, each box its cover and the circuit stays off: " +
			"never switch on with a device hanging. Where you are not sure, stop and call an electrician.",
		Defers: "the electrical code in force, the local inspector, a licensed electrician",
	},
	finish.Aluminum: {
		When:   "there is an electrical box, and the house was wired between 1965 and 1973 or nobody knows when",
		First:  "Look whether branch wires are aluminum (dull, silvery, marked AL): if they are, leave every connection to a licensed electrician.",
		Rest:   "Such connections loosen and overheat when they are moved; devices and connectors for copper do not fit them.",
		Defers: "the electrical code in force, the consumer safety agency's guidance on aluminum wiring, a licensed electrician",
	},
	finish.BoxFlush: {
		When:  "there is an electrical box behind a face that can burn",
		First: "The front of each box, with a ring or extender listed for it, has to come out to the face of the {panels} or stand proud of it.",
		Rest: "A box that was right behind plaster is wrong behind wood. Metal extenders are grounded, the screws are long enough to hold the " +
			"device, and no wood is left between box and cover.",
		Defers: "the electrical code in force (model text: NEC 314.20), the local inspector",
	},
	finish.DeviceHeld: {
		When: "there is an electrical box in the work",
		First: "Each device comes out to the new face: the yoke of a receptacle is held rigidly there, its face flush with the plate or proud of it, " +
			"and the ears of a switch are seated. A device that floats on its wires or sits back behind its plate is wrong.",
		Rest:   "Longer screws alone do not hold it: an extender or spacers do.",
		Defers: "the electrical code in force (model texts: NEC 406.5, formerly 406.4, and 404.10; IRC E3902.5), the local inspector",
	},
	finish.Protection: {
		When: "there is an electrical box in the work",
		First: "Where a receptacle is replaced, today's code asks for today's protection at that place: ground-fault and arc-fault protection and " +
			"tamper-resistant kinds. Ask before you buy.",
		Defers: "the electrical code in force (model text: NEC 406.4(D)), the local inspector, a licensed electrician",
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
		Rest: "30 in (762 mm) from the cooking top to bare wood overhead is the least of model codes; manuals ask for more (36 in in two that were " +
			"read), a backguard where what burns stands within 12 in behind, and 3 to 12 in at the sides. Fit the bracket that keeps a range from " +
			"tipping again. A gas line or its valve is moved by a licensed fitter only.",
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
		When: "nails or screws go into the wall",
		First: "Find cables and pipes before you nail or screw: they run up from switches and boxes, along to the next one, and to faucets " +
			"and drains.",
		Rest: "Expect a cable from 1-1/4 in (32 mm) behind the face of a stud or a strip, without a steel plate, and one that was fished in anywhere. " +
			"A nail at a slant misses where you looked: measure how deep its point goes. Keep nails short, and use glue alone beside boxes and pipes.",
		Defers: "the electrical and plumbing codes in force (model text: NEC 300.4)",
	},
	finish.Dust: {
		When: "{panels} of wood or wood fiber are sawn or sanded",
		First: "Saw outdoors or with extraction at the blade, wear a fitted respirator (N95 class or better) and eye protection, and do not blow " +
			"dust off with air.",
		Rest:   "Wood dust can cause cancer, and in the air it can burn.",
		Defers: "OSHA and NIOSH limits for wood dust",
	},
	finish.Silica: {
		When: "{panels} that do not burn are sawn or drilled",
		First: "Boards of cement or stone give off silica dust, which scars lungs for good: score and snap, cut wet or with extraction made for it, " +
			"outdoors, with a fitted respirator (P100) and eye protection.",
		Rest:   "Do not sweep dry and do not blow dust off. Metal wants gloves, and glass its maker's way to cut it.",
		Defers: "the maker's instructions, 29 CFR 1926.1153 on silica",
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
	finish.Children: {
		When: "there is a workplace where people live",
		First: "Keep children and pets out until the last cover is on: open boxes, blades, nail guns, wet adhesive and dust are all at their height. " +
			"Lock tools and solvents away and unplug them whenever you leave.",
		Defers: "common practice",
	},
	finish.FireBlocking: {
		When: "strips leave a hollow behind the {panels}",
		First: "Ask how the hollow is to be blocked: fire climbs in it, so codes want it closed at every floor and ceiling and along its length " +
			"(model text: every 10 ft, 3 m).",
		Defers: "the building code in force (model text: IRC R302.11), the local inspector",
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
		When:  "paint, sealant or adhesive is used",
		First: "Read the label, open windows, and keep flames and pilot lights off while solvents dry.",
		Rest: "Products with solvents want a respirator with cartridges for organic vapors: a dust mask does nothing against them. " +
			"Spread oily rags out flat outdoors to dry: in a heap they can catch fire by themselves.",
		Defers: "the label and safety sheet of each product",
	},
	finish.Damp: {
		When: "moisture reaches the {panels}",
		First: "Find where the water comes from and let the wall dry before it is covered: {panels} over a damp wall swell, and mold grows behind " +
			"them unseen.",
		Defers: "the building code in force on moisture; local practice",
	},
	finish.Splash: {
		When: "{panels} that swell or rot stand at a counter or in a damp room",
		First: "Behind a sink, a basin or a tub keep them out of the splash, or out of the wet zone altogether: water gets into sawn edges, holes and " +
			"seams first. Coat every edge, seal every joint there, and look at it each year.",
		Rest:   "Inside a shower or over a tub's rim they have no place.",
		Defers: "the maker's instructions, the building code in force",
	},
	finish.MasonryWall: {
		When: "the {panels} go on masonry",
		First: "Look for damp first: a film of plastic taped to the wall for two days shows it. Strips that touch masonry are of treated wood, with " +
			"fasteners made for it.",
		Rest:   "Against an outside wall a cold face sweats: ask about insulation and a vapor retarder.",
		Defers: "the building code in force on masonry, moisture and treated wood; local practice",
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
