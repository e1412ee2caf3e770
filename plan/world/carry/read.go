package carry

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// length is a length in mm as the JSON has it: decimal text, or null, which is
// NaN.
type length float64

func (l *length) UnmarshalJSON(data []byte) error {
	s := strings.Trim(string(data), `"`)
	if s == "null" {
		*l = length(math.NaN())
		return nil
	}
	f, err := strconv.ParseFloat(s, 64)
	*l = length(f)
	return err
}

func (l length) known() bool { return !math.IsNaN(float64(l)) }

// place is a place in mm; spread is least and most.
type place [2]length

type spread struct{ Min, Max length }

// middle of a spread.
func (s spread) middle() float64 { return float64(s.Min+s.Max) / 2 }

// Plan is what is read of a plan.
type Plan struct {
	OK         bool
	Way        string
	Survey     []Surveyed
	Mesh       []Mesh
	Targets    []Target
	Seats      []Seat
	Operations []Operation
	Chance     *struct {
		Right  float64 `json:"first_time_right"`
		Causes []struct {
			Cause string
			Share float64
		}
	}
	Findings []struct{ Level, Rule, Where string }
	Ledger   map[string]struct{ Value json.RawMessage }
}

// Surveyed is an old centre as the plan has it.
type Surveyed struct {
	Bore   string
	Found  *place      `json:"found_mm"`
	Centre *place      `json:"centre_mm"`
	U      *length     `json:"centre_u_mm"`
	Cov    *[3]float64 `json:"centre_cov_mm2"` // xx, xy, yy
	Method string
}

// Mesh is a pair of gears as the plan has it.
type Mesh struct {
	Gear    string
	Target  *length    `json:"target_centre_mm"`
	U       *length    `json:"u_mm"`
	Window  *[2]length `json:"backlash_window_mm"`
	Trusted bool
}

// Target is where a hole goes.
type Target struct {
	Bore string
	At   *place `json:"target_mm"`
}

// Seat is how a hole is bushed.
type Seat struct {
	Bore, Mend, Bush, Tool, Second, Finish string
	HeldBy                                 string   `json:"held_by"`
	Seat                                   *spread  `json:"seat_mm"`
	Cleanup                                *length  `json:"cleanup_mm"`
	Interference                           *spread  `json:"interference_um"`
	Hoop                                   *float64 `json:"hoop_mpa"`
	HoopLimit                              *float64 `json:"hoop_limit_mpa"`
	MetalLeft                              *length  `json:"metal_left_mm"`
	Closure                                *spread  `json:"closure_um"`
	Finished                               *spread  `json:"bore_mm"`
	Running                                *spread  `json:"running_um"`
	Closed                                 *spread  `json:"closed_mm"`
	Expected                               *spread  `json:"expected_mm"`
	SeatAt                                 *place   `json:"seat_at_mm"`
	Offset                                 *place   `json:"offset_mm"`
}

// Operation is one step of the job.
type Operation struct {
	Setup, Kind, Bore, Tool string
	Limits                  *spread `json:"limits_mm"`
}

// Read takes a plan from its JSON.
func Read(data []byte) (*Plan, error) {
	p := &Plan{}
	if err := json.Unmarshal(data, p); err != nil {
		return nil, fmt.Errorf("carry: %w", err)
	}
	return p, nil
}

// figure is a figure of the ledger, NaN where it has none.
func (p *Plan) figure(key string) float64 {
	f, err := strconv.ParseFloat(strings.Trim(string(p.Ledger[key].Value), `"`), 64)
	if err != nil {
		return math.NaN()
	}
	return f
}

func (p *Plan) target(bore string) *Target {
	for i := range p.Targets {
		if p.Targets[i].Bore == bore && p.Targets[i].At != nil {
			return &p.Targets[i]
		}
	}
	return nil
}

func (p *Plan) surveyed(bore string) *Surveyed {
	for i := range p.Survey {
		if p.Survey[i].Bore == bore && p.Survey[i].Centre != nil {
			return &p.Survey[i]
		}
	}
	return nil
}

// clamping names the setting in which the seat of a hole is cut, "" for none.
func (p *Plan) clamping(bore string) string {
	for _, o := range p.Operations {
		if o.Kind == "size seat" && o.Bore == bore {
			return o.Setup
		}
	}
	return ""
}

// cuts says whether a new seat is cut for it; clearing, that it has to take the
// worn wall away; expected, that its bore is given a size.
func (s *Seat) cuts() bool     { return s.Mend != "renew" && s.Mend != "made to fit" }
func (s *Seat) clearing() bool { return s.Cleanup != nil && *s.Cleanup > 0 && s.Mend != "plug" }
func (s *Seat) expected() bool { return s.Expected != nil && s.Finish != "as delivered" }
