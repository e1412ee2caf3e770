package circle

// A calls B, which calls C.
func A() { B() }
