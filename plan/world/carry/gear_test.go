package carry

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"rebush/plan/world"
)

// published are the rows of the checks, by their number.
func published(t *testing.T) map[string]float64 {
	t.Helper()
	f, err := os.Open("../../../testdata/checks/mesh.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]float64{}
	for _, row := range rows[1:] {
		if out[row[0]], err = strconv.ParseFloat(strings.TrimSpace(row[3]), 64); err != nil {
			t.Fatal(err)
		}
	}
	return out
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %.6f, want %.6f within %g", what, got, want, within)
	}
}

// TestGearsPublished holds what carries plans out to figures that others printed
// (testdata/checks/mesh.csv names them).
func TestGearsPublished(t *testing.T) {
	row := published(t)
	g := &world.Gear{Teeth: &world.Teeth{Module: 3, Pressure: 20, Wheel: 24, Pinion: 12, Shift: [2]float64{0.36, 0.6}},
		Tip: [2]float64{79.4, 44.84}}
	near(t, "operating pressure angle, degrees", working(g, 56.5)/degree, row["mesh-002"], 5e-5)
	near(t, "distance without backlash", unplayed(g), row["mesh-031"], 5e-4)
	near(t, "contact ratio", ratio(g, 56.5), row["mesh-032"], 5e-4)
	// A path of contact of 39.458 in base pitches of 8 pi cos 20.
	path := &world.Gear{Teeth: &world.Teeth{Module: 8, Pressure: 20, Wheel: 60, Pinion: 20}, Tip: [2]float64{496, 176}}
	near(t, "path of contact", ratio(path, 320)*8*math.Pi*math.Cos(20*degree), row["mesh-037"], 1e-3)
	// Distance for each backlash round the circle, near the standard distance.
	far := 320.001
	around := path.Teeth.Backlash(far) / math.Cos(working(path, far))
	near(t, "distance for backlash", 0.001/around, row["mesh-038"], 5e-4)
	// The lead angles of two worms: the angle at which a wheel of theirs works has
	// the cosine of it times that of the pressure angle.
	for id, w := range map[string]world.Screw{"mesh-041": {Module: 3, Starts: 2, Diameter: 44, Wheel: 30},
		"mesh-044": {Module: 25.4 / 6, Starts: 3, Diameter: 50.8, Wheel: 30}} {
		near(t, id, math.Acos(math.Cos(working(&world.Gear{Screw: &w}, 0)))/degree, row[id], 5e-3)
	}
}

// TestContactOfWorms: by hand. Module 0.5, one start on 6 mm, 24 teeth, at the
// standard distance of 9: lead 4.7636 degrees, axial angle 20.0639, rolling
// radius 6, its base 5.6359, way to the base circle 2.0583. The thread stands 0.5
// over the pitch line, 1.4575 along the line of action; the tips at 6.5 give
// sqrt(6.5^2 - 5.6359^2) = 3.2383, beyond the pitch point 1.1800; 2.6375 over
// the pitch pi 0.5 cos 20.0639 = 1.4755 are 1.7875 pitches.
func TestContactOfWorms(t *testing.T) {
	g := &world.Gear{Screw: &world.Screw{Module: 0.5, Pressure: 20, Starts: 1, Wheel: 24, Diameter: 6}, Tip: [2]float64{13, 7}}
	near(t, "helical", ratio(g, 9), 1.7875, 5e-4)
	near(t, "0.1 farther loses 0.1 / sin", (ratio(g, 9)-ratio(g, 9.1))*1.4755, 0.1/math.Sin(20.0639*degree), 5e-4)
	g.Screw.Straight = true
	if r := ratio(g, 9.0753); r < 1.3 || r > ratio(g, 9) { // beside the middle the thread stands less high
		t.Errorf("straight: %.3f", r)
	}
}
