package chance

import (
	"rebush/fits/dim"
	"rebush/fits/say"
)

// Row is what is printed of the chance.
type Row struct {
	FirstTimeRight  float64       `json:"first_time_right"`
	Low             float64       `json:"low"`
	High            float64       `json:"high"`
	Saved           float64       `json:"saved"`
	Lost            float64       `json:"lost"`
	Trials          int           `json:"trials"`
	Seed            uint64        `json:"seed"`
	Causes          []Cause       `json:"causes"`
	Improve         []Improvement `json:"improve"`
	MostSensitiveTo []say.Text    `json:"most_sensitive_to"`
	RestsOn         []say.Text    `json:"rests_on"` // what of the shop's record it rests on; none: the rules alone
}

// Improvement is one change and what it would gain on the same random numbers.
type Improvement struct {
	Change         say.Text `json:"change"`
	FirstTimeRight float64  `json:"first_time_right"`
	Gain           float64  `json:"gain"`
}

// Row is the result with what would improve it and what it hangs on.
func (r Result) Row(gains []Gain, most []say.Text) *Row {
	out := &Row{FirstTimeRight: dim.Sig9(r.FirstTimeRight), Low: dim.Sig9(r.Low), High: dim.Sig9(r.High),
		Saved: dim.Sig9(r.Saved), Lost: dim.Sig9(r.Lost), Trials: r.Trials, Seed: r.Seed,
		Causes: append([]Cause{}, r.Causes...), Improve: []Improvement{}, MostSensitiveTo: append([]say.Text{}, most...),
		RestsOn: []say.Text{}}
	for _, g := range gains {
		out.Improve = append(out.Improve, Improvement{g.Change, g.FirstTimeRight, dim.Sig9(g.Gain)})
	}
	return out
}
