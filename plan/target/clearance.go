package target

import (
	"fmt"
	"math"
)

// Clearances returns the least and most diametral running clearance in mm that
// a finished bore may have, before its bush is chosen:
//
//	least = max(overJournal, mustPass + room - journal), most = accepted
//
// mustPass is the largest thing that goes through the bore on assembly, 0 for
// nothing but the journal. Where that needs more clearance than is accepted
// both are that clearance, and the error says so: the plan can go on with it.
func Clearances(journal, mustPass, overJournal, room, accepted float64) (least, most float64, err error) {
	least, most = overJournal, accepted
	if mustPass > 0 {
		least = math.Max(least, mustPass+room-journal)
	}
	if least > most {
		return least, least, fmt.Errorf("what has to pass through the bore (%.3f mm) asks for %.0f um of running clearance over the journal of %.3f mm; %.0f is the most that is accepted", mustPass, least*1000, journal, most*1000)
	}
	return least, most, nil
}
