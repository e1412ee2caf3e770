// Package cutting answers what a spindle should do in one hole: the cutting
// speed of a material, tool and operation with its span over the sources, the
// turns per minute and the step of the spindle to set, the feed, the thrust
// and the torque, how deep to feed and how long it takes, what to put on the
// cut, how to hold the work, and how much metal to leave for a reamer.
//
// Where sources disagree the lowest published figure is used, because the
// work is fed by hand, and the span over the published ones is given beside
// it. A figure that was only derived, or only remembered, is used where there
// is no published one, and the answer says so. Where a material has no figure
// for an operation the answer is built from the next best in this order, and
// says that too: the figure of the material that stands in for it, a published
// factor on its drilling speed, the slower figure of high-speed steel for a
// carbide tool. What is left is an error, not a guess.
//
// Everything comes from the tables speeds*, feed*, reaming, kd*, coolant and
// holding, and from the rules; nothing here knows a handbook number. Materials
// go by their names in the table speeds_material, which also lists the spoken
// names that are understood.
//
// Decisions worth knowing. A school sheet that is marked very conservative
// counts among the published figures, so mild steel is drilled at 6 m/min of 6
// to 33.5; the answer names the next lowest. A drill fed lightly keeps the
// book speed; the small-drill correction slows it only at the full feed of the
// book (Query.FullFeed). A reamer without a row runs at half the drilling
// speed. Zinc has no published boring or plunging figure: the rules have one.
// Thrust and torque are those of a drill in normal use, by the largest of the formulas
// that know the material.
//
// It leaves out: the sizes of drills and reamers (feeds/drills, fits/limits),
// forces of anything but a drill in solid metal, and circular milling.
package cutting

import (
	"fmt"
	"math"

	"rebush/fits/say"
	"rebush/fits/table"
)

// Cutting answers from one set of tables and rules. It does not change after
// New and is safe for use from many goroutines.
type Cutting struct {
	rules     *table.Rules
	speeds    []speedRow
	factors   []factorRow
	materials []material
	small     []smallRow
	deep      []deepRow
	feeds     []feedRow
	others    []otherFeed
	depth     map[string]depthRow
	reaming   []reamRow
	kd        map[string]kdRow
	kienzle   map[string]kienzleRow
	maker     map[string]makerRow
	points    map[string]pointRow
	wear      map[string]wearRow
	coolant   map[string]Ref
	holding   map[string]Ref
	mills     []millRow
}

// New reads the tables. Errors name the table, the line and the cell; they
// can only come from a shop's own table.
func New(lib *table.Library, rules *table.Rules) (*Cutting, error) {
	if err := checkRules(rules); err != nil {
		return nil, err
	}
	if lib == nil {
		return nil, fmt.Errorf("no tables were given to work with")
	}
	c := &Cutting{rules: rules}
	for _, read := range []func(*table.Library) error{
		c.readSpeeds, c.readFactors, c.readMaterials, c.readSmall, c.readDeep,
		c.readFeeds, c.readOthers, c.readDepth, c.readReaming, c.readForces, c.readWords, c.readMills,
	} {
		if err := read(lib); err != nil {
			return nil, err
		}
	}
	return c, nil
}

// Ref says where a figure or a sentence came from.
type Ref struct {
	Text    string // the source, or the sentence where the Ref is one
	Address string // table row "speeds:12", or the line of the shop file
}

// Head is what carries the tool or the work when it is out of balance.
type Head string

// The heads that have a cap of their own.
const (
	NoHead     Head = ""
	BoringHead Head = "boring head"
	Faceplate  Head = "faceplate"
)

// Query is one question. DiaMM is the diameter being cut: of the drill, the
// reamer, the bored hole, the outside of an end mill, and of a countersink the
// largest diameter touched.
type Query struct {
	Material  string
	Tool      string  // hss (also ""), cobalt, carbide
	Operation string  // drill, ream, bore, bore finish, end mill, plunge, countersink, counterbore, spot
	DiaMM     float64 // above 0
	FromMM    float64 // of a drill: the hole that it opens, 0 for solid metal
	DepthMM   float64 // 0: not known, taken as shallow
	Hand      bool    // fed by hand
	FullFeed  bool    // fed by power at the full feed of the book
	ThinWall  bool    // the metal left is thinner than the hole's radius
	Head      Head
	FeedMMRev float64 // 0: the feed of the table; else the feed for which forces are wanted
	Point     string  // of a drill: standard (also ""), split
	Wear      string  // of a drill: normal (also ""), sharp, dull
}

// Answer is what was found. Speeds are in m/min, feeds in mm a turn.
type Answer struct {
	Material, Tool, Operation string // as resolved

	VMin, VMax float64 // span over the best kind of source
	VBook      float64 // chosen out of it, before depth, small drill and caps
	VUsed      float64 // what the spindle is set for
	Basis      string  // published, derived, from memory, rule
	RPM        float64 // ideal turns a minute at VUsed
	CappedBy   string  // "boring head 800 rpm", "" where nothing capped it
	CappedRule string  // name of that rule

	FeedMMRev, FeedLow, FeedHigh float64
	FeedMMMin                    float64 // at RPM

	ForcesKnown       bool // the three below are worked out
	ThrustN           float64
	TorqueNmm, PowerW float64 // power at RPM

	SmallFullFeed, SmallLightFeed float64 // small-drill factors, 0 unless drilling
	Lubricant                     string
	Words                         say.Text // the feed in words
	Holding                       []string // how to hold and back up the work
	Sources                       []Ref
	Notes                         []string
}

// note adds a remark once.
func (a *Answer) note(format string, args ...any) {
	s := fmt.Sprintf(format, args...)
	for _, n := range a.Notes {
		if n == s {
			return
		}
	}
	a.Notes = append(a.Notes, s)
}

// cite adds a source once.
func (a *Answer) cite(r Ref) {
	for _, s := range a.Sources {
		if s == r {
			return
		}
	}
	a.Sources = append(a.Sources, r)
}

// Speed answers a query. Errors: a diameter or depth that is no length, an
// unknown material, tool or operation (with the nearest known), an operation
// that must not be done on the material, and one for which no figure is known.
func (c *Cutting) Speed(q Query) (Answer, error) {
	if !(q.DiaMM > 0) || math.IsInf(q.DiaMM, 0) {
		return Answer{}, fmt.Errorf("a diameter of %v mm cannot be cut; give one above 0", q.DiaMM)
	}
	if q.DiaMM < smallestMM || q.DiaMM > largestMM {
		return Answer{}, fmt.Errorf("a diameter of %g mm is outside the tables, which hold from %g to %g mm", q.DiaMM, smallestMM, largestMM)
	}
	if !(q.DepthMM >= 0) || math.IsInf(q.DepthMM, 0) {
		return Answer{}, fmt.Errorf("a depth of %v mm is not one; give 0 or more", q.DepthMM)
	}
	if !(q.FeedMMRev >= 0) || q.FeedMMRev > q.DiaMM {
		return Answer{}, fmt.Errorf("a feed of %v mm a turn cannot be cut with %g mm; leave it out for the table's", q.FeedMMRev, q.DiaMM)
	}
	m, err := c.material(q.Material)
	if err != nil {
		return Answer{}, err
	}
	t, err := toolOf(q.Tool)
	if err != nil {
		return Answer{}, err
	}
	op, err := operationOf(q.Operation)
	if err != nil {
		return Answer{}, err
	}
	a := Answer{Material: m.name, Tool: t, Operation: op}
	if m.only != "" && op != m.only && op != m.only+" finish" {
		return Answer{}, fmt.Errorf("%s: %s", m.name, m.say)
	}
	if m.say != "" {
		a.note("%s", m.say)
	}
	b, err := c.book(m, t, op)
	if err != nil {
		return Answer{}, err
	}
	a.VMin, a.VMax, a.VBook, a.VUsed, a.Basis = b.min, b.max, b.used, b.used, b.basis
	a.Notes = append(a.Notes, b.notes...)
	for _, s := range b.sources {
		a.cite(s)
	}
	if err := c.feed(q, m, op, &a); err != nil {
		return Answer{}, err
	}
	c.deepHole(q, op, &a)
	c.smallDrill(q, op, &a)
	if err := c.cap(q, m, op, &a); err != nil {
		return Answer{}, err
	}
	a.FeedMMMin = a.FeedMMRev * a.RPM
	if err := c.forces(q, m, op, &a); err != nil {
		return Answer{}, err
	}
	c.words(q, m, op, &a)
	return a, nil
}
