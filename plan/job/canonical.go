package job

import (
	"bytes"
	"fmt"
	"strconv"

	"rebush/fits/dim"
)

// Canonical writes the job, its shop, the points that it reads from files and
// the tables that the shop replaced, always in one order, lengths in exact mm; what
// a pattern gives stands in it as if the job had said it.
// Comments, layout, units, file names and sizes as made are left out, so that
// the same job in inch and in mm gives the same bytes. It is what the hash of a
// plan is taken of.
func (j *Job) Canonical() []byte {
	var b bytes.Buffer
	b.WriteString("job ")
	canon(&b, j.root, map[string]bool{"units": true, "shop": true, "made": true, "like": true})
	for _, s := range j.Shafts {
		for _, bore := range s.Bores {
			if bore.ProbedAt == "" {
				continue
			}
			fmt.Fprintf(&b, "\npoints %q", bore.Name)
			for _, p := range bore.Probed {
				fmt.Fprintf(&b, " %s,%s", p.X.MM(), p.Y.MM())
			}
		}
	}
	if s := j.Shop; s != nil {
		b.WriteString("\nshop ")
		s.canon(&b, map[string]bool{"units": true, "tables": true})
	}
	b.WriteByte('\n')
	return b.Bytes()
}

// canon writes a shop without some of its keys, and the tables that it
// replaced.
func (s *Shop) canon(b *bytes.Buffer, leave map[string]bool) {
	canon(b, s.root, leave)
	for _, name := range s.Tables.Replaced() {
		t, err := s.Tables.Get(name)
		if err != nil {
			continue
		}
		fmt.Fprintf(b, "\ntable %q %q", name, t.Columns)
		for _, row := range t.Rows {
			for _, c := range t.Columns {
				fmt.Fprintf(b, " %q", row.Get(c))
			}
		}
	}
}

// Same says whether two shop files are of one shop: whether they agree in all
// but money, paper and the record.
func (s *Shop) Same(other *Shop) bool {
	leave := map[string]bool{"units": true, "tables": true, "record": true, "rates": true, "hours": true, "paper": true,
		"send_out": true}
	var a, b bytes.Buffer
	s.canon(&a, leave)
	other.canon(&b, leave)
	return bytes.Equal(a.Bytes(), b.Bytes())
}

// Units is the unit of a bare number of a shop file.
func (s *Shop) Units() dim.Unit { return unitsOf(s.root.get("units")) }

// canon writes one value. Keys come in the order of the tables of keys, names
// of the reader's choosing as they stand.
func canon(b *bytes.Buffer, v *value, leave map[string]bool) {
	if v == nil {
		b.WriteString("null")
		return
	}
	s := v.shape
	switch s.kind {
	case aText, aWord, aYesNo, aDate:
		fmt.Fprintf(b, "%q", v.raw)
	case aLength:
		b.WriteString(v.len.MM().String())
	case aNumber, aWhole, aForce:
		b.WriteString(strconv.FormatFloat(v.num, 'g', 9, 64))
	case aList:
		b.WriteByte('[')
		for i, item := range v.list {
			if i > 0 {
				b.WriteByte(' ')
			}
			canon(b, item, nil)
		}
		b.WriteByte(']')
	case aRecord, aNamed:
		names := v.order
		if s.kind == aRecord {
			names = s.names()
		}
		b.WriteByte('{')
		for _, name := range names {
			if item := v.by[name]; item != nil && !leave[name] && !(name == "file" && v.name == "probed") {
				fmt.Fprintf(b, "%q:", name)
				canon(b, item, nil)
				b.WriteByte(' ')
			}
		}
		b.WriteByte('}')
	}
}
