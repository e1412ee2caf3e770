package job

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"rebush/fits/dim"
)

// store puts the values of a record into the struct that to points at, each in
// the field that the table of keys names. Missing values stay zero, or become
// what the table says stands in their place. What no field takes as it is read
// (names of the reader's choosing, figures seen from the right) is bound by
// hand in bind.go and its neighbours.
func store(to any, v *value) { fill(reflect.ValueOf(to).Elem(), v) }

func fill(to reflect.Value, v *value) {
	if v == nil {
		return
	}
	for _, k := range v.shape.keys {
		if item := v.by[k.name]; item != nil {
			keep(to, item)
		} else if k.otherwise != nil {
			keep(to, k.otherwise)
		}
	}
}

// keep stores one value of a record. The fields of a record that has none of
// its own are fields of the one it stands in.
func keep(to reflect.Value, v *value) {
	switch fields := v.shape.stored; {
	case v.shape.byHand:
	case len(fields) == 0:
		fill(to, v)
	case len(fields) == 1:
		put(field(to, fields[0]), v)
	default:
		for i, item := range v.list {
			put(field(to, fields[i]), item)
		}
	}
}

// field finds "Thickness.Left" in a struct, "2" in an array; "." is to itself.
func field(to reflect.Value, path string) reflect.Value {
	if path == "." {
		return to
	}
	for _, name := range strings.Split(path, ".") {
		if to.Kind() == reflect.Array {
			i, _ := strconv.Atoi(name)
			to = to.Index(i)
			continue
		}
		f := to.FieldByName(name)
		if !f.IsValid() {
			panic(fmt.Sprintf("job: the tables of keys store in %s.%s, which is no field", to.Type(), path))
		}
		to = f
	}
	return to
}

// put turns a value into what its field holds.
func put(f reflect.Value, v *value) {
	if v.shape.kind == aRecord && !v.shape.ends && f.Kind() != reflect.Pointer {
		fill(f, v)
		return
	}
	switch p := f.Addr().Interface().(type) {
	case *dim.Length:
		*p = v.len
		return
	case *Point:
		*p = v.point()
		return
	case *Ends:
		*p = v.ends()
		return
	case *Tri:
		*p = v.tri()
		return
	case *Size:
		p.read(v)
		return
	}
	switch f.Kind() {
	case reflect.String:
		f.SetString(v.raw)
	case reflect.Bool:
		f.SetBool(v.raw == v.shape.truth)
	case reflect.Float64:
		f.SetFloat(v.num)
	case reflect.Int:
		f.SetInt(int64(v.num))
	case reflect.Pointer:
		f.Set(reflect.New(f.Type().Elem()))
		put(f.Elem(), v)
	case reflect.Slice:
		for _, item := range v.each() {
			e := reflect.New(f.Type().Elem()).Elem()
			if item == v {
				put(e, v)
			} else {
				putItem(e, item)
			}
			f.Set(reflect.Append(f, e))
		}
	case reflect.Map:
		f.Set(reflect.MakeMap(f.Type()))
		for _, name := range v.order {
			e := reflect.New(f.Type().Elem()).Elem()
			putItem(e, v.by[name])
			f.SetMapIndex(reflect.ValueOf(name), e)
		}
	case reflect.Array:
		for i, item := range v.list {
			putItem(f.Index(i), item)
		}
	default:
		panic(fmt.Sprintf("job: the tables of keys store in a %s, which takes no value", f.Type()))
	}
}

// putItem stores an item: a record by its keys, a value in the field that its
// form names, or as it stands.
func putItem(e reflect.Value, item *value) {
	if item.shape.kind == aRecord || len(item.shape.stored) > 0 {
		keep(e, item)
		return
	}
	put(e, item)
}
