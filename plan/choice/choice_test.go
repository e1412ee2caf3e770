package choice

import (
	"math"
	"testing"
)

var rules = Rules{Rate: 40, SetupHours: 0.5, Priced: true, ToolMinutes: 3, SpoiltMinutes: 20, Tie: 0.02, MetalTie: 0.05}

// By hand, two holes with one reamer between them, the second in a plug that
// sets before it is bored:
//
//	minutes 10 + 34, one reamer, one counterbore: 2 x 3; spoilt (0.05 + 0.10) x 20 = 3:   53 min
//	53/60 h + one clamping of 0.5 h = 1.38333 h x 40                                   =   55.3333
//	bushes 0.85 + 1.20, spoilt 0.05 x 0.85 + 0.10 x 1.20 = 0.1625                      =    2.2125
//
// in all 57.5458, and without a rate 1.38333 h.
func TestCostByHand(t *testing.T) {
	offers := []Offer{
		{Chance: 0.95, Minutes: 10, Parts: 0.85, Spoilt: 0.85, Tools: []string{"5 mm H7 reamer"}},
		{Chance: 0.90, Minutes: 34, Parts: 1.20, Spoilt: 1.20, Setups: 1, Tools: []string{"counterbore", "5 mm H7 reamer"}, Turned: 1},
	}
	if got := Cost(offers, rules); math.Abs(got-57.545833) > 1e-6 {
		t.Errorf("%v, want 57.5458", got)
	}
	hours := rules
	hours.Rate, hours.Priced = 1, false
	if got := Cost(offers, hours); math.Abs(got-83.0/60) > 1e-9 {
		t.Errorf("%v, want 1.3833", got)
	}
	// Two plugs set at the same time: one clamping more, not two.
	offers[0].Setups = 1
	if got := Cost(offers, rules); math.Abs(got-57.545833) > 1e-6 {
		t.Errorf("two plugs: %v", got)
	}
	if got := Cost(nil, rules); got != 0 {
		t.Errorf("nothing costs %v", got)
	}
}

// alike are two holes of one axle that are offered the same.
func alike(offers ...Offer) []Hole {
	return []Hole{{"front.left", "front", offers}, {"front.right", "front", offers}}
}

// of is an offer that re-bushes a hole.
func of(key string, minutes, chance float64) Offer {
	return Offer{Mend: 2, Key: key, Minutes: minutes, Chance: chance, LeftMM: math.Inf(1)}
}

// keys are what was picked, "" where nothing was.
func keys(holes []Hole, stock map[string]int, has int, r Rules) string {
	pick, ok := Pick(holes, stock, has, r)
	if !ok {
		return ""
	}
	out := ""
	for i, k := range pick {
		out += holes[i].Offers[k].Key
	}
	return out
}

// What decides, one thing at a time: each case has two offers at two holes, a
// and b, that differ in that alone.
func TestWhatDecides(t *testing.T) {
	with := func(o Offer, change func(*Offer)) Offer {
		change(&o)
		return o
	}
	tools := func(list ...string) func(*Offer) { return func(o *Offer) { o.Tools = list } }
	turned, glued := func(o *Offer) { o.Turned = 1 }, func(o *Offer) { o.Glued = 1 }
	left := func(mm float64) func(*Offer) { return func(o *Offer) { o.LeftMM = mm } }
	for name, row := range map[string]struct {
		a, b Offer
		want string
	}{
		"the cheaper":                         {of("a", 20, 0.95), of("b", 10, 0.95), "bb"},
		"spoilt minutes count":                {of("a", 10, 0.80), of("b", 12, 0.95), "bb"},
		"drawer before turned, though dearer": {with(of("a", 10, 0.95), turned), of("b", 30, 0.95), "bb"},
		"not if it comes right less often":    {with(of("a", 10, 0.95), turned), of("b", 30, 0.90), "aa"},
		"one alone may be that little worse":  {with(of("a", 10, 0.95), turned), of("b", 30, 0.935), "ab"},
		"pressed before glued":                {with(of("a", 10, 0.95), glued), of("b", 30, 0.95), "bb"},
		"turned weighs more than glued":       {with(of("a", 10, 0.95), glued), with(of("b", 5, 0.95), turned), "aa"},
		"fewer tools":                         {with(of("a", 10, 0.95), tools("x", "y")), with(of("b", 30, 0.95), tools("x")), "bb"},
		"glued weighs more than tools":        {with(of("a", 10, 0.95), tools("x", "y")), with(of("b", 5, 0.95), glued), "aa"},
		"more metal left":                     {with(of("a", 10, 0.95), left(1.20)), with(of("b", 30, 0.95), left(1.26)), "bb"},
		"metal alike within a step":           {with(of("a", 10, 0.95), left(1.21)), with(of("b", 30, 0.95), left(1.25)), "aa"},
		"no edge near is as good as the most": {with(of("a", 10, 0.95), left(1.20)), of("b", 30, 0.95), "aa"},
		"poor only where nothing else goes":   {with(of("a", 1, 0.99), func(o *Offer) { o.Poor = true }), of("b", 90, 0.50), "bb"},
		"by key where all is alike":           {of("b", 10, 0.95), of("a", 10, 0.95), "aa"},
	} {
		if got := keys(alike(row.a, row.b), nil, 2, rules); got != row.want {
			t.Errorf("%s: %s, want %s", name, got, row.want)
		}
	}
	poor := with(of("a", 1, 0.99), func(o *Offer) { o.Poor = true })
	if got := keys(alike(poor), nil, 2, rules); got != "aa" {
		t.Errorf("nothing but poor seats: %q", got)
	}
}

// A tool that serves both holes is changed once: by hand each hole alone is
// cheapest with a tool of its own, 9 + 3 min beside 10 + 3; together two tools
// cost 18 + 6, one 20 + 3.
func TestSharedTool(t *testing.T) {
	offer := func(key, tool string, minutes float64) Offer {
		o := of(key, minutes, 0.95)
		o.Tools = []string{tool}
		return o
	}
	holes := []Hole{
		{"front.left", "front", []Offer{offer("a", "5 mm", 9), offer("c", "6 mm", 10)}},
		{"front.right", "front", []Offer{offer("b", "5.5 mm", 9), offer("d", "6 mm", 10)}},
	}
	if got := keys(holes, nil, 2, rules); got != "cd" {
		t.Errorf("%s", got)
	}
	for i := range holes {
		holes[i].Axle = holes[i].Name // the same over two axles
	}
	if got := keys(holes, nil, 2, rules); got != "cd" {
		t.Errorf("over two axles: %s", got)
	}
	if got := keys(holes[:1], nil, 2, rules); got != "a" {
		t.Errorf("alone: %s", got)
	}
}

// What the drawer holds is used no more often than it is there, over the whole
// truck; what was not counted is no matter.
func TestStockBinds(t *testing.T) {
	a, b := of("a", 5, 0.95), of("b", 50, 0.95)
	a.Bush, b.Bush = "drawer 1", "drawer 2"
	holes := append(alike(a, b), Hole{"rear.left", "rear", []Offer{a, b}})
	for name, row := range map[string]struct {
		stock map[string]int
		want  string
	}{
		"not counted": {nil, "aaa"}, "enough": {map[string]int{"drawer 1": 3}, "aaa"},
		"two": {map[string]int{"drawer 1": 2}, "aab"}, "one": {map[string]int{"drawer 1": 1}, "abb"},
		"none": {map[string]int{"drawer 1": 0}, "bbb"}, "none of either": {map[string]int{"drawer 1": 0, "drawer 2": 2}, ""},
		"just enough of both": {map[string]int{"drawer 1": 1, "drawer 2": 2}, "abb"},
	} {
		if got := keys(holes, row.stock, 2, rules); got != row.want {
			t.Errorf("%s: %q, want %q", name, got, row.want)
		}
	}
}

// One bush for two holes that are alike goes to the first by name, whatever the
// order of the job.
func TestTheOnlyBush(t *testing.T) {
	a, b := of("a", 5, 0.95), of("b", 50, 0.95)
	a.Bush = "drawer 1"
	holes := alike(a, b)
	if got := keys(holes, map[string]int{"drawer 1": 1}, 2, rules); got != "ab" {
		t.Errorf("%s", got)
	}
	holes[0], holes[1] = holes[1], holes[0]
	if got := keys(holes, map[string]int{"drawer 1": 1}, 2, rules); got != "ba" {
		t.Errorf("the right one first: %s", got)
	}
}

// A way has its mend in one hole at least and none graver anywhere: the cheapest
// place for it, and the lesser mend elsewhere.
func TestHasItsMend(t *testing.T) {
	lesser, graver, gravest := of("l", 10, 0.95), of("g", 40, 0.95), of("x", 1, 0.99)
	lesser.Mend, graver.Mend, gravest.Mend = 1, 3, 4
	cheap := graver
	cheap.Key, cheap.Minutes = "c", 30
	holes := append(alike(lesser, graver, gravest), Hole{"rear.left", "rear", []Offer{lesser, cheap, gravest}})
	for has, want := range map[int]string{0: "", 1: "lll", 2: "", 3: "llc", 4: "xxx"} {
		if got := keys(holes, nil, has, rules); got != want {
			t.Errorf("mend %d: %q, want %q", has, got, want)
		}
	}
	if got := keys(append(holes, Hole{Name: "rear.right", Axle: "rear"}), nil, 3, rules); got != "" {
		t.Errorf("a hole that nothing is offered for: %q", got)
	}
}

// What would be preferred is not lost among many that are cheaper: 30 turned
// bushes at each of four holes, and one of the drawer that costs more than any.
func TestPreferredIsNotLost(t *testing.T) {
	var offers []Offer
	for i := range 30 {
		o := of(string(rune('A'+i)), 10+float64(i)/10, 0.95)
		o.Turned = 1
		offers = append(offers, o)
	}
	offers = append(offers, of("drawer ", 30, 0.95))
	holes := append(alike(offers...), Hole{"rear.left", "rear", offers}, Hole{"rear.right", "rear", offers})
	if got := keys(holes, nil, 2, rules); got != "drawer drawer drawer drawer " {
		t.Errorf("%s", got)
	}
}
