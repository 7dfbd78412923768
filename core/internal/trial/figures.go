package trial

import "math"

// Figures are the statistics of deviations, computed minus measured.
type Figures struct {
	N       int     `json:"n"`
	Bias    float64 `json:"bias"`
	SD      float64 `json:"sd"` // about the bias
	RMS     float64 `json:"rms"`
	Within3 float64 `json:"within3"` // per cent within ±3
}

// Sum gathers deviations.
func Sum(d []float64) Figures {
	f := Figures{N: len(d)}
	if len(d) == 0 {
		return f
	}
	var s, ss, in float64
	for _, x := range d {
		s += x
		ss += x * x
		if math.Abs(x) <= 3 {
			in++
		}
	}
	n := float64(len(d))
	f.Bias, f.RMS, f.Within3 = s/n, math.Sqrt(ss/n), 100*in/n
	f.SD = math.Sqrt(math.Max(0, ss/n-f.Bias*f.Bias))
	return f
}
