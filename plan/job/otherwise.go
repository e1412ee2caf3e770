package job

import (
	"strconv"
	"strings"
)

// Otherwise is what an empty answer to a question means, "" for left open; needed
// says that it has to be answered.
func (iv *Interview) Otherwise(st Step) (text string, needed bool) {
	if was, ok := iv.was[st.at()]; ok && was != "" {
		return was, false
	}
	left := Step{st.Question, st.Index, Left}
	switch {
	case st.otherwise == "needed":
		return "", true
	case st.Side == Right && (st.ID == "worn to" || st.ID == "edge") && iv.said[left.at()] != "":
		return iv.said[left.at()], false
	}
	switch st.otherwise {
	case "usual":
		return usualName(st.Index), false
	case "first":
		return iv.Called(0), false
	case "second":
		return iv.Called(min(1, iv.shafts()-1)), false
	case "drawer":
		return "drawer " + strconv.Itoa(st.Index+1), false
	case "here":
		return iv.Shop, false
	case "small":
		return "3 4 5 6 7 8", false
	case "judged":
		return iv.judged(st), iv.judged(st) == ""
	}
	return st.otherwise, false
}

// NotKnown is what is taken for an answer that nobody knows, "" for left open.
func (iv *Interview) NotKnown(st Step) string {
	switch st.otherwise {
	case "needed":
		return ""
	case "here":
		if iv.Shop != "" {
			return "none" // the built-in small shop
		}
		return ""
	case "usual", "first", "second", "drawer", "small", "judged":
		text, _ := iv.Otherwise(Step{st.Question, st.Index, Left})
		return text
	}
	return st.otherwise
}

// judged says of the figures of a bush whether they are what it is sold by or
// what was measured: a size of the trade has no hundredths.
func (iv *Interview) judged(st Step) string {
	vals := iv.bushSizes(st.Index)
	if len(vals) < 2 {
		return "measured"
	}
	places := 1 // of a size of the trade in mm
	if iv.inchBush(st.Index) {
		places = 2
	}
	for _, v := range vals[:2] {
		_, part, _ := strings.Cut(strings.ReplaceAll(strings.Fields(v)[0], ",", "."), ".")
		if len(part) > places {
			return "measured"
		}
	}
	if usualOf(iv.bushMaterial(st.Index), iv.inchBush(st.Index)).bore == "" {
		return ""
	}
	return "sold"
}
