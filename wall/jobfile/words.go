package jobfile

import (
	"encoding/json"
	"strings"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/nest"
)

// ParseStock reads stock from a few words: its width, an x, its length, and, where the price of one
// is known, an equals sign and the price, such as "48x96" or "48x120=52.00"; a plus stands between
// several. Each has its words as its name, and there are as many as needed.
func ParseStock(text string, units fraction.Unit) (stock []nest.Stock, err error) {
	for words := range strings.SplitSeq(text, "+") {
		size, price, priced := strings.Cut(words, "=")
		width, length, _ := strings.Cut(size, "x") // an empty length is none
		s := nest.Stock{Name: words}
		var faults [3]error
		s.Width, faults[0] = fraction.Parse(width, units)
		s.Length, faults[1] = fraction.Parse(length, units)
		if priced {
			s.Price, faults[2] = money.Parse(price)
		}
		if faults != [3]error{} {
			return nil, &fault.Fault{Value: words, Cause: ErrValue, Want: `a width, x and a length, and = and a price if you like, such as "48x96=24.98"`}
		}
		stock = append(stock, s)
	}
	return stock, nil
}

// WithProfile returns a job file, as strict JSON, in which the profile of a profile file stands in
// place of its name, for readers that know no other profiles than the builtin ones. A file that cannot
// be read, or that names none of these profiles, is returned as it is.
func WithProfile(job, profiles []byte) []byte {
	var file map[string]json.RawMessage
	var all []json.RawMessage
	var wanted string
	if json.Unmarshal(Standard(job), &file) != nil || json.Unmarshal(Standard(profiles), &all) != nil || json.Unmarshal(file["profile"], &wanted) != nil {
		return job
	}
	for _, p := range all {
		var named struct{ Name string }
		if json.Unmarshal(p, &named) == nil && named.Name == wanted {
			file["profile"] = p
			if data, err := json.Marshal(file); err == nil {
				return data
			}
		}
	}
	return job
}
