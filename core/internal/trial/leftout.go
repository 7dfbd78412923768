package trial

import "twoleaf/core/evidence"

// LeftOut fills in what was computed with every series left out of the fit,
// and says if that was with other evidence or code than now.
func (r *Report) LeftOut() {
	of := map[string]int{}
	for _, x := range evidence.LeftOutRatings() {
		of[x.ID] = x.STC
	}
	gather := func(name, tier string) *Figures {
		var d []float64
		for _, x := range r.results {
			if _, ok := x.Deviation(); !ok || tierOf(x.Test) != tier || name != "all" && x.Test.Kind != name {
				continue
			}
			if stc, ok := of[x.Test.ID]; ok {
				d = append(d, float64(stc-x.Test.STC))
			}
		}
		if len(d) == 0 {
			return nil
		}
		f := Sum(d)
		return &f
	}
	for i := range r.Families {
		r.Families[i].CV = gather(r.Families[i].Name, r.Families[i].Tier)
	}
	r.All.CV = gather("all", r.All.Tier)
	root, err := Root()
	if err != nil {
		r.Stale = "could not be checked against the code: " + err.Error()
		return
	}
	now, err := Fingerprint(root)
	switch {
	case err != nil:
		r.Stale = "could not be checked against the code: " + err.Error()
	case now != evidence.LeftOutFingerprint():
		r.Stale = "stale: made with other evidence or code than this; run make fit"
	}
}
