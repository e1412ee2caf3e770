package say

import (
	"reflect"
	"sync"

	"rebush/fits/dim"
)

// Printed is a copy of v, a plan or a part of one, in which every text has been
// printed in the units of the reader and is words from then on: its String
// reads the same. What holds no text is shared with v, which stays as it was.
// In mm it is v itself, since mm are what a text prints by itself.
func Printed[T any](v T, u dim.Units) T {
	if u == dim.InMM {
		return v
	}
	return printed(reflect.ValueOf(&v).Elem(), u).Interface().(T)
}

var aText = reflect.TypeFor[Text]()

func printed(v reflect.Value, u dim.Units) reflect.Value {
	if !speaks(v.Type()) {
		return v
	}
	out := reflect.New(v.Type()).Elem()
	out.Set(v)
	switch v.Kind() {
	case reflect.String:
		out.SetString(string(Words(Text(v.String()).In(u))))
	case reflect.Pointer:
		if !v.IsNil() {
			out.Set(reflect.New(v.Type().Elem()))
			out.Elem().Set(printed(v.Elem(), u))
		}
	case reflect.Slice:
		if !v.IsNil() {
			out.Set(reflect.MakeSlice(v.Type(), v.Len(), v.Len()))
		}
		fallthrough
	case reflect.Array:
		for i := range v.Len() {
			out.Index(i).Set(printed(v.Index(i), u))
		}
	case reflect.Map:
		if !v.IsNil() {
			out.Set(reflect.MakeMap(v.Type()))
			for _, k := range v.MapKeys() {
				out.SetMapIndex(k, printed(v.MapIndex(k), u))
			}
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				out.Field(i).Set(printed(v.Field(i), u))
			}
		}
	}
	return out
}

// speaks says whether a type can hold a text. A type that leads back to itself
// is looked at once.
func speaks(t reflect.Type) bool {
	if known, ok := speaking.Load(t); ok {
		return known.(bool)
	}
	found := holds(t, map[reflect.Type]bool{})
	speaking.Store(t, found)
	return found
}

var speaking sync.Map // reflect.Type to bool

func holds(t reflect.Type, seen map[reflect.Type]bool) bool {
	if t == aText {
		return true
	}
	if seen[t] {
		return false
	}
	seen[t] = true
	switch t.Kind() {
	case reflect.Pointer, reflect.Slice, reflect.Array, reflect.Map:
		return holds(t.Elem(), seen)
	case reflect.Struct:
		for i := range t.NumField() {
			if f := t.Field(i); f.IsExported() && holds(f.Type, seen) {
				return true
			}
		}
	}
	return false
}
