package appraise

// built are points of how much less a built room is likely to reach than the
// laboratory, dB, against the laboratory rating: 1–2 less below 45, 5 less at
// 50 (the building code's 50 in the laboratory against 45 on site, NBC2020),
// 6 at 60 and more above, where flanking decides (common practice).
var built = [][2]float64{{45, 2}, {50, 5}, {60, 6}, {70, 9}}

// Built returns what a built room is likely to reach, dB, for a laboratory
// rating: common practice, linear between the points above; not a prediction
// of flanking.
func Built(rating float64) float64 {
	p := built
	if rating <= p[0][0] {
		return rating - p[0][1]
	}
	for i := 1; i < len(p); i++ {
		if rating <= p[i][0] {
			u := (rating - p[i-1][0]) / (p[i][0] - p[i-1][0])
			return rating - p[i-1][1] - u*(p[i][1]-p[i-1][1])
		}
	}
	return rating - p[len(p)-1][1]
}
