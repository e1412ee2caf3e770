package circle

type t struct{}

// B calls a method that stands in c.go.
func B() { t{}.c() }
