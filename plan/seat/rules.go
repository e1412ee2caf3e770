package seat

import "rebush/fits/table"

// Rules are the defaults that the search decides by, as plain numbers: lengths
// in mm also where the table has um.
type Rules struct {
	CleanUp          float64 `rule:"cleanup_mm"`
	BoringHead       float64 `rule:"boring_head_mm"`
	BoredStep        float64 `rule:"bored_seat_step_mm"`
	Turned           float64 `rule:"turned_bush_mm"`
	NoWall           float64 `rule:"wall_none_radii"`
	LightWall        float64 `rule:"wall_light_radii"`
	LightShare       float64 `rule:"light_press_share"`
	UsualShare       float64 `rule:"usual_press_share"`
	PorousPeak       float64 `rule:"porous_peak_mpa"`
	PorousHold       float64 `rule:"porous_hold_mpa"`
	FlowLow          float64 `rule:"porous_flow_mpa"`
	FlowHigh         float64 `rule:"porous_flow_mpa,high"`
	Smoothing        float64 `rule:"smoothing_factor"`
	RzSeat           float64 `rule:"rz_seat_um"` // um, as it is printed
	RzBush           float64 `rule:"rz_bush_um"` // um
	HoldN            float64 `rule:"hold_axial_n"`
	HoldFriction     float64 `rule:"hold_friction"`
	HoldFactor       float64 `rule:"hold_torque_factor"`
	GapLow           float64 `rule:"compound_gap_mm"`
	GapHigh          float64 `rule:"compound_gap_mm,high"`
	CompoundShear    float64 `rule:"compound_shear_mpa"`
	CompoundC        float64 `rule:"compound_c"`
	MandrelStep      float64 `rule:"mandrel_step_mm"`
	MandrelTotal     float64 `rule:"mandrel_total_mm"`
	SpringLow        float64 `rule:"mandrel_spring_um,mm"`
	SpringHigh       float64 `rule:"mandrel_spring_um,high,mm"`
	OverJournal      float64 `rule:"bore_over_journal_um,mm"`
	Pass             float64 `rule:"pass_um,mm"`
	AimLow           float64 `rule:"clearance_aim_um,mm"`
	AimHigh          float64 `rule:"clearance_aim_um,high,mm"`
	ClearMax         float64 `rule:"clearance_max_um,mm"`
	SeatChamfer      float64 `rule:"seat_chamfer_mm"`
	FlangeRoot       float64 `rule:"flange_root_mm"`
	FlangeOver       float64 `rule:"flange_chamfer_over_root_mm"`
	BushChamferThin  float64 `rule:"bush_chamfer_mm"`
	BushChamferThick float64 `rule:"bush_chamfer_mm,high"`
	ThickWall        float64 `rule:"bush_chamfer_wall_mm"` // of a bush, for the thicker chamfer
	ShortShare       float64 `rule:"short_seat_share"`
	CapLow           float64 `rule:"cap_slide_um,mm"`
	CapHigh          float64 `rule:"cap_slide_um,high,mm"`
	Tie              float64 `rule:"seat_chance_tie"`
	HotK             float64 `rule:"plastic_hot_k"`
	LeastWall        float64 `rule:"least_wall_mm"`
	MaxShare         float64 `rule:"most_press_share"`
	OpenSolid        float64 `rule:"open_solid_mm"`
	RunLeast         float64 `rule:"run_least_um,mm"`
	NearRadii        float64 `rule:"near_radii"`
	FillDeg          float64 `rule:"fill_contact_deg"`
	CornerDeg        float64 `rule:"corner_deg"`
	ShoulderOver     float64 `rule:"turned_shoulder_mm"`
	ShoulderThick    float64 `rule:"turned_shoulder_mm,high"`
	MetalTie         float64 `rule:"seat_metal_tie_mm"`
	TurnMargin       float64 `rule:"turned_margin_um,mm"`
	TurnPress        float64 `rule:"turned_press_um,mm"`
	Proud            float64 `rule:"proud_mm"`
	UseLow           float64 `rule:"use_c"` // degrees C, where the job does not say
	UseHigh          float64 `rule:"use_c,high"`
	SideLow          float64 `rule:"side_play_mm"`
	SideHigh         float64 `rule:"side_play_mm,high"`
	WasherStep       float64 `rule:"washer_step_mm"`
	GoodWall         float64 `rule:"good_wall_mm"`
	ClockDeg         float64 `rule:"clock_deg"`
	SetOver          float64 `rule:"set_over_mm"`
	TurnMinutes      float64 `rule:"minutes_turn_bush"`
	PressMinutes     float64 `rule:"minutes_press"`
	LobesReamed      float64 `rule:"roundness_reamed_um,mm"`
	LobesBored       float64 `rule:"roundness_bored_um,mm"`
	LobesMilled      float64 `rule:"roundness_milled_um,mm"`
	CastingShare     float64 `rule:"casting_stress_share"`
	LeastChance      float64 `rule:"seat_least_chance"`
	Band             float64 `rule:"seat_band_um,mm"`
	SmoothLeast      float64 `rule:"smoothing_least_factor"`
	StrengthU        float64 `rule:"casting_strength_u"`
}

// RulesOf reads them from the table in force.
func RulesOf(t *table.Rules) (r Rules) {
	t.Fill(&r)
	return r
}
