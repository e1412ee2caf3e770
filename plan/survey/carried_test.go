package survey

import (
	"maps"
	"math"
	"os"
	"slices"
	"strconv"
	"testing"

	"rebush/plan/world"
)

// carriedTrucks is how many trucks are surveyed; TRUCKS asks for more.
func carriedTrucks(t *testing.T, usual int) int {
	t.Helper()
	v := os.Getenv("TRUCKS")
	if v == "" {
		return usual
	}
	n, err := strconv.Atoi(v)
	if err != nil || n < 1 {
		t.Fatalf("TRUCKS is %q, not a number of trucks", v)
	}
	return n
}

// carriedRow is how the old centres of one kind came out against the truth.
type carriedRow struct {
	n, ellipse, along float64 // centres; within the 95 % ellipse; within 2u along its major axis
	off, u            float64 // sums of squares, mm^2: of the error, of u
}

func (r *carriedRow) add(dx, dy float64, cov [2][2]float64) {
	i, u := inverse2(cov), LargestU(cov)
	major := math.Atan2(2*cov[0][1], cov[0][0]-cov[1][1]) / 2
	sin, cos := math.Sincos(major)
	r.n++
	if dx*(i[0][0]*dx+2*i[0][1]*dy)+dy*i[1][1]*dy <= 5.991 { // chi-square, 2 degrees of freedom, 0.95
		r.ellipse++
	}
	if math.Abs(dx*cos+dy*sin) <= 2*u {
		r.along++
	}
	r.off += dx*dx + dy*dy
	r.u += u * u
}

// kindOf is in a word what an old centre rests on.
func kindOf(h Hole) string {
	switch h.Method {
	case ByOutline, ByArc, ByConsensus:
		return "points"
	case ByDiameters:
		if h.Bore.PinGoes.Given() {
			return "pins"
		}
		return "diameters"
	}
	return h.Method.String()
}

// depthBand is how deep a hole has worn.
func depthBand(b *world.Bore) string {
	switch {
	case b.Repaired:
		return "repaired before"
	case b.Hole.Depth < 0.008:
		return "not worn"
	case b.Hole.Depth < 0.030:
		return "under 0.030"
	case b.Hole.Depth < 0.080:
		return "0.030 to 0.080"
	case b.Hole.Depth < 0.150:
		return "0.080 to 0.150"
	}
	return "over 0.150"
}

// TestCarriedSurvey holds what is stated of old centres to trucks whose old centres
// are known: for every kind of evidence and every depth of wear the 95 % ellipse,
// and 2u along its major axis, hold 93 to 97 of 100, within 3 standard deviations
// of what so few holes scatter; two holes of a shaft are no two draws. Left out are
// holes that somebody moved without a word, which no measuring tells.
func TestCarriedSurvey(t *testing.T) {
	trucks := carriedTrucks(t, 60)
	rows := map[string]*carriedRow{}
	dir := t.TempDir()
	for seed := range uint64(trucks) {
		w := world.Truck(seed+7000, world.Options{})
		j, err := w.Read(dir)
		if err != nil {
			t.Fatal(err)
		}
		tools, err := ReadInstruments(j.Shop.Tables, j.Shop)
		if err != nil {
			t.Fatal(err)
		}
		holes, _ := Holes(FromJob(j, tools, j.Shop.Rules, nil))
		for _, h := range holes {
			b := w.Truth.Bore(h.Name())
			if !h.Known || b.Repaired && !h.Bore.Repaired {
				continue
			}
			for _, name := range []string{"all", "by " + kindOf(h), "worn " + depthBand(b)} {
				if rows[name] == nil {
					rows[name] = &carriedRow{}
				}
				rows[name].add(h.Worn.O[0]-b.Centre[0], h.Worn.O[1]-b.Centre[1], h.Worn.Cov)
			}
		}
	}
	for _, name := range slices.Sorted(maps.Keys(rows)) {
		r := rows[name]
		t.Logf("%-44s %5.0f  ellipse %5.1f %%  2u %5.1f %%  rms error %5.1f um  u %5.1f um", name, r.n,
			100*r.ellipse/r.n, 100*r.along/r.n, 1000*math.Sqrt(r.off/r.n), 1000*math.Sqrt(r.u/r.n))
		for _, share := range []float64{r.ellipse / r.n, r.along / r.n} {
			if low, high := carriedBounds(r.n); share < low || share > high {
				t.Errorf("%s: %.1f %% covered of %.0f, want %.1f to %.1f", name, 100*share, r.n, 100*low, 100*high)
			}
		}
	}
	if all := rows["all"]; math.Sqrt(all.off/all.n) > 0.030 {
		t.Errorf("the rms error is %.1f um, more than 30", 1000*math.Sqrt(all.off/all.n))
	}
}

// carriedBounds are the shares that n of 93 to 97 % may come out as.
func carriedBounds(n float64) (low, high float64) {
	return 0.93 - 3*math.Sqrt(0.93*0.07/n), 0.97 + 3*math.Sqrt(0.97*0.03/n)
}
