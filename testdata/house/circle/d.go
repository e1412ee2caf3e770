package circle

// D is called and calls nobody.
func D() {}
