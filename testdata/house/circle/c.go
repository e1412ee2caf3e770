package circle

// c closes the circle.
func (t) c() {
	f := A
	f()
	D()
}
