package route

import (
	"fmt"
	"math"
	"strings"

	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/job"
)

// What the room has to say.
const (
	Drills       finding.Rule = "route/drills"
	NoJig        finding.Rule = "route/no jig"
	LocatingTool finding.Rule = "route/locating tool"
	TurnedOver   finding.Rule = "route/turned over"
	EndsHere     finding.Rule = "route/ends here"
	NoStake      finding.Rule = "route/no stake"
	ToolReach    finding.Rule = "route/reach"
)

func plural(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

// join puts remarks behind each other.
func join(remarks ...say.Text) say.Text { return say.Join("; ", remarks...) }

// list writes names as "a, b and c".
func list[T ~string](names []T) T {
	var out T
	for i, n := range names {
		switch {
		case i == 0:
		case i == len(names)-1:
			out += " and "
		default:
			out += ", "
		}
		out += n
	}
	return out
}

// words are the words of a name; what it is stamped with stays.
func words(name string) say.Text { return say.Words(name) }

func sameSize(a, b float64) bool { return a > 0 && math.Abs(a-b) < 1e-6 }

// under is a size that passes a bore by so much, down to a hundredth of a
// millimetre.
func under(bore, by float64) float64 { return math.Floor((bore-by)*100+1e-6) / 100 }

// hundredth rounds a size that is turned to suit to a hundredth of a millimetre.
func hundredth(f float64) float64 { return math.Round(f*100) / 100 }

// trim writes a length to a thousandth without idle noughts.
func trim(f float64) string {
	s := strings.TrimRight(fmt.Sprintf("%.3f", f), "0")
	return strings.TrimRight(s, ".")
}

func other(side job.Side) job.Side {
	if side == job.Left {
		return job.Right
	}
	return job.Left
}

// mirrorX is the dial's x where the chassis is turned over: from the end that
// then lies on the left.
func (b *builder) mirrorX(x float64) float64 {
	if b.j.Length > 0 {
		return b.j.Length - x
	}
	return x
}
