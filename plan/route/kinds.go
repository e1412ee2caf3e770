package route

// Kind is what sort of work an operation is: what is done, not with which
// tool. The words are those of the JSON key operations[].kind.
type Kind string

// The kinds, in the order in which a route meets them.
const (
	KindLookOver     Kind = "look over"     // the casting, where nobody has said that it is sound
	KindStrip        Kind = "strip"         // the truck, as far as its bores need
	KindTakeOut      Kind = "take out"      // an old bush
	KindTryFast      Kind = "try fast"      // does an old bush that stays sit fast
	KindMeasureAgain Kind = "measure again" // before the first cut, where a move is long
	KindAid          Kind = "make aid"      // jig plate, slip bushes, rods
	KindScrap        Kind = "scrap"         // a trial hole
	KindSetUp        Kind = "set up"
	KindSpot         Kind = "spot"   // the start of a hole in solid metal
	KindLocate       Kind = "locate" // the cut that makes the new place
	KindOpen         Kind = "open"   // towards the size before the last tool
	KindChamfer      Kind = "chamfer"
	KindSizeSeat     Kind = "size seat"
	KindGauge        Kind = "gauge"
	KindWash         Kind = "wash"
	KindTurn         Kind = "turn"     // a bush
	KindFace         Kind = "face"     // a bush
	KindSetPart      Kind = "set part" // a plug or a sleeve
	KindFlush        Kind = "face flush"
	KindPress        Kind = "press"
	KindCure         Kind = "cure"
	KindOil          Kind = "oil" // the oil way through a new bush
	KindTryMesh      Kind = "try mesh"
	KindSizeBore     Kind = "size bore"
	KindLineUp       Kind = "line up"
	KindAssemble     Kind = "assemble"
	KindWheels       Kind = "wheels"
)

// Kinds lists every kind once, in the order of a route.
func Kinds() []Kind {
	return []Kind{KindLookOver, KindStrip, KindTakeOut, KindTryFast, KindMeasureAgain, KindAid, KindScrap, KindSetUp, KindSpot,
		KindLocate, KindOpen, KindChamfer, KindSizeSeat, KindGauge, KindWash, KindTurn, KindFace, KindSetPart,
		KindFlush, KindPress, KindCure, KindOil, KindTryMesh, KindSizeBore, KindLineUp, KindAssemble, KindWheels}
}

// Machine is what turns the tools.
type Machine string

// The machines. The tool of the last two does not stand on a figure by itself.
const (
	Mill       Machine = "mill"
	OnLathe    Machine = "lathe"
	DrillPress Machine = "drill press"
	ByHand     Machine = "hand"
)

// Op is how a tool cuts, as the cutting tables name it.
type Op string

// The ways to cut that a route asks of.
const (
	OpDrill       Op = "drill"
	OpReam        Op = "ream"
	OpBore        Op = "bore"
	OpPlunge      Op = "plunge"
	OpCountersink Op = "countersink"
)

// What stands in the place of a set-up's letter where nothing is clamped under
// a spindle.
const (
	onBench   = "bench"
	atPress   = "press"
	atLathe   = "lathe"
	oilWays   = "oil"
	finishing = "finish"
)
