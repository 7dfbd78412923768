package transmission

import "math"

// The elementary functions that the standard library computes in assembly on
// some machines and in Go on others, written once, so that the same build-up
// has the same digits everywhere. Square roots are exact by IEEE 754.

const (
	ln2hi = 6.93147180369123816490e-01
	ln2lo = 1.90821492927058770002e-10
	log2e = 1.44269504088896338700e+00
)

// exp returns e^x (argument reduction and rational function of FreeBSD's e_exp.c, Sun Microsystems 1993).
func exp(x float64) float64 {
	switch {
	case x != x:
		return x
	case x > 709:
		return math.Inf(1)
	case x < -708:
		return 0
	}
	k := int(log2e*x + 0.5)
	if x < 0 {
		k = int(log2e*x - 0.5)
	}
	hi, lo := x-float64(float64(k)*ln2hi), float64(k)*ln2lo
	r := hi - lo
	t := r * r
	c := r - t*(1.66666666666666657415e-01+t*(-2.77777777770155933842e-03+t*(6.61375632143793436117e-05+t*(-1.65339022054652515390e-06+t*4.13813679705723846039e-08))))
	y := 1 - ((lo - (r*c)/(2-c)) - hi)
	// y·2^k; k lies within the exponents of normal numbers.
	return y * math.Float64frombits(uint64(k+1023)<<52)
}

// ln returns the natural logarithm of a positive x (FreeBSD's e_log.c, Sun Microsystems 1993).
func ln(x float64) float64 {
	if !(x > 0) || x > math.MaxFloat64 {
		return math.Log(x)
	}
	f1, ki := math.Frexp(x)
	if f1 < math.Sqrt2/2 {
		f1 *= 2
		ki--
	}
	f := f1 - 1
	k := float64(ki)
	s := f / (2 + f)
	s2 := s * s
	s4 := s2 * s2
	t1 := s2 * (6.666666666666735130e-01 + s4*(2.857142874366239149e-01+s4*(1.818357216161805012e-01+s4*1.479819860511658591e-01)))
	t2 := s4 * (3.999999999940941908e-01 + s4*(2.222219843214978396e-01+s4*1.531383769920937332e-01))
	hfsq := 0.5 * f * f
	return k*ln2hi - ((hfsq - (s*(hfsq+t1+t2) + k*ln2lo)) - f)
}

// pow returns x^y for positive x.
func pow(x, y float64) float64 {
	if y == 0 || x == 1 {
		return 1
	}
	return exp(y * ln(x))
}

// decibel returns −10 lg x.
func decibel(x float64) float64 { return -10 / 2.302585092994045684 * ln(x) }

// asinh and sinh for positive x.
func asinh(x float64) float64 { return ln(x + math.Sqrt(x*x+1)) }
func sinh(x float64) float64  { return (exp(x) - exp(-x)) / 2 }

// cexp returns e^z.
func cexp(z complex128) complex128 {
	m := exp(real(z))
	s, c := math.Sincos(imag(z))
	return complex(m*c, m*s)
}

// csqrt returns the square root with a non-negative real part.
func csqrt(z complex128) complex128 {
	x, y := real(z), imag(z)
	r := math.Sqrt(x*x + y*y)
	if r == 0 {
		return 0
	}
	t := math.Sqrt((math.Abs(x) + r) / 2)
	switch {
	case x >= 0:
		return complex(t, y/(2*t))
	case y < 0:
		return complex(-y/(2*t), -t)
	}
	return complex(y/(2*t), t)
}

// norm returns |z|².
func norm(z complex128) float64 { return real(z)*real(z) + imag(z)*imag(z) }
