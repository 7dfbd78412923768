package assembly

import "slices"

// sum adds in the order of size, so that the same parts in another order give
// the same last digit: the order of screwed layers changes nothing at all.
func sum(parts []float64) float64 {
	slices.Sort(parts)
	total := 0.0
	for _, p := range parts {
		total += p
	}
	return total
}
