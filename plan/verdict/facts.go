package verdict

import (
	"rebush/fits/say"
	"rebush/fits/table"
)

// Facts are what the plan found and a verdict needs, in plain numbers.
type Facts struct {
	Swollen bool   // grown against its sister beyond what may be machined
	Metal   string // a metal that must not be cut: "magnesium"; "" for any other
	OK      bool   // the plan may be machined
	Lathe   bool   // there is one to turn on
	Placer  bool   // what holds the place of a hole that is bored anew: a mill, a lathe or a pinned jig

	Holes  []Hole
	Meshes []Pair
	Play   map[string]float64 // side play as it is, mm, by shaft; left out where it is not known
	Trials *Trials            // nil where none were run
	Rules  Rules
}

// Rules are the defaults that decide: those of every case, and how a hole goes
// another way than the plan has it.
type Rules struct {
	Limits
	SleeveWallMM   float64 `rule:"sleeve_wall_mm"`         // of a sleeve, and web of a plug
	NoWallRadii    float64 `rule:"wall_none_radii"`        // least metal left beside it, in its radii
	OtherChance    float64 `rule:"other_way_chance_share"` // chance of such a hole as a share of that of a bush
	UnseatedChance float64 `rule:"unseated_chance"`        // stands for that of a bush where none was found
	TurnMinutes    float64 `rule:"minutes_turn_bush"`      // a sleeve or a plug too
	PressMinutes   float64 `rule:"minutes_press"`
	ToolMinutes    float64 `rule:"minutes_tool_change"`
	SizeMinutes    float64 `rule:"minutes_sizing"` // fitting a washer too
	AxleMinutes    float64 `rule:"minutes_new_axle"`
	SidePlayMM     float64 `rule:"side_play_mm,high"` // most side play that is wanted
}

// RulesOf reads them.
func RulesOf(r *table.Rules) (out Rules) {
	r.Fill(&out)
	return out
}

// Trials are the shares of the trials that did not come right.
type Trials struct{ Rework, Spoilt, NextBush, Lost float64 }

// Pair is one mesh as it was found.
type Pair struct {
	Name     string
	On, Mate string // the shafts that would be moved to mend it, "" none
	Known    bool   // its gears were measured and some distance suits them
	FoundMM  float64
	LowMM    float64 // least and largest centre distance wanted
	HighMM   float64
}

// Hole is one bore as the survey, the target, the seat and the route left it.
type Hole struct {
	Name, Shaft string
	Fixed       bool    // the job says: leave it
	PlayMM      float64 // on diameter as found, 0 where it is not known

	BushOut   bool // its old bush is out
	SoundSeat bool // and left a sound seat
	Bushed    bool // the old bush is in, or an earlier repair put one there
	Capped    bool // the bearing lies under a cap
	Known     bool // its old centre is known
	Placed    bool // it has a new centre
	Worn      bool // it is to be dealt with

	Seat    *Seat   // what was chosen for it, nil for none
	Nearest *Reason // why the nearest bush cannot be seated, nil where there is no bush at all

	Minutes float64  // of its operations, with its share of those that serve several
	Setups  []string // clampings that it is worked in

	MustPassMM float64    // largest diameter that goes through on assembly, 0 none
	BoreMM     [2]float64 // limits of the finished bore
	RadiusMM   float64    // of the unworn hole
	SleeveMM   float64    // least outside radius of a sleeve about the new centre
	PlugMM     float64    // and of a plug
	Room       []Room     // what stands round the new centre
}

// Seat is the seat that was chosen for a hole.
type Seat struct {
	Renews  bool     // a bush goes into a sound old seat, or under a cap
	Chance  float64  // of this bore alone
	MetalMM float64  // taken off on radius
	Price   *float64 // of the bush; nil: not given
}

// Reason is why a bush cannot be seated, to a machinist and to an owner.
type Reason struct{ Text, Owner say.Text }

// Room is something that stands beside a hole, and how far its new centre is
// from it.
type Room struct {
	Name string
	MM   float64
}
