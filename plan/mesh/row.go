package mesh

import (
	"rebush/fits/dim"
	"rebush/fits/say"
)

// Row is what wear did to one pair and what the plan makes of it, as the plan's
// JSON prints it.
type Row struct {
	Gear               string         `json:"gear"`
	FoundCentreMM      dim.Gauged     `json:"found_centre_mm"`
	FoundBacklashMM    dim.Gauged     `json:"found_backlash_mm"`
	OriginalBacklashMM dim.Gauged     `json:"original_backlash_mm"`
	TargetCentreMM     dim.Gauged     `json:"target_centre_mm"`
	UMM                dim.Gauged     `json:"u_mm"` // standard uncertainty of that distance, with that of the teeth
	TargetBacklashMM   dim.Gauged     `json:"target_backlash_mm"`
	LiftedBacklashMM   dim.Gauged     `json:"lifted_backlash_mm"`
	BacklashWindowMM   *[2]dim.Gauged `json:"backlash_window_mm"`
	ContactRatio       *float64       `json:"contact_ratio"`
	CorrectionMM       *dim.XY        `json:"correction_mm"`
	Trusted            bool           `json:"trusted"`

	Words      say.Text         `json:"words"`        // what wear did, in words and number
	LeanLossMM dim.FoundAfterMM `json:"lean_loss_mm"` // normal backlash lost over the face by unlike bores
	ReachedMM  *dim.MMRange     `json:"reached_mm"`   // centre distance with the clearances that the chosen finish reaches
}
