package job

import (
	"fmt"
	"strconv"
	"strings"
	"sync"

	"rebush/fits/dim"
	"rebush/fits/material"
	"rebush/fits/table"
)

// usual is how far a bush that is sold by its size comes from it: classes, or
// "over" where it comes so many thousandths of an inch larger.
type usual struct {
	bore, od string
	thou     [4]float64 // bore from and to, outside from and to
}

// usualOf is that of the first row of the table of series that goes with a material
// and a unit; the zero usual where there is none.
func usualOf(of string, inch bool) (u usual) {
	t, err := table.BuiltIn().Get("bush_series")
	if err != nil {
		return u
	}
	own := metal(of)
	for _, row := range t.Rows {
		if own == "" || row.Get("unit") == "in" != inch || metal(row.Get("material")) != own {
			continue
		}
		if row.Get("bore_class") != "" {
			return usual{bore: row.Get("bore_class"), od: row.Get("od_class")}
		}
		for i, name := range []string{"bore_low_thou", "bore_high_thou", "od_low_thou", "od_high_thou"} {
			if u.thou[i], err = strconv.ParseFloat(row.Get(name), 64); err != nil {
				return usual{}
			}
		}
		u.bore, u.od = "over", "over"
		return u
	}
	return u
}

var metals = sync.OnceValues(func() (*material.Registry, error) { return material.New(table.BuiltIn()) })

// metal is the name of a material by any of its names, "" where there is none.
func metal(name string) string {
	r, err := metals()
	if err != nil {
		return ""
	}
	m, err := r.Find(name)
	if err != nil {
		return ""
	}
	return m.Name
}

// inchBush says whether a bush was told in inches.
func (iv *Interview) inchBush(k int) bool {
	sizes := iv.bushSizes(k)
	return len(sizes) > 1 && (strings.ContainsAny(sizes[0]+sizes[1], "/\"") || strings.Contains(sizes[0]+sizes[1], "in") ||
		iv.units() == dim.Inch && !strings.Contains(sizes[0]+sizes[1], "mm"))
}

// bushSizes are bore, outside, length and flange of a bush as they were told.
func (iv *Interview) bushSizes(k int) []string {
	q := question("bush", "size")
	sizes, wrong := q.read(iv.said[Step{q, k, ""}.at()], iv.units())
	if wrong != "" {
		return nil
	}
	return sizes
}

// soldInInch writes the limits of a bush that comes thousandths of an inch over
// the size that it is sold by.
func (iv *Interview) soldInInch(of *leaf, k int) {
	u := usualOf(iv.bushMaterial(k), true)
	for i, key := range []string{"bore", "od"} {
		size, err := dim.Parse(iv.bushSizes(k)[i], iv.units())
		if err != nil {
			return
		}
		limit := func(thou float64) string {
			over := dim.OfFloat(thou * 0.0254)
			return size.Add(over).StringInch(4) + " in"
		}
		at := fmt.Sprintf("bushes/#%d/%s", k, key)
		of.set(at, fmt.Sprintf("[%s, %s]", limit(u.thou[2*i]), limit(u.thou[2*i+1])))
	}
}
