package jobfile

import (
	"io"
	"reflect"
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall/plan"
)

// Read reads a job file. It returns everything that is wrong with its form at once, or where
// nothing is, everything that [plan.Job.Validate] refuses: *fault.Fault values in the order of the
// file, joined by errors.Join. Only where the file is no JSON does it stop at the first.
//
// The field profile may also name one of the profiles given here; of two with one name, or of one
// with the name of a builtin profile, it is the last.
//
// The cost is linear in the size of the file, which [MaxBytes] bounds, and that of Validate.
func Read(r io.Reader, profiles ...groove.Profile) (j plan.Job, err error) {
	defer fraction.Catch(&err)
	c, err := begin(r)
	if err != nil {
		return plan.Job{}, err
	}
	c.profiles = profiles
	if n := c.root.fields["units"]; n != nil {
		_ = c.units.UnmarshalText([]byte(n.text)) // what is wrong with it is found below
	}
	file := defaults(c.units)
	c.value(c.root, nil, reflect.ValueOf(&file).Elem())
	if len(c.faults) == 0 {
		j = c.job(&file)
	} else {
		c.faults = append(c.faults, c.unread(file.Finish.Validate(c.units))...) // so that what is wrong is said at once
	}
	if len(c.faults) == 0 {
		c.refused(j.Locate())
		c.arches(&j, &file)
	}
	if len(c.faults) == 0 {
		c.refused(j.Validate())
	}
	if len(c.faults) > 0 {
		return plan.Job{}, c.err()
	}
	return j, nil
}

// ReadProfiles reads a JSON list of profiles, each an object as the field profile of a job file may
// have it; bare numbers are inches. No two have one name. It fails as [Read] does.
func ReadProfiles(r io.Reader) (profiles []groove.Profile, err error) {
	defer fraction.Catch(&err)
	c, err := begin(r)
	if err != nil {
		return nil, err
	}
	var all []groove.Profile
	c.value(c.root, nil, reflect.ValueOf(&all).Elem())
	names := map[string]bool{}
	for i, p := range all {
		if p.Name == "" || names[p.Name] {
			c.fault(fault.Of(i, "name"), ErrValue, "a name that no other profile has")
		}
		names[p.Name] = true
		if len(c.faults) == 0 {
			c.refused(fault.Under(p.Validate(), i))
		}
	}
	if len(c.faults) > 0 {
		return nil, c.err()
	}
	return all, nil
}

// converter turns the tables of a file into a job.
type converter struct {
	decoder
	root     *node
	profiles []groove.Profile      // besides the builtin ones
	places   map[string]fault.Path // fields of the file, by fields of the job that are elsewhere
}

// begin reads the JSON of a file.
func begin(r io.Reader) (*converter, error) {
	root, faults, err := parse(r)
	c := &converter{decoder: decoder{faults: faults}, root: root, places: map[string]fault.Path{}}
	if root == nil && err == nil {
		err = c.err()
	}
	return c, err
}

// stands notes that a field of the job stands elsewhere in the file.
func (c *converter) stands(at fault.Path, job ...any) { c.places[fault.Of(job...).String()] = at }

// refused records what is wrong with a job or its profiles at the fields of the file.
func (c *converter) refused(err error) {
	for _, f := range fault.All(fault.Under(err)) {
		c.fault(c.spelt(f.Path), because(ErrRoom, f.Cause), f.Want)
	}
}

// unread returns the faults of finish at fields of which nothing is said yet, nor of what holds them
// or stands in them: a field that was not read is no fault of its own.
func (c *converter) unread(err error) (more []*fault.Fault) {
	for _, f := range fault.All(fault.Under(err, "Finish")) {
		at := c.spelt(f.Path)
		if !slices.ContainsFunc(c.faults, func(said *fault.Fault) bool {
			n := min(len(said.Path), len(at))
			return slices.Equal(said.Path[:n], at[:n])
		}) {
			more = append(more, &fault.Fault{Path: at, Cause: because(ErrRoom, f.Cause), Want: f.Want})
		}
	}
	return more
}

// spelt returns the path of a job's field as the file spells it. Below a field that stands
// elsewhere it goes as far as the file does.
func (c *converter) spelt(path fault.Path) fault.Path {
	spelt := each(path, func(s fault.Step) fault.Step {
		if s.Name != "" {
			name, _ := fault.Of(s.Name).MarshalText() // it writes any name
			s.Name = string(name)
		}
		return s
	})
	for n := len(path); n > 0; n-- {
		at, elsewhere := c.places[path[:n].String()]
		for _, s := range spelt[n:] {
			below := append(at[:len(at):len(at)], s)
			if _, exact := c.root.find(below); !exact {
				break
			}
			at = below
		}
		if elsewhere {
			return at
		}
	}
	return spelt
}

// each returns the images of the items of a list; nil for an empty one.
func each[A, B any](list []A, f func(A) B) []B {
	var images []B
	for _, a := range list {
		images = append(images, f(a))
	}
	return images
}
