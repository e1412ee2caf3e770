package main

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"rebush/testdata"
)

// meshKeys are the figures that a row of mesh.csv asks for, by its words.
var meshKeys = []struct {
	words, key string
	worm       bool
}{
	{"transverse contact ratio, contact limited", "contact_ratio", false},
	{"transverse contact ratio", "contact_ratio_uncapped", false},
	{"operating pressure angle", "operating_angle_deg", false},
	{"radial backlash", "radial_backlash_mm", false},
	{"normal backlash, ZI worm", "normal_backlash_mm", true},
	{"normal backlash", "normal_backlash_mm", false},
	{"circumferential backlash", "backlash_mm", false},
	{"standard centre distance", "standard_centre_mm", false},
	{"tip-root clearance", "tip_clearance_mm", false},
	{"angular backlash of gear 1", "play_deg/0", false},
	{"angular backlash of gear 2", "play_deg/1", false},
	{"zero-backlash centre distance, ZI", "tight_centre_mm", true},
	{"zero-backlash centre distance", "tight_centre_mm", false},
	{"worm lead angle", "lead_angle_deg", true},
	{"working pressure angle, ZI", "operating_angle_deg", true},
}

// TestMeshRows asks the rows of mesh.csv that are a pair of gears.
func TestMeshRows(t *testing.T) {
	passed, left := 0, []string{}
next:
	for _, r := range testdata.All[checkRow](t, "mesh.csv") {
		q := r["quantity"]
		for _, k := range meshKeys {
			if !strings.HasPrefix(q, k.words) || strings.Contains(q, " for ") || strings.Contains(q, "recommended") {
				continue
			}
			in := map[string]string{}
			for _, part := range strings.Split(r["inputs"], ";") {
				name, v, _ := strings.Cut(strings.TrimSpace(part), "=")
				in[name] = v
			}
			words := spurWords(in)
			if k.worm {
				words = wormWords(q, in)
			}
			m := asked(t, words...)
			got := at(m, k.key)
			if key, i, ok := strings.Cut(k.key, "/"); ok {
				got = m[key].([]any)[number1(i)].(float64)
			}
			if within(t, r["id"]+" "+q, got, number(t, r["expected"]), number(t, r["tolerance"])) {
				passed++
			}
			continue next
		}
		left = append(left, r["id"])
	}
	t.Logf("mesh.csv: %d rows passed, no pair of gears: %v", passed, left)
	if passed < 28 {
		t.Errorf("%d rows passed, want 28", passed)
	}
}

func number1(s string) int { return int(s[0] - '0') }

func spurWords(in map[string]string) []string {
	w := []string{"mesh", "spur", "--teeth", in["z1"] + "," + in["z2"], "--angle", in["alpha"]}
	add := func(flag, v string) {
		if v != "" {
			w = append(w, flag, v)
		}
	}
	add("--module", in["m"])
	add("--dp", strings.TrimSuffix(in["P"], " per inch"))
	if in["x1"] != "" || in["x2"] != "" {
		add("--shift", in["x1"]+","+in["x2"])
	}
	if in["da1"] != "" {
		add("--tips", in["da1"]+","+in["da2"])
	}
	add("--thinned", in["T"])
	add("--centre", in["a"])
	add("--centre", in["C"])
	return w
}

func wormWords(q string, in map[string]string) []string {
	form := "throated"
	if strings.Contains(q, "straight-cut") || strings.Contains(q, "spur wheel") ||
		strings.Contains(q, "normal module") {
		form = "straight"
	}
	module := in["mx"] + in["mn"]
	if strings.Contains(q, "helical wheel") {
		// The row gives the normal module of the worm, the option is the axial
		// one of its wheel.
		form = "helical"
		d1, _ := strconv.ParseFloat(in["d1"], 64)
		mn, _ := strconv.ParseFloat(in["mn"], 64)
		module = strconv.FormatFloat(mn/math.Cos(math.Asin(mn/d1)), 'f', -1, 64)
	}
	w := []string{"mesh", "worm", "--wheel-form", form}
	add := func(flag, v, otherwise string) {
		if v == "" {
			v = otherwise
		}
		if v != "" {
			w = append(w, flag, v)
		}
	}
	add("--module", module, "")
	add("--shaft-angle", in["Sigma"], "")
	add("--dp", in["DP"], "")
	add("--starts", in["z1"]+in["starts"], "1")
	add("--teeth", in["z2"], "24")
	add("--worm-diameter", in["d1"]+in["Dw"], "")
	add("--angle", in["alpha_n"], "20")
	add("--centre", in["a"], "")
	return w
}

func pointsFile(t *testing.T, points string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "points.csv")
	text := strings.ReplaceAll(strings.ReplaceAll(points, ";", "\n"), " ", ",") + "\n"
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// TestCircleRows asks every circle of own/circles.csv: its columns to 1e-6 of
// the radius and the nine figures that are printed.
func TestCircleRows(t *testing.T) {
	rows, figures := 0, 0
	for _, r := range testdata.Rows[checkRow](t, "own/circles.csv") {
		path, ok := pointsFile(t, r["points"]), true
		for fit, col := range map[string]string{"least": "lsci", "kasa": "kasa", "pratt": "pratt", "taubin": "taubin",
			"zone": "mzci", "circumscribed": "mcci", "inscribed": "mici"} {
			if r[col+"_x"] == "" {
				continue
			}
			m := asked(t, "circle", path, "--fit", fit)
			radius := col + "_r"
			if fit == "zone" {
				radius = "mzci_rmid"
			}
			R := number(t, r[radius])
			for key, column := range map[string]string{"x_mm": col + "_x", "y_mm": col + "_y", "radius_mm": radius} {
				ok = within(t, fmt.Sprint(r["id"], " ", fit, " ", key), at(m, key), number(t, r[column]),
					1e-6*math.Max(R, 1)) && ok
				figures++
			}
			if fit == "least" {
				ok = within(t, r["id"]+" rms", at(m, "rms_mm"), number(t, r["lsci_rms"]), 1e-6*math.Max(R, 1)) && ok
			}
		}
		if ok {
			rows++
		}
	}
	t.Logf("circles.csv: %d rows passed, %d figures", rows, figures)
	if rows != 17 {
		t.Errorf("%d rows passed, want 17", rows)
	}
}

// TestWornBoreRows asks for the old centre of every bore of wornbores.csv that
// has a tolerance.
func TestWornBoreRows(t *testing.T) {
	passed := 0
	for _, r := range testdata.Rows[checkRow](t, "own/wornbores.csv") {
		if r["tol_centre_mm"] == "" {
			continue
		}
		m := asked(t, "circle", pointsFile(t, r["points"]), "--journal", fmt.Sprint(2*number(t, r["r"])), "--worn-to",
			r["wear_side_hint_deg"], "--spread", r["noise_um"]+" um")
		off := math.Hypot(at(m, "x_mm")-number(t, r["x0"]), at(m, "y_mm")-number(t, r["y0"]))
		if within(t, r["id"]+": distance from the true centre", off, 0, number(t, r["tol_centre_mm"])) {
			passed++
		}
	}
	t.Logf("wornbores.csv: %d rows passed", passed)
	if passed != 149 {
		t.Errorf("%d rows passed, want 149", passed)
	}
}
