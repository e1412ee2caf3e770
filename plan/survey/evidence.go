package survey

import (
	"math"

	"rebush/fits/say"
)

// Ranks of evidence, best first.
const (
	RankSeat     = 1 + iota // sound seat of the old bush
	RankOutline             // probed wall, journal and side known
	RankArc                 // probed wall without journal or side
	RankReadings            // diameters, pins, walls, spans
	RankOther               // the other plate's bore of the same shaft
	RankDrawing             // drawing or sister through a frame
)

// Evidence is one way of saying where the old centre was.
type Evidence struct {
	Rank   int
	Method Method
	Centre [2]float64    // old centre, mm
	Cov    [2][2]float64 // mm^2
	R, RU  float64       // old radius and its u, mm; 0 where this tells nothing of it
	Bore   *WornBore     // where this tells of the wear too
	Parts  []Part        // of Cov, what other evidence may share
	// Doubtful evidence is not to be answered from with confidence; Words say
	// why. Words of sure evidence are cautions.
	Doubtful bool
	Words    []say.Text
}

// U returns the largest semi-axis of the standard ellipse, mm.
func (e Evidence) U() float64 { return LargestU(e.Cov) }

func (e *Evidence) doubt(format string, args ...any) {
	e.Doubtful = true
	e.say(format, args...)
}

func (e *Evidence) say(format string, args ...any) {
	e.Words = append(e.Words, say.F(format, args...))
}

// SoundSeat is the seat of the old bush, bush out: its centre is the centre. It
// tells nothing of the bore that was in the bush.
func SoundSeat(centre [2]float64, uCentre float64) Evidence {
	return Evidence{Rank: RankSeat, Method: BySeat, Centre: centre, Cov: round2(uCentre)}
}

// OtherPlate is the other plate's bore of the same shaft, mapped through the
// frame: cov of its centre, and u of what two drillings differ by (0.02
// drilled together, else 0.05: judgement).
func OtherPlate(centre [2]float64, cov [2][2]float64, uDrilling float64) Evidence {
	return Evidence{Rank: RankOther, Method: ByOtherPlate, Centre: centre, Cov: add2(cov, round2(uDrilling))}
}

// FromFrame is a centre known on a drawing or a sister chassis (method), mapped
// by a frame of unworn features; u is how far the drawing itself may be out.
func FromFrame(method Method, f Frame, at [2]float64, u float64) Evidence {
	c, cov := f.Map(at)
	e := Evidence{Rank: RankDrawing, Method: method, Centre: c, Cov: add2(cov, round2(u))}
	e.Words = append(e.Words, f.Words...)
	return e
}

func round2(u float64) [2][2]float64 { return [2][2]float64{{u * u, 0}, {0, u * u}} }

func add2(a, b [2][2]float64) [2][2]float64 {
	for i := range a {
		for j := range a[i] {
			a[i][j] += b[i][j]
		}
	}
	return a
}

func scale2(a [2][2]float64, k float64) [2][2]float64 {
	for i := range a {
		for j := range a[i] {
			a[i][j] *= k
		}
	}
	return a
}

// alongAcross turns variances along and across a direction into a covariance.
func alongAcross(along, across, dir float64) [2][2]float64 {
	sin, cos := math.Sincos(dir)
	return [2][2]float64{
		{along*cos*cos + across*sin*sin, (along - across) * sin * cos},
		{(along - across) * sin * cos, along*sin*sin + across*cos*cos},
	}
}
