package job

import (
	"encoding/json"
	"fmt"
	"strings"
)

// Schema is the JSON Schema (draft 2020-12) of a "job" or "shop" file, written
// from the same tables of keys that the reader walks; nil for another kind. It
// says which keys there are and what sort of value each takes. That names
// exist, that gears mesh and that units are right only the reader can say.
func Schema(kind string) []byte {
	shape, title := jobShape, "rebush job file, version 1"
	switch kind {
	case "job":
	case "shop":
		shape, title = shopShape, "rebush shop file, version 1"
	default:
		return nil
	}
	s := shape.schema()
	s["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	s["title"] = title
	s["$defs"] = map[string]any{
		"length": map[string]any{"type": []string{"number", "string"},
			"description": "a number in the units of the file, or with its own: 3.2 mm, 0.126 in, 1/8 in, 5 thou, " +
				"no 31, \"#31\", F"},
		"yesno": map[string]any{"enum": []any{true, false, "yes", "no", "Yes", "No", "YES", "NO", "true", "false",
			"True", "False", "TRUE", "FALSE"}},
	}
	for _, q := range questions() {
		for _, f := range q.figures {
			for _, k := range f.keys {
				if q.ofShop == (kind == "shop") && q.Why != asBefore {
					why(s, strings.Split(strings.NewReplacer("@", "left", "#1", "#").Replace(k), "/"), q)
					why(s, strings.Split(strings.NewReplacer("@", "right", "#1", "#").Replace(k), "/"), q)
				}
			}
		}
	}
	out, err := json.MarshalIndent(s, "", "  ")
	if err != nil {
		panic("job: the schema does not marshal: " + err.Error())
	}
	return append(out, '\n')
}

// unitPattern lets one of some units stand behind a number.
func unitPattern(units []string) string {
	if len(units) == 0 {
		return ""
	}
	return `\s*(` + strings.Join(units, "|") + `)?`
}

// why adds to the description of a key what the question of it is for, and which it
// is.
func why(of map[string]any, path []string, q Question) {
	if len(path) == 0 || len(path) == 1 && (path[0] == "left" || path[0] == "right") { // an end of a shaft
		had, _ := of["description"].(string)
		if s := fmt.Sprintf("question %d of start: %s", q.Number, q.Why); !strings.Contains(had, s) {
			of["description"] = strings.TrimPrefix(had+"; "+s, "; ")
		}
		return
	}
	forms, _ := of["anyOf"].([]any)
	for _, form := range append(forms, of) {
		f, _ := form.(map[string]any)
		if path[0] == "#" || path[0] == "1" || path[0] == "2" {
			if items, ok := f["items"].(map[string]any); ok && len(path) > 1 {
				why(items, path[1:], q)
				return
			}
			continue
		}
		properties, _ := f["properties"].(map[string]any)
		if next, ok := properties[path[0]].(map[string]any); ok {
			why(next, path[1:], q)
			return
		}
	}
}

func (s *shape) schema() map[string]any {
	switch s.kind {
	case aText:
		return map[string]any{"type": []string{"string", "number", "boolean"}}
	case aWord:
		words := []any{}
		for _, w := range s.words {
			words = append(words, w)
			switch w {
			case "yes":
				words = append(words, true)
			case "no":
				words = append(words, false)
			}
		}
		return map[string]any{"enum": words}
	case aYesNo:
		return map[string]any{"$ref": "#/$defs/yesno"}
	case aDate:
		return map[string]any{"type": "string", "pattern": `^\d{4}-\d{2}-\d{2}$`}
	case aLength:
		return map[string]any{"$ref": "#/$defs/length"}
	case aNumber, aWhole:
		n := map[string]any{"type": "number"}
		if s.kind == aWhole {
			n["type"] = "integer"
		}
		if s.lo != 0 || s.hi != 0 {
			n["minimum"], n["maximum"] = s.lo, s.hi
		}
		if s.kind == aWhole {
			return n
		}
		return map[string]any{"anyOf": []any{n,
			map[string]any{"type": "string", "pattern": `^[-+]?(\d+([.,]\d*)?|[.,]\d+)` + unitPattern(s.units) + `$`}}}
	case aForce:
		return map[string]any{"anyOf": []any{map[string]any{"type": "number", "minimum": 0},
			map[string]any{"type": "string", "pattern": `^\s*[\d.,]+\s*(N|n|kgf|kg|gf|g|lbf|lb|ozf|oz)?\s*$`}}}
	case aList:
		l := map[string]any{"type": "array", "items": s.item.schema(), "minItems": s.min}
		if s.max > 0 {
			l["maxItems"] = s.max
		}
		return l
	case aNamed:
		return map[string]any{"type": "object", "additionalProperties": s.item.schema()}
	case anEither:
		var forms []any
		for _, a := range s.alts {
			forms = append(forms, a.schema())
		}
		return map[string]any{"anyOf": forms}
	}
	properties, must := map[string]any{}, []string{}
	for _, k := range s.keys {
		p := k.shape.schema()
		what := k.what
		if k.shape.kind == aLength && k.shape.hi > 0 {
			what += fmt.Sprintf(" (%g to %g mm)", k.shape.lo, k.shape.hi)
		}
		p["description"] = what
		properties[k.name] = p
		if k.must {
			must = append(must, k.name)
		}
	}
	r := map[string]any{"type": "object", "properties": properties, "additionalProperties": false}
	if len(must) > 0 {
		r["required"] = must
	}
	return r
}
