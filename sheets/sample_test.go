package sheets

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"rebush/fits/dim"
	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/job"
	"rebush/plan/safety"
	"rebush/plan/verdict"
	"rebush/sheets/draw"
)

func mm(s string) dim.Length        { return dim.OfMM(decimal.RequireFromString(s)) }
func num(f float64) *float64        { return &f }
func xy(x, y string) *plan.XY       { return &plan.XY{dim.Typed(x), dim.Typed(y)} }
func lim(a, b string) *plan.MMRange { return &plan.MMRange{Min: dim.Typed(a), Max: dim.Typed(b)} }
func rng(a, b float64) *plan.MinMax { return &plan.MinMax{Min: num(a), Max: num(b)} }
func pt(x, y string) job.Point      { return job.Point{X: mm(x), Y: mm(y)} }

// egg is the outline of a hole of radius r about x, y that a journal has worn
// by w towards an angle.
func egg(x, y, r, w, deg float64) [][2]float64 {
	const n = 120
	a := deg * math.Pi / 180
	ux, uy := math.Cos(a), math.Sin(a)
	out := make([][2]float64, n)
	for i := range out {
		t := 2 * math.Pi * float64(i) / n
		dx, dy := math.Cos(t), math.Sin(t)
		// The journal's lobe reaches r+w towards the wear.
		c := max(0, dx*ux+dy*uy)
		out[i] = [2]float64{x + (r+w*c)*dx, y + (r+w*c)*dy}
	}
	return out
}

// sampleJob is a job for pictures: two shafts, or as many as are asked for.
func sampleJob(shafts int) *job.Job {
	j := &job.Job{
		Number: "2026-107", Title: "Truck 12, front axle worn", Date: "2026-11-25",
		Datum: "lower left corner of the left plate, long edge is x", File: "truck.yaml",
		Chassis: job.Chassis{Material: "zinc die casting", Condition: "sound", Length: mm(fmt.Sprint(20 + 38*max(shafts-1, 1))), Height: mm("20"), Width: mm("16"),
			Thickness: job.Ends{Left: mm("3"), Right: mm("3")}},
		Shop: &job.Shop{MachineKind: "mill", Readout: true, Paper: "A4"},
	}
	for i := range shafts {
		name := "front axle"
		if i == 1 {
			name = "rear axle"
		} else if i > 1 {
			name = fmt.Sprintf("axle %d", i+1)
		}
		s := job.Shaft{Name: name, Journal: job.Ends{Left: mm("3.16"), Right: mm("3.16")}}
		for _, side := range job.Sides {
			s.Bores = append(s.Bores, job.Bore{Name: name + "." + string(side), Shaft: name, Side: side, Centre: pt(fmt.Sprint(10+38*i), "6.05")})
		}
		j.Shafts = append(j.Shafts, s)
	}
	return j
}

// samplePlan is a plan as the chain would fill it, of figures worked by hand.
func samplePlan(shafts int) *plan.Plan {
	j := sampleJob(shafts)
	p := &plan.Plan{RebushPlan: 1, Program: "rebush 1", JobNumber: j.Number, Hash: "3f9a0c17d2b4", OK: true, Job: j, Holes: map[string]plan.Hole{}}
	book := ledger.New()
	dia := book.Leaf("job/front axle.left/widest", "widest as read", "mm", "truck.yaml:31", 3.31)
	for i := range j.Shafts {
		for k, b := range j.Shafts[i].Bores {
			x := float64(10+38*i) + 0.01*float64(k)
			r, w := 1.605, 0.1
			if k == 1 {
				w = 0.08
			}
			leave := i == 1
			h := plan.Hole{Old: [2]float64{x, 6}, OldRadius: r, Target: [2]float64{x - 0.005, 6.04}, SeatR: 2.5, BoreR: r - 0.01, UMM: 0.014}
			if leave {
				h.Target, h.SeatR, h.BoreR, w = h.Old, 0, 0, 0
			}
			h.Outline = egg(x, 6, r, w, 90)
			if i == 0 && k == 0 {
				for n := range 16 {
					t := 2 * math.Pi * float64(n) / 16
					c := max(0, math.Sin(t))
					e := 0.004 * math.Sin(7*float64(n))
					h.Points = append(h.Points, [2]float64{x + (r+w*c+e)*math.Cos(t), 6 + (r+w*c+e)*math.Sin(t)})
					h.Residuals = append(h.Residuals, e)
				}
				h.LeftOut = []int{3}
			}
			p.Holes[b.Name] = h
			cx := fmt.Sprintf("%.4f", x)
			p.Survey = append(p.Survey, plan.SurveyedBore{Bore: b.Name, FoundMM: xy(cx, "6.0500"), CentreMM: xy(cx, "6.0000"), CentreUMM: dim.Typed("0.0140"),
				DiameterMM: dim.Typed(fmt.Sprintf("%.3f", 2*r)), WearMM: dim.Typed(fmt.Sprintf("%.3f", w)), WearDeg: num(90), ClearanceMM: dim.Typed("0.050"), Method: "widest and narrowest",
				Evidence: []plan.Evidence{{Rank: 4, What: "widest, narrowest and the side worn to", UMM: dim.Typed("0.0140"), Used: true}, {Rank: 5, What: "the other plate's bore", UMM: dim.Typed("0.0510")}}})
			tx := fmt.Sprintf("%.4f", h.Target[0])
			ty := fmt.Sprintf("%.4f", h.Target[1])
			p.Targets = append(p.Targets, plan.Target{Bore: b.Name, TargetMM: xy(tx, ty), FromOriginalMM: xy(fmt.Sprintf("%.4f", h.Target[0]-h.Old[0]), fmt.Sprintf("%.4f", h.Target[1]-h.Old[1])), UMM: dim.Typed("0.0140")})
			if leave {
				continue
			}
			seat := book.Calc("seats/"+b.Name+"/seat_mm/max", "largest seat", "mm", "reamer's upper limit", "ISO 286-2, 5 H7", func(in []float64) float64 { return in[0] + 1.702 }, dia)
			_ = seat
			p.Seats = append(p.Seats, plan.Seat{Bore: b.Name, Bush: "drawer 7", HeldBy: "press", SeatMM: lim("5.000", "5.012"), CleanupMM: dim.Typed("0.170"),
				InterferenceUM: rng(7, 31), PressureMPa: rng(6, 27), ForceN: rng(32, 180), HoopMPa: num(41), HoopLimitMPa: num(134), MetalLeftMM: dim.Typed("3.500"),
				ClosureUM: rng(5, 28), Finish: "mandrel", BoreMM: lim("3.175", "3.205"), RunningUM: rng(15, 45), Second: "flange",
				Candidates: []plan.Candidate{{Bush: "drawer 7", Tool: "reamer 5 mm H7", Feasible: true, Chance: num(0.91)}, {Bush: "own turning", Tool: "boring head", Feasible: true, Chance: num(0.88)},
					{Bush: "drawer 8", Tool: "reamer 5 mm H7", Reason: "bore 2.4 does not pass the journal of 3.16"}}})
		}
	}
	p.Book = book
	p.Ledger = book.Entries()
	p.Mesh = []plan.Mesh{{Gear: "front drive", FoundBacklashMM: dim.Typed("0.000"), TargetBacklashMM: dim.Typed("0.080"), Words: "wear has moved this axle 0.08 mm closer to the worm; backlash found 0, will be 0.08 mm."}}
	p.Truck = plan.Truck{WheelbaseMM: plan.FoundAfterMM{Found: dim.Typed("38.000"), After: dim.Typed("37.995")}, RockMM: plan.FoundAfterMM{Found: dim.Typed("0.120"), After: dim.Typed("0.020")}}
	p.Shafts = []plan.Shaft{{Shaft: "front axle", SkewDeg: plan.FoundAfter{Found: num(0.21), After: num(0.02)}, SidePlayMM: lim("0.120", "0.380")}}
	p.Setups = []plan.Setup{
		{Name: "A", Words: "chassis on parallels in the vice, left plate up, long edge along x, soft jaws. Both seats of the front axle in this clamping.", Plate: "left"},
		{Name: "B", Words: "chassis turned over, right plate up, located on a dowel in the left seat.", Plate: "right", Mirrored: true},
	}
	p.Operations = sampleOps(j)
	eyes := []safety.Line{{Hazard: "eyes", Words: "eye protection on"}, {Hazard: "rotating", Words: "no gloves near what turns"}}
	for i := range p.Operations {
		if k := p.Operations[i].Kind; k == "open" || k == "size seat" {
			p.Operations[i].Safety = eyes
		}
	}
	p.Safety = plan.Safety{
		PageOne: []safety.Line{{Words: "The machine's own manual comes before this sheet."}, {Words: "Eye protection on. No gloves, rings, loose sleeves or hair."}},
		Before:  []safety.Line{{Words: "Supply off and unplugged before the truck is stripped"}},
		Owner:   []safety.Line{{Words: "Old paint may hold lead: wash hands."}}}
	p.LayOut = []say.Text{"end mill 4 mm", "drill 4.85 mm (bought for the reamer of 5)", "reamer 5 mm H7", "pin gauges 4.99, 5.00, 5.01, 5.02", "sizing mandrels 3.19 and 3.20", "bushes: drawer 7, two and one to spare", "M3 bolt with two washers, to draw the bush in"}
	p.Buy = []plan.BuyLine{{What: "sizing mandrel 3.21", Why: "the bore has to end over 3.20"}}
	p.Proving = []plan.Step{{Text: "Larger end of the axle in last; each screw runs in two turns by hand."}, {Text: "Gear in the middle, equal packing each side."},
		{Text: "Ohms, insulated wheel to axle", Blank: "ohm"}, {Text: "Runs at 12 V, forwards", Blank: "A"}, {Text: "Runs at 12 V, backwards", Blank: "A"}, {Text: "Oil in every bearing."}}
	p.Chance = &plan.Chance{FirstTimeRight: 0.872, Low: 0.867, High: 0.877, Saved: 0.113, Lost: 0.015, Trials: 20000, Seed: 1,
		Causes:  []plan.Cause{{Cause: "mesh too tight, front drive", Share: 0.55}, {Cause: "seat too large, front axle.left", Share: 0.3}, {Cause: "wall", Share: 0.15}},
		Improve: []plan.Improve{{Change: "pins in place of callipers for the widest reading", FirstTimeRight: 0.93, Gain: 0.058}}}
	p.Verdict = &plan.Verdict{Choice: "re-bush", Sentence: "Re-bush both bores of the front axle: 74 USD and 1.7 hours against 85 USD for another truck.", Currency: "USD",
		RunnerUp: &plan.RunnerUp{Name: "swap", WinsIf: "at 52 an hour in place of 40, swap"},
		Bores:    []plan.BoreWay{{Bore: "front axle.left", Way: "re-bush"}, {Bore: "front axle.right", Way: "re-bush"}, {Bore: "rear axle.left", Way: "leave"}, {Bore: "rear axle.right", Way: "leave"}},
	}
	p.Way, p.Advised, p.Cuts = "re-bush", "re-bush", true
	p.Ways = []verdict.WayRow{
		{Way: "leave", OK: true, WhyNot: "the binding stays"}, {Way: "shim", WhyNot: "side play is right"}, {Way: "renew", WhyNot: "there is no old bush"},
		{Way: "re-bush", OK: true, Cures: true, Cost: num(74.2), Hours: num(1.7), FirstTimeRight: num(0.872), Lost: num(0.015),
			Loses: []say.Text{"1 mm of metal round each hole"}, Keeps: []say.Text{"the original casting"}},
		{Way: "made to fit", WhyNot: "there is no hole to fit it to"}, {Way: "bush in a bush", WhyNot: "no seat is spoilt"},
		{Way: "plug", OK: true, Cures: true, Cost: num(141), Hours: num(3.1), FirstTimeRight: num(0.8), Lost: num(0.04)},
		{Way: "new axle too", WhyNot: "the journals are good"},
		{Way: "swap", OK: true, Cures: true, Cost: num(102), Hours: num(0.5), FirstTimeRight: num(0.8), Loses: []say.Text{"the original"}}}
	left := finding.Place{Where: "front axle.left"}
	p.Findings.Raise(finding.Caution, "target/move", left, say.F("The new centre lies %v above the old centre: the backlash wanted calls for it.", say.MM(0.04, 2)),
		"measure the height of the worm again").Against(0.04, 0.15, "mm")
	p.Findings.Raise(finding.Caution, "seat/creep", left, "This press will slacken in zinc: a flange, compound or stake is required. The bush chosen has a flange.", "a thicker wall").Against(27, 15, "MPa")
	p.Findings.Raise(finding.Note, "seat/temperature", finding.Place{Where: ""}, "No temperatures in use were given: 5 to 40 °C is taken.", "temperature: [5, 45] under chassis")
	p.Inspect = []plan.Inspection{
		{Bore: "front axle.left", What: "seat", MadeMM: dim.Typed("5.024"), LimitsMM: lim("5.000", "5.012"), GuardUM: num(4), Result: "reject",
			Next: []plan.Next{{Do: "turn a bush to the seat as made", Bush: "own turning", FirstTimeRight: num(0.9)}, {Do: "hold with gap-filling compound, solid bronze only"}}},
		{Bore: "front axle.right", What: "bore", MadeMM: dim.Typed("3.190"), LimitsMM: lim("3.175", "3.205"), GuardUM: num(4), Result: "accept"},
		{Bore: "front axle.right", What: "place", MadeMM: dim.Typed("0.018"), Result: "cannot tell"}}
	p.Rules = []plan.RuleUsed{{Name: "clearance_aim_um", What: "running clearance aimed at", Value: "15 to 45 µm", Source: "shop.yaml:28"}, {Name: "edge_share", What: "largest share of the strength of the casting", Value: "0.5", Source: "common practice, no source"}}
	return p
}

func sampleOps(j *job.Job) []plan.Operation {
	var ops []plan.Operation
	n := 0
	add := func(op plan.Operation) {
		n += 10
		op.Number = n
		ops = append(ops, op)
	}
	for i, s := range j.Shafts {
		if i == 1 {
			continue
		}
		for k, b := range s.Bores {
			at := xy(fmt.Sprintf("%.4f", float64(10+38*i)+0.01*float64(k)-0.005), "6.0400")
			place := at
			up := say.Text("both rising")
			set := "A"
			if k == 1 {
				set = "B" // turned over: dialled from the other end of 58 mm
				at = xy(fmt.Sprintf("%.4f", 58-float64(10+38*i)-0.005), "6.0400")
			}
			first := say.Text("")
			if k == 0 {
				first = "Target found again from the other end of the long edge: within 0.01 mm of the first reading."
			}
			add(plan.Operation{Setup: set, Bore: b.Name, Kind: "open", Do: "Plunge the end mill on the new centre, through the plate", Tool: "end mill 4 mm", ToolMM: dim.Typed("4.000"), AtMM: place, DialMM: at, Approach: up,
				RPM: num(1750), RPMIdeal: num(3183), FeedMMRev: num(0.03), FeedWords: "quill down slowly, 1 mm in a second", Lubricant: "none or a drop of thin oil", ThrustN: num(28),
				Backing: "brass block behind this plate", GaugeFirst: first, MayWait: true, HoleMM: 4, Minutes: num(4), Note: "The end mill cuts on the new centre; it does not follow the oval."})
			add(plan.Operation{Setup: set, Bore: b.Name, Kind: "open", Do: "Drill before the reamer", Tool: "drill 4.85 mm", ToolMM: dim.Typed("4.850"), AtMM: place, DialMM: at, Approach: up, RPM: num(1250), RPMIdeal: num(1312), FeedWords: "slow and even, slower where it breaks through",
				Backing: "brass block behind this plate", MayWait: true, HoleMM: 4.9, Minutes: num(4)})
			add(plan.Operation{Setup: set, Bore: b.Name, Kind: "chamfer", Do: "Chamfer the entry 0.2 x 45°, from the outside", Tool: "countersink 90°", AtMM: place, DialMM: at, RPM: num(320), FeedWords: "by hand", MayWait: true, HoleMM: 4.9})
			add(plan.Operation{Setup: set, Bore: b.Name, Kind: "size seat", Do: "Ream the seat", Tool: "reamer 5 mm H7", ToolMM: dim.Typed("5.000"), AtMM: place, DialMM: at, Approach: up, RPM: num(320), RPMIdeal: num(410), FeedWords: "by the quill, even, never turned back",
				Lubricant: "thin oil", LimitsMM: lim("5.000", "5.012"), Gauge: "pins in 0.01 steps, and a bush tried in a hole reamed in scrap", Go: "5.00 pin", NoGo: "5.02 pin", MayWait: true, HoleMM: 5, Minutes: num(5)})
			add(plan.Operation{Setup: set, Bore: b.Name, Kind: "press", Do: "Draw the bush in from outside with bolt and washers, anvil directly behind this plate", Tool: "bush drawer 7", Backing: "anvil with a hole of 6", ThrustN: num(180),
				GaugeFirst: "Seat between 5.000 and 5.012 mm: 5.00 pin goes, 5.02 pin does not. Both seats of this axle.", MayWait: true, HoleMM: 3.17, Minutes: num(5), Note: "32 to 180 N expected. Halt at 270 N."})
			add(plan.Operation{Setup: set, Bore: b.Name, Kind: "size bore", Do: "Size the bore with mandrels, smallest first", Tool: "mandrels 3.19, 3.20", LimitsMM: lim("3.175", "3.205"), Go: "3.17 pin", NoGo: "3.21 pin", MayWait: true, HoleMM: 3.19, Minutes: num(5)})
		}
		if i > 3 {
			break
		}
	}
	add(plan.Operation{Setup: "B", Kind: "wash", Do: "Wash, blow dry, oil the bushes", Tool: "", MayWait: true})
	return ops
}

// allPaper makes every kind of paper of a plan.
func allPaper(t testing.TB, p *plan.Plan, o Options) map[string]*draw.Document {
	t.Helper()
	out := map[string]*draw.Document{}
	keep := func(name string, d *draw.Document, err error) {
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		out[name] = d
	}
	d, err := Setup(p, o)
	keep("setup", d, err)
	d, err = VerdictPage(p, o)
	keep("verdict", d, err)
	d, err = Rework(p, o)
	keep("rework", d, err)
	d, err = Form(p.Job, o)
	keep("form", d, err)
	d, err = Form(nil, o)
	keep("form blank", d, err)
	d, err = FormExample(o)
	keep("form example", d, err)
	d, err = Traveller([]*plan.Plan{p, p, p}, o)
	keep("traveller", d, err)
	if p.OK && p.Machines() {
		d, err = Template(p, o)
		if err == nil || !strings.Contains(err.Error(), "use the dial figures") {
			keep("template", d, err)
		}
	}
	return out
}
