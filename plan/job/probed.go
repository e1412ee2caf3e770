package job

import (
	"fmt"
	"strings"

	"rebush/fits/dim"
)

// pointsFrom says where files of points are looked for.
const pointsFrom = "files of points are named from the folder of the job"

// loadProbed reads the CSV files of points that bores name. The error is the first
// file that cannot be read at all.
func loadProbed(r *reader, j *Job, root *value, folder string) (unread *FileError) {
	for i, v := range root.get("shafts").items() {
		for k := range j.Shafts[i].Bores {
			b := &j.Shafts[i].Bores[k]
			bv := v.get("bores").get(string(b.Side))
			f := bv.get("probed").get("file")
			if f == nil {
				continue
			}
			data, err := load(beside(folder, f.raw), nil)
			if err != nil {
				e := &FileError{Path: beside(folder, f.raw), Pos: f.pos, Err: err}
				if unread == nil {
					unread = e
				} else {
					p := e.problem(pointsFrom)
					r.say(p.Pos, p.Wrong, p.Right)
				}
				continue
			}
			points, lines, problems := Points(f.raw, data, r.units)
			for _, p := range problems {
				r.say(p.Pos, p.Wrong, p.Right)
			}
			if len(problems) == 0 && len(points) < 3 {
				r.say(Pos{f.raw, 1, 1}, fmt.Sprintf("%d points", len(points)),
					"a hole needs at least 3, better 16 spread all round")
				continue
			}
			if len(points) > mostPoints {
				r.say(Pos{f.raw, lines[mostPoints], 1}, fmt.Sprintf("%d points", len(points)),
					fmt.Sprintf("a hole takes at most %d; 16 spread all round do", mostPoints))
				continue
			}
			if bv.get("seen_from").text() == "right" && j.Chassis.Length.Given() {
				m := mirror{j.Chassis.Length}
				for i, p := range points {
					points[i] = m.point(p)
				}
			}
			b.Probed, b.probedLines = points, lines
		}
	}
	return unread
}

// Points reads points, x and y on a line, parted by commas, semicolons, tabs
// or spaces; decimal commas are read where something else parts the two. A
// first line of words is a head. Lines that begin with # are passed over. bare
// rules numbers without a unit. lines are the line numbers of the points.
func Points(name string, data []byte, bare dim.Unit) (points []Point, lines []int, problems Problems) {
	say := func(line, column int, wrong, right string) {
		if len(problems) < 20 {
			problems = append(problems, Problem{Pos: Pos{name, line, column}, Wrong: wrong, Right: right})
		}
	}
	data = decoded(data)
	if line, column, wrong := notText(data); wrong != "" {
		say(line, column, wrong, "a file of points is plain text: x,y on each line")
		return nil, nil, problems
	}
	text := spaces.Replace(string(data))
	head := true
	for i, line := range strings.Split(text, "\n") {
		line = strings.TrimRight(line, "\r \t")
		if strings.TrimSpace(line) == "" || strings.HasPrefix(strings.TrimSpace(line), "#") {
			continue
		}
		first := head
		head = false
		fields := parted(line)
		if first && isHead(fields) {
			continue
		}
		if len(fields) != 2 {
			right := "write x,y on each line"
			if len(fields) == 4 && strings.Count(line, ",") == 3 {
				right = "for decimal commas part the two by a semicolon: 10,05;6,00"
			}
			say(i+1, 1, fmt.Sprintf("%d figures on this line", len(fields)), right)
			continue
		}
		x, okX := coordinate(fields[0], bare)
		y, okY := coordinate(fields[1], bare)
		for k, ok := range []bool{okX, okY} {
			if !ok {
				say(i+1, strings.Index(line, strings.TrimSpace(fields[k]))+1,
					fmt.Sprintf("%q is not a length", short(fields[k])), "write a number such as 10.05")
			}
		}
		if okX && okY {
			points, lines = append(points, Point{x, y}), append(lines, i+1)
		}
	}
	if len(points) == 0 && len(problems) == 0 {
		say(1, 1, "there are no points in this file", "write x,y on each line")
	}
	return points, lines, problems
}

func parted(line string) []string {
	for _, sep := range []string{";", "\t", ","} {
		if strings.Contains(line, sep) {
			if sep == "," && strings.ContainsAny(strings.TrimSpace(line), " ") && strings.Count(line, ",") == 2 {
				if f := strings.Fields(line); len(f) == 2 { // "10,05 6,00"
					return f
				}
			}
			return strings.Split(line, sep)
		}
	}
	return strings.Fields(line)
}

// isHead says whether a first line holds no figure at all.
func isHead(fields []string) bool {
	for _, f := range fields {
		if strings.ContainsAny(f, "0123456789") {
			return false
		}
	}
	return true
}

func coordinate(s string, bare dim.Unit) (dim.Length, bool) {
	s = strings.TrimSpace(s)
	if exponent.MatchString(s) || len(s) > 40 || s == "" || !strings.ContainsAny(s, "0123456789") {
		return dim.Length{}, false
	}
	l, err := dim.Parse(s, bare)
	if err != nil || l.Float() > 10000 || l.Float() < -10000 {
		return dim.Length{}, false
	}
	return l, true
}
