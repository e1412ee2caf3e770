package route

import (
	"fmt"
	"math"
	"strings"
)

// builder gathers the operations of one job.
type builder struct {
	j     Job
	s     Shop
	cut   Cutter
	r     Rules
	out   Route
	last  string // tool in the spindle
	setup string
}

// Make lays out the route. Bores that need nothing are left out of the job by
// the caller; a job without bores has an empty route.
func Make(j Job, s Shop, cut Cutter, r Rules) Route {
	b := &builder{j: j, s: s, cut: cut, r: r}
	if len(j.Bores) == 0 {
		return b.out
	}
	if b.forbidden() {
		return b.out
	}
	b.removeOld()
	for _, c := range b.clampings() {
		b.cutIn(c)
	}
	b.gaugeSeats()
	b.turnBushes()
	b.pressIn()
	b.finishBores()
	b.oilWays()
	b.wheels()
	b.number()
	b.layOut()
	b.proving()
	return b.out
}

// forbidden says what this machine must not be asked to do.
func (b *builder) forbidden() bool {
	loose := b.s.Machine == "drill press" || b.s.Machine == "hand"
	if !loose || b.s.Jig {
		return false
	}
	stop := false
	for _, x := range b.j.Bores {
		if !x.cuts() || x.Wear <= b.r.NoJigWear+1e-9 {
			continue
		}
		stop = true
		b.out.Troubles = append(b.out.Troubles, Trouble{Rule: "no jig", Where: x.Name, Stop: true, Have: x.Wear, Want: b.r.NoJigWear,
			Text: fmt.Sprintf("worn %.2f mm and no jig: drill and reamer would follow the egg", x.Wear),
			Fix:  "make a jig plate pinned in sound holes and say `jig: pinned`, or send it out; a plug alone does not cure it"})
	}
	return stop
}

func (x Bore) cuts() bool { return x.Way == "reamer" || x.Way == "boring head" || x.Way == "end mill" }

// mid is the middle of the seat's limits.
func (x Bore) mid() float64 { return (x.Seat[0] + x.Seat[1]) / 2 }

// locate is the least radius of a tool that leaves no part of the lobe for the
// next tool to follow.
func (x Bore) locate() float64 { return x.S + x.Allow/2 }

func (b *builder) add(o Operation) *Operation {
	if o.Setup == "" {
		o.Setup = b.setup
	}
	if o.ToolMM == 0 {
		o.ToolMM = math.NaN()
	}
	if o.Depth == 0 {
		o.Depth = math.NaN()
	}
	if o.Thrust == 0 {
		o.Thrust = math.NaN()
	}
	b.out.Operations = append(b.out.Operations, o)
	return &b.out.Operations[len(b.out.Operations)-1]
}

// number numbers the operations in tens.
func (b *builder) number() {
	for i := range b.out.Operations {
		b.out.Operations[i].Number = 10 * (i + 1)
	}
}

// spend adds up the time of one operation: the cutting, and a tool change
// where the tool is not yet in the spindle.
func (b *builder) spend(o *Operation, tool string) {
	if tool != b.last {
		o.Minutes += b.r.ToolChange
		b.last = tool
	}
	if o.Cut != nil {
		o.Minutes += o.Cut.Minutes
	}
}

// clamping is one set-up and the bores cut in it, near plate first.
type clamping struct {
	up    string
	bores []Bore
	far   map[string]bool // reached through the near plate
	rod   bool            // located on a rod in a finished seat
}

// clampings sorts the bores into set-ups: both seats of a shaft in one, larger
// seat uppermost, where the tools reach; else the chassis is turned over.
func (b *builder) clampings() []clamping {
	bySide := map[string]*clamping{
		"left":  {up: "left", far: map[string]bool{}},
		"right": {up: "right", far: map[string]bool{}},
	}
	for _, shaft := range b.shafts() {
		var mine []Bore
		for _, x := range b.j.Bores {
			if x.Shaft == shaft && x.cuts() {
				mine = append(mine, x)
			}
		}
		if len(mine) == 2 {
			near, far := mine[0], mine[1]
			if far.mid() > near.mid()+1e-9 {
				near, far = far, near
			}
			if b.reaches(near, far) {
				c := bySide[near.Side]
				c.bores = append(c.bores, near, far)
				c.far[far.Name] = true
				continue
			}
		}
		for _, x := range mine {
			c := bySide[x.Side]
			c.bores = append(c.bores, x)
			c.rod = c.rod || len(mine) == 2
		}
	}
	first, second := bySide["left"], bySide["right"]
	if len(second.bores) > len(first.bores) {
		first, second = second, first
	}
	var out []clamping
	for _, c := range []*clamping{first, second} {
		if len(c.bores) > 0 {
			out = append(out, *c)
		}
	}
	if len(out) > 0 {
		out[0].rod = false
	}
	return out
}

func (b *builder) shafts() []string {
	var out []string
	seen := map[string]bool{}
	for _, x := range b.j.Bores {
		if !seen[x.Shaft] {
			seen[x.Shaft] = true
			out = append(out, x.Shaft)
		}
	}
	return out
}

// reaches says whether the tools that make the far seat get to it through the
// near one.
func (b *builder) reaches(near, far Bore) bool {
	if b.s.Machine != "mill" && b.s.Machine != "lathe" || b.j.Width <= 0 {
		return false
	}
	w := b.j.Width
	passes := func(size, reach, shank float64) bool {
		if shank > 0 && shank > near.Seat[0]+1e-9 || size > near.Seat[1]+1e-9 {
			return false
		}
		if reach <= 0 {
			reach = b.r.ReachDiameters * size
		}
		return reach >= w-1e-9
	}
	switch far.Way {
	case "reamer":
		// A reamer is long for its size unless the shop says how long.
		if far.Reach > 0 && far.Reach < w || far.Shank > near.Seat[0]+1e-9 || far.WaySize > near.Seat[1]+1e-9 {
			return false
		}
	case "end mill":
		if !passes(far.WaySize, far.Reach, far.Shank) {
			return false
		}
	case "boring head":
		if b.r.ReachDiameters*far.mid() < w {
			return false
		}
	}
	if b.s.Machine == "lathe" {
		return true
	}
	steps := b.opening(far, true)
	for _, st := range steps {
		if !st.ok || !passes(st.tool.Size, st.tool.Reach, st.tool.Shank) {
			return false
		}
	}
	return len(steps) > 0 || far.Way == "boring head"
}

func plural(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

func joinNames(xs []Bore) string {
	var names []string
	for _, x := range xs {
		names = append(names, x.Name)
	}
	return strings.Join(names, ", ")
}
