package job

// Now is a hole as it has been worked since it was surveyed: what stands in the
// plate in place of the worn hole. Lengths in mm, each with its standard
// uncertainty. A job file does not say it; it follows from sizes as made.
type Now struct {
	SeatMM, USeatMM float64    // diameter of the seat
	At              [2]float64 // its middle, frame of the job
	UAtMM           float64    // along each axis
	Placed          bool       // it stands where a bush may stand
	Recut           bool       // its seat is cut anew all the same

	Bush          string // code of the bush in it, "" none
	BoreMM, UBore float64
	SideMM        float64 // what that bush takes of the side play
	Done          bool    // that bush stays and its bore is finished
	Out           bool    // that bush comes out
}

// Line is where the sizes as made of a bore stand in the job: the path of one.
func (m Made) Line(figure string) string { return "made/" + m.Bore + "/" + figure }

// MadeAt are the sizes as made of a bore; false where none are given.
func (j *Job) MadeAt(bore string) (Made, bool) {
	for _, m := range j.Made {
		if m.Bore == bore {
			return m, true
		}
	}
	return Made{}, false
}
