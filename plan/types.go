// Package plan composes the chain: survey, mesh, target, seat, route, chance,
// verdict. Its types are what `rebush plan --json` prints; their JSON keys are
// a promise (see DEVELOPERS.md).
//
// Keys carry units. Lengths that people gauge (keys ending in _mm or _in) are
// decimal strings, other figures are numbers, absent is null and never NaN.
// Lists stand in the order of the job file.
package plan

import (
	"math"
	"strings"

	"rebush/fits/finding"
	"rebush/fits/ledger"
	"rebush/fits/say"
	"rebush/fits/table"
	"rebush/plan/job"
	"rebush/plan/mesh"
	"rebush/plan/seat"
	"rebush/plan/target"
	"rebush/plan/verdict"
)

// Plan is the whole plan of one job.
type Plan struct {
	RebushPlan int                     `json:"rebush_plan"`
	Program    string                  `json:"program"`
	JobNumber  string                  `json:"job"`
	Hash       string                  `json:"hash"`
	Replaces   string                  `json:"replaces"` // hash of the plan that this one takes the place of; "" none
	OK         bool                    `json:"ok"`
	Way        verdict.Name            `json:"way"` // whose seats, operations and chance these are; "" where none is made
	Ways       []verdict.WayRow        `json:"ways"`
	AsMade     bool                    `json:"as_made"` // planned from the truck as it now is
	Survey     []SurveyedBore          `json:"survey"`
	Mesh       []Mesh                  `json:"mesh"`
	Targets    []Target                `json:"targets"`
	Shafts     []Shaft                 `json:"shafts"`
	Truck      Truck                   `json:"truck"`
	Seats      []Seat                  `json:"seats"`
	Operations []Operation             `json:"operations"`
	Chance     *Chance                 `json:"chance"`
	Verdict    *Verdict                `json:"verdict"`
	Inspect    []Inspection            `json:"inspect"`
	Findings   finding.List            `json:"findings"`
	Safety     Safety                  `json:"safety"`
	Ledger     map[string]ledger.Entry `json:"ledger"`

	// What paper needs beside the JSON.
	Job     *job.Job        `json:"-"`
	Book    *ledger.Ledger  `json:"-"`
	Holes   map[string]Hole `json:"-"` // by bore
	Setups  []Setup         `json:"-"`
	Buy     []BuyLine       `json:"-"`
	LayOut  []say.Text      `json:"-"` // tools, gauges, bushes to lay out before starting
	Proving []Step          `json:"-"` // reassembly and proving
	Tables  []string        `json:"-"` // tables that the shop put its own file in place of
	Rules   []RuleUsed      `json:"-"` // defaults that decided something

	Advised    verdict.Name `json:"-"` // the choice of the verdict
	NotAdvised say.Text     `json:"-"` // why this way is not the advised one; "" where it is
	Cuts       bool         `json:"-"` // this way machines the truck

	ifLarge func() map[string]Next // see IfLarge

	WithoutEffect []say.Text `json:"-"` // sources of error that change nothing when doubled
}

// IfLarge plans, by bore, what is done where its seat comes out too large, from
// there. It takes a while. Bores are missing from which nothing goes on; nil
// where the plan has not been asked for chances, or cuts nothing.
func (p *Plan) IfLarge() map[string]Next {
	if p.ifLarge == nil {
		return nil
	}
	return p.ifLarge()
}

// What the rooms print, under the names that paper and command know.
type (
	Mesh   = mesh.Row
	Target = target.Row
	Shaft  = target.ShaftRow
	Truck  = target.TruckRow
)

// Seat is how one bore is bushed; Candidate is one bush with one way to make
// its seat.
type (
	Seat      = seat.Row
	Candidate = seat.Candidate
)

// Hole is what a picture of one bore needs, in mm in the frame of the job.
type Hole struct {
	Outline   [][2]float64 // worn outline
	Old       [2]float64   // old centre
	OldRadius float64
	Target    [2]float64
	SeatR     float64 // 0 where the bore is not bushed
	BoreR     float64
	Points    [][2]float64 // probed
	Residuals []float64    // mm, per point
	LeftOut   []int        // points left out
	UMM       float64
}

// RuleUsed is a default that decided something.
type RuleUsed struct {
	Name, What string
	Value      say.Text
	Source     string
}

// valueOf is what a rule says, one figure or two, as it stands in its table.
func valueOf(r table.Rule) say.Text {
	figures := []float64{r.Low}
	if !math.IsNaN(r.High) {
		figures = append(figures, r.High)
	}
	return say.Row(9, strings.TrimPrefix(r.Unit, "-"), " to ", figures...).Trim().Text()
}
