package main

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"rebush/testdata"
)

var (
	givenBy  = regexp.MustCompile(`\b([A-Za-z_]\w*)=(\d+(?:\.\d+)?(?:[eE][+-]?\d+)?)`)
	slash    = regexp.MustCompile(`\b(\d+(?:\.\d+)?)/(\d+(?:\.\d+)?)\b`)
	rowAs    = regexp.MustCompile(`as (PF-[\w.-]+)`)
	boss     = regexp.MustCompile(`seat radius ([\d.]+), outer radius ([\d.]+) mm, ligament ([\d.]+) x ([\d.]+)`)
	hole     = regexp.MustCompile(`hole radius ([\d.]+), outer radius ([\d.]+), ligament ([\d.]+)`)
	halfPln  = regexp.MustCompile(`edge distance ([\d.]+) x hole radius`)
	alphaOf  = regexp.MustCompile(`housing alpha ([\d.e-]+) bush alpha ([\d.e-]+)`)
	pressKey = []struct{ words, key string }{
		{"bush hoop stress at bore", "bush_hoop_mpa"}, {"von Mises at seat", "housing_mises_mpa"},
		{"hoop stress at OD", "edge_hoop_mpa"},
		{"hoop stress at seat", "seat_hoop_mpa"}, {"peak tensile", "housing_hoop_mpa"}, {"closure", "closure_um"},
		{"OD growth", "growth_um"},
		{"force", "force_n"}, {"torque", "torque_nmm"}, {"goes loose", "loose_at_c"},
		{"interference at", "warm_interference_um"},
		{"plateau pressure", "pressure_mpa"}, {"pressure limit", ""}, {"pressure", "pressure_mpa"},
	}
)

// pressWords turns the text of a row into the options of lookup press. ok is
// false where the row asks for something that is no press.
func pressWords(text string) (words []string, ok bool) {
	by := map[string][]string{}
	for _, g := range givenBy.FindAllStringSubmatch(text, -1) {
		by[g[1]] = append(by[g[1]], g[2])
	}
	pick := func(i int, names ...string) string {
		for _, n := range names {
			if v := by[n]; len(v) > 0 {
				return v[min(i, len(v)-1)]
			}
		}
		return ""
	}
	pairs := slash.FindAllStringSubmatch(text, -1)
	opt := map[string]string{"--bush-od": pick(0, "d"), "--bush-bore": pick(0, "di"),
		"--housing-od": pick(0, "D", "OD"),
		"--length":     pick(0, "L"), "--interference": pick(0, "U_diametral", "U", "U20"), "--friction": pick(0, "mu")}
	if opt["--bush-od"] == "" && len(pairs) > 0 {
		opt["--bush-bore"], opt["--bush-od"] = pairs[0][1], pairs[0][2]
		if len(pairs) > 1 {
			opt["--housing-od"] = pairs[1][2]
		}
	}
	times := func(a, b string) string {
		x, _ := strconv.ParseFloat(a, 64)
		y, _ := strconv.ParseFloat(b, 64)
		return strconv.FormatFloat(x*y, 'f', -1, 64)
	}
	if g := boss.FindStringSubmatch(text); g != nil {
		opt["--housing-od"], opt["--edge"] = times(g[2], "2"), times(g[3], g[4])
	}
	if g := hole.FindStringSubmatch(text); g != nil {
		opt["--bush-od"], opt["--housing-od"], opt["--edge"], opt["--interference"] = times(g[1], "2"),
			times(g[2], "2"), g[3], "0.001"
	}
	if g := halfPln.FindStringSubmatch(text); g != nil {
		k, _ := strconv.ParseFloat(g[1], 64)
		opt["--bush-od"], opt["--edge"], opt["--interference"] = "2", strconv.FormatFloat(k-1, 'f', 6, 64), "0.001"
	}
	if g := alphaOf.FindStringSubmatch(text); g != nil {
		opt["--expansion"], opt["--warm"] = times(g[2], "1e6")+","+times(g[1], "1e6"), "60"
	}
	for name, otherwise := range map[string]string{"--bush-bore": "0", "--length": "1"} {
		if opt[name] == "" {
			opt[name] = otherwise
		}
	}
	or := func(s, otherwise string) string {
		if s == "" {
			return otherwise
		}
		return s
	}
	opt["--bush"] = or(pick(0, "Eb", "E"), "100000") + "," + or(pick(0, "nb", "nu"), "0.3")
	if y := pick(0, "sigma_y"); y != "" && !strings.Contains(text, "no yield") {
		opt["--bush"] += "," + y
	}
	opt["--housing"] = or(pick(1, "Eh", "E"), "100000") + "," + or(pick(1, "nh", "nu"), "0.3")
	for name, v := range opt {
		if v != "" {
			words = append(words, name, v)
		}
	}
	return append([]string{"press"}, words...), opt["--bush-od"] != "" && opt["--interference"] != ""
}

// TestPressRows asks the rows of pressfit.csv that are a press, each within
// its own tolerance; where the bush flows the figure lies inside the span.
func TestPressRows(t *testing.T) {
	rows := testdata.All[checkRow](t, "pressfit.csv")
	text := map[string]string{}
	for _, r := range rows {
		text[r["id"]] = r["inputs"]
	}
	passed, left := 0, []string{}
	for _, r := range rows {
		in := r["inputs"]
		if g := rowAs.FindStringSubmatch(in); g != nil {
			in = strings.TrimSpace(rowAs.ReplaceAllString(in, "")) + " " + text[g[1]]
		}
		words, ok := pressWords(in)
		q := r["quantity"]
		if !ok || strings.Contains(q, "effective") || strings.Contains(q, "assembly") ||
			strings.Contains(q, "mean hoop") ||
			strings.Contains(q, "thinnest") || strings.Contains(q, "limit") || strings.Contains(q, "radial") ||
			strings.Contains(in, "radial") {
			left = append(left, r["id"])
			continue
		}
		low, high := pressAsked(t, q, words)
		want := number(t, r["expected"])
		below, above := margins(t, r["tolerance"], want)
		if !(low <= want+above && high >= want-below) {
			t.Errorf("%s %s: %.7g to %.7g, want %v (%s) %s\n%q", r["id"], q, low, high, want, r["tolerance"],
				r["source"], words)
			continue
		}
		passed++
	}
	t.Logf("pressfit.csv: %d rows passed, no press: %v", passed, left)
	if passed < 52 {
		t.Errorf("%d rows passed, want 52", passed)
	}
}

func pressAsked(t *testing.T, q string, words []string) (low, high float64) {
	m := asked(t, words...)
	if strings.HasSuffix(q, "/ p") {
		key := "seat_hoop_mpa"
		if strings.Contains(q, "edge") {
			key = "edge_hoop_mpa"
		}
		v := at(m, key) / at(m, "pressure_mpa")
		return v, v
	}
	for _, k := range pressKey {
		if !strings.Contains(q, k.words) {
			continue
		}
		v := at(m, k.key)
		switch {
		case k.key == "closure_um":
			return at(m, "closure_span_um", "min"), at(m, "closure_span_um", "max")
		case k.words == "plateau pressure":
			return v, at(m, "pressure_high_mpa")
		case k.key == "torque_nmm":
			v /= 1000 // the rows are in N m
		}
		return v, v
	}
	t.Fatalf("quantity %q", q)
	return 0, 0
}

// margins reads a tolerance: a number, 0.3%, or -1%/+30%.
func margins(t *testing.T, tol string, want float64) (below, above float64) {
	part := func(s string) float64 {
		if p, ok := strings.CutSuffix(s, "%"); ok {
			return math.Abs(number(t, p) / 100 * want)
		}
		return math.Abs(number(t, s))
	}
	if a, b, ok := strings.Cut(tol, "/"); ok {
		return part(a), part(b)
	}
	return part(tol), part(tol)
}
