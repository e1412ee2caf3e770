package seat

import "rebush/fits/table"

// Rules are the defaults that the search decides by, as plain numbers: lengths
// in mm also where the table has um.
type Rules struct {
	CleanUp, BoringHead, BoredStep, Turned           float64
	NoWall, LightWall, LightShare, UsualShare        float64
	PorousPeak, PorousHold, FlowLow, FlowHigh        float64
	Smoothing, RzSeat, RzBush                        float64 // the two Rz in um
	HoldN, HoldFriction, HoldFactor                  float64
	GapLow, GapHigh, CompoundShear, CompoundC        float64
	MandrelStep, MandrelTotal, SpringLow, SpringHigh float64
	OverJournal, Pass, AimLow, AimHigh, ClearMax     float64
	SeatChamfer, BushChamferThin, BushChamferThick   float64
	ThickWall                                        float64 // of a bush, for the thicker chamfer
	ShortShare, CapLow, CapHigh                      float64
	Tie, HotK, LeastWall, MaxShare, OpenSolid        float64
	RunLeast, NearRadii, FillDeg, CornerDeg          float64
	ShoulderOver, ShoulderThick, MetalTie            float64
	TurnMargin, TurnPress, Proud                     float64
	UseLow, UseHigh                                  float64 // degrees C, where the job does not say
	SideLow, SideHigh, WasherStep                    float64
}

// RulesOf reads them from the table in force.
func RulesOf(t *table.Rules) Rules {
	v := t.V
	r := Rules{
		CleanUp: v("cleanup_mm"), BoringHead: v("boring_head_mm"), BoredStep: v("bored_seat_step_mm"), Turned: v("turned_bush_mm"),
		NoWall: v("wall_none_radii"), LightWall: v("wall_light_radii"), LightShare: v("light_press_share"), UsualShare: v("usual_press_share"),
		PorousPeak: v("porous_peak_mpa"), PorousHold: v("porous_hold_mpa"),
		Smoothing: v("smoothing_factor"), RzSeat: v("rz_seat_um"), RzBush: v("rz_bush_um"),
		HoldN: v("hold_axial_n"), HoldFriction: v("hold_friction"), HoldFactor: v("hold_torque_factor"),
		CompoundShear: v("compound_shear_mpa"), CompoundC: v("compound_c"),
		MandrelStep: v("mandrel_step_mm"), MandrelTotal: v("mandrel_total_mm"),
		OverJournal: v("bore_over_journal_um") / 1000, Pass: v("pass_um") / 1000, ClearMax: v("clearance_max_um") / 1000,
		SeatChamfer: v("seat_chamfer_mm"), ThickWall: v("bush_chamfer_wall_mm"), ShortShare: v("short_seat_share"),
		Tie: v("seat_chance_tie"), HotK: v("plastic_hot_k"), LeastWall: v("least_wall_mm"), MaxShare: v("most_press_share"),
		OpenSolid: v("open_solid_mm"), RunLeast: v("run_least_um") / 1000, NearRadii: v("near_radii"), CornerDeg: v("corner_deg"),
		FillDeg: v("fill_contact_deg"), MetalTie: v("seat_metal_tie_mm"), TurnMargin: v("turned_margin_um") / 1000,
		TurnPress: v("turned_press_um") / 1000, Proud: v("proud_mm"), WasherStep: v("washer_step_mm"),
	}
	um := func(name string) (low, high float64) {
		low, high = t.Pair(name)
		return low / 1000, high / 1000
	}
	r.ShoulderOver, r.ShoulderThick = t.Pair("turned_shoulder_mm")
	r.FlowLow, r.FlowHigh = t.Pair("porous_flow_mpa")
	r.GapLow, r.GapHigh = t.Pair("compound_gap_mm")
	r.BushChamferThin, r.BushChamferThick = t.Pair("bush_chamfer_mm")
	r.SideLow, r.SideHigh = t.Pair("side_play_mm")
	r.UseLow, r.UseHigh = t.Pair("use_c")
	r.SpringLow, r.SpringHigh = um("mandrel_spring_um")
	r.AimLow, r.AimHigh = um("clearance_aim_um")
	r.CapLow, r.CapHigh = um("cap_slide_um")
	return r
}
