package takeoff

import (
	"slices"
	"strings"
)

// named gives numbers their names, parted by spaces: one function instead of a
// map written out at each place keeps the module small.
func named(names string, values ...float64) map[string]float64 {
	if len(values) == 0 {
		return nil
	}
	out := make(map[string]float64, len(values))
	for _, v := range values {
		name, rest, _ := strings.Cut(names, " ")
		out[name], names = v, rest
	}
	return out
}

// ranked returns 0 … n−1 in the order of compare, equal ones as they were: one
// sort for every kind of thing.
func ranked(n int, compare func(a, b int) int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = i
	}
	slices.SortFunc(out, func(a, b int) int {
		if c := compare(a, b); c != 0 {
			return c
		}
		return a - b
	})
	return out
}

// inOrder returns so many of the things of a list, picked by rank.
func inOrder[T any](list []T, ranks []int) []T {
	out := make([]T, len(ranks))
	for i, r := range ranks {
		out[i] = list[r]
	}
	return out
}

// say adds a note. One call instead of an append written out at each place.
//
//go:noinline
func say(to *[]Note, code Code, face string, layer int, board, names string, values ...float64) {
	*to = append(*to, Note{code, face, layer, board, named(names, values...)})
}
