package finish_test

import (
	"fmt"
	"log"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/groove"
)

// kitchen is a wall of 20 ft by 18 in over a counter, in invented figures.
func kitchen() finish.Work {
	in := fraction.MustParse
	profile, _ := groove.Find("beadboard 1-5/8")
	w := finish.Work{
		Profile: profile,
		Face:    in("238").Times(in("17 3/4")),
		Width:   in("240"),
		Highest: in("18"),
		Cooking: true,
		Built:   1964,
		Boxes:   []finish.Box{{Name: "socket by the sink"}, {Name: "switches", Gangs: 2}},
		Sheets:  []finish.Sheet{{Name: "beadboard 4 x 8 ft", Count: 2, Price: money.MustParse("31.40")}},
		Ends:    []finish.End{{Run: "sink wall", Length: in("17 3/4")}},
		Fitting: []string{"1", "2", "3", "4", "5"},
		Closing: []string{"5"},
		Joints: []finish.Joint{
			{Kind: finish.CounterLine, Run: "sink wall", Length: in("238"), Gap: in("1/8"), Grooves: true},
			{Kind: finish.CabinetLine, Run: "sink wall", Length: in("238"), Gap: in("1/16")},
			{Kind: finish.Seam, Run: "sink wall", Length: in("71"), Gap: in("1/16")},
			{Kind: finish.InsideCorner, Run: "sink wall", Length: in("17 3/4"), Gap: in("1/8")},
		},
	}
	for range 5 {
		w.Pieces = append(w.Pieces, finish.Piece{Width: in("47 1/2"), Height: in("17 3/4")})
		w.Edges = w.Edges.Add(in("130 1/2"))
	}
	return w
}

func ExampleTakeOff() {
	list, _, err := finish.TakeOff(kitchen(), finish.Materials{
		Paint: finish.Paint{Top: finish.Coating{Containers: []finish.Container{
			{Name: "quart", Size: "1 qt", Price: "19.20"},
			{Name: "gallon", Size: "1 gal", Price: "47.00"},
		}}},
		Tax: "0.08",
	})
	if err != nil {
		log.Fatal(err)
	}
	for _, row := range list.Rows {
		fmt.Printf("%d %s: %s %s, %s %s\n", row.Buy, row.Container, row.Item, row.Size, row.Quantity, row.Unit)
	}
	for _, term := range list.Rows[2].Terms {
		fmt.Print(term.Kind, " ", term.Value, "; ")
	}
	fmt.Println(list.Rows[2].Choice)
	fmt.Println("priced rows", list.Subtotal, "tax", list.Tax, "total", list.Total, "without a price", list.Unpriced)
	// Output:
	// 2 beadboard 4 x 8 ft: sheet [], 2 sheets
	// 1 quart: primer [], 0.52 qt
	// 1 quart: top coat [], 0.69 qt
	// 1 10.1 fl oz cartridge: kitchen and bath sealant [], 7 fl oz
	// 1 10.1 fl oz cartridge: paintable sealant [], 2.2 fl oz
	// 1 10.1 fl oz cartridge: panel adhesive [], 10.1 fl oz
	// 1 box of 1000: panel nails [1.5 in], 77 nails
	// 1 extender: box extender [0.25 in], 1 extenders
	// 1 extender: box extender [0.25 in], 1 extenders
	// 1 pack of 10: device screws [1 in], 6 screws
	// 1 60 yd roll: masking tape [], 130.9 ft
	// 1 9 x 12 ft sheet: sheeting for counter and floor [], 80 ft2
	// 1 8 ft strip: edge trim [], 1.48 ft
	// face before fitting 29.34 ft2; developed 1.0245; times 1 coat; surface 30.06 ft2; face after sealing 29.34 ft2; developed 1.0245; times 1 coat; surface 30.06 ft2; coverage 350 ft2/gal; least money
	// priced rows 82 tax 6.56 total 88.56 without a price 11
}

func ExampleCautions() {
	fmt.Println(finish.Cautions(kitchen(), finish.Materials{}))
	// Output:
	// [power box flush device held box open protection heat lead asbestos cables and pipes dust resin saws nailer children fire spread fumes splash]
}

func ExampleSchedule() {
	for _, step := range finish.Schedule(kitchen(), finish.Materials{}) {
		fmt.Println(step)
	}
	least, most, source := finish.HoldGlue.Range()
	fmt.Println("glue holds after", least/60, "to", most/60, "hours:", source)
	// Output:
	// look: test paint; find asbestos
	// rest: rest sheets
	// lines
	// cut: pieces 5; closing 5
	// mains off
	// dry fit: extenders
	// first coats: primer 1; edges 2; top coat 1
	// fit: adhesive 32 ft2; nails; fitting 1, 2, 3, 4; closing 5
	// trim
	// fill
	// tape: counter; joints 19.84 ft; lines 2
	// seal
	// last coats: lines 1; top coat 1
	// seal wet: after paint; joints 19.84 ft; lines 2; grooves
	// devices
	// power on
	// glue holds after 24 to 168 hours: tube text
}

func ExampleMaterials_Validate() {
	m := finish.Materials{Tax: "8%", Nails: finish.Nails{Lengths: []finish.Taped{"1 1/4", "one and a half"}}}
	fmt.Println(m.Validate(fraction.Inch))
	// Output:
	// Nails.Lengths[1]: "one and a half": want a length such as 1/4, 0.25 or 6 mm
	// Tax: "8%": want a share below 1, such as 0.1 for ten percent
}

// The defaults are a value to read or to change; the zero Materials stands for the same.
func ExampleDefaults() {
	for _, u := range []fraction.Unit{fraction.Inch, fraction.Millimetre} {
		d := finish.Defaults(u)
		fmt.Println(d.Paint.Top.Coverage, "in", d.Paint.Top.Containers[0].Name, "and", d.Paint.Top.Containers[1].Name, "- nails every", d.Nails.Edge)
	}
	// Output:
	// 350 ft2/gal in quart and gallon - nails every 6"
	// 8.5 m2/L in 0.75 L tin and 2.5 L tin - nails every 150 mm
}

// Boards hang on level strips. Where the job gives their thickness they are bought, and boxes lie further back.
func ExampleTakeOff_boards() {
	in := fraction.MustParse
	profile, _ := groove.Find("tongue and groove 5-1/8")
	w := finish.Work{Profile: profile, Boxes: []finish.Box{{Name: "switch"}}}
	for range 16 {
		w.Pieces = append(w.Pieces, finish.Piece{Width: in("5 1/4"), Height: in("48")})
	}
	list, _, err := finish.TakeOff(w, finish.Materials{Furring: finish.Furring{Thickness: "3/4"}})
	if err != nil {
		log.Fatal(err)
	}
	for _, row := range list.Rows {
		fmt.Printf("%d %s: %s %s, %s %s\n", row.Buy, row.Container, row.Item, row.Size, row.Quantity, row.Unit)
	}
	// Output:
	// 1 box of 1000: board nails [2 in], 71 nails
	// 4 8 ft strip: furring strips [0.75 in], 30.8 ft
	// 1 box of 100: strip nails [2 in], 28 pieces
	// 1 extender: box extender [1.5 in], 1 extenders
	// 1 pack of 10: device screws [2.5 in], 2 screws
}
