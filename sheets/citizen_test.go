package sheets

import (
	"bytes"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/klippa-app/go-pdfium/requests"
	"github.com/klippa-app/go-pdfium/responses"

	"rebush/sheets/draw"
)

// papersOf are a few pages with bookmarks of every level, head and foot.
func citizen() *draw.Document {
	d := draw.New(draw.A4, "Zadní podvozek <1> & (2)")
	d.Subject = "Paper of a test"
	for range 2 {
		d.NewPage()
		b := draw.NewBoard(100)
		b.Text(0, 10, 90, "body", draw.Regular, 12)
		for i, level := range []int{0, 1, 1, 2, 0, 1} {
			b.Bookmark(strings.Repeat("ž", 40)+" "+itoa(i), level, float64(i))
		}
		d.Place(b, 20, 40)
		h := draw.NewBoard(100)
		h.Text(0, 5, 90, "head", draw.Regular, 12)
		d.Head(h, d.Pages(), 20, 10)
	}
	return d
}

// TestOutline: an independent reader finds each bookmark whole, under the one
// that it belongs to, and on its page.
func TestOutline(t *testing.T) {
	pdf := open(t, write(t, citizen()))
	marks, err := pdf.r.GetBookmarks(&requests.GetBookmarks{Document: pdf.doc})
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	var walk func(list []responses.GetBookmarksBookmark, in string)
	walk = func(list []responses.GetBookmarksBookmark, in string) {
		for _, m := range list {
			page := -1
			if m.DestInfo != nil {
				page = m.DestInfo.PageIndex
			}
			name, whole := strings.CutPrefix(m.Title, strings.Repeat("ž", 40)+" ")
			if !whole {
				t.Errorf("a bookmark says %q", m.Title)
			}
			got = append(got, in+name+" on "+itoa(page+1))
			walk(m.Children, in+">")
		}
	}
	walk(marks.Bookmarks, "")
	var want []string
	for _, on := range []string{" on 1", " on 2"} {
		for _, m := range []string{"0", ">1", ">2", ">>3", "4", ">5"} {
			want = append(want, m+on)
		}
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("outline (-want +got):\n%s", diff)
	}
}

// TestMetadata: the title is shown, the metadata is joined to the catalogue, and
// only what is measured on is kept from being scaled.
func TestMetadata(t *testing.T) {
	d := citizen()
	raw := write(t, d)
	for _, want := range []string{"/DisplayDocTitle true", "/Metadata ", "/Lang (en-GB)",
		`<rdf:li xml:lang="x-default">Zadní podvozek &lt;1&gt; &amp; (2)</rdf:li>`, "<rdf:li>en-GB</rdf:li>"} {
		if !bytes.Contains(raw, []byte(want)) {
			t.Errorf("the PDF does not say %q", want)
		}
	}
	scaled := func(d *draw.Document) bool {
		pdf := open(t, write(t, d))
		s, err := pdf.r.FPDF_VIEWERREF_GetPrintScaling(&requests.FPDF_VIEWERREF_GetPrintScaling{Document: pdf.doc})
		if err != nil {
			t.Fatal(err)
		}
		return s.PreferPrintScaling
	}
	if !scaled(d) {
		t.Error("paper to be read is kept from being scaled")
	}
	tmpl, err := Template(samplePlan(2), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if scaled(tmpl) {
		t.Error("the template may be scaled")
	}
}

// TestReadingOrder: what stands on a page is read before its head and foot.
func TestReadingOrder(t *testing.T) {
	for what, d := range allPaper(t, samplePlan(2), Options{}) {
		for page := 1; page <= d.Pages(); page++ {
			margin := false
			for _, it := range d.All(page) {
				if margin && it.Block > 0 {
					t.Fatalf("%s, page %d: %q is read after the head", what, page, it.Text)
				}
				margin = margin || it.Block == 0
			}
			if !margin {
				t.Errorf("%s, page %d has no head", what, page)
			}
		}
	}
}
