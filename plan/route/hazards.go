package route

import (
	"regexp"
	"slices"

	"rebush/fits/material"
	"rebush/fits/say"
	"rebush/plan/safety"
)

// Hazards says what can hurt, where it acts, from the table of hazards.
type Hazards struct {
	Table   *safety.Book
	Metals  *material.Registry
	Chassis material.Kind
	Unsure  bool // nobody has said whether the casting is sound
}

// Said is what is said of the hazards of a job as a whole; what belongs to one
// operation stands in Row.Safety.
type Said struct {
	PageOne []safety.Line `json:"page_one"` // five at most
	LookFor []safety.Line `json:"look_for"` // before the first cut, where nobody has said that the casting is sound
	Before  []safety.Line `json:"before"`   // the truck is stripped
	Owner   []safety.Line `json:"owner"`    // of the truck
}

// KindNames are the kinds of operation as the table of hazards writes them.
func KindNames() []string {
	var out []string
	for _, k := range Kinds() {
		out = append(out, string(k))
	}
	return out
}

// Whole is the job as a whole, with no operation; cut says that some operation
// cuts the chassis.
func (h Hazards) Whole(cut bool) safety.Work {
	return safety.Work{Metals: []material.Kind{h.Chassis},
		Facts: map[safety.Fact]bool{safety.ConditionUnknown: h.Unsure, safety.ToBeCut: cut}}
}

// LookFor is what to look for on a casting of this metal of which nobody has
// said that it is sound.
func (h Hazards) LookFor(cut bool) []safety.Line { return h.Table.At(safety.LookFor, h.Whole(cut)) }

// Beside is what can hurt in each operation of a route, in its order, and what
// page one and the stripping of the truck say of all of them.
func (h Hazards) Beside(r Route) (each [][]safety.Line, pageOne, before []safety.Line) {
	var all []safety.Work
	first := true
	for _, o := range r.Operations {
		w := h.work(o, first && o.Kind == KindSetUp)
		first = first && o.Kind != KindSetUp
		all = append(all, w)
		each = append(each, h.Table.At(safety.Operation, w))
	}
	return each, h.Table.First(all), h.Table.At(safety.Before, h.Whole(r.cuts()))
}

// cuts says whether any operation cuts the chassis.
func (r Route) cuts() bool {
	return slices.ContainsFunc(r.Operations, func(o Operation) bool { return o.Kind == KindSizeSeat })
}

// byAir finds a lubricant that is air.
var byAir = regexp.MustCompile(`\bair\b`)

// work says what one operation does to what, for the table of hazards.
func (h Hazards) work(o Operation, first bool) safety.Work {
	w := safety.Work{Operation: string(o.Kind), Facts: map[safety.Fact]bool{
		safety.Spindle: o.Spindle, safety.FirstSetUp: first, safety.FromBelow: o.FromBelow, safety.UnderThePress: o.Pressed,
		safety.Compound: o.Compound, safety.Leaded: o.Leaded, safety.Air: byAir.MatchString(o.Lubricant.String()),
		safety.ConditionUnknown: h.Unsure}}
	var bush []material.Kind
	if mat, err := h.Metals.Find(o.BushMetal); o.BushMetal != "" && err == nil {
		bush = []material.Kind{mat.Kind}
	}
	switch o.Kind {
	case KindTurn, KindFace:
		w.Metals = bush
	case KindOil, KindSizeBore:
		w.Metals, w.Near = bush, []material.Kind{h.Chassis}
		w.Facts[safety.InMagnesium] = h.Chassis == material.MagnesiumCasting
	case KindAid:
		w.Metals = []material.Kind{material.Steel}
	case KindPress, KindSetPart:
		w.Metals = append([]material.Kind{h.Chassis}, bush...)
	default:
		w.Metals = []material.Kind{h.Chassis}
	}
	return w
}

// Proved are the final checks of a route with what the first look at an
// ohmmeter wants said before it.
func (h Hazards) Proved(r Route) []Step {
	at := slices.IndexFunc(r.Proving, func(s Step) bool { return s.Blank == ohms })
	if at < 0 {
		return r.Proving
	}
	var lines []Step
	for _, l := range h.Table.At(safety.Proving, h.Whole(r.cuts())) {
		lines = append(lines, Step{Text: say.Words(l.Words)})
	}
	return slices.Insert(slices.Clone(r.Proving), at, lines...)
}
