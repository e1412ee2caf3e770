package draw

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"regexp"
	"strconv"
	"time"
)

// The library writes an XMP stream without leading to it, and no preferences of
// the viewer. Its catalog is the last object before the cross references, so
// what is added there moves nothing but them.
var (
	catalogAt = []byte("/Type /Catalog\n")
	metadata  = regexp.MustCompile(`(?m)^(\d+) 0 obj\n<< /Type /Metadata `)
	startxref = regexp.MustCompile(`startxref\n(\d+)\n%%EOF\n?$`)
)

// completed leads the catalog of a PDF to its metadata, has the title shown in
// the place of the name of the file, and, for what must print in its true size,
// asks the viewer not to scale it.
func (d *Document) completed(pdf []byte) ([]byte, error) {
	at := bytes.LastIndex(pdf, catalogAt)
	meta := metadata.FindAllSubmatch(pdf, -1)
	end := startxref.FindSubmatchIndex(pdf)
	if at < 0 || len(meta) == 0 || end == nil {
		return nil, fmt.Errorf("draw: the PDF has no catalog, metadata or cross references to add to")
	}
	more := "/Metadata " + string(meta[len(meta)-1][1]) + " 0 R\n/ViewerPreferences <</DisplayDocTitle true"
	if d.TrueSize {
		more += " /PrintScaling /None"
	}
	more += ">>\n"
	xref, err := strconv.Atoi(string(pdf[end[2]:end[3]]))
	if err != nil {
		return nil, err
	}
	at += len(catalogAt)
	out := append([]byte(nil), pdf[:at]...)
	out = append(out, more...)
	out = append(out, pdf[at:end[2]]...)
	out = append(out, strconv.Itoa(xref+len(more))...)
	return append(out, pdf[end[3]:]...), nil
}

// xmp is the metadata as a stream of their own (ISO 16684-1).
func (d *Document) xmp(day time.Time) []byte {
	text := func(s string) string {
		var b bytes.Buffer
		xml.EscapeText(&b, []byte(plain(s))) // a bytes.Buffer takes all
		return b.String()
	}
	when := day.UTC().Format("2006-01-02T15:04:05Z")
	return []byte("<?xpacket begin=\"\ufeff\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n" +
		`<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">` + "\n" +
		`<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/">` +
		"\n<dc:format>application/pdf</dc:format>" +
		`<dc:title><rdf:Alt><rdf:li xml:lang="x-default">` + text(d.Title) + "</rdf:li></rdf:Alt></dc:title>" +
		`<dc:description><rdf:Alt><rdf:li xml:lang="x-default">` + text(d.Subject) + "</rdf:li></rdf:Alt></dc:description>" +
		"<dc:language><rdf:Bag><rdf:li>" + text(d.Language) + "</rdf:li></rdf:Bag></dc:language>\n" +
		"<xmp:CreatorTool>rebush</xmp:CreatorTool><xmp:CreateDate>" + when + "</xmp:CreateDate><xmp:ModifyDate>" + when + "</xmp:ModifyDate>\n" +
		"</rdf:Description></rdf:RDF></x:xmpmeta>\n<?xpacket end=\"w\"?>")
}
