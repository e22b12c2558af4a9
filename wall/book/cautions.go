package book

import (
	"fmt"
	"slices"
	"strings"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/plan"
)

// caution is what a caution says.
type caution struct {
	When   string // what raises it
	First  string // the first thing to do
	Rest   string
	Defers string // who decides
}

// onStairs has what is said of the caution of ladders where a wall goes up stairs: common practice, no source.
var onStairs = caution{
	First: "On the stairs stand on a leveled platform or a scaffold made for stairs.",
	Rest: "A stepladder wants a level floor, which stairs lack; one with legs of unequal length only as its maker's instructions and local rules have it. " +
		"On the level floor it is fully open, its spreaders are locked, and it is never leaned closed against the wall.",
}

// cautionWords has the words of each caution. What goes on the wall stands as {panels}, how far nails stay off
// boxes in the plan as {clear}; see [has] for the others.
var cautionWords = map[finish.Caution]caution{
	finish.Power: {
		When:  "there is an electrical box in the work",
		First: "Switch the circuit off and secure it, and prove every wire in a box dead.",
		Rest: "Do so before a cover comes off, at the breaker or fuse, with a tester at the box itself; try the tester on a live point before and after. One box can " +
			"hold two circuits. A circuit is on only while each of its boxes is closed, by its device and cover or with capped wires by a blank cover: " +
			"never switch on with a device hanging. Where you are not sure, stop and call an electrician.",
		Defers: "the electrical code in force, the local inspector, a licensed electrician",
	},
	finish.Aluminum: {
		When:   "there is an electrical box, and the house was wired between 1965 and 1973 or nobody knows when",
		First:  "Leave aluminum wires (dull, silvery, marked AL) to a licensed electrician.",
		Rest:   "Look whether branch wires are such. Their connections loosen and overheat when they are moved; devices and connectors for copper do not fit them.",
		Defers: "the electrical code in force, the consumer safety agency's guidance on aluminum wiring, a licensed electrician",
	},
	finish.BoxFlush: {
		When:  "there is an electrical box behind a face that can burn",
		First: "Bring the front of each box out to the face of the {panels}, or proud of it.",
		Rest: "A ring or extender listed for the box does that. A box that was right behind plaster is wrong behind wood. Metal extenders are grounded, the screws are long enough to hold the " +
			"device, and no wood is left between box and cover.",
		Defers: "the electrical code in force (model text: NEC 314.20), the local inspector",
	},
	finish.DeviceHeld: {
		When:  "there is an electrical box in the work",
		First: "Each device is held rigidly at the new face; none floats or sits back.",
		Rest: "The face of a receptacle is flush with its plate or proud of it, and the ears of a switch are seated. A device that floats on its wires or sits back behind " +
			"its plate is wrong. Longer screws alone do not hold it: an extender or spacers do.",
		Defers: "the electrical code in force (model texts: NEC 406.5, formerly 406.4, and 404.10; IRC E3902.5), the local inspector",
	},
	finish.Protection: {
		When:   "there is an electrical box in the work",
		First:  "Ask what protection today's code wants where a receptacle is replaced.",
		Rest:   "There are ground-fault and arc-fault protection and tamper-resistant kinds: ask before you buy.",
		Defers: "the electrical code in force (model text: NEC 406.4(D)), the local inspector, a licensed electrician",
	},
	finish.BoxOpen: {
		When:  "there is an electrical box in the work",
		First: "Keep the gap around a box within 1/8 in (3 mm), and never bury a box.",
		Rest:  "A bigger cover does not cure a bigger gap. A box, even a blank one, has to stay within reach without tools on the wall.",
		Defers: "the electrical code in force (model texts: NEC 314.21 for faces that cannot burn, NEC 314.29), " +
			"the local inspector",
	},
	finish.Heat: {
		When:  "a cooking appliance stands at the {panels}",
		First: "Keep what burns as far off a cooking appliance as its manual asks.",
		Rest: "Its maker reserves a zone at its sides, behind it and above it, which wood, fiberboard and plastic stay out of; where the manual is lost, use a finish there " +
			"that cannot burn. 30 in (762 mm) from the cooking top to bare wood overhead is the least of model codes; manuals ask for more (two that were read for 36 in), " +
			"a backguard where what burns stands within 12 in behind, and 3 to 12 in at the sides. Fit the bracket that keeps a range from " +
			"tipping again. A gas line or its valve is moved by a licensed fitter only.",
		Defers: "the listing and instructions of the appliance, the residential and fuel-gas codes in force (model text: IRC M1901.1)",
	},
	finish.Lead: {
		When:  "the house was built before 1978, or nobody knows when",
		First: "Take old paint for lead paint until a test shows that it is none.",
		Rest: "Where it is disturbed: no dry sanding, no torch, no heat gun; wet the work, tape off with plastic sheet, keep children and pregnant " +
			"women out, wear a fitted respirator, clean with a HEPA vacuum and wet cloths. Paid work in such a house is bound by rules of its own.",
		Defers: "40 CFR part 745 (EPA) and state programs; a certified renovator or inspector",
	},
	finish.Asbestos: {
		When:   "the house was built before 1990, or nobody knows when",
		First:  "Have old boards, textures and glues checked for asbestos before you cut.",
		Rest:   "So too before you drill, sand or scrape them, and with tile glue and pipe insulation. Leave sound material alone. Do not sweep or vacuum debris. Trained people take samples and remove it.",
		Defers: "EPA and state asbestos rules; accredited inspectors and contractors",
	},
	finish.CablesAndPipes: {
		When:  "nails or screws go into the wall",
		First: "Find cables and pipes before you nail or screw, and keep nails short.",
		Rest: "Cables run up and down from switches and receptacles and along from one to the next, pipes to faucets, drains and radiators. Expect a cable from 1-1/4 in (32 mm) behind the face of a stud or a strip, without a steel plate, and one that was fished in anywhere. " +
			"A nail at a slant misses where you looked: measure how deep its point goes. Use glue alone beside {beside}{clear}.",
		Defers: "the electrical and plumbing codes in force (model text: NEC 300.4)",
	},
	finish.Dust: {
		When:   "{panels} of wood or wood fiber are sawn or sanded",
		First:  "Saw outdoors or with extraction at the blade, with a fitted respirator.",
		Rest:   "One of N95 class or better, with eye protection; do not blow dust off with air. Wood dust can cause cancer, and in the air it can burn.",
		Defers: "OSHA and NIOSH limits for wood dust",
	},
	finish.Silica: {
		When:   "{panels} that do not burn are sawn or drilled",
		First:  "Score and snap, or cut wet, with a fitted respirator (P100): silica scars lungs.",
		Rest:   "Boards of cement or stone give off its dust. Cut outdoors or with extraction made for it, with eye protection. Do not sweep dry and do not blow dust off. Metal wants gloves, and glass its maker's way to cut it.",
		Defers: "the maker's instructions, 29 CFR 1926.1153 on silica",
	},
	finish.Resin: {
		When:   "{panels} are bound with resin",
		First:  "Buy {panels} labeled for formaldehyde, and air the room while they rest.",
		Rest:   "The label says that they meet its limits. Coat edges and backs where you can.",
		Defers: "the formaldehyde rules for composite wood in force (40 CFR part 770)",
	},
	finish.Saws: {
		When:   "pieces are sawn",
		First:  "Support both parts of each cut, keep guards on and hands off the blade's line.",
		Rest:   "The blade must not bind. Stand beside its line, unplug before changing it, wear eye and ear protection. Narrow strips want a push stick or a guided saw, not fingers.",
		Defers: "the tool's manual; 29 CFR 1926.102 on eye protection",
	},
	finish.Nailer: {
		When:   "nails are driven",
		First:  "Set a nailer to single shots, and keep the other hand a foot (0.3 m) away.",
		Rest:   "Choose the sequential trigger, never hold a piece in the line of fire, take the air or battery off before clearing a jam, wear eye protection. Short brads turn in hard spots and come out at the side.",
		Defers: "the tool's manual, the OSHA and NIOSH guide on nail guns",
	},
	finish.Ladder: {
		When:   "{panels} reach higher than 6 ft (1.8 m) above the floor",
		First:  "Use a stepladder fully open, and stand on nothing else.",
		Rest:   "Its spreaders are locked, the floor is level, and it is never leaned closed against the wall.",
		Defers: "the ladder's label; 29 CFR 1926.1053",
	},
	finish.Children: {
		When:  "there is a workplace where people live",
		First: "Keep children and pets out until {done}.",
		Rest: "{dangers} are all at their height. Lock tools and solvents away and unplug them whenever you " +
			"leave.",
		Defers: "common practice",
	},
	finish.FireBlocking: {
		When:   "strips leave a hollow behind the {panels}",
		First:  "Ask how the hollow behind the {panels} is to be blocked against fire.",
		Rest:   "Fire climbs in it, so codes want it closed at every floor and ceiling and along its length (model text: every 10 ft, 3 m).",
		Defers: "the building code in force (model text: IRC R302.11), the local inspector",
	},
	finish.FireSpread: {
		When:   "the face of a wall is clad with something that can burn",
		First:  "Ask for the flame-spread figure of the {panels}: codes limit it.",
		Rest:   "Wall finishes may spread flame at most 200 and smoke at most 450 (model code); escape routes and shared buildings are limited more strictly.",
		Defers: "the building code in force (model text: IRC R302.9)",
	},
	finish.ThinPanel: {
		When:   "{panels} thinner than 1/4 in (6 mm) go straight onto studs",
		First:  "Put 3/8 in gypsum board or thicker behind them first: thin {panels} on open studs burn through quickly and dent.",
		Defers: "the building code in force (model text: IRC R702.5)",
	},
	finish.Fumes: {
		When:  "paint, sealant or adhesive is used",
		First: "Read labels, open windows, and keep flames off while solvents dry.",
		Rest: "Pilot lights are flames. Products with solvents want a respirator with cartridges for organic vapors: a dust mask does nothing against them. " +
			"Spread oily rags out flat outdoors to dry: in a heap they can catch fire by themselves.",
		Defers: "the label and safety sheet of each product",
	},
	finish.Damp: {
		When:   "moisture reaches the {panels}",
		First:  "Find where the water comes from, and let the wall dry before it is covered.",
		Rest:   "{panels} over a damp wall swell, and mold grows behind them unseen.",
		Defers: "the building code in force on moisture; local practice",
	},
	finish.Splash: {
		When:   "{panels} that swell or rot stand at a counter or in a damp room",
		First:  "Keep {panels} out of the splash of a sink; coat every edge, seal every joint.",
		Rest:   "So too behind a basin or a tub, or keep them out of the wet zone altogether: water gets into sawn edges, holes and seams first. Look at them each year. Inside a shower or over a tub's rim they have no place.",
		Defers: "the maker's instructions, the building code in force",
	},
	finish.MasonryWall: {
		When:   "the {panels} go on masonry",
		First:  "Look for damp first; strips that touch masonry are of treated wood.",
		Rest:   "A film of plastic taped to the wall for two days shows damp. The fasteners of treated wood are made for it. Against an outside wall a cold face sweats: ask about insulation and a vapor retarder.",
		Defers: "the building code in force on masonry, moisture and treated wood; local practice",
	},
}

// manuals says what the job notes from manuals of cooking appliances, under the caution on heat.
func (t *text) manuals(p plan.Plan, under finish.Caution) (notes []string) {
	for _, run := range p.Runs {
		for _, c := range run.Cooking {
			if under == finish.Heat && c.Manual != "" {
				notes = append(notes, fmt.Sprintf("noted from its manual for %s, %s to %s: %s", run.Name, t.length(c.From), t.length(c.To), c.Manual))
			}
		}
	}
	return notes
}

// Caution returns what a caution says in a plan, in one paragraph.
func Caution(p plan.Plan, c finish.Caution) string {
	words := cautioned(p, c)
	return strings.Join(strings.Fields(words.First+" "+words.Rest+" "+words.Reason()), " ")
}

// cautioned returns the parts of a caution.
func cautioned(p plan.Plan, c finish.Caution) caution {
	clear, usual := "", fraction.Must(fraction.Parse(string(finish.Defaults(p.Units).Nails.Clear), p.Units))
	if far := p.Fixing.Clear; p.InWall() && !far.IsZero() {
		clear = ": the plan has no nail or screw within " + (&text{tape: p.TapeMeasure()}).given(far) + either(p.Units == fraction.Inch, " in", "") + " of an opening for cables or pipes" + either(usual == far, " (judgment)", "")
	}
	facts := strings.NewReplacer(append(has(p), "{panels}", panelWord(p)+"s", "{clear}", clear)...)
	words := cautionWords[c]
	if c == finish.Ladder && slices.ContainsFunc(p.Runs, func(run plan.Run) bool { return !run.Stairs().IsZero() }) {
		words.First, words.Rest = onStairs.First, onStairs.Rest
	}
	return caution{facts.Replace(words.When), capital(facts.Replace(words.First)), capital(facts.Replace(words.Rest)), words.Defers}
}

// Reason says why the caution is there and who decides.
func (c caution) Reason() string {
	return "(Raised because " + c.When + ". Decided by " + c.Defers + ".)"
}
