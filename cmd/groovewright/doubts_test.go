package main

import (
	"os"
	"strings"
	"testing"
)

// kitchenWith returns the example with one text put in place of another.
func kitchenWith(t *testing.T, old, new string) string {
	t.Helper()
	data, err := os.ReadFile(examples(t)["kitchen"])
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(data), old) {
		t.Fatalf("the kitchen has no %s", old)
	}
	return strings.ReplaceAll(string(data), old, new)
}

func TestCheckDoubtsBoxesAndTheirCovers(t *testing.T) {
	for _, row := range []struct{ name, old, new, want string }{
		{"a wide gap", `"box": "1/8"`, `"box": "3/8"`, "leaves 1/8 bare at the sides and overlaps by 0 above and below"},
		{"a box past the top", `"bottom": "5", "width": "4 1/16", "height": "3 3/4"`, `"bottom": "15", "width": "4 1/16", "height": "3 3/4"`, "sticks out of the wall of sink wall"},
	} {
		out, _, code := try(strings.NewReader(kitchenWith(t, row.old, row.new)), "check", "-")
		if text := strings.Join(strings.Fields(out), " "); code != done || !strings.Contains(text, row.want) {
			t.Errorf("%s: exit %d, no %q in\n%s", row.name, code, row.want, out)
		}
		clean, _, _ := try(strings.NewReader(kitchenWith(t, row.old, row.old)), "check", "-")
		if text := strings.Join(strings.Fields(clean), " "); strings.Contains(text, row.want) {
			t.Errorf("the kitchen itself: %q in\n%s", row.want, clean)
		}
	}
}

func TestTooFewSheetsAreTold(t *testing.T) {
	_, says, code := try(strings.NewReader(kitchenWith(t, `"length": "96", "price"`, `"length": "96", "count": 1, "price"`)), "plan", "-")
	if text := strings.Join(strings.Fields(says), " "); code != failed || !strings.Contains(text, "no plan was found: the stock was not enough for any of") || !strings.Contains(text, "left over: ") {
		t.Errorf("exit %d: %s", code, says)
	}
}

// What has a count and a price is bought, in the headline as in the list; without a price, or for nothing, it is on hand.
func TestCountedStockWithAPriceIsBought(t *testing.T) {
	for price, buys := range map[string]bool{`, "price": "38.50"`: true, `, "price": "0"`: false, ``: false} {
		job := kitchenWith(t, `"length": "96", "price": "38.50"`, `"length": "96", "count": 9`+price)
		says, errs, code := try(strings.NewReader(job), "plan", "-")
		if code != 0 || strings.Contains(says, "No sheet to buy.") == buys || strings.Contains(says, "Buy 2 of") != buys {
			t.Errorf("%s: code %d, %s\n%s", price, code, errs, says)
		}
	}
}
