package mesh

import (
	"fmt"
	"math"

	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/table"
	"rebush/plan/job"
)

// Shaft is a shaft of the job whose place is known, as the meshes need it.
type Shaft struct {
	Name   string
	Centre [2]float64 // mean of its old centres
	Holes  int        // bores whose old centre is known
	U      float64    // standard uncertainty of the least known of them, mm
}

// Input is what the meshes of a job are read from.
type Input struct {
	Job    *job.Job
	Rules  *table.Rules
	Tables *table.Library
	Shafts []Shaft // in the order of the job
	UMate  float64 // standard uncertainty of a mate's place where the job gives none, mm
	USetup float64 // standard uncertainty of placing one clamping, mm
	UHole  float64 // and one hole
}

// Spacing is the distance between the middles of the plates in mm; 0 where the
// width is not known.
func Spacing(c job.Chassis) float64 {
	if !c.Width.Given() {
		return 0
	}
	return c.Width.Float() - (c.Thickness.Left.Float()+c.Thickness.Right.Float())/2
}

// share says where a wheel stands between the bores: 0 left, 1 right, the
// middle where it was not measured.
func share(c job.Chassis, w job.Wheel) float64 {
	b := Spacing(c)
	if !w.FromLeft.Given() || b <= 0 {
		return 0.5
	}
	return (w.FromLeft.Float() - c.Thickness.Left.Float()/2) / b
}

// reader makes drives of the gears of a job.
type reader struct {
	Input
	book  *ledger.Ledger
	index map[string]int // shafts by name
	found finding.List
}

// FromJob makes the drives of a job and records their windows in the ledger.
// A gear that cannot be reckoned is said and left out.
func FromJob(in Input, book *ledger.Ledger) ([]Drive, finding.List) {
	r := &reader{Input: in, book: book, index: map[string]int{}}
	for i, s := range in.Shafts {
		r.index[s.Name] = i
	}
	var out []Drive
	for i := range in.Job.Gears {
		g := &in.Job.Gears[i]
		k, ok := r.index[g.Wheel.On]
		if !ok {
			r.say(finding.Caution, Unreckoned, g, "the place of its shaft is not known, so this mesh is not worked "+
				"out", "")
			continue
		}
		d := Drive{Name: g.Name, Kind: Kind(g.Kind), Wheel: g.Wheel.On, Module: g.Module,
			Face: g.Wheel.Face.Float(), Shaft: k, Mate: -1,
			Share: share(in.Job.Chassis, g.Wheel), Runout: g.Wheel.Runout.Float()}
		d.MateShare = d.Share
		runs := Runouts(r.Rules, g)
		d.Turns = runs[0] + runs[1]
		if err := r.drive(&d, g); err != nil {
			r.unreckoned(g, err)
			continue
		}
		out = append(out, d)
	}
	return out, r.found
}

// drive reads the rest of one: its pair, then what that wants and whether it
// is to be trusted.
func (r *reader) drive(d *Drive, g *job.Gear) error {
	var err error
	switch {
	case d.Kind == WormDrive && g.Worm != nil:
		err = r.worm(d, g)
	case d.Kind == SpurPair && g.Pinion != nil:
		err = r.spur(d, g)
	default:
		err = fmt.Errorf("a %s gear needs its mating gear", d.Kind)
	}
	if err == nil {
		err = d.Pair.Validate()
	}
	if err == nil && g.Tight.Given() {
		d.Tried = true
		d.Pair, err = TightAt(d.Pair, g.Tight.Float())
	}
	if err == nil {
		err = r.wish(d, g)
	}
	if err == nil {
		err = r.window(d, g)
	}
	if err == nil {
		r.trust(d, g)
	}
	return err
}

func (r *reader) spur(d *Drive, g *job.Gear) error {
	p := g.Pinion
	d.Pair = Spur{Module: g.Module, Z1: g.Wheel.Teeth, Z2: p.Teeth, Angle: g.PressureAngle, X1: g.Wheel.Shift,
		X2:      p.Shift,
		Thinned: g.Thinned.Float(), Tip1: g.Wheel.Tip.Float(), Tip2: p.Tip.Float(),
		Called: [2]string{"the wheel", "the pinion"}}
	d.Geometry = Across{}
	d.Runout += p.Runout.Float()
	d.Moved = p.Moved
	if p.On != "" {
		k, ok := r.index[p.On]
		if !ok {
			return fmt.Errorf("the place of %s, where the pinion sits, is not known", p.On)
		}
		d.Mate = k
		return nil
	}
	d.MateAt, d.UMate = p.At.Float(), r.UMate
	if p.U.Given() {
		d.UMate = p.U.Float()
	}
	return nil
}

func (r *reader) worm(d *Drive, g *job.Gear) error {
	w := g.Worm
	form := Form(g.WheelForm)
	if g.WheelForm == "" {
		form = Unknown
	}
	pitch, derived := w.Pitch(g.Module)
	if derived {
		d.UPitch = r.Rules.V("worm_depth_u_modules") * g.Module
		r.book.Cite("rules/worm_depth_u_modules")
	}
	pair := Worm{Form: form, Module: g.Module, Starts: w.Starts, Teeth: g.Wheel.Teeth,
		PitchDiameter: pitch,
		Angle:         g.PressureAngle, Shift: g.Wheel.Shift, Thinned: g.Thinned.Float(), ShaftAngle: g.ShaftAngle,
		WheelTip: g.Wheel.Tip.Float(), WormTip: w.Tip.Float()}
	height, err := wormHeight(w)
	if err != nil {
		return err
	}
	wheel := r.Shafts[d.Shaft].Centre
	u := r.UMate
	if w.U.Given() {
		u = w.U.Float()
	}
	d.Pair, d.Geometry = pair, Along{SlopeDeg: w.Slope, Below: height < wheel[1]}
	d.MateAt = [2]float64{wheel[0], height}
	play := w.BearingPlay.Float()
	if !w.BearingPlay.Given() {
		play = r.Rules.V("worm_play_mm")
		r.book.Cite("rules/worm_play_mm")
	}
	d.UMate = WormDoubt(u, play)
	d.Moved = w.Moved
	r.endFloat(g, pair)
	if w.Offset.Given() && g.Wheel.Face.Given() {
		if d.Closes, err = pair.OffsetClosure(w.Offset.Float(), d.Face); err != nil {
			return err
		}
	}
	r.wheelWords(g, *d, pair)
	return nil
}

// WormDoubt is the standard uncertainty in mm of where a worm runs whose height
// is known to u mm: anywhere in the play of its bearings, mm on diameter.
func WormDoubt(u, play float64) float64 { return math.Hypot(u, play/math.Sqrt(12)) }

// Runouts are those of wheel and mate, mm, total: of one that nobody measured, as
// much as is usual. A worm turns many times to one tooth of its wheel, and its own
// run-out is not asked for.
func Runouts(rules *table.Rules, g *job.Gear) [2]float64 {
	out := [2]float64{rules.V("gear_runout_mm"), 0}
	if g.Wheel.Runout.Given() {
		out[0] = g.Wheel.Runout.Float()
	}
	if g.Pinion != nil {
		if out[1] = rules.V("pinion_runout_mm"); g.Pinion.Runout.Given() {
			out[1] = g.Pinion.Runout.Float()
		}
	}
	return out
}

// wormHeight is the height of the worm's axis over the datum, mm.
func wormHeight(w *job.Worm) (float64, error) {
	switch {
	case w.Height.Given():
		return w.Height.Float(), nil
	case w.Top.Given() && w.ShaftDiameter.Given():
		return w.Top.Float() - w.ShaftDiameter.Float()/2, nil
	case w.Top.Given():
		return 0, fmt.Errorf("the top of the worm's shaft needs its diameter too: give shaft_diameter, or the height " +
			"of the axis")
	}
	return 0, fmt.Errorf("the height of the worm is not given")
}

// wish takes the backlash that the job asks for, else that of the handbook.
func (r *reader) wish(d *Drive, g *job.Gear) error {
	if g.Backlash[0].Given() {
		d.Wish = Wish{Lo: g.Backlash[0].Float(), Hi: g.Backlash[1].Float()}
		return nil
	}
	by, err := HandbookWish(r.Tables, g.Module)
	if err != nil {
		return err
	}
	d.Wish = by.Wish
	r.byHandbook(g, by)
	return nil
}

// window cuts the window and records it; its ends are those of the ledger.
func (r *reader) window(d *Drive, g *job.Gear) error {
	contact, tooth := r.rule("contact_ratio_min"), r.rule("tight_tooth_backlash_mm")
	d.Limits = Limits{ContactRatio: contact.V, ContactHard: r.Rules.V("contact_ratio_hard"),
		NewRight:   r.Rules.V("new_mesh_share"),
		TightTooth: tooth.V, TipModules: r.Rules.V("tip_clearance_modules")}
	w, err := d.Cut(d.Wish.Lo, d.Wish.Hi, d.Runout, contact.V, tooth.V)
	if err != nil {
		return err
	}
	d.Window = w
	d.Window.Lo, d.Window.Hi = d.explainWindow(r.book, r.Job.Source, contact, tooth)
	if w.Empty {
		r.empty(g, d.Window)
	}
	return nil
}

func (r *reader) rule(name string) ledger.Num { return r.book.Leaf(r.Rules.Get(name).Leaf()) }

// trust says whether the pair may move a shaft, and how well the place of its
// window is known.
func (r *reader) trust(d *Drive, g *job.Gear) {
	d.Trusted = d.Tried || d.Pair.Measured()
	d.UTeeth, d.Odd = math.Hypot(r.Rules.V("u_geometry_trusted_mm"), d.UPitch), r.Rules.V("odd_gear_share")
	d.UGeom = UGeometry(d.Pair, g.Module, d.UTeeth, r.Rules.V("u_geometry_module_factor"))
	d.Bound = r.Rules.V("u_geometry_module_factor") * g.Module
	if d.Tried {
		d.UTeeth = r.Rules.V("u_tried_mm")
		d.UGeom = d.UTeeth
		r.book.Cite("rules/u_tried_mm")
		r.runsOut(g, *d)
		return
	}
	r.book.Cite("rules/u_geometry_trusted_mm")
	r.blanks(g, d.Pair.Tips())
	r.runsOut(g, *d)
	if !d.Trusted {
		r.book.Cite("rules/u_geometry_module_factor")
		r.book.Cite("rules/odd_gear_share")
		r.untrusted(g)
	}
}
