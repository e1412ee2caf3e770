package odds

import "math"

// Term is one line of an error budget: a sensitivity, a standard uncertainty
// and its degrees of freedom, 0 for known exactly.
type Term struct {
	What    string
	C, U, N float64
}

// Combine gives the combined standard uncertainty of independent terms and its
// effective degrees of freedom, +Inf where every term's is known exactly.
//
// Source: JCGM 100:2008, 5.1.2 (law of propagation) and G.4.1
// (Welch-Satterthwaite).
func Combine(terms []Term) (u, freedom float64) {
	sum, down := 0.0, 0.0
	for _, t := range terms {
		v := t.C * t.U * t.C * t.U
		sum += v
		if t.N > 0 {
			down += v * v / t.N
		}
	}
	if down == 0 {
		return math.Sqrt(sum), math.Inf(1)
	}
	return math.Sqrt(sum), sum * sum / down
}

// Wilson is the interval of a share that was seen k times in n, at z standard
// deviations (1.96 for 95 %). For n = 0 nothing is known: 0 to 1.
//
// Source: E. B. Wilson 1927, J. Am. Stat. Assoc. 22:209-212, from memory.
func Wilson(k, n int, z float64) (low, high float64) {
	if n <= 0 {
		return 0, 1
	}
	N := float64(n)
	p := float64(k) / N
	mid := (p + z*z/(2*N)) / (1 + z*z/N)
	half := z / (1 + z*z/N) * math.Sqrt(p*(1-p)/N+z*z/(4*N*N))
	low, high = clip(mid-half), clip(mid+half)
	if k == 0 {
		low = 0
	}
	if k == n {
		high = 1
	}
	return low, high
}
