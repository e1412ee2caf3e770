package chance

import (
	"rebush/fits/finding"
	"rebush/fits/say"
)

// RuleChance is raised where no trials can be run.
const RuleChance finding.Rule = "chance/chance"

// causes are the checks in the words of the bench, to stand after the name of
// the bore or of the mesh.
var causes = [checks]string{
	kSlip:       "a slip: a tool grabs, or a dial is misread",
	kCleanup:    "seat does not clean up the wear",
	kPart:       "plug or sleeve leaves wear or does not hold",
	kLoose:      "press too loose",
	kTight:      "press too tight",
	kWall:       "too little metal left to edge",
	kCrack:      "wall cracks on pressing",
	kBoreSmall:  "finished bore too small",
	kBoreLarge:  "finished bore too large",
	kRunTight:   "axle too tight in its bore",
	kRunLoose:   "axle too loose in its bore",
	kMustPass:   "what must pass does not go through",
	kLean:       "shaft leans in the mesh",
	kNoBacklash: "no backlash at the tightest tooth",
	kMeshTight:  "gears too close",
	kMeshLoose:  "gears too far apart",
	kContact:    "contact ratio too low",
}

// cause says in the words of the bench what failed and where.
func (m *Model) cause(check, place int) say.Text {
	name := ""
	if check >= kLean {
		name = m.Gears[place].Name
	} else {
		name = m.Bores[place].Name
	}
	return say.F("%s: %s", name, causes[check])
}
