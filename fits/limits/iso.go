package limits

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"rebush/fits/dim"
)

// Tolerance is a standard tolerance with the table row it stands in.
type Tolerance struct {
	Um     decimal.Decimal
	Source string // row address, "limits_it:7"
}

// Deviation is a class at a size: its limits from nominal in um.
type Deviation struct {
	Nominal          dim.Length
	Class            string
	Hole             bool
	LowerUm, UpperUm decimal.Decimal
	Sources          []string // row addresses
}

// Min is the smallest size within the class.
func (d Deviation) Min() dim.Length { return d.Nominal.Add(dim.OfUm(d.LowerUm)) }

// Max is the greatest size within the class.
func (d Deviation) Max() dim.Length { return d.Nominal.Add(dim.OfUm(d.UpperUm)) }

// WidthUm is the tolerance, greatest less smallest.
func (d Deviation) WidthUm() decimal.Decimal { return d.UpperUm.Sub(d.LowerUm) }

var gradeRE = regexp.MustCompile(`^(?i:IT)?\s*([0-9]{1,2})$`)

// Grade is the standard tolerance of a grade, "IT7" or "7", at a nominal size
// of 0.5 to 50 mm.
//
// Source: ISO 286-1, table limits_it.
func (l *Limits) Grade(nominal dim.Length, grade string) (Tolerance, error) {
	mm, err := sizeOf(nominal)
	if err != nil {
		return Tolerance{}, err
	}
	m := gradeRE.FindStringSubmatch(strings.TrimSpace(grade))
	if m == nil {
		return Tolerance{}, fmt.Errorf("%q is not a tolerance grade; write IT7", grade)
	}
	return l.grade(mm, m[1])
}

func (l *Limits) grade(mm decimal.Decimal, number string) (Tolerance, error) {
	name := "IT" + number
	e, ok := find(l.grades, name, mm)
	if ok {
		return Tolerance{Um: e.um, Source: e.address}, nil
	}
	have := keysAt(l.grades, mm)
	if len(have) == 0 {
		return Tolerance{}, fmt.Errorf("the tables give no grades at %s mm", mm)
	}
	if where := span(l.grades, name); where != "" {
		return Tolerance{}, fmt.Errorf("%s does not exist at %s mm, only %s; at %s mm there are %s to %s", name, mm, where, mm, have[0], have[len(have)-1])
	}
	return Tolerance{}, fmt.Errorf("the tables give no %s; at %s mm there are %s to %s", name, mm, have[0], have[len(have)-1])
}

var classRE = regexp.MustCompile(`^([A-Za-z]{1,2})\s*([1-9][0-9]?)$`)

// splitClass reads "H7" or "js6" into letter, grade number and hole or shaft.
func splitClass(class string) (letter string, grade int, hole bool, err error) {
	m := classRE.FindStringSubmatch(strings.TrimSpace(class))
	if m == nil {
		return "", 0, false, fmt.Errorf("%q is not a class; write H7 for a hole, p6 for a shaft", class)
	}
	grade, err = strconv.Atoi(m[2])
	if err != nil {
		return "", 0, false, fmt.Errorf("%q: %w", class, err)
	}
	switch {
	case m[1] == strings.ToUpper(m[1]):
		return strings.ToLower(m[1]), grade, true, nil
	case m[1] == strings.ToLower(m[1]):
		return m[1], grade, false, nil
	}
	return "", 0, false, fmt.Errorf("%q: write %s%d for a hole or %s%d for a shaft", class, strings.ToUpper(m[1]), grade, strings.ToLower(m[1]), grade)
}

// Class gives the limits of a hole class (capitals) or a shaft class at a
// nominal size of 0.5 to 50 mm. js and JS are the exact half of the tolerance,
// not brought to a whole um.
//
// Source: ISO 286-1 and 286-2, tables limits_it and limits_shaft; the rules for
// holes from BS 4500:1969 Table 6a and EN ISO 286-1.
func (l *Limits) Class(nominal dim.Length, class string) (Deviation, error) {
	d := Deviation{Nominal: nominal}
	mm, err := sizeOf(nominal)
	if err != nil {
		return d, err
	}
	letter, grade, hole, err := splitClass(class)
	if err != nil {
		return d, err
	}
	d.Hole, d.Class = hole, letter+strconv.Itoa(grade)
	if hole {
		d.Class = strings.ToUpper(d.Class)
	}
	it, err := l.grade(mm, strconv.Itoa(grade))
	if err != nil {
		return d, fmt.Errorf("%s: %w", d.Class, err)
	}
	d.Sources = []string{it.Source}
	if letter == "js" {
		d.UpperUm = it.Um.Mul(decimal.New(5, -1))
		d.LowerUm = d.UpperUm.Neg()
		return d, nil
	}
	base, err := l.letter(mm, letter, d.Class, hole)
	if err != nil {
		return d, err
	}
	d.Sources = append([]string{base.address}, d.Sources...)
	above := letter >= "k" // ei of the shaft, ES of the hole
	switch {
	case !hole && above:
		d.LowerUm = base.um
		if letter == "k" && (grade <= 3 || grade >= 8) {
			d.LowerUm = decimal.Zero
		}
		d.UpperUm = d.LowerUm.Add(it.Um)
	case !hole:
		d.UpperUm = base.um
		d.LowerUm = base.um.Sub(it.Um)
	case !above:
		d.LowerUm = base.um.Neg()
		d.UpperUm = d.LowerUm.Add(it.Um)
	default:
		upper, more, err := l.tightHole(mm, letter, grade, base)
		if err != nil {
			return d, fmt.Errorf("%s: %w", d.Class, err)
		}
		d.Sources = append(d.Sources, more...)
		d.UpperUm = upper
		d.LowerUm = upper.Sub(it.Um)
	}
	return d, nil
}

// letter finds the fundamental deviation or says which letters there are.
func (l *Limits) letter(mm decimal.Decimal, letter, class string, hole bool) (entry, error) {
	e, ok := find(l.shafts, letter, mm)
	if ok {
		return e, nil
	}
	have := keysAt(l.shafts, mm)
	for i, k := range have {
		if k == "k" { // js stands between h and k and has no row of its own
			have = append(have[:i:i], append([]string{"js"}, have[i:]...)...)
			break
		}
	}
	names := listed(have)
	if hole {
		names = strings.ToUpper(names)
	}
	there := fmt.Sprintf("at %s mm there are %s", mm, names)
	if where := span(l.shafts, letter); where != "" {
		more := ""
		if letter == "t" {
			more = "; u is the usual stand-in" // from memory
		}
		return e, fmt.Errorf("%s does not exist at %s mm, only %s; %s%s", class, mm, where, there, more)
	}
	switch letter {
	case "j", "v", "y", "z", "za", "zb", "zc":
		return e, fmt.Errorf("%s: the tables here have no figures for that letter; %s", class, there)
	}
	return e, fmt.Errorf("%s: there is no such letter; %s", class, there)
}

// tightHole is the upper deviation of a hole from K to ZC: the mirrored lower
// deviation of the shaft letter, plus delta = IT(n) - IT(n-1) for K, M, N up to
// IT8 and P to ZC up to IT7. Delta is 0 up to 3 mm.
func (l *Limits) tightHole(mm decimal.Decimal, letter string, grade int, base entry) (decimal.Decimal, []string, error) {
	small := mm.LessThanOrEqual(decimal.New(3, 0))
	upper := base.um.Neg()
	limit := 7
	if letter == "k" || letter == "m" || letter == "n" {
		limit = 8
	}
	if grade > limit {
		switch letter {
		case "k":
			if !small {
				return upper, nil, fmt.Errorf("class K does not exist above IT8 over 3 mm; at %s mm there are K3 to K8", mm)
			}
			return decimal.Zero, nil, nil
		case "n":
			if mm.LessThanOrEqual(decimal.New(1, 0)) {
				return upper, nil, fmt.Errorf("class N is not used above IT8 at 1 mm or less; at %s mm there are N3 to N8", mm)
			}
			if !small {
				return decimal.Zero, nil, nil
			}
		}
		return upper, nil, nil
	}
	if small {
		return upper, nil, nil
	}
	if grade < 3 {
		return upper, nil, fmt.Errorf("the rule for holes from K to ZC starts at IT3; write %s3 or coarser", strings.ToUpper(letter))
	}
	coarse, err := l.grade(mm, strconv.Itoa(grade))
	if err != nil {
		return upper, nil, err
	}
	fine, err := l.grade(mm, strconv.Itoa(grade-1))
	if err != nil {
		return upper, nil, err
	}
	return upper.Add(coarse.Um).Sub(fine.Um), []string{fine.Source}, nil
}
