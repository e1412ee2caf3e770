package draw

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"strconv"
)

// The library writes pages, faces, links and the document information. It
// neither joins XMP metadata to the catalogue nor knows viewer preferences, and
// it writes a wrong count beside each bookmark. These are appended as an
// incremental update, which is how a PDF is meant to be added to: no byte that
// the library wrote is touched.
//
// Source: ISO 32000-1:2008, 7.5.6 incremental updates, 12.2 viewer preferences,
// 12.3.3 document outline, 14.3.2 metadata streams (sections from memory).

// update adds objects to a finished PDF.
type update struct {
	pdf     *bytes.Buffer
	next    int         // the next free number of an object
	offsets map[int]int // of the objects that were added or replaced
	numbers []int       // theirs, in the order of writing
}

var (
	rootAt  = regexp.MustCompile(`/Root (\d+) 0 R`)
	infoAt  = regexp.MustCompile(`/Info (\d+) 0 R`)
	sizeAt  = regexp.MustCompile(`/Size (\d+)`)
	startAt = regexp.MustCompile(`startxref\s+(\d+)\s+%%EOF\s*$`)
	kidsAt  = regexp.MustCompile(`/Type /Pages\s+/Kids \[([^\]]*)\]`)
	kidAt   = regexp.MustCompile(`(\d+) 0 R`)
)

// complete appends what the library leaves out to the PDF that it wrote.
func (d *Document) complete(pdf *bytes.Buffer) error {
	b := pdf.Bytes()
	start, err := lastNumber(startAt, b)
	if err != nil {
		return err
	}
	trailer := b[bytes.LastIndex(b, []byte("trailer")):]
	var root, info, size int
	for _, x := range []struct {
		at *regexp.Regexp
		to *int
	}{{rootAt, &root}, {infoAt, &info}, {sizeAt, &size}} {
		if *x.to, err = lastNumber(x.at, trailer); err != nil {
			return err
		}
	}
	catalogue, err := dictionary(b, start, root)
	if err != nil {
		return err
	}
	var pages []int
	if kids := kidsAt.FindSubmatch(b); kids != nil {
		for _, k := range kidAt.FindAllSubmatch(kids[1], -1) {
			n, _ := strconv.Atoi(string(k[1]))
			pages = append(pages, n)
		}
	}
	if len(pages) != d.pages {
		return fmt.Errorf("the PDF has %d pages and %d were drawn", len(pages), d.pages)
	}
	u := &update{pdf: pdf, next: size, offsets: map[int]int{}}
	meta := u.add(func(w *bytes.Buffer) {
		x := d.xmp()
		fmt.Fprintf(w, "<< /Type /Metadata /Subtype /XML /Length %d >>\nstream\n%s\nendstream", len(x), x)
	})
	more := fmt.Sprintf("/Version /1.7\n/Metadata %d 0 R\n/ViewerPreferences <<%s>>\n", meta, d.preferences())
	if outline := u.outline(d, pages); outline > 0 {
		more += fmt.Sprintf("/Outlines %d 0 R\n/PageMode /UseOutlines\n", outline)
	}
	u.replace(root, func(w *bytes.Buffer) { fmt.Fprintf(w, "<<\n%s%s>>", catalogue, more) })
	u.close(start, root, info)
	return nil
}

// preferences are those for the program that shows the document: its title, not
// its file name, in the head of the window; and no scaling where it is printed
// to be measured on.
func (d *Document) preferences() string {
	s := "/DisplayDocTitle true"
	if d.TrueSize {
		s += " /PrintScaling /None"
	}
	return s
}

func lastNumber(at *regexp.Regexp, b []byte) (int, error) {
	all := at.FindAllSubmatch(b, -1)
	if len(all) == 0 {
		return 0, fmt.Errorf("the PDF library wrote no %s", at)
	}
	return strconv.Atoi(string(all[len(all)-1][1]))
}

// dictionary is what stands between the outer brackets of an object, found by
// its offset in the table of references that begins at start.
func dictionary(b []byte, start, number int) ([]byte, error) {
	lines := bytes.SplitN(b[start:], []byte("\n"), number+4)
	if len(lines) < number+4 {
		return nil, errors.New("the table of references is cut short")
	}
	at, err := strconv.Atoi(string(lines[number+2][:10]))
	if err != nil {
		return nil, err
	}
	o := b[at:]
	if !bytes.HasPrefix(o, []byte(strconv.Itoa(number)+" 0 obj")) {
		return nil, fmt.Errorf("object %d is not where the table of references says", number)
	}
	o = o[:bytes.Index(o, []byte("endobj"))]
	first, last := bytes.Index(o, []byte("<<")), bytes.LastIndex(o, []byte(">>"))
	if first < 0 || last < first {
		return nil, fmt.Errorf("object %d is no dictionary", number)
	}
	return bytes.TrimLeft(o[first+2:last], "\n"), nil
}

// add writes a new object and returns its number.
func (u *update) add(body func(w *bytes.Buffer)) int {
	n := u.next
	u.next++
	u.replace(n, body)
	return n
}

// replace writes an object under a number that may be taken.
func (u *update) replace(n int, body func(w *bytes.Buffer)) {
	u.offsets[n] = u.pdf.Len()
	u.numbers = append(u.numbers, n)
	fmt.Fprintf(u.pdf, "%d 0 obj\n", n)
	body(u.pdf)
	u.pdf.WriteString("\nendobj\n")
}

// close writes the table of references of the update, and its trailer.
func (u *update) close(before, root, info int) {
	at := u.pdf.Len()
	u.pdf.WriteString("xref\n0 1\n0000000000 65535 f \n")
	for _, n := range u.numbers {
		fmt.Fprintf(u.pdf, "%d 1\n%010d 00000 n \n", n, u.offsets[n])
	}
	fmt.Fprintf(u.pdf, "trailer\n<<\n/Size %d\n/Root %d 0 R\n/Info %d 0 R\n/Prev %d\n>>\nstartxref\n%d\n%%%%EOF\n",
		u.next, root, info, before, at)
}
