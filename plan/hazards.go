package plan

import (
	"regexp"
	"slices"

	"rebush/fits/finding"
	"rebush/fits/material"
	"rebush/fits/say"
	"rebush/fits/table"
	"rebush/plan/job"
	"rebush/plan/route"
	"rebush/plan/safety"
)

// Safety is what is said of hazards of a job as a whole; what belongs to one
// operation stands in Operation.Safety.
type Safety struct {
	PageOne []safety.Line `json:"page_one"` // five at most
	LookFor []safety.Line `json:"look_for"` // before the first cut, where nobody has said that the casting is sound
	Before  []safety.Line `json:"before"`   // the truck is stripped
	Owner   []safety.Line `json:"owner"`    // of the truck
}

// kindNames are the kinds of operation as the table of hazards writes them.
func kindNames() []string {
	var out []string
	for _, k := range route.Kinds() {
		out = append(out, string(k))
	}
	return out
}

// byAir finds a lubricant that is air.
var byAir = regexp.MustCompile(`\bair\b`)

// work says what one operation does to what, for the table of hazards.
func (m *maker) work(o route.Operation, first bool) safety.Work {
	w := safety.Work{Operation: string(o.Kind), Facts: map[safety.Fact]bool{
		safety.Spindle: o.Spindle, safety.FirstSetUp: first, safety.FromBelow: o.FromBelow, safety.UnderThePress: o.Pressed,
		safety.Compound: o.Compound, safety.Leaded: o.Leaded, safety.Air: byAir.MatchString(o.Lubricant.String()), safety.ConditionUnknown: m.unsure()}}
	bush := m.bushKind(o.Bore)
	switch o.Kind {
	case route.KindTurn, route.KindFace:
		w.Metals = bush
	case route.KindOil, route.KindSizeBore:
		w.Metals, w.Near = bush, []material.Kind{m.chassis.Kind}
		w.Facts[safety.InMagnesium] = m.chassis.Kind == material.MagnesiumCasting
	case route.KindPress:
		w.Metals = append([]material.Kind{m.chassis.Kind}, bush...)
	default:
		w.Metals = []material.Kind{m.chassis.Kind}
	}
	return w
}

// bushKind is the metal of the bush of a bore, none where it gets none.
func (m *maker) bushKind(bore string) []material.Kind {
	b := m.of(bore)
	if b == nil || b.chosen == nil {
		return nil
	}
	mat, err := m.materials.Find(b.chosen.Bush.Metal.Name)
	if err != nil {
		return nil
	}
	return []material.Kind{mat.Kind}
}

// unsure says that nobody has said whether the casting is sound.
func (m *maker) unsure() bool {
	return m.j.Chassis.Condition == "" || m.j.Chassis.Condition == "unknown"
}

// whole is the job as a whole: its chassis, and no operation.
func (m *maker) whole() safety.Work {
	cut := slices.ContainsFunc(m.p.Operations, func(o Operation) bool { return o.Kind == string(route.KindSizeSeat) })
	return safety.Work{Metals: []material.Kind{m.chassis.Kind}, Facts: map[safety.Fact]bool{safety.ConditionUnknown: m.unsure(), safety.ToBeCut: cut}}
}

// hazards puts what can hurt beside each operation, and gathers what is said
// of the job as a whole.
func (m *maker) hazards(ops []route.Operation) {
	var job []safety.Work
	first := true
	for i, o := range ops {
		w := m.work(o, first && o.Kind == route.KindSetUp)
		first = first && o.Kind != route.KindSetUp
		job = append(job, w)
		m.p.Operations[i].Safety = m.safety.At(safety.Operation, w)
	}
	m.p.Safety.PageOne = m.safety.First(job)
	m.p.Safety.Before = m.safety.At(safety.Before, m.whole())
	for i, s := range m.p.Proving {
		if s.Blank != "ohm" {
			continue
		}
		var lines []Step
		for _, l := range m.safety.At(safety.Proving, m.whole()) {
			lines = append(lines, Step{Text: say.Words(l.Words)})
		}
		m.p.Proving = append(m.p.Proving[:i:i], append(lines, m.p.Proving[i:]...)...)
		return
	}
}

// lookFor is what to look for on a casting of this metal of which nobody has
// said that it is sound.
func (m *maker) lookFor() []safety.Line { return m.safety.At(safety.LookFor, m.whole()) }

// unsaid cautions that nobody has said whether the casting is sound, and says
// what to look for.
func (m *maker) unsaid(add func(level finding.Level, text, fix say.Text)) {
	fix := say.Text("look it over, then write condition: sound, cracked or swollen")
	for _, l := range m.lookFor() {
		fix += say.F("; look for %s", l.Words)
	}
	add(finding.Caution, "the condition of the casting is not said", fix)
}

// FreshSafety lists what the block of operation i says of hazards: what no
// operation of the same set-up has said before it, and what is said each time.
// at is the number of the operation that said the rest, 0 where there is none.
func (p *Plan) FreshSafety(i int) (lines []safety.Line, at int) {
	op := p.Operations[i]
	said := map[string]int{}
	for k := i - 1; k >= 0 && p.Operations[k].Setup == op.Setup; k-- {
		for _, l := range p.Operations[k].Safety {
			said[l.Words] = p.Operations[k].Number
		}
	}
	for _, l := range op.Safety {
		n, ok := said[l.Words]
		if !ok || l.Each {
			lines = append(lines, l)
		} else if at == 0 || n > at {
			at = n
		}
	}
	return lines, at
}

// FormSafety is what the measuring form says of hazards: of the chassis of a
// job, or with none of a chassis of which nothing is said.
func FormSafety(j *job.Job) ([]safety.Line, error) {
	lib := table.BuiltIn()
	if j != nil && j.Shop != nil && j.Shop.Tables != nil {
		lib = j.Shop.Tables
	}
	book, err := safety.New(lib, kindNames())
	if err != nil {
		return nil, err
	}
	kind := safety.Unsaid
	if j != nil && j.Chassis.Material != "" {
		materials, err := material.New(lib)
		if err != nil {
			return nil, err
		}
		if mat, err := materials.Find(j.Chassis.Material); err == nil {
			kind = mat.Kind
		}
	}
	return book.At(safety.Form, safety.Work{Metals: []material.Kind{kind}}), nil
}
