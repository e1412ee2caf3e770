package sheets

import (
	"strings"

	"rebush/plan"
	"rebush/sheets/draw"
)

// mirroredBox says what turning the chassis over does to the figures.
func mirroredBox(b *block, pl *plan.Plan, s plan.Setup) {
	words := "What was on the left now lies on the right, as drawn. "
	_, turned := dialEnd(pl, s)
	switch {
	case turned && byDials(pl):
		words += "x is dialled from the end that now lies on the left: touch it and zero the dials there first."
	case turned:
		words += "x now counts from the end that lies on the left."
	case !byDials(pl):
		words += "Figures still count from the datum corner, which now lies on the right."
	default:
		words += "Figures still count from the datum corner, which now lies on the right: touch it again first."
	}
	b.boxed(1, 1.6, func(in *block) {
		w := in.tag(0, 0, "MIRRORED", in.st.body)
		in.y = max(em(in.st.body)+2.4, in.write(w+3, 0.4, in.Width-w-3, words, draw.Regular, in.st.body))
	})
	b.y -= 1.2
}

// byDials says whether places are set on dials; else a jig or a mark holds
// them.
func byDials(pl *plan.Plan) bool {
	return pl.Job == nil || pl.Job.Shop == nil || pl.Job.Shop.MachineKind == "mill" || pl.Job.Shop.MachineKind == "" ||
		pl.Job.Shop.Readout
}

// placeWords says where an operation is done.
func placeWords(pl *plan.Plan, name string) string {
	if s, ok := setupNamed(pl, name); !ok || s.Plate == "" {
		switch name {
		case "bench", "press", "lathe":
			return "At the " + name
		case "oil":
			return "Oil ways"
		case "finish":
			return "Finishing the bores"
		}
	}
	return "Set-up " + name
}

// startSmall begins with a small letter where a word begins.
func startSmall(s string) string {
	if len(s) > 1 && s[0] >= 'A' && s[0] <= 'Z' && s[1] >= 'a' && s[1] <= 'z' {
		return strings.ToLower(s[:1]) + s[1:]
	}
	return s
}
