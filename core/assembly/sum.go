package assembly

// sum adds in the order of size, so that the same parts in another order give
// the same last digit: the order of screwed layers changes nothing at all.
func sum(parts []float64) float64 {
	for i := range parts { // a handful
		for k := i; k > 0 && parts[k] < parts[k-1]; k-- {
			parts[k], parts[k-1] = parts[k-1], parts[k]
		}
	}
	total := 0.0
	for _, p := range parts {
		total += p
	}
	return total
}
