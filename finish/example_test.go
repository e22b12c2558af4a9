package finish_test

import (
	"fmt"
	"log"

	"github.com/shopspring/decimal"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
)

// kitchen is a wall of 20 ft by 18 in over a counter, in invented figures.
func kitchen() finish.Work {
	in := fraction.MustParse
	profile, _ := groove.Find("beadboard 1-5/8")
	price := decimal.RequireFromString("31.40")
	w := finish.Work{
		Profile: profile,
		Face:    in("238").Times(in("17 3/4")),
		Width:   in("240"),
		Highest: in("18"),
		Cooking: true,
		Built:   1964,
		Boxes:   []finish.Box{{Name: "socket by the sink"}, {Name: "switches", Gangs: 2}},
		Sheets:  []finish.SheetRow{{Name: "beadboard 4 x 8 ft", Count: 2, Price: &price}},
		Ends:    []finish.End{{Name: "left end", Length: in("17 3/4")}},
		Fitting: []string{"1: left end of the sink wall", "2, 3, 4: to its right", "5: into the corner"},
		Closing: []string{"piece 5"},
		Joints: []finish.Joint{
			{Kind: finish.CounterLine, Where: "sink wall", Length: in("238"), Gap: in("1/8"), Grooves: true},
			{Kind: finish.CabinetLine, Where: "sink wall", Length: in("238"), Gap: in("1/16")},
			{Kind: finish.Seam, Where: "sink wall", Length: in("71"), Gap: in("1/16")},
			{Kind: finish.InsideCorner, Where: "sink wall", Length: in("17 3/4"), Gap: in("1/8")},
		},
	}
	for range 5 {
		w.Pieces = append(w.Pieces, finish.Piece{Width: in("47 1/2"), Height: in("17 3/4")})
		w.Edges = w.Edges.Add(in("130 1/2"))
	}
	return w
}

func ExampleTakeOff() {
	list, err := finish.TakeOff(kitchen(), finish.Materials{
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
		fmt.Printf("%d %s: %s (%s %s)\n", row.Buy, row.Container, row.Item, row.Quantity, row.Unit)
	}
	fmt.Println(list.Rows[2].How)
	fmt.Println("priced rows", list.Subtotal, "tax", list.Tax, "total", list.Total, "without a price", list.Unpriced)
	// Output:
	// 2 beadboard 4 x 8 ft: beadboard 4 x 8 ft (2 sheets)
	// 1 quart: primer (0.58 qt)
	// 1 quart: top coat (0.77 qt)
	// 2 10.1 fl oz cartridge: paintable sealant (13.7 fl oz)
	// 3 10.1 fl oz cartridge: panel adhesive (23.9 fl oz)
	// 1 box of 1000: panel nails 1 1/2 in (209 nails)
	// 1 extender: box extender 1/4 in, 1 gang (1 extender)
	// 1 extender: box extender 1/4 in, 2 gang (1 extender)
	// 1 pack of 10: device screws 1 in (6 screws)
	// 1 60 yd roll: masking tape (147.18 ft)
	// 1 9 x 12 ft sheet: sheeting for counter and floor (80 ft2)
	// 1 8 ft strip: edge trim (1.48 ft)
	// before fitting: face 29.34 ft2 × 1.0245 developed × 1 coat = 30.06 ft2; after sealing: face 29.34 ft2 × 1.0245 developed × 1 coat = 30.06 ft2; ÷ 350 ft2/gal (planning figure, trust the tin) ÷ (1 - 0.1 loss); least money of these packs
	// priced rows 82 tax 6.56 total 88.56 without a price 10
}

func ExampleCautions() {
	for _, c := range finish.Cautions(kitchen(), finish.Materials{})[:4] {
		fmt.Printf("%s, because %s\n", c.Name, c.When)
	}
	// Output:
	// power, because there is an electrical box in the work
	// box flush, because there is an electrical box behind a face that can burn
	// box open, because there is an electrical box in the work
	// heat, because a cooking appliance stands at the panels
}

func ExampleSchedule() {
	for i, s := range finish.Schedule(kitchen(), finish.Materials{}) {
		fmt.Print(i+1, " ", s.Title)
		if s.Wait.Most > 0 {
			fmt.Print(", then ", s.Wait, " for ", s.Wait.For)
		}
		fmt.Println()
	}
	// Output:
	// 1 Look first
	// 2 Let the panels rest, then 24 to 72 hours for the sheets to take on the moisture of the room
	// 3 Cut
	// 4 First coats, before fitting, then 12 to 48 hours for the paint to harden before the pieces are handled
	// 5 Mains off
	// 6 Dry-fit
	// 7 Fit in order, then 24 to 48 hours for the adhesive to hold
	// 8 Closing pieces
	// 9 Tape off
	// 10 Seal, then 1 to 24 hours for the sealant to take paint
	// 11 Last coat, after sealing, then 1 to 4 hours for each coat to dry before it is touched
	// 12 Power on again
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
	// 350 ft2/gal in quart and gallon - nails every 4"
	// 8.5 m2/L in 0.75 L tin and 2.5 L tin - nails every 100 mm
}

// Boards hang on level strips. Where the job gives their thickness they are bought, and boxes lie further back.
func ExampleTakeOff_boards() {
	in := fraction.MustParse
	profile, _ := groove.Find("tongue and groove 5-1/4")
	w := finish.Work{Profile: profile, Boxes: []finish.Box{{Name: "switch"}}}
	for range 16 {
		w.Pieces = append(w.Pieces, finish.Piece{Width: in("5 1/4"), Height: in("48")})
	}
	list, err := finish.TakeOff(w, finish.Materials{Furring: finish.Furring{Thickness: "3/4"}})
	if err != nil {
		log.Fatal(err)
	}
	for _, row := range list.Rows {
		fmt.Printf("%d %s: %s (%s %s)\n", row.Buy, row.Container, row.Item, row.Quantity, row.Unit)
	}
	// Output:
	// 1 box of 1000: board nails 2 in (71 nails)
	// 4 8 ft strip: furring strips 3/4 in (30.8 ft)
	// 1 box of 100: nails or screws for the strips 2 in (28 pieces)
	// 1 extender: box extender 1 1/2 in, 1 gang (1 extender)
	// 1 pack of 10: device screws 2 1/2 in (2 screws)
}
