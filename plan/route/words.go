package route

import (
	"fmt"
	"math"
	"strings"
)

func plural(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

// join puts two remarks behind each other.
func join(a, b string) string {
	switch {
	case a == "":
		return b
	case b == "":
		return a
	}
	return a + "; " + b
}

// list writes names as "a, b and c".
func list(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

func sameSize(a, b float64) bool { return a > 0 && math.Abs(a-b) < 1e-6 }

// trim writes a length to a thousandth without idle noughts.
func trim(f float64) string {
	s := strings.TrimRight(fmt.Sprintf("%.3f", f), "0")
	return strings.TrimRight(s, ".")
}

func other(side string) string {
	if side == "left" {
		return "right"
	}
	return "left"
}

// mirrorX is the dial's x where the chassis is turned over: from the end that
// then lies on the left.
func (b *builder) mirrorX(x float64) float64 {
	if b.j.Length > 0 {
		return b.j.Length - x
	}
	return x
}
