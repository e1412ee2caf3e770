// Package choice picks what is done at each hole of a truck, the holes together:
// bushes of a drawer that holds so many, tools that several holes share, a
// clamping more or less.
//
// It knows no bushes and no tools, only what each offer costs, how likely it is
// and what it uses up. Everything is closed form: trials choose between ways,
// never between seats.
package choice

// Offer is one thing that can be done at one hole.
type Offer struct {
	Mend    int      // how grave, 0 the least; of seat.MendsRising
	Key     string   // what it is, for ties: never two alike at one hole
	Bush    string   // whose stock it takes one of, "" none
	Chance  float64  // that it comes right, of this hole alone
	Minutes float64  // of its own, tool changes not counted
	Parts   float64  // money that goes in
	Spoilt  float64  // money that is lost with a spoilt bush
	Setups  int      // clampings beside that of the truck
	Tools   []string // that it needs: one that serves several holes is changed once
	Turned  int      // parts that have to be turned
	Glued   int      // bushes that compound alone holds
	Poor    bool     // taken only where nothing else serves
	LeftMM  float64  // metal left to the nearest edge, +Inf none near
}

// Hole is one hole with what can be done at it.
type Hole struct {
	Name, Axle string
	Offers     []Offer
}

// Rules are what offers are weighed by.
type Rules struct {
	Rate          float64 // money per hour; 1 where no rate is given: then cost is hours
	SetupHours    float64 // per clamping
	Priced        bool    // Rate is money: parts count
	ToolMinutes   float64 `rule:"minutes_tool_change"`
	SpoiltMinutes float64 `rule:"minutes_failed_seat"` // of a seat that does not come right
	Tie           float64 `rule:"seat_chance_tie"`     // chances that differ by no more are the same
	MetalTie      float64 `rule:"seat_metal_tie_mm"`   // and so is metal, mm
}

// Cost is what a set of offers costs that are carried out together, in money,
// or in hours where no rate is given: minutes, changes of distinct tools and
// clampings at the rate, what goes in, and what is expected to be spoilt.
//
// Source: METHODS.md 1.
func Cost(offers []Offer, r Rules) float64 {
	all, seen := none(), map[string]bool{}
	for i := range offers {
		all = all.and(tallyOf(&offers[i], r))
		for _, t := range offers[i].Tools {
			seen[t] = true
		}
	}
	all.tools = len(seen)
	return all.cost(r)
}
