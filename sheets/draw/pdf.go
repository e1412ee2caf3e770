package draw

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"github.com/go-pdf/fpdf"
)

// fixedDay stands in the metadata of a document without a date, so that the
// same job gives the same bytes on every day.
var fixedDay = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

var family = [2]string{"goregular", "gobold"}

// Write writes the document as PDF. The same record gives the same bytes.
func (d *Document) Write(w io.Writer) error {
	if d.err != nil {
		return d.err
	}
	if d.pages == 0 {
		return fmt.Errorf("the document has no page")
	}
	pen := d.open()
	slices.SortStableFunc(d.links, func(a, b placedLink) int { return a.page - b.page })
	pages := make([][]Item, d.pages+1)
	for _, it := range d.Items {
		pages[it.Page] = append(pages[it.Page], it)
	}
	links, err := d.targets(pen.f)
	if err != nil {
		return err
	}
	at := 0
	for p := 1; p <= d.pages; p++ {
		pen.page()
		for i := range pages[p] {
			pen.item(&pages[p][i])
		}
		pen.margin(d.heads[p])
		for ; at < len(d.links) && d.links[at].page == p; at++ {
			l := d.links[at]
			pen.f.Link(l.box.X, l.box.Y, l.box.W, l.box.H, links[l.target])
		}
	}
	var pdf bytes.Buffer
	if err := pen.f.Output(&pdf); err != nil {
		return err
	}
	if err := d.complete(&pdf); err != nil {
		return err
	}
	_, err = pdf.WriteTo(w)
	return err
}

// open starts the PDF with its metadata and the faces that are used.
func (d *Document) open() *pen {
	f := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: d.Paper.Width, Ht: d.Paper.Height}})
	f.SetCreationDate(d.day())
	f.SetModificationDate(d.day())
	f.SetCatalogSort(true)
	f.SetLang(d.Language)
	f.SetTitle(plain(d.Title), true)
	f.SetSubject(plain(d.Subject), true)
	f.SetCreator("rebush", true)
	f.SetProducer("rebush", true)
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	f.AliasNbPages("")
	f.SetLineCapStyle("butt")
	f.SetLineJoinStyle("miter")
	for _, face := range d.used() {
		f.AddUTF8FontFromBytes(family[face], "", fontBytes(face))
	}
	return &pen{f: f, face: 255}
}

func (d *Document) used() []Face {
	var have [2]bool
	look := func(items []Item) {
		for i := range items {
			if items[i].Kind == KindText {
				have[items[i].Face] = true
			}
		}
	}
	look(d.Items)
	for _, h := range d.heads {
		look(h)
	}
	var out []Face
	for f, yes := range have {
		if yes {
			out = append(out, Face(f))
		}
	}
	return out
}

// targets makes a link of the PDF library for each anchor that is led to.
func (d *Document) targets(f *fpdf.Fpdf) (map[string]int, error) {
	out := map[string]int{}
	for _, l := range d.links {
		if _, ok := out[l.target]; ok {
			continue
		}
		a, ok := d.anchors[l.target]
		if !ok {
			return nil, fmt.Errorf("page %d: a link leads to %q, which is nowhere", l.page, l.target)
		}
		id := f.AddLink()
		f.SetLink(id, a.y, a.page)
		out[l.target] = id
	}
	return out, nil
}

// plain keeps what the PDF library can write into a title: valid text of 16
// bits a sign. Anything else makes it panic.
func plain(s string) string {
	return strings.Map(func(r rune) rune {
		if r < 0x20 || r >= 0xFFFD {
			return '?'
		}
		return r
	}, s)
}
