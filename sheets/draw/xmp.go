package draw

import (
	"encoding/xml"
	"strings"
	"time"
)

// xmp is the metadata of the document in XML: the same title, subject, program
// and day as in the document information, and the language.
//
// Source: ISO 16684-1, the schemas dc, xmp and pdf (from memory).
func (d *Document) xmp() string {
	esc := func(s string) string {
		var b strings.Builder
		xml.EscapeText(&b, []byte(plain(s)))
		return b.String()
	}
	alt := func(s string) string {
		return `<rdf:Alt><rdf:li xml:lang="x-default">` + esc(s) + `</rdf:li></rdf:Alt>`
	}
	day := d.day().UTC().Format(time.RFC3339)
	return `<?xpacket begin="` + "\ufeff" + `" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/"` +
		` xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">
<dc:format>application/pdf</dc:format>
<dc:title>` + alt(d.Title) + `</dc:title>
<dc:description>` + alt(d.Subject) + `</dc:description>
<dc:language><rdf:Bag><rdf:li>` + esc(d.Language) + `</rdf:li></rdf:Bag></dc:language>
<xmp:CreatorTool>rebush</xmp:CreatorTool>
<xmp:CreateDate>` + day + `</xmp:CreateDate>
<xmp:ModifyDate>` + day + `</xmp:ModifyDate>
<pdf:Producer>rebush</pdf:Producer>
</rdf:Description>
</rdf:RDF>
</x:xmpmeta>
<?xpacket end="r"?>`
}

// day is the day of the metadata.
func (d *Document) day() time.Time {
	if d.Date.IsZero() {
		return fixedDay
	}
	return d.Date
}
