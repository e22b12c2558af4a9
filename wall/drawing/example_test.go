package drawing_test

import (
	"encoding/json"
	"fmt"
	"os"
	"strings"

	"example.com/groovewright/wall/drawing"
	"example.com/groovewright/wall/plan"
)

// stored is a plan as a program gets it from plan.Make or reads it from its JSON.
func stored() (p plan.Plan) {
	data, err := os.ReadFile("testdata/fixture.json")
	if err == nil {
		err = json.Unmarshal(data, &p)
	}
	if err != nil {
		panic(err)
	}
	return p
}

// Every drawing is called alone, and its SVG stands alone.
func ExampleElevation() {
	picture, err := drawing.Elevation(stored(), 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s.svg: %s, %.0f by %.0f\n", picture.Name, picture.Title, picture.Width, picture.Height)
	fmt.Println(strings.HasPrefix(string(picture.SVG()), "<?xml"))
	// Output:
	// run-1.svg: Elevation of Left wall, 940 by 577
	// true
}

// A run that the plan does not have is an error.
func ExampleElevation_error() {
	_, err := drawing.Elevation(stored(), 3)
	fmt.Println(err)
	// Output: Runs[3]: want one of 3
}

func ExampleRoom() {
	picture, _ := drawing.Room(stored())
	fmt.Println(picture.Desc)
	// Output: The runs clockwise, as seen by someone in the room. Corner A, inside corner, to Sink wall: passes Left wall. Corner B, inside corner, to Stove wall: passes Stove wall. Left wall, 62 1/2 wide. Sink wall, 120 3/8 wide. Stove wall, 40 1/2 plus 1/64 wide.
}

func ExampleEnd() {
	picture, _ := drawing.End(stored(), 1, false)
	fmt.Println(picture.Desc)
	// Output: Section from above. inside corner: bead cut to 1/16 of 1/4.
}

func ExampleCorner() {
	picture, _ := drawing.Corner(stored(), 0)
	fmt.Println(picture.Title)
	// Output: Corner A, between Left wall and Sink wall, from above
}

func ExampleUnfolded() {
	picture, _ := drawing.Unfolded(stored())
	fmt.Println(picture.Desc)
	// Output: Left wall: start at 0, work to the right. Sink wall: start at 60 3/16, work to the right. Stove wall: start at 40 1/2 plus 1/64, work to the left.
}

func ExamplePreview() {
	picture, _ := drawing.Preview(stored())
	fmt.Println(picture.Title)
	// Output: The finished walls
}

func ExampleFittingStrip() {
	picture, _ := drawing.FittingStrip(stored(), 1)
	fmt.Println(picture.Desc)
	// Output: Then fit 3. Then fit 4. Then fit 5.
}

// The section is full size as far as it has room, and says what lies behind the panels.
func ExampleSection() {
	picture, _ := drawing.Section(stored(), 0)
	fmt.Printf("%s.svg: %s\n%s\n", picture.Name, picture.Title, picture.Desc)
	// Output:
	// run-1-section.svg: Upright section of Left wall
	// From the wall at the left to the room at the right, broken off between head and foot.
}

func ExampleStoryPole() {
	picture, _ := drawing.StoryPole(stored(), 2)
	fmt.Println(picture.Desc)
	// Output: panel 6, left: 40 3/8 plus 1/64 from the start. panel 6, right: 0 from the start.
}

func ExampleSheet() {
	picture, _ := drawing.Sheet(stored(), 1)
	fmt.Println(picture.Title)
	// Output: Sheet 2, cut from beaded sheet 4 x 8
}

// The back of a piece shows its marks as they are measured there, where left is right.
func ExamplePiece() {
	p := stored()
	for _, back := range []bool{false, true} {
		picture, _ := drawing.Piece(p, 3, back, 250)
		fmt.Println(picture.Title)
	}
	// Output:
	// Piece 4: face, as it hangs on the wall
	// Piece 4: back, left and right exchanged
}

// Templates are drawn for one size of paper.
func ExampleTemplates() {
	p := stored()
	for _, paper := range drawing.Papers() {
		set, err := drawing.Templates(p, paper)
		if err != nil {
			fmt.Println(err)
			return
		}
		first := set.Pages[0][0]
		fmt.Printf("%s: %d pages; %.1f by %.1f in from the first one's corner: %s\n", paper.Name, len(set.Pages), first.X, first.Y, first.Picture.Title)
	}
	// Output:
	// US Letter: 2 pages; 0.5 by 0.5 in from the first one's corner: Template of piece 1, outlet A, page 1
	// A4: 2 pages; 0.5 by 0.5 in from the first one's corner: Template of piece 1, outlet A, page 1
}

// A page whose style sheet has Style shows the drawings as elements, and what is too wide for a
// phone in its narrow form.
func ExamplePicture_Narrow() {
	picture, _ := drawing.Elevation(stored(), 0)
	if narrow, ok := picture.Narrow(); ok {
		fmt.Printf("%.0f wide in place of %.0f\n", narrow.Width, picture.Width)
	}
	// Output: 340 wide in place of 940
}

func ExampleSurvey() {
	fmt.Println(drawing.Survey(1).Title)
	// Output: Where to tape
}
