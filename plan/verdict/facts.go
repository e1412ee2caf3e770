package verdict

import "rebush/fits/table"

// Facts are what the plans found and a verdict needs, in plain numbers.
type Facts struct {
	Swollen bool   // grown against its sister beyond what may be machined
	Metal   string // a metal that must not be cut: "magnesium"; "" for any other
	Lathe   bool   // there is one to turn on

	Holes  []Hole
	Meshes []Pair
	Play   map[string]float64 // side play as it is, mm, by shaft; left out where it is not known
	Works  []Work             // the ways that cut, as they were planned
	Rules  Rules
}

// Rules are the defaults that decide: those of every case, and the times of what
// no route plans.
type Rules struct {
	Limits
	SizeMinutes float64 `rule:"minutes_sizing"` // fitting a washer
	AxleMinutes float64 `rule:"minutes_new_axle"`
	SidePlayMM  float64 `rule:"side_play_mm,high"` // most side play that is wanted
}

// RulesOf reads them.
func RulesOf(r *table.Rules) (out Rules) {
	r.Fill(&out)
	return out
}

// Trials are the shares of the trials, by what became of them.
type Trials struct{ Right, Rework, Spoilt, NextBush, Lost float64 }

// Pair is one mesh as it was found.
type Pair struct {
	Name     string
	On, Mate string // the shafts that would be moved to mend it, "" none
	Known    bool   // its gears were measured and some distance suits them
	FoundMM  float64
	LowMM    float64 // least and largest centre distance wanted
	HighMM   float64
}

// Hole is one bore as it was found.
type Hole struct {
	Name, Shaft string
	Fixed       bool    // the job says: leave it
	PlayMM      float64 // on diameter as found, 0 where it is not known
	BushOut     bool    // its old bush is out
	Known       bool    // its old centre is known
}
