package table_test

import (
	"math"
	"strings"
	"testing"

	"rebush/fits/table"
)

// risingRules are defaults that stand in order, "<" parting those that may not
// be alike and "<=" those that may; +high is the second figure of a rule. What
// is usual lies under what is too much, a finer way under a coarser one.
var risingRules = []string{
	"run_least_um < clearance_aim_um < clearance_aim_um+high < clearance_max_um",
	"growth_note_percent < growth_caution_percent < growth_stop_percent",
	"contact_ratio_hard < contact_ratio_min",
	"unsaid_wear_least_mm < unsaid_wear_most_mm",
	"u_other_plate_drilled_together_mm < u_other_plate_mm",
	"u_tried_mm < u_geometry_trusted_mm <= u_as_drawn_mm",
	"pinion_runout_mm < bush_runout_mm < gear_runout_mm",
	"odd_gear_share < new_mesh_share",
	"move_least_mm < move_caution_mm",
	"turned_bush_mm < boring_head_mm < end_mill_mm",
	"wall_none_radii < wall_light_radii",
	"light_press_share < usual_press_share < most_press_share",
	"zinc_creep_mpa < porous_hold_mpa <= porous_flow_mpa < porous_peak_mpa < porous_flow_mpa+high",
	"porous_flow_mpa+high < plate_unknown_yield_mpa",
	"friction < friction+high",
	"smoothing_least_factor < smoothing_factor",
	"rz_bush_um < rz_seat_um",
	"compound_gap_mm < compound_gap_mm+high",
	"mandrel_step_mm < mandrel_total_mm",
	"seat_chamfer_mm <= bush_chamfer_mm < bush_chamfer_mm+high",
	"flange_chamfer_over_root_mm < flange_root_mm",
	"side_play_mm < side_play_mm+high",
	"hand_ream_m_min < thin_wall_m_min < zinc_plunge_m_min < zinc_bore_m_min",
	"faceplate_rpm < boring_head_rpm",
	"hole_u_lathe_mm < hole_u_readout_mm < hole_u_dials_mm <= hole_u_jig_mm < hole_u_hand_mm",
	"setup_u_readout_mm < setup_u_dials_mm <= setup_u_lathe_mm < setup_u_jig_mm < setup_u_drill_press_mm",
	"setup_u_drill_press_mm <= setup_u_hand_mm",
	"minutes_gauging < minutes_press < minutes_rework < minutes_spoilt_bush < minutes_turn_bush",
	"minutes_turn_bush < minutes_new_axle < minutes_failed_seat",
	"minutes_hold < minutes_make_rod < minutes_jig_plate",
	"minutes_slip_bush < minutes_jig_plate",
	"play_leave_mm < play_look_again_mm",
	"least_wall_mm < good_wall_mm < sleeve_wall_mm < slip_bush_wall_mm",
	"ream_stock_mm < ream_stock_mm+high <= bored_stock_mm < bored_stock_mm+high",
	"milled_stock_mm < bored_stock_mm",
	"milled_stock_mm < milled_stock_mm+high",
	"bored_step_mm < bored_seat_step_mm",
	"rod_under_mm < dummy_under_mm",
	"guide_under_mm < guide_under_mm+high",
	"slip_bush_over_mm < slip_bush_over_mm+high",
	"plug_step_mm < plug_step_mm+high",
	"lathe_bore_mm < lathe_bore_mm+high",
	"use_c < use_c+high < compound_c",
	"roundness_bored_um < roundness_reamed_um < roundness_milled_um",
	"habit_bored_scatter_um < habit_reamed_scatter_um < habit_milled_scatter_um",
	"habit_milled_um < habit_milled_um+high",
	"turned_press_um < turned_margin_um",
	"hold_friction < press_halt_factor < hold_torque_factor",
	"advise_lost < advise_least",
	"verdict_tie < second_hand_chance",
	"seat_chance_tie < advise_lost",
	"overlap_stop_u < record_slip_scatters",
	"record_least_jobs < record_prior_jobs",
}

// TestRulesStandInOrder holds the defaults to one another.
func TestRulesStandInOrder(t *testing.T) {
	rules, err := table.ReadRules(table.BuiltIn())
	if err != nil {
		t.Fatal(err)
	}
	value := func(name string) float64 {
		n, high := strings.CutSuffix(name, "+high")
		r := rules.Get(n)
		if high {
			return r.High
		}
		return r.Low
	}
	for _, chain := range risingRules {
		words := strings.Fields(chain)
		for i := 2; i < len(words); i += 2 {
			a, b := value(words[i-2]), value(words[i])
			if !(a < b || a == b && words[i-1] == "<=") {
				t.Errorf("%s is %v, %s %v; want %s", words[i-2], a, words[i], b, words[i-1])
			}
		}
	}
}

// TestRulesFromOutside are the defaults that are somebody's figure, or follow
// from one.
func TestRulesFromOutside(t *testing.T) {
	for _, c := range []struct {
		rule, column, why string
		low, high         float64
	}{
		{"guard_k", "low", "95 of 100 lie under 1.645 standard deviations", 1.64, 1.66},
		{"smoothing_factor", "low", "DIN 7190 before 2017: 0.8 of the sum of both", 0.8, 0.8},
		{"smoothing_least_factor", "low", "DIN 7190-1:2017: half of that", 0.4, 0.4},
		{"friction", "low", "the least for steel on copper alloy", 0.05, 0.05},
		{"friction", "high", "the most for press fits", 0.2, 0.2},
		{"zinc_creep_mpa", "low", "15.1 MPa gives 0.2 % in five years", 15, 15.1},
		{"fill_contact_deg", "low", "a filling that is held has more than half of its round, and less than all", 181, 359},
		{"corner_deg", "low", "less than a right angle", 10, 89},
		{"oil_load_deg", "low", "less than a right angle", 10, 89},
		{"plug_step_mm", "high", "a thousandth of an inch", 0.0254, 0.0254},
		{"u_direction_deg", "low", "less than an eighth of a turn", 5, 44},
		{"clock_deg", "low", "a division that is seen by eye", 1, 5},
		{"casting_stress_share", "low", "half of the strength", 0.5, 0.5},
		{"second_hand_chance", "low", "more likely than not", 0.51, 1},
		{"unseated_chance", "low", "more likely than not", 0.51, 1},
		{"other_way_chance_share", "low", "more likely than not", 0.51, 1},
		{"usual_side_share", "low", "more likely than not", 0.51, 1},
	} {
		v := fig(t, row(t, "rules", "rule", c.rule), c.column)
		if math.IsNaN(v) || v < c.low || v > c.high {
			t.Errorf("%s is %v, outside %v to %v: %s", c.rule, v, c.low, c.high, c.why)
		}
	}
}
