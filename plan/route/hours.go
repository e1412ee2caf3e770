package route

// rebuilds are the kinds of operation that belong to stripping and rebuilding
// a truck, whose hours a shop gives as one figure.
var rebuilds = map[Kind]bool{KindStrip: true, KindLineUp: true, KindAssemble: true, KindWheels: true}

// Rebuilds says whether a kind of operation is paid by the hours of stripping
// and rebuilding.
func (k Kind) Rebuilds() bool { return rebuilds[k] }

// Time is what a route takes beside stripping and rebuilding.
type Time struct {
	Minutes float64 // of its operations, each as it is printed; aids are made in them
	Setups  int     // clampings
}

// Time sums a route.
func (r Route) Time() Time {
	var rows []Row
	for _, o := range r.Operations {
		rows = append(rows, o.row())
	}
	return TimeOf(rows, r.Setups)
}

// TimeOf sums a route as it is printed.
func TimeOf(rows []Row, setups []Setup) Time {
	var t Time
	for _, o := range rows {
		if o.Minutes != nil && !o.Kind.Rebuilds() {
			t.Minutes += *o.Minutes
		}
	}
	for _, s := range setups {
		if s.Clamping {
			t.Setups++
		}
	}
	return t
}
