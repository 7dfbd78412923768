package load

import (
	"slices"

	"twoleaf/core/unit"
)

// Held reports whether no clip is over its rating and no channel over its
// deflection or moment; false without a rating.
func (l Layout) Held() bool {
	if l.Rating <= 0 || l.Count.Over > 0 {
		return false
	}
	for _, r := range l.Rows {
		if unit.Over(r.SagOf, 1) || unit.Over(r.MomentOf, 1) {
			return false
		}
	}
	return true
}

// Widest returns the rules with the fewest clips that hold, and their layout,
// out of the row spacings given and a clip on every first to most-th member, most
// as the rules' Every, each as the rules are and with Even; between as many clips the one with fewer
// rows, then the less loaded. Where none holds the error says which comes closest.
func Widest(face Face, rules Rules, carried Carried, ratings Ratings, rows []unit.Length) (Rules, Layout, error) {
	best, lay, found := rules, Layout{}, false
	closest, nigh := rules, Layout{}
	for _, step := range rows {
		for every := 1; every <= max(1, rules.Every); every++ {
			for _, even := range [...]bool{rules.Even, true} {
				r := rules
				r.Rows, r.Every, r.Even = step, every, even
				l, err := Lay(face, r, carried, ratings)
				if err != nil {
					return rules, l, err
				}
				if l.Rating <= 0 {
					return rules, l, &Fault{FaultUnrated, nil}
				}
				if l.Held() && (!found || fewer(l, lay)) {
					best, lay, found = r, l, true
				}
				if nigh.Spots == nil || l.Spots[l.Worst].Load < nigh.Spots[nigh.Worst].Load {
					closest, nigh = r, l
				}
				if rules.Even {
					break
				}
			}
		}
	}
	if found {
		return best, lay, nil
	}
	if nigh.Spots == nil {
		return rules, nigh, &Fault{FaultRule, nums{"rule": 1}}
	}
	w := nigh.Spots[nigh.Worst]
	// What else hangs on the worst clip stays; the boards take the rest of the rating.
	light := carried
	light.Area = 0
	most := 0.0
	if l, err := Lay(face, closest, light, ratings); err == nil && w.Load > l.Spots[nigh.Worst].Load {
		rest := l.Spots[nigh.Worst].Load
		most = max(0, float64(carried.Area)*float64((nigh.Rating-rest)/(w.Load-rest)))
	}
	return closest, nigh, &Fault{FaultNoneHolds, nums{
		"rows": float64(closest.Rows), "every": float64(closest.Every), "clips": float64(len(nigh.Spots)),
		"load": float64(w.Load), "rating": float64(nigh.Rating), "share": w.Of, "most": most,
	}}
}

func fewer(a, b Layout) bool {
	switch {
	case len(a.Spots) != len(b.Spots):
		return len(a.Spots) < len(b.Spots)
	case len(a.Rows) != len(b.Rows):
		return len(a.Rows) < len(b.Rows)
	}
	return a.Spots[a.Worst].Load < b.Spots[b.Worst].Load
}

// Mend returns the one clip that, put into the row of the worst clip beside it,
// brings the worst of all down the furthest, and the layout with it; ok is false
// where nothing is gained. Members come first, blocking only if it gains a tenth more.
func Mend(face Face, rules Rules, carried Carried, ratings Ratings) (place Place, lay Layout, ok bool) {
	now, err := Lay(face, rules, carried, ratings)
	if err != nil {
		return place, now, false
	}
	worst := now.Spots[now.Worst]
	row := now.Rows[worst.Row]
	least := float64(worst.Load)
	i := slices.Index(row.Clips, now.Worst)
	low, high := row.From, row.To
	if i > 0 {
		low = row.Marks[i-1]
	}
	if i < len(row.Marks)-1 {
		high = row.Marks[i+1]
	}
	try := func(u unit.Length, weight float64) {
		p := Place{u, row.At}
		if !now.AlongX {
			p = Place{row.At, u}
		}
		r := rules
		r.Plus = append(slices.Clone(rules.Plus), p)
		l, err := Lay(face, r, carried, ratings)
		if err != nil || len(l.Spots) == len(now.Spots) {
			return
		}
		if load := float64(l.Spots[l.Worst].Load); load*weight < least*(1-unit.Slack) {
			place, lay, ok, least = p, l, true, load*weight
		}
	}
	if s := face.Frame.Spacing; s > 0 {
		for u := face.Frame.First; u < high; u += s {
			if u > low {
				try(u, 1)
			}
		}
	}
	for k := 1; k < 8; k++ {
		try(low+(high-low)*unit.Length(k)/8, 1/0.9)
	}
	return place, lay, ok
}
