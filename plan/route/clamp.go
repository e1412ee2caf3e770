package route

import (
	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/seat"
)

// clamping is one set-up and the bores cut in it.
type clamping struct {
	up    job.Side
	bores []Bore
	far   map[string]bool // reached through the near plate
	from  []string        // finished seats that locate it
}

// pairs splits bores that are cut by shaft, in job order.
func pairs(bores []Bore) [][]Bore {
	var out [][]Bore
	at := map[string]int{}
	for _, x := range bores {
		if !x.cuts() {
			continue
		}
		if _, seen := at[x.Shaft]; !seen {
			at[x.Shaft] = len(out)
			out = append(out, nil)
		}
		out[at[x.Shaft]] = append(out[at[x.Shaft]], x)
	}
	return out
}

// clampings sorts the bores into set-ups: both seats of a shaft in one, larger
// seat uppermost, where the tools reach; else the chassis is turned over and
// located in the seat that is already right. On a lathe each shaft is brought
// to the spindle by itself.
func (b *builder) clampings() []clamping {
	var seats []Bore
	for _, x := range b.j.Bores {
		seats = append(seats, b.inPart(x))
	}
	return b.clampingsOf(seats)
}

func (b *builder) clampingsOf(bores []Bore) []clamping {
	if b.s.Machine == OnLathe {
		var out []clamping
		for _, mine := range pairs(bores) {
			out = append(out, b.sided([][]Bore{mine})...)
		}
		return out
	}
	return b.sided(pairs(bores))
}

func (b *builder) sided(pairs [][]Bore) []clamping {
	left, right := &clamping{up: job.Left, far: map[string]bool{}}, &clamping{up: job.Right, far: map[string]bool{}}
	bySide := map[job.Side]*clamping{job.Left: left, job.Right: right}
	split := map[string]string{} // bore -> the other one of its shaft
	prefer := uppermost(pairs)
	for _, mine := range pairs {
		if len(mine) == 2 {
			near, far := mine[0], mine[1]
			alike := sameSize(far.mid(), near.mid())
			if far.mid() > near.mid()+1e-9 || alike && near.Side != prefer && b.blocks(far, near) == nil {
				near, far = far, near
			}
			why := b.blocks(near, far)
			if why != nil && b.blocks(far, near) == nil {
				near, far, why = far, near, nil
			}
			if why == nil {
				c := bySide[near.Side]
				c.bores = append(c.bores, near, far)
				c.far[far.Name] = true
				continue
			}
			split[near.Name], split[far.Name] = far.Name, near.Name
			if !b.loose() {
				b.trouble(Trouble{Level: finding.Note, Rule: TurnedOver, Where: far.Name, Have: why.have,
					Want: why.want,
					Text: say.F("the chassis has to be turned over for this hole: %v", why.why),
					Fix:  "a tool that goes through the near hole to the far plate saves a set-up"})
			}
		}
		for _, x := range mine {
			bySide[x.Side].bores = append(bySide[x.Side].bores, x)
		}
	}
	order := []*clamping{left, right}
	if len(right.bores) > len(left.bores) {
		order = []*clamping{right, left}
	}
	done := map[string]bool{}
	var out []clamping
	for _, c := range order {
		if len(c.bores) == 0 {
			continue
		}
		for _, x := range c.bores {
			if mate := split[x.Name]; done[mate] {
				c.from = append(c.from, mate)
			}
		}
		for _, x := range c.bores {
			done[x.Name] = true
		}
		out = append(out, *c)
	}
	return out
}

// uppermost is the side that shafts with unlike seats want uppermost, where all of
// them want one: those with alike seats then need no clamping of their own.
func uppermost(pairs [][]Bore) job.Side {
	want := map[job.Side]bool{}
	for _, mine := range pairs {
		if len(mine) != 2 || sameSize(mine[0].mid(), mine[1].mid()) {
			continue
		}
		larger := mine[0]
		if mine[1].mid() > larger.mid() {
			larger = mine[1]
		}
		want[larger.Side] = true
	}
	if want[job.Right] && !want[job.Left] {
		return job.Right
	}
	return job.Left
}

// blocks says why the tools that make the far seat do not get to it
// through the near one, nil where they do.
func (b *builder) blocks(near, far Bore) *blocked {
	if b.loose() {
		return &blocked{why: "the jig guides a tool at the upper plate only"}
	}
	if b.j.Width <= 0 {
		return &blocked{why: "the width over the plates is not given"}
	}
	try := *b
	try.out, try.needs = Route{}, nil
	// What the shop owns does the hole from its own side: the chassis is turned
	// over rather than one more tool bought.
	try.owns = bought(b.opening(far, true), b.opening(near, false)) > bought(b.opening(far, false), nil)
	_, why := try.pair(near, far, clamping{up: near.Side, bores: []Bore{near, far}, far: map[string]bool{far.Name: true}})
	return why
}

// oneStroke says whether one reamer sizes both seats of a shaft at once.
func oneStroke(near, far Bore) bool {
	return near.Way == seat.Reamer && far.Way == seat.Reamer && near.WayName == far.WayName &&
		sameSize(near.WaySize, far.WaySize) && oneAxis(near, far)
}

// bought counts the steps whose tool is to be bought, less those that are
// bought for other steps anyway.
func bought(steps, anyway []step) int {
	have := map[string]bool{}
	for _, st := range anyway {
		have[st.tool.Name] = st.buy != ""
	}
	n := 0
	for _, st := range steps {
		if st.buy != "" && !have[st.tool.Name] {
			n++
		}
	}
	return n
}

// usual gives an end mill of which nobody says how far it reaches the flutes and
// the shank of the usual short kind: a small one has a shank thicker than itself.
func (b *builder) usual(t Tool) Tool {
	if t.Reach > 0 || b.r.Stub == nil {
		return t
	}
	if flute, shank, ok := b.r.Stub(t.Size); ok {
		t.Reach, t.Assumed = flute, true
		if t.Shank <= 0 {
			t.Shank = shank
		}
	}
	return t
}
