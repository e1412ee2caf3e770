package plan_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rebush/plan"
)

// change is one thing that may be different about a job or its shop.
type change struct{ in, old, new string }

// changes are of many kinds and may come together; one whose place an earlier
// one has taken is passed over.
var changes = []change{
	{"job", "zinc die casting", "brass sheet, half hard"}, {"job", "zinc die casting", "brass sheet"}, {"job", "zinc die casting", "mild steel"}, {"job", "zinc die casting", "magnesium"}, {"job", "zinc die casting", "aluminium"},
	{"job", "condition: sound", "condition: unknown"}, {"job", "condition: sound", "condition: swollen"},
	{"job", "rails: below", "rails: above"}, {"job", "{thickness: 3.0}", "{thickness: 1.5}"}, {"job", "{thickness: 3.0}", "{thickness: 5}"},
	{"job", "outline: {length: 60, height: 20}", "outline: {corners: [[0, 0], [60, 0], [60, 12], [40, 20], [0, 20]]}"},
	{"job", "current: none", "current: axles"}, {"job", "current: none", "current: none\n  temperature: [-10, 70]"}, {"job", "current: none", "current: none\n  temperature: [5, 120]"},
	{"job", "current: none", "current: none\n  original: keep"}, {"job", "current: none", "current: none\n  drilled_together: yes"},
	{"job", "rpm: 400", "rpm: 20000"}, {"job", "rpm: 400\n    load: 2.5 N", "rpm: 400\n    load: 80 N"}, {"job", "    load: 2.5 N\n", ""}, {"job", "    rpm: 400\n", ""},
	{"job", "rpm: 400", "rpm: 400\n    hub_to_hub: 16.5"}, {"job", "rpm: 400", "rpm: 400\n    hub_to_hub: 18\n    washers: [0.5]"},
	{"job", "rpm: 400", "rpm: 400\n    load_towards: 200"}, {"job", "rpm: 400", "rpm: 400\n    insulated: left"}, {"job", "rpm: 400", "rpm: 400\n    journal_state: bent"},
	{"job", "rpm: 400", "rpm: 400\n    rods: yes"}, {"job", "rpm: 400", "rpm: 400\n    must_pass: {right: 3.24}"}, {"job", "rpm: 400", "rpm: 400\n    unworn: 3.18"},
	{"job", "worn_to: 90}", "worn_to: [60, 120]}"}, {"job", "worn_to: 90}", "worn_to: 90, edges: [{at: 270, metal: 1.0}]}"}, {"job", "worn_to: 90}", "worn_to: 90, boss: 7}"},
	{"job", "worn_to: 90}", "worn_to: 90, room: {inside: 6, outside: 6}}"}, {"job", "worn_to: 90}", "worn_to: 90, oil: {at: 90, diameter: 1.2}}"}, {"job", "worn_to: 90}", "worn_to: 90, bushed: yes}"},
	{"job", "worn_to: 90}", "worn_to: 90, repaired: yes}"}, {"job", "worn_to: 90}", "worn_to: 90, hold: cap}"}, {"job", ", worn_to: 90}", "}"},
	{"job", "widest: 3.30", "widest: 3.90"}, {"job", "widest: 3.30", "widest: 3.22"}, {"job", "narrowest: 3.20, worn_to", "pins: {goes: 3.19, stops: 3.20}, worn_to"},
	{"job", "    do: leave\n", ""}, {"job", "[48.00, 8.00]", "[22.10, 8.00]"}, {"job", "[48.00, 8.00]", "[15.00, 8.00]"},
	{"job", "gears: []\n", "gears:\n" + wormGear(16.14, "")}, {"job", "gears: []\n", "gears:\n" + wormGear(15.98, ", moved: yes")}, {"job", "gears: []\n", "gears:\n" + wormGear(16.14, ", bearing_play: 0.05, slope: 4, end_float: 0.1, offset: 0.2")},
	{"job", "gears: []\n", "gears:\n" + spurGear("on: other")}, {"job", "gears: []\n", "gears:\n" + strings.Replace(spurGear("at: [10.00, 20.20]"), ", tip: 7.0", "", 1)},
	{"job", "wheel_form: throated", "wheel_form: straight"}, {"job", "wheel_form: throated, ", ""}, {"job", "backlash: [0.05, 0.12]", "backlash: [0, 0.03]"},
	{"job", "od_class: s7", "od_class: h6"}, {"job", "od: 5.0, od_class: s7", "od: [5.002, 5.009]"}, {"job", "bearing bronze C93200, price: 1.00", "sintered bronze, price: 1.00"}, {"job", "length: 3.0,", "length: 3.8, flange: {od: 7, thickness: 0.8},"},
	{"job", ", on_hand: 9}", ", on_hand: 0}"}, {"job", "  - {code: own turning, make: turned, material: bearing bronze C93200, price: 1.20}\n", ""}, {"job", "material: bearing bronze C93200, price: 1.20", "material: acetal"},
	{"job", "symptoms:", "choose: solid 5\nsymptoms:"}, {"job", "symptoms:", "swap: {price: 65, hours: 0.5, second_hand: yes}\nsymptoms:"}, {"job", "symptoms:", "value: 90\ncomplaint: {binds: yes, noisy: no, rubs: yes}\nsymptoms:"},
	{"job", "symptoms:", "made:\n  drive.left: {seat: 5.03, bore: 3.24, centre: [10.04, 8.02], with: pins}\nsymptoms:"}, {"job", "hubs: tight", "hubs: loose"},
	{"shop", "kind: mill\n  readout: yes", "kind: mill"}, {"shop", "kind: mill\n  readout: yes", "kind: lathe"}, {"shop", "kind: mill\n  readout: yes", "kind: drill press"}, {"shop", "kind: mill\n  readout: yes", "kind: hand"},
	{"shop", "lathe: yes", "lathe: no"}, {"shop", "lathe: yes", "lathe: yes\njig: pinned"}, {"shop", "lathe: yes", "lathe: yes\ncompounds: [gap-filling]"}, {"shop", "  location: {setup: 0.010, hole: 0.010}\n", ""},
	{"shop", "spindle: [320, 450, 620, 900, 1250, 1750]", "spindle: {min: 100, max: 2800}"}, {"shop", "  spindle: [320, 450, 620, 900, 1250, 1750]\n", ""}, {"shop", "  press: 600 N\n", "  press: 40 N\n"}, {"shop", "  press: 600 N\n", ""},
	{"shop", "reamers: [{size: 5, class: H7}]", "reamers: [4, 4.5, 5, 5.5, 6, 3.2]"}, {"shop", "reamers: [{size: 5, class: H7}]\n", ""}, {"shop", "end_mills: [3, 4, 4.5]\n", ""}, {"shop", "boring_head: {from: 5, to: 20}\n", ""},
	{"shop", "mandrels: [3.19, 3.20]\n", ""}, {"shop", "pins: {from: 1, to: 6, step: 0.01, class: ZZ}\n", ""}, {"shop", "instruments: [{name: bore gauge, u: 0.004}, {name: read-out, u: 0.010}]\n", ""}, {"shop", "{name: bore gauge, u: 0.004}", "{name: calliper inside, u: 0.03, bias: -0.02}"},
	{"shop", "rates: {currency: GBP, per_hour: 40}\n", ""}, {"shop", "hours: {setup: 0.5, strip_and_rebuild: 1.0}\n", ""}, {"shop", "drills: {tool: HSS, series: [metric 0.1], sizes: [{size: 4.85, for: 5}]}\n", ""}, {"shop", "drills: {tool: HSS, series: [metric 0.1]", "drills: {tool: carbide, series: [letter]"},
	{"shop", "lathe: yes", "lathe: yes\nsend_out: {location: 0.005, price: 30}"},
}

// mixed applies changes to the plain job.
func mixed(s situation, which []int) situation {
	for _, i := range which {
		c := changes[i]
		if c.in == "shop" {
			s.shop = strings.Replace(s.shop, c.old, c.new, 1)
		} else {
			s.job = strings.ReplaceAll(s.job, c.old, c.new)
		}
	}
	return s
}

// TestMixedJobs throws changes together: what the reader lets pass is planned
// wholesomely, trials and all.
func TestMixedJobs(t *testing.T) {
	planned := 0
	rapid.Check(t, func(r *rapid.T) {
		which := rapid.SliceOfNDistinct(rapid.IntRange(0, len(changes)-1), 1, 9, rapid.ID[int]).Draw(r, "changes")
		s := mixed(plain(t), which)
		j, err := s.read()
		if err != nil {
			return
		}
		planned++
		p, err := tryPlan(j, plan.Options{Trials: 512, Seed: 1})
		if err == nil {
			err = wholesome(p, true)
		}
		if err != nil && !strings.HasPrefix(err.Error(), "job.yaml:") {
			r.Fatalf("%v\n%s\n%s", err, s.job, s.shop)
		}
	})
	if planned < 20 {
		t.Errorf("only %d mixed jobs could be planned", planned)
	}
}
