package fault_test

import (
	"errors"
	"fmt"
	"io"
	"testing"

	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/fractiontest"
)

func ExampleUnder() {
	zero := errors.New("zero denominator")
	height := &fault.Fault{Path: fault.Of("Top"), Value: `"63 1/0"`, Want: `a length such as "63 1/4"`, Cause: zero}
	err := fault.Under(errors.Join(height, &fault.Fault{Path: fault.Of("Bottom"), Want: "a length below the top"}), "Runs", 1, "Heights", 2)
	fmt.Println(err)
	fmt.Println(errors.Is(err, zero))
	// Output:
	// Runs[1].Heights[2].Top: "63 1/0": zero denominator; want a length such as "63 1/4"
	// Runs[1].Heights[2].Bottom: want a length below the top
	// true
}

func TestErrorTexts(t *testing.T) {
	for _, c := range []struct {
		fault fault.Fault
		want  string
	}{
		{fault.Fault{}, ""},
		{fault.Fault{Want: "a number"}, "want a number"},
		{fault.Fault{Path: fault.Of(3, "Width"), Value: "-1"}, "[3].Width: -1"},
		{fault.Fault{Path: fault.Of("Saw", "Kerf"), Cause: io.EOF, Want: "more"}, "Saw.Kerf: EOF; want more"},
		{fault.Fault{Path: fault.Of("Saw"), Line: 2, Column: 7, Want: "a saw"}, "Saw (line 2, column 7): want a saw"},
		{fault.Fault{Line: 2, Column: 7, Cause: io.EOF}, "line 2, column 7: EOF"},
	} {
		if got := c.fault.Error(); got != c.want {
			t.Errorf("%#v: %q, want %q", c.fault, got, c.want)
		}
	}
}

func TestUnderKeepsOtherErrorsAsCause(t *testing.T) {
	if fault.Under(nil, "Runs") != nil {
		t.Error("nil did not stay nil")
	}
	err := fault.Under(fmt.Errorf("read: %w", io.ErrUnexpectedEOF), "Profile")
	if !errors.Is(err, io.ErrUnexpectedEOF) || err.Error() != "Profile: read: unexpected EOF" {
		t.Errorf("got %v", err)
	}
}

func TestAllReachesThroughWrapsAndJoins(t *testing.T) {
	a, b := &fault.Fault{Value: "a"}, &fault.Fault{Value: "b"}
	all := fault.All(fmt.Errorf("job: %w", errors.Join(a, io.EOF, errors.Join(b))))
	if len(all) != 2 || all[0] != a || all[1] != b {
		t.Errorf("got %v", all)
	}
}

func TestPathsBothWays(t *testing.T) {
	for _, want := range []string{"", "runs", "runs[1].heights[2].top", "stock[0].left_phase", "[3]"} {
		var p fault.Path
		if err := p.UnmarshalText([]byte(want)); err != nil {
			t.Fatal(err)
		}
		if got, err := p.MarshalText(); err != nil || string(got) != want {
			t.Errorf("%q was written as %q, %v", want, got, err)
		}
	}
	if got, _ := fault.Of("Runs", 1, "LeftPhase").MarshalText(); string(got) != "runs[1].left_phase" {
		t.Errorf("got %s", got)
	}
}

func TestListJoinsInOrder(t *testing.T) {
	var l fault.List
	if l.Err() != nil {
		t.Error("an empty list is an error")
	}
	l.Add(3, "1 or 2", "Runs", 4)
	l.Join(nil, "Nowhere")
	l.Add(nil, "a name", "Name")
	l.Join(io.EOF, "Stock")
	l.Cause = io.EOF
	l.Add("x", "y")
	const want = "Runs[4]: 3: want 1 or 2\nName: want a name\nStock: EOF\n\"x\": EOF; want y"
	if err := l.Err(); err == nil || err.Error() != want || !errors.Is(err, io.EOF) {
		t.Errorf("got %v, want %s", err, want)
	}
}

// FuzzPath reads any path: what MarshalText writes of it reads back to the same text.
func FuzzPath(once *testing.F) {
	f := fractiontest.F{F: once}
	f.Add("runs[1].heights[2].top", 7)
	f.Add("[[3]]..left_phase_.[-4]", -1)
	f.Fuzz(func(t *testing.T, text string, i int) {
		var p, back fault.Path
		if err := p.UnmarshalText([]byte(text)); err != nil {
			t.Fatal(err)
		}
		once, err := p.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		_ = back.UnmarshalText(once)
		if len(back) > len(p) {
			t.Fatalf("%q has the steps %v, %q has %v", text, p, once, back)
		}
		under := fault.Under(&fault.Fault{Path: p}, text, i, 1.5, nil)
		if all := fault.All(under); len(all) != 1 || len(all[0].Path) != 4+len(p) || all[0].Error() == "" {
			t.Fatalf("%v", under)
		}
	})
}
