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
	var t Time
	for _, o := range r.Operations {
		if o.Minutes > 0 && !o.Kind.Rebuilds() {
			t.Minutes += toATenth(o.Minutes)
		}
	}
	for _, s := range r.Setups {
		if s.Clamping {
			t.Setups++
		}
	}
	return t
}

// Hours is what a route takes: set-ups x hours of one + minutes / 60 + hours of
// stripping and rebuilding. All in hours but Minutes.
func (t Time) Hours(setUp, stripAndRebuild float64) float64 {
	return float64(t.Setups)*setUp + t.Minutes/60 + stripAndRebuild
}
