package job

import (
	"rebush/fits/dim"
)

// value is one value of a file, read by its shape. A nil value is a key that
// was not given; every method answers for it.
type value struct {
	shape *shape
	pos   Pos
	path  string // "shafts/front axle/bores/left/widest"
	name  string // last key
	raw   string
	len   dim.Length
	num   float64
	list  []*value
	order []string // of a record or named map
	by    map[string]*value
}

func (v *value) get(key string) *value {
	if v == nil {
		return nil
	}
	return v.by[key]
}

// missing says that a key of a record does not stand in the file: one whose
// value could not be read does, and was said already.
func (v *value) missing(key string) bool {
	_, there := v.by[key]
	return !there
}

func (v *value) text() string {
	if v == nil {
		return ""
	}
	return v.raw
}

func (v *value) length() dim.Length {
	if v == nil {
		return dim.Length{}
	}
	return v.len
}

func (v *value) tri() Tri {
	switch {
	case v == nil || v.raw == "unknown":
		return Unsaid
	case v.raw == "yes":
		return Yes
	}
	return No
}

func (v *value) items() []*value {
	if v == nil {
		return nil
	}
	return v.list
}

// each is the items of a list, the values of a named map in the order of the
// file, or the one value that stands for a list of one.
func (v *value) each() []*value {
	switch v.shape.kind {
	case aList:
		return v.list
	case aNamed:
		var out []*value
		for _, name := range v.order {
			out = append(out, v.by[name])
		}
		return out
	}
	return []*value{v}
}

func (v *value) point() Point {
	if v == nil || len(v.list) != 2 {
		return Point{}
	}
	return Point{v.list[0].len, v.list[1].len}
}

// ends reads a length, or a record of left and right.
func (v *value) ends() Ends {
	switch {
	case v == nil:
		return Ends{}
	case v.shape.kind == aLength:
		return Ends{v.len, v.len}
	}
	return Ends{v.get("left").length(), v.get("right").length()}
}

// place is the position of a value, or of another where it was not given.
func (v *value) place(other *value) Pos {
	if v != nil {
		return v.pos
	}
	if other != nil {
		return other.pos
	}
	return Pos{}
}
