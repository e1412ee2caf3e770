package job

// AsksOhms says whether the insulation of the wheels can pass for a worn hole:
// not where no current runs in the axles and no wheel is said to be insulated.
func (j *Job) AsksOhms() bool {
	if j.Chassis.Current != "none" {
		return true
	}
	for _, s := range j.Shafts {
		if s.Insulated == "left" || s.Insulated == "right" {
			return true
		}
	}
	return false
}
