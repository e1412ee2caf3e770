package seat

// Rule is the rule of judgement that a reason rests on, by name, and the figure
// with which the candidate would pass that question; "" where it rests on what
// must be, or on no single rule. now is the figure in force. A rule about metal
// left, tension or what must pass is never one.
func (f Fail) Rule(now func(name string) float64) (name string, want float64) {
	const beyond = 1.001 // so that the last digit does not stop it again
	switch f.What {
	case pressTooHeavy:
		name = "light_press_share"
		return name, now(name) * f.Have / f.Want * beyond
	case tooShort:
		name = "short_seat_share"
		return name, now(name) * f.Have / f.Want / beyond
	}
	return "", 0
}
