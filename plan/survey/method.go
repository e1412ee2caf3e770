package survey

// Method is a way of finding an old centre.
type Method int

// The methods. The first is none: nothing tells.
const (
	NoMethod     Method = iota
	BySeat              // the bush is out and its seat is sound
	ByOutline           // wall points all round and the journal
	ByArc               // wall points opposite the wear, without the journal
	ByConsensus         // wall points, without journal or side
	ByDiameters         // the largest and the smallest diameter
	ByWalls             // four walls and the old diameter
	BySpans             // distances to other bores
	ByPin               // a pin held against the unworn wall
	ByFarWall           // the unworn wall itself
	ByOtherPlate        // the other plate's bore of the same shaft
	ByDrawing           // a drawing, through unworn features
	BySister            // a sister chassis, through unworn features
)

var methodWords = [...]string{"", "the sound seat of the old bush", "probed wall", "unworn arc of the probed wall",
	"what most of the probed points agree on", "widest and narrowest", "four walls", "edge to edge",
	"a pin held against the unworn wall", "the unworn wall opposite the wear",
	"the other plate's bore of this shaft", "the drawing", "the sister chassis"}

// String is the method in words of the bench.
func (m Method) String() string { return methodWords[m] }
