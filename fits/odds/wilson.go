package odds

import "math"

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
