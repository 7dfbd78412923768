package room

import "math"

// Figures of air and heat.
const (
	airOutside = 420.0  // carbon dioxide, parts per million (from memory)
	airHold    = 600.0  // over that, held by the air wanted, parts per million (common practice)
	AirLimit   = 1400.0 // parts per million at which it is stuffy (common practice)
	breath     = 5.2e-6 // carbon dioxide a head seated, m³/s (from memory)
	breathHard = 9.0e-6 // playing or singing hard, 7 to 12 (from memory)
	perHead    = 0.005  // m³/s a head, music and dance (ASHRAE62)
	perArea    = 0.0003 // m³/s a square metre of floor, likewise
	QuietSpeed = 1.3    // m/s at the outlet for NC 15 to 20: 1.3 to 1.5 (grille-speed)
	headroom   = 0.1    // share of all else that the ducts together may pass
	ducts      = 2      // one in, one out
	warm       = 100.0  // W a head seated (from memory)
	warmHard   = 150.0  // W a head playing hard (from memory)
	airHeat    = 1210.0 // J/(m³·K) of air
	boardHeat  = 1000.0 // J/(kg·K) of gypsum and wood, about (from memory)
	boardMost  = 25.0   // of a face's boards what warms within an hour, kg/m² (derived: √(a t) is 33 mm in gypsum)
	film       = 8.0    // W/(m²·K) between air and boards (from memory)
	AirRise    = 3.0    // K that the air may leave warmer than it came (our choice)
	hour       = 3600.0 // s
)

// Carbon returns the carbon dioxide in a room after a time, parts per million:
//
//	C = C0 + (G/Q)(1 − e^(−Qt/V)), without fresh air C0 + G t/V
//
// G is what the people breathe out and Q the fresh air [m³/s], V the volume [m³],
// t in s; well mixed. Source: balance of mass.
func Carbon(g, q, v, t float64) float64 {
	if q <= 0 {
		return airOutside + 1e6*g*t/v
	}
	return airOutside + 1e6*g/q*(1-math.Exp(-q*t/v))
}

// air tells what the people breathe and what warms the room.
//
// Temperature: air and the inner boards warm together, the air ahead of them by
// what it takes to hand them the heat,
//
//	ΔT = P/(ρcQ) (1 − e^(−ρcQ t/C)) + P/(h S),  without air P t/C + P/(h S)
//
// with C = ρcV + Σ S m c. Derived; nothing goes out through the walls within the hour.
func (a *assessment) air() (out Air) {
	u, v := a.room.Use, a.report.Volume
	out.Start, out.Limit, out.Given = airOutside, AirLimit, u.Air
	out.Fuel, out.Sealed = u.Fuel, u.Air <= 0
	g, w := breath, warm
	if u.Playing {
		g, w = breathHard, warmHard
	}
	n := float64(max(0, u.People))
	g *= n
	out.End = out.Start
	floor := a.room.Length * a.room.Width
	out.Want = math.Max(g*1e6/airHold, n*perHead)
	if n > 0 {
		out.Want = math.Max(out.Want, n*perHead+floor*perArea)
	}
	out.TooLittle = n > 0 && u.Air < out.Want*(1-1e-9)
	out.Heat = u.Watts + n*w
	if u.Air > 0 {
		out.Steady = airOutside + 1e6*g/u.Air
	}
	if v > 0 && n > 0 {
		out.End = Carbon(g, u.Air, v, u.Minutes*60)
		over := (AirLimit - airOutside) / 1e6
		if u.Air <= 0 {
			out.MinutesTo = over * v / g / 60
		} else if x := over * u.Air / g; x < 1 {
			out.MinutesTo = -v / u.Air * math.Log(1-x) / 60
		}
	}
	heat, face := airHeat*v, 0.0
	for i := range a.report.Surfaces {
		s := &a.report.Surfaces[i]
		if !a.out[i] {
			face += s.Area
			heat += s.Area * math.Min(boardMost, a.room.Surfaces[i].Mass/2) * boardHeat
		}
	}
	if heat > 0 && face > 0 {
		carried := airHeat * u.Air
		out.RiseSealed = out.Heat * (hour/heat + 1/(film*face))
		out.Rise = out.RiseSealed
		if carried > 0 {
			out.Rise = out.Heat * ((1-math.Exp(-carried*hour/heat))/carried + 1/(film*face))
		}
		out.Cooling = math.Max(0, out.Heat-carried*AirRise)
	}
	if out.Want > 0 {
		out.DuctArea = out.Want / QuietSpeed
		out.DuctRound = math.Sqrt(out.DuctArea * 4 / math.Pi)
		out.DuctLoss = a.ductLoss(out.DuctArea, out.DuctRound)
	}
	return out
}

// ductLoss returns the insertion loss that each of two such ducts needs so that
// together they pass a tenth of what all else does, dB per octave.
func (a *assessment) ductLoss(area, diameter float64) (out Levels) {
	var other Levels
	for i := range a.report.Paths {
		p := &a.report.Paths[i]
		if p.Opening >= 0 && a.kinds[p.Surface][p.Opening].Group == Duct {
			continue
		}
		for o, open := range p.Open {
			other[o] += open
		}
	}
	for o := range out {
		if other[o] > 0 {
			bare := ducts * area * passed(Octaves[o], diameter, 0)
			out[o] = math.Max(0, level(bare/(headroom*other[o])))
		}
	}
	return out
}
