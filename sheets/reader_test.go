package sheets

import (
	"bytes"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/enums"
	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"
	"github.com/klippa-app/go-pdfium/webassembly"

	"rebush/sheets/draw"
)

// reader is an independent PDF reader, started once: it takes seconds.
var reader = sync.OnceValues(func() (pdfium.Pdfium, error) {
	pool, err := webassembly.Init(webassembly.Config{MinIdle: 1, MaxIdle: 1, MaxTotal: 1})
	if err != nil {
		return nil, err
	}
	return pool.GetInstance(30 * time.Second)
})

func write(t testing.TB, d *draw.Document) []byte {
	t.Helper()
	var buf bytes.Buffer
	if err := d.Write(&buf); err != nil {
		t.Fatal(err)
	}
	return buf.Bytes()
}

type opened struct {
	t   *testing.T
	r   pdfium.Pdfium
	doc references.FPDF_DOCUMENT
}

func open(t *testing.T, pdf []byte) opened {
	t.Helper()
	if testing.Short() {
		t.Skip("the independent reader takes seconds to start")
	}
	r, err := reader()
	if err != nil {
		t.Fatal(err)
	}
	d, err := r.OpenDocument(&requests.OpenDocument{File: &pdf})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { r.FPDF_CloseDocument(&requests.FPDF_CloseDocument{Document: d.Document}) })
	return opened{t, r, d.Document}
}

func (o opened) page(i int) requests.Page {
	return requests.Page{ByIndex: &requests.PageByIndex{Document: o.doc, Index: i}}
}

func (o opened) pages() int {
	n, err := o.r.FPDF_GetPageCount(&requests.FPDF_GetPageCount{Document: o.doc})
	if err != nil {
		o.t.Fatal(err)
	}
	return n.PageCount
}

// text is the text of a page in reading order.
func (o opened) text(i int) string {
	got, err := o.r.GetPageText(&requests.GetPageText{Page: o.page(i)})
	if err != nil {
		o.t.Fatal(err)
	}
	lines := strings.Split(strings.ReplaceAll(got.Text, "\r\n", "\n"), "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	return strings.Join(lines, "\n")
}

func (o opened) all() string {
	var b strings.Builder
	for i := range o.pages() {
		b.WriteString(o.text(i))
		b.WriteString("\n\f\n")
	}
	return b.String()
}

// lines are the straight lines of a page as the reader finds them, in mm from
// the lower left corner of the paper.
func (o opened) lines(i int) [][2][2]float64 {
	o.t.Helper()
	check := func(err error) {
		if err != nil {
			o.t.Fatal(err)
		}
	}
	const mm = 25.4 / 72
	var out [][2][2]float64
	n, err := o.r.FPDFPage_CountObjects(&requests.FPDFPage_CountObjects{Page: o.page(i)})
	check(err)
	for k := range n.Count {
		obj, err := o.r.FPDFPage_GetObject(&requests.FPDFPage_GetObject{Page: o.page(i), Index: k})
		check(err)
		typ, err := o.r.FPDFPageObj_GetType(&requests.FPDFPageObj_GetType{PageObject: obj.PageObject})
		check(err)
		if typ.Type != enums.FPDF_PAGEOBJ_PATH {
			continue
		}
		count, err := o.r.FPDFPath_CountSegments(&requests.FPDFPath_CountSegments{PageObject: obj.PageObject})
		check(err)
		if count.Count != 2 {
			continue
		}
		var line [2][2]float64
		for s := range 2 {
			seg, err := o.r.FPDFPath_GetPathSegment(&requests.FPDFPath_GetPathSegment{PageObject: obj.PageObject, Index: s})
			check(err)
			at, err := o.r.FPDFPathSegment_GetPoint(&requests.FPDFPathSegment_GetPoint{PathSegment: seg.PathSegment})
			check(err)
			line[s] = [2]float64{float64(at.X) * mm, float64(at.Y) * mm}
		}
		out = append(out, line)
	}
	return out
}
