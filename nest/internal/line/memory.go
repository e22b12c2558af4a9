package line

import (
	"context"
	"encoding/binary"
)

// Memory holds what was found for jobs before: nests on trial of one room ask the same of their
// heights over and over. What it gives is what is found without it. The zero Memory is empty, nil
// remembers nothing; it serves one goroutine at a time.
type Memory struct {
	packed map[string]packed
	duals  map[string]Dual
}

// packed is what a search of a job comes to.
type packed struct {
	best  []pattern
	lower int
	how   Argument
	nodes int
}

// mostKnown is how many answers of a sort are held; then a memory begins afresh.
const mostKnown = 256

// KeyOf is a text that is the same for equal jobs and numbers only.
func KeyOf(capacity int64, sizes []int64, counts []int, nodes int) string {
	text := binary.AppendUvarint(binary.AppendUvarint(make([]byte, 0, 16+8*len(sizes)), uint64(capacity)), uint64(nodes))
	for kind, size := range sizes {
		text = binary.AppendUvarint(binary.AppendUvarint(text, uint64(size)), uint64(counts[kind]))
	}
	return string(text)
}

// Remember adds an answer to one sort of them.
func Remember[T any](answers *map[string]T, key string, answer T) {
	if *answers == nil || len(*answers) == mostKnown {
		*answers = map[string]T{}
	}
	(*answers)[key] = answer
}

// Pack returns what the function [Pack] does.
func (m *Memory) Pack(ctx context.Context, capacity int64, sizes []int64, nodes int) (Result, error) {
	if err := Check(capacity, sizes); err != nil {
		return Result{}, err
	}
	if m == nil {
		m = &Memory{}
	}
	j := newJob(capacity, sizes)
	key := KeyOf(capacity, j.sizes, j.counts, nodes)
	p, ok := m.packed[key]
	if !ok {
		if p = j.pack(ctx, nodes); ctx.Err() == nil {
			Remember(&m.packed, key, p)
		}
	}
	return Result{j.bins(p.best), p.lower, len(p.best) == p.lower, p.how, p.nodes}, nil
}

// BestDual returns what the function [BestDual] does. Neither the sizes nor the function may be
// changed.
func (m *Memory) BestDual(capacity int64, sizes []int64, counts []int) (d Dual, ok bool) {
	if m == nil {
		return BestDual(capacity, sizes, counts)
	}
	key := KeyOf(capacity, sizes, counts, 0)
	if d, ok = m.duals[key]; !ok {
		d, _ = BestDual(capacity, sizes, counts)
		Remember(&m.duals, key, d)
	}
	return d, d.Most > 0
}
