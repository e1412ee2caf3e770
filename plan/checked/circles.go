package checked

import (
	"fmt"
	"strconv"
	"strings"

	"rebush/fits/table"
	"rebush/plan/survey"
)

// fitted are the fits by the words of the rows.
var fitted = map[string]func([][2]float64) (survey.Circle, error){
	"least": func(p [][2]float64) (survey.Circle, error) { f, err := survey.Least(p, 0); return f.Circle, err },
	"kasa":  survey.Kasa, "pratt": survey.Pratt, "taubin": survey.Taubin,
}

// circles works out centre and radius of points, whichever of them is printed.
func circles(rows []Row, _ *table.Library) []Figure {
	var out []Figure
	for _, r := range rows {
		f := r.figure("circles.csv")
		f.Inputs = "points " + r["points"]
		c, err := circle(r)
		for i, column := range []string{"answer_x", "answer_y", "answer_r"} {
			if r[column] == "" {
				continue
			}
			f.What = []string{"centre x", "centre y", "radius"}[i] + ", " + r["answer_method"] + " fit"
			f.Expected = r[column]
			out = append(out, f.is([]float64{c.Centre[0], c.Centre[1], c.R}[i], err))
		}
	}
	return out
}

func circle(r Row) (survey.Circle, error) {
	fit := fitted[r["answer_method"]]
	if fit == nil {
		return survey.Circle{}, fmt.Errorf("no fit is called %q", r["answer_method"])
	}
	var points [][2]float64
	for _, s := range strings.Split(r["points"], ";") {
		x, y, _ := strings.Cut(s, " ")
		px, err := strconv.ParseFloat(x, 64)
		if err != nil {
			return survey.Circle{}, err
		}
		py, err := strconv.ParseFloat(y, 64)
		if err != nil {
			return survey.Circle{}, err
		}
		points = append(points, [2]float64{px, py})
	}
	return fit(points)
}
