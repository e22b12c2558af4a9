package verify_test

import (
	"encoding/json"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/book"
	"example.com/groovewright/wall/plan"
	"example.com/groovewright/wall/verify"
)

// Each rule of the contract holds in random rooms drawn for it. A long run prints the table:
//
//	go test ./wall/verify -run Rules -rooms 1000 -timeout 3h
func TestRules(t *testing.T) {
	t.Parallel()
	few := *rooms
	if few == 0 {
		few = 3
	}
	table := []string{fmt.Sprintf("%-24s %6s %8s %6s", "rule", "rooms", "applied", "faults")}
	for _, rule := range verify.Rules {
		t.Run(rule.Name, func(t *testing.T) {
			planned, applied, faults := 0, 0, 0
			for seed := 0; planned < few && seed < 10*few; seed++ {
				job := drawn(rule, seed)
				found, does, ok := tried(t, rule, job)
				if !ok {
					continue
				}
				planned++
				if does {
					applied++
				}
				if len(found) == 0 {
					continue
				}
				if faults++; faults <= 3 && *shrink { // a smaller room says more
					small := shrunk(job, func(job []byte) bool {
						again, _, _ := tried(t, rule, job)
						return slices.ContainsFunc(again, func(s string) bool { return strings.HasPrefix(s, head(found[0])) })
					})
					again, _, _ := tried(t, rule, small)
					t.Errorf("room %d: %s\nsmallest: %s\n%s", seed, strings.Join(found, "\n"), strings.Join(again, "\n"), small)
				} else {
					t.Errorf("room %d: %s\n%s", seed, strings.Join(found, "\n"), job)
				}
			}
			if table = append(table, fmt.Sprintf("%-24s %6d %8d %6d", rule.Name, planned, applied, faults)); faults > 0 {
				t.Fail()
			}
		})
	}
	t.Logf("rooms planned for each rule, those in which it applied, those with faults\n%s", strings.Join(table, "\n"))
}

// drawn draws a room for a rule.
func drawn(rule verify.Rule, seed int) []byte {
	if rule.Small {
		return []byte(verify.SmallRoom(rule.Always...).Example(seed))
	}
	return []byte(verify.RandomRoom(rule.Always...).Example(seed))
}

// head is the kind of a fault.
func head(fault string) string {
	kind, _, _ := strings.Cut(fault, ": ")
	return kind + ": "
}

// tried plans a room and returns what is wrong with its plan, and whether the rule had to do with it.
// ok is false where the room cannot be done as given.
func tried(t *testing.T, rule verify.Rule, job []byte) (faults []string, applied, ok bool) {
	prefer := plan.Sheets
	if rule.Small {
		prefer = plan.Looks
	}
	data, message, exit := planned(t, job, prefer, small)
	switch {
	case exit == 1:
		return nil, false, false
	case exit != 0:
		return []string{"refused: " + message}, true, true
	}
	found, applied := rule.Judge(job, data)
	for _, f := range found {
		faults = append(faults, f.String())
	}
	faults = append(faults, said(t, rule, job, data)...)
	if rule.Small {
		want, judged := verify.LeastBlemish(job)
		if got, err := verify.BestLooking(data); judged && (err != nil || got.Cmp(want) != 0) {
			faults = append(faults, fmt.Sprintf("least: blemish of the choices is %v (%v), want %v", got, err, want))
		}
		return faults, judged, true
	}
	return faults, applied, true
}

// said returns what is wrong with the words of a plan.
func said(t *testing.T, rule verify.Rule, job, data []byte) (faults []string) {
	if !strings.HasPrefix(rule.Name, "R12") && !strings.HasPrefix(rule.Name, "R14") {
		return nil
	}
	var p plan.Plan
	if err := json.Unmarshal(data, &p); err != nil {
		t.Fatal(err)
	}
	lines := book.Explained(p)
	text := strings.Join(strings.Fields(lines), " ") // sentences are wrapped
	if found := regexp.MustCompile(`~ ?[0-9]|\([+-] ?[0-9]`).FindString(text); found != "" {
		faults = append(faults, "words: a length is written "+found)
	}
	if p.Units == fraction.Inch {
		faults = append(faults, offMark(lines, p.Tape)...)
	}
	if thin, said := verify.ThinCuts(job, data), regexp.MustCompile(`\bplane [^;:]{1,24} off (?:its|the) `).MatchString(text); thin != said {
		faults = append(faults, fmt.Sprintf("words: something to plane off: %v, said so: %v", thin, said))
	}
	return faults
}

// offMark returns the lengths written as a mark and a difference that are not: the first of them is on
// the tape, and the difference is less than half a mark.
func offMark(text string, mark fraction.Length) (faults []string) {
	const number = `((?:[0-9]+ )?[0-9]+/[0-9]+|[0-9]+)`
	for _, found := range regexp.MustCompile(number+` (?:less|plus) `+number).FindAllStringSubmatch(text, -1) {
		on, off := fraction.MustParse(found[1]), fraction.MustParse(found[2])
		if !on.Mod(mark).IsZero() || !off.Mul(2).Less(mark) {
			faults = append(faults, "words: no mark and less than half of one: "+found[0])
		}
	}
	return faults
}

// shrunk leaves out of a job, part by part, what it stays bad without.
func shrunk(job []byte, bad func(job []byte) bool) []byte {
	var tree any
	if err := json.Unmarshal(job, &tree); err != nil {
		return job
	}
	tries := 0
	write := func() []byte {
		tries++
		data, _ := json.Marshal(tree)
		return data
	}
	var parts func(node any, put func(any)) bool
	parts = func(node any, put func(any)) bool {
		switch node := node.(type) {
		case map[string]any:
			for _, name := range slices.Sorted(maps.Keys(node)) {
				kept := node[name]
				delete(node, name)
				if bad(write()) {
					return true
				}
				node[name] = kept
				if parts(kept, func(v any) { node[name] = v }) {
					return true
				}
			}
		case []any:
			for k := range node {
				put(slices.Delete(slices.Clone(node), k, k+1))
				if bad(write()) {
					return true
				}
				put(node)
				if parts(node[k], func(v any) { node[k] = v }) {
					return true
				}
			}
		}
		return false
	}
	for tries < 300 {
		if !parts(tree, func(v any) { tree = v }) {
			break
		}
	}
	return write()
}
