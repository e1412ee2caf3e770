package target

import "rebush/fits/dim"

// Row is where one bore goes, as the plan's JSON prints it.
type Row struct {
	Bore           string     `json:"bore"`
	TargetMM       *dim.XY    `json:"target_mm"`
	FromOriginalMM *dim.XY    `json:"from_original_mm"`
	FromFoundMM    *dim.XY    `json:"from_found_mm"`
	UMM            dim.Gauged `json:"u_mm"`
	LoadTowardsDeg *float64   `json:"load_towards_deg"`
	// Chance is how likely the trusted meshes of its shaft all come right with every
	// shaft at its new place, null where it carries none.
	Chance    *float64   `json:"chance"`
	LeastMove *LeastMove `json:"least_move"`
}

// LeastMove is where the least move would put a bore that brings every trusted
// mesh inside its window, and how likely those of its shaft then come right.
type LeastMove struct {
	TargetMM *dim.XY  `json:"target_mm"`
	Chance   *float64 `json:"chance"`
}

// ShaftRow is what is known of one shaft as a whole.
type ShaftRow struct {
	Shaft      string         `json:"shaft"`
	AxisMM     *dim.XY        `json:"axis_mm"`
	SkewDeg    dim.FoundAfter `json:"skew_deg"`
	SidePlayMM *dim.MMRange   `json:"side_play_mm"`
}

// TruckRow is what is known of the whole truck.
type TruckRow struct {
	WheelbaseMM dim.FoundAfterMM `json:"wheelbase_mm"`
	RockMM      dim.FoundAfterMM `json:"rock_mm"`
}
