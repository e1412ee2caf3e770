package say

import "fmt"

// InHundred is a share of 1 as it is said at the bench, "87 in 100". What is
// nearly none is "under 1 in 100"; what is nearly all, or all of what was
// tried, "over 99 in 100": nothing here is certain.
func InHundred(share float64) Text {
	switch {
	case share > 0 && share < 0.005:
		return "under 1 in 100"
	case share >= 0.995:
		return "over 99 in 100"
	}
	return Text(fmt.Sprintf("%d in 100", int(share*100+0.5)))
}
