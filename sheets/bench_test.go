package sheets

import (
	"io"
	"strconv"
	"testing"

	"github.com/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"rebush/sheets/draw"
)

func itoa(i int) string { return strconv.Itoa(i) }

func must(d *draw.Document, err error) *draw.Document {
	if err != nil {
		panic(err)
	}
	return d
}

// BenchmarkSetup draws and writes the setup sheet of a finished plan.
func BenchmarkSetup(b *testing.B) {
	p := samplePlan(2)
	var n countWriter
	pages := 0
	b.ReportAllocs()
	for b.Loop() {
		d := must(Setup(p, Options{}))
		n, pages = 0, d.Pages()
		if err := d.Write(&n); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(n)/float64(pages), "bytes/page")
	b.ReportMetric(float64(pages)*float64(b.N)/b.Elapsed().Seconds(), "pages/s")
}

// BenchmarkBare writes as many pages with the same faces and as many lines of
// text with the PDF library alone: what any program would have to spend.
func BenchmarkBare(b *testing.B) {
	d := must(Setup(samplePlan(2), Options{}))
	pages := d.Pages()
	texts := 0
	for _, it := range d.Items {
		if it.Kind == draw.KindText {
			texts++
		}
	}
	each := texts / pages
	b.ReportAllocs()
	for b.Loop() {
		f := fpdf.New("P", "mm", "A4", "")
		f.SetAutoPageBreak(false, 0)
		f.AddUTF8FontFromBytes("r", "", goregular.TTF)
		f.AddUTF8FontFromBytes("b", "", gobold.TTF)
		for p := range pages {
			f.AddPage()
			for l := range each {
				f.SetFont([]string{"r", "b"}[l%2], "", 12)
				f.Text(20, 20+float64(l)*5, "page "+itoa(p)+" line "+itoa(l)+" of a bare program")
			}
		}
		if err := f.Output(io.Discard); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(pages)*float64(b.N)/b.Elapsed().Seconds(), "pages/s")
}

type countWriter int

func (c *countWriter) Write(p []byte) (int, error) {
	*c += countWriter(len(p))
	return len(p), nil
}
