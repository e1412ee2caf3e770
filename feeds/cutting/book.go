package cutting

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"rebush/fits/table"
)

// factorRow says which factor on another speed is used, and why.
type factorRow struct {
	operation, tool string
	factor          float64
	why             string
	ref             Ref
}

func (c *Cutting) readFactors(lib *table.Library) error {
	t, err := lib.Get("speeds_factor")
	if err != nil {
		return err
	}
	for _, r := range t.Rows {
		f := factorRow{operation: r.Get("operation"), tool: r.Get("tool"), why: r.Get("why"), ref: refOf(r)}
		if f.factor, err = positive(r, "factor"); err != nil {
			return err
		}
		c.factors = append(c.factors, f)
	}
	return nil
}

// booked is a speed as the tables give it, in m/min.
type booked struct {
	min, max, used float64
	basis          string
	sources        []Ref
	notes          []string
}

// stands lists the operations whose row stands in for one, itself first.
// An end mill runs at the boring speed; a boring row serves for finishing.
func stands(op string) []string {
	switch op {
	case endMill, plunge:
		return []string{endMill, bore}
	case boreFinish:
		return []string{boreFinish, bore}
	}
	return []string{op}
}

// book finds the speed of the tables for a material, tool and operation.
func (c *Cutting) book(m material, tool, op string) (booked, error) {
	if b, ok := c.direct(m, tool, op); ok {
		return b, nil
	}
	if b, ok := c.ruled(m, op); ok {
		return b, nil
	}
	if tool == cobalt {
		b, err := c.book(m, hss, op)
		if err == nil {
			b.notes = append(b.notes, "cobalt steel has no figure of its own here: it runs like high-speed steel and lasts longer")
		}
		return b, err
	}
	if tool == carbide && op == drill && m.kind == "metal" {
		return c.times(m, carbide, drill)
	}
	if tool == carbide {
		b, err := c.book(m, hss, op)
		if err == nil {
			b.notes = append(b.notes, "no carbide figure for this: the slower one of high-speed steel is used")
		}
		return b, err
	}
	if f := c.factor(hss, op); f != nil {
		return c.times(m, hss, op)
	}
	if op == endMill || op == plunge {
		b, err := c.book(m, hss, drill)
		if err == nil {
			b.notes = append(b.notes, "no milling or boring figure: the drilling speed stands in")
			return b, nil
		}
	}
	if _, ok := c.direct(m, carbide, op); ok {
		return booked{}, fmt.Errorf("%s: the only figures to %s it are for carbide; use a keen carbide tool", m.name, op)
	}
	return booked{}, fmt.Errorf("%s: no cutting speed is known to %s it; known are %s", m.name, op, c.knownFor(m))
}

// knownFor names the operations that a material has rows for.
func (c *Cutting) knownFor(m material) string {
	seen := map[string]bool{}
	for _, s := range c.speeds {
		if s.key == m.keys[0] {
			seen[s.operation] = true
		}
	}
	if len(seen) == 0 {
		return "none"
	}
	var out []string
	for o := range seen {
		out = append(out, o)
	}
	sort.Strings(out)
	return strings.Join(out, ", ")
}

// ruled is a speed that stands in the rules because no table has one.
func (c *Cutting) ruled(m material, op string) (booked, bool) {
	if m.wets != "zinc" {
		return booked{}, false
	}
	name := ""
	switch op {
	case endMill, plunge:
		name = "zinc_plunge_m_min"
	case bore, boreFinish:
		name = "zinc_bore_m_min"
	default:
		return booked{}, false
	}
	r := c.rules.Get(name)
	return booked{min: r.Low, max: r.Low, used: r.Low, basis: "rule", sources: []Ref{{r.Source, r.Address}},
		notes: []string{"no published figure was found for zinc: " + r.What + " by rule"}}, true
}

// direct looks for rows of the speed table: for the operation, then what
// stands in for it; each for the material, then for its family.
func (c *Cutting) direct(m material, tool, op string) (booked, bool) {
	for _, o := range stands(op) {
		for at, ok := m, true; ok; at, ok = c.parent(at) {
			var rows []speedRow
			for _, s := range c.speeds {
				if s.key == at.keys[0] && s.tool == tool && s.operation == o && !math.IsNaN(s.min) {
					rows = append(rows, s)
				}
			}
			if len(rows) == 0 {
				continue
			}
			b := pick(rows)
			if at.name != m.name {
				b.notes = append(b.notes, fmt.Sprintf("%s has no figure of its own for this: that of %s stands in", m.name, at.name))
			}
			if o == bore && op != bore && op != boreFinish {
				b.notes = append(b.notes, "no milling figure: an end mill runs at the boring speed")
			}
			return b, true
		}
	}
	return booked{}, false
}

// pick takes the best kind of source among the rows, spans it, and uses the
// lowest figure of it. Rows that are marked very conservative count like the
// others: the lowest published figure is the rule for work fed by hand
// (METHODS.md 1).
func pick(rows []speedRow) booked {
	best := remembered
	for _, s := range rows {
		best = min(best, s.rank)
	}
	b := booked{min: math.Inf(1), basis: best.String()}
	var low speedRow
	for _, s := range rows {
		if s.rank != best {
			continue
		}
		if s.min < b.min {
			b.min, low = s.min, s
		}
		b.max = math.Max(b.max, s.max)
		b.sources = append(b.sources, refOf(s.row))
	}
	b.used = b.min
	if best != published {
		b.notes = append(b.notes, fmt.Sprintf("no published figure: this one is %s", best))
	}
	if strings.Contains(low.note, "conservative") {
		next := math.Inf(1)
		for _, s := range rows {
			if s.rank == best && s.min > low.min {
				next = math.Min(next, s.min)
			}
		}
		if !math.IsInf(next, 1) {
			b.notes = append(b.notes, fmt.Sprintf("the lowest published figure is a very conservative one; the next lowest is %g m/min", next))
		}
	}
	for _, s := range rows {
		if s.rank > best && (s.min < b.min || s.max > b.max) {
			b.notes = append(b.notes, fmt.Sprintf("a figure %s of %g to %g m/min is left out", s.rank, s.min, s.max))
		}
	}
	return b
}

// factor returns the factor row in use, nil where there is none.
func (c *Cutting) factor(tool, op string) *factorRow {
	for i := range c.factors {
		if c.factors[i].operation == op && c.factors[i].tool == tool {
			return &c.factors[i]
		}
	}
	return nil
}

// times works a speed out from the drilling speed of high-speed steel: the
// factor in use on the figure in use, the span over all factors of the best
// kind of source.
func (c *Cutting) times(m material, tool, op string) (booked, error) {
	base, err := c.book(m, hss, drill)
	if err != nil {
		return booked{}, err
	}
	f := c.factor(tool, op)
	if f == nil {
		return booked{}, fmt.Errorf("%s: no factor on the drilling speed is known to %s with %s", m.name, op, tool)
	}
	best, low, high := remembered, f.factor, f.factor
	for pass := 0; pass < 2; pass++ {
		for _, s := range c.speeds {
			if s.operation != op || s.tool != tool && s.tool != "any" || math.IsNaN(s.factorMin) {
				continue
			}
			if pass == 0 {
				best = min(best, s.rank)
			} else if s.rank == best {
				low, high = math.Min(low, s.factorMin), math.Max(high, s.factorMax)
				base.sources = append(base.sources, refOf(s.row))
			}
		}
	}
	base.sources = append(base.sources, f.ref)
	base.notes = append(base.notes, fmt.Sprintf("%g of the drilling speed: %s", f.factor, f.why))
	if m.kind != "metal" {
		base.notes = append(base.notes, "the factor is published for metals")
	}
	base.min, base.max, base.used = base.min*low, base.max*high, base.used*f.factor
	if base.basis == published.String() {
		base.basis = derived.String()
	}
	if best == remembered {
		base.basis = remembered.String()
	}
	return base, nil
}
