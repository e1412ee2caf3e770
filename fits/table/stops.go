package table

import "fmt"

// A StopRule is one reason that forbids machining. Accept says whether a job
// may take it upon itself; Instead says what is right where it may not; Owner is
// the reason as an owner is told it, to stand after "since".
type StopRule struct {
	Name, What, Instead, Owner, Source, Address string
	Accept                                      bool
}

// Stops reads the built-in table "stops", in its order. No shop can replace
// it: what may be accepted is not a matter of a shop's own file.
func Stops() ([]StopRule, error) {
	t, err := builtIn("stops")
	if err != nil {
		return nil, err
	}
	var out []StopRule
	for _, row := range t.Rows {
		s := StopRule{Name: row.Get("rule"), What: row.Get("what"), Instead: row.Get("instead"), Owner: row.Get("owner"), Source: row.Source(),
			Address: row.Address()}
		switch row.Get("accept") {
		case "yes":
			s.Accept = true
		case "no":
		default:
			return nil, fmt.Errorf("%s: accept: %q is neither yes nor no", row.Address(), row.Get("accept"))
		}
		out = append(out, s)
	}
	return out, nil
}
