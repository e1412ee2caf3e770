package main

// claim is between which shares of the formula finite elements have to come
// out, and why that is asked.
type claim struct {
	low, high float64
	why       string
}

var (
	// The formula is the exact answer of what the elements are given. Half a
	// percent is what the elements are good for, carried from two meshes on to
	// none: stress at a wall comes from points inside.
	exact = claim{0.995, 1.005, "exact"}

	// Beside an edge the formula takes the mean round the seat. fits/press/METHODS.md 2
	// states a pressure from 4.4 % low to 0.1 % high, and a peak never too low.
	// The elements' own half a percent is added on the unsafe side. A seat that
	// is stuck all round carries part of it as shear: its peak lies up to a
	// quarter below.
	byMean   = claim{0.994, 1.05, "mean round the seat"}
	peakSafe = claim{0.75, 1.005, "never too low"}

	// A plate that ends elsewhere too. Were it a ring that ended all round where
	// the nearest of those edges is, 4 seat radii off, its tension for unit
	// pressure would be 1.133 (Lame) and its pressure 4 % lower: 9 % more tension
	// at the most, where the edge itself adds nothing.
	smallPlate = claim{0.95, 1.05, "ends elsewhere too"}
	smallPeak  = claim{0.75, 1.09, "ends elsewhere too"}

	// Half way along a plain bush that is as long as its seat: parts that slide
	// are in plane stress. Parts that hold each other along the axis are on the
	// way to plane strain, which for the bush's modulus is 1/(1-nu^2) or 1.10,
	// and the bush, which grows longer, pulls the plate along: nu of that adds
	// to the hoop.
	byLength = claim{0.95, 1.15, "stress to strain"}

	// What the holding rests on is the mean pressure. Metal beyond the ends of
	// the contact, and a flange, make it higher, never lower.
	holds = claim{0.995, 1.35, "holds at least that"}
)

// found is what the formula does not claim to know: ends, flanges, directions.
// The share that came out is written down with 0.02 to either side. It promises
// nothing; it tells when formula or elements change.
func found(share float64) claim { return claim{share - 0.02, share + 0.02, "left out; as found"} }

// unsafe says whether a share of the formula lies on its unsafe side: a bush
// held by less, a plate pulled by more, a bore closed by more than is said.
func unsafe(what string, share float64) bool {
	switch what {
	case pressure:
		return share < 0.995
	case tension, atEdge, greatest, halfHoop, insideEnd, closure, tightest:
		return share > 1.005
	}
	return false
}
