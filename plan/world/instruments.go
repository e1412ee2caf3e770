package world

import (
	"math"
	"slices"
)

// instrument is one that a shop may list, with its standard uncertainty in mm,
// what it reads, and the steps that it shows in mm and inch.
type instrument struct {
	name             string
	reads            []string // centre, probe, width, outside
	u, bias          float64
	stepMM, stepInch float64
}

// catalogue is what shops have, with the band of its uncertainty: common
// practice, no source.
var catalogue = []struct {
	instrument
	low, high float64
	poor      float64 // how often a poor shop has it
	well      float64 // how often a rich one
}{
	{instrument{"calliper outside", []string{"centre", "width", "outside"}, 0, 0, 0.01, 0.0005}, 0.010, 0.020, 0.9, 0.8},
	{instrument{"calliper inside", []string{"width"}, 0, 0, 0.01, 0.0005}, 0.020, 0.030, 0.7, 0.5},
	{instrument{"indicator", []string{"centre", "probe"}, 0, 0, 0.005, 0.0002}, 0.006, 0.012, 0.1, 0.8},
	{instrument{"edge finder", []string{"centre", "probe"}, 0, 0, 0.005, 0.0002}, 0.004, 0.010, 0.05, 0.6},
	{instrument{"read-out", []string{"centre", "probe"}, 0, 0, 0.005, 0.0002}, 0.005, 0.012, 0, 0.3},
	{instrument{"micrometer", []string{"outside", "width"}, 0, 0, 0.001, 0.0001}, 0.002, 0.004, 0.3, 0.8},
	{instrument{"bore gauge", []string{"width"}, 0, 0, 0.005, 0.0002}, 0.004, 0.010, 0, 0.5},
}

// builtIn are the instruments of a job that names no shop.
var builtIn = []instrument{
	{"digital calliper outside", []string{"centre", "width", "outside"}, 0.012, 0, 0.01, 0.0005},
	{"digital calliper inside", []string{"width"}, 0.023, 0, 0.01, 0.0005},
}

// usualDoubt is how well a figure is known where no instrument of the shop reads
// it: what the built-in table of instruments says.
var usualDoubt = map[string]float64{"centre": 0.020, "width": 0.023, "probe": 0.010, "outside": 0.017}

// zz is the standard uncertainty of a pin of the usual class: 0.0051 mm in all,
// even over it (ASME B89.1.5).
var zz = 0.00508 / math.Sqrt(12)

// classes are the tolerances of pin sets, mm (ASME B89.1.5).
var classes = map[string]float64{"X": 0.00102, "Z": 0.00254, "ZZ": 0.00508}

// gauges are the instruments and pins of the shop.
func (m *maker) gauges(rich float64) {
	s := m.stream("gauges")
	listed := anyOrder()
	for _, c := range catalogue {
		if !s.yes(c.poor + (c.well-c.poor)*rich) {
			continue
		}
		in := c.instrument
		entry := record().set("name", text(in.name))
		stated := size(m.rounded(s.between(c.low, c.high), 0.0005, 0.00002))
		in.u = stated.length.mm()
		entry.set("u", stated)
		if in.name == "calliper inside" && s.yes(0.35) {
			bias := size(m.rounded(-s.between(0.008, 0.03), 0.001, 0.0001))
			in.bias = bias.length.mm()
			entry.set("bias", bias)
			m.note("instrument with a bias")
		}
		m.bench.instruments = append(m.bench.instruments, in)
		listed.items = append(listed.items, entry)
	}
	if len(listed.items) > 0 {
		m.shop.set("instruments", listed)
	} else {
		m.note("no instrument named")
	}
	if !s.yes(0.3 + 0.6*rich) {
		return
	}
	class := one(s, "X", "Z", "ZZ", "ZZ", "ZZ")
	from, to, step := size(m.rounded(1, 0.1, 0.001)), size(m.rounded(8, 0.1, 0.001)), size(m.rounded(0.01, 0.01, 0.0005))
	if s.yes(0.15) {
		step = size(m.rounded(0.02, 0.01, 0.0005))
	}
	m.shop.set("pins", record().set("from", from).set("to", to).set("step", step).set("class", text(class)))
	m.bench.pins = &pins{from.length.mm(), to.length.mm(), step.length.mm(), classes[class] / math.Sqrt(12)}
	m.note("pins")
}

// take chooses what a figure is read with. named says that the job tells which;
// otherwise the worst of the shop that reads such a figure was taken, as the
// reader has to suppose.
func (b bench) take(s stream, reads string) (in instrument, named bool) {
	var can []instrument
	for _, in := range b.instruments {
		if slices.Contains(in.reads, reads) {
			can = append(can, in)
		}
	}
	if len(can) == 0 {
		return instrument{u: usualDoubt[reads], stepMM: 0.01, stepInch: 0.0005}, false
	}
	in = one(s, can...)
	worst := slices.MaxFunc(can, func(a, b instrument) int {
		if a.u < b.u {
			return -1
		}
		return 1
	})
	return in, in.name != worst.name || in.bias != 0 || s.yes(0.5)
}

// read is a figure as an instrument gives it.
func (m *maker) read(s stream, in instrument, mm float64) ticks {
	return m.rounded(mm+in.bias+s.normal(in.u), in.stepMM, in.stepInch)
}
