package press

// Warm is a press between two metals that grow unlike. Expansions are in
// 1e-6/K, temperatures in C; the interference U20 (mm, diametral) is that at
// 20 C. Linear expansion throughout.
type Warm struct {
	D, U20              float64
	HousingExp, BushExp float64
}

// At is the diametral interference at a temperature, mm; below zero is play:
//
//	U = U20 + D (aBush - aHousing)(T - 20)
func (w Warm) At(t float64) float64 {
	return w.U20 + w.D*(w.BushExp-w.HousingExp)*1e-6*(t-20)
}

// LooseAt is the temperature at which the press is gone, C:
//
//	T = 20 + U20 / (D (aHousing - aBush))
//
// It lies below 20 where the bush grows more than the housing. False where the
// two grow alike, or where it would be colder than cold can be.
func (w Warm) LooseAt() (float64, bool) {
	d := (w.HousingExp - w.BushExp) * 1e-6 * w.D
	if d == 0 {
		return 0, false
	}
	t := 20 + w.U20/d
	return t, t > -273.15 && t < 1e6
}

// Smoothing is what the roughness of both faces takes off a press, in the unit
// of the two Rz:
//
//	factor (RzBush + RzSeat)
//
// It does not serve porous bronze, whose Rz means nothing here.
// Source: DIN 7190, by METHODS.md 5, which says why the greater factor stays.
func Smoothing(factor, rzBush, rzSeat float64) float64 { return factor * (rzBush + rzSeat) }

// Left is the interference that is left for holding after smoothing, never
// below 0.
func Left(interference, smoothing float64) float64 { return max(0, interference-smoothing) }
