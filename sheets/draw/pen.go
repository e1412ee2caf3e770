package draw

import "github.com/go-pdf/fpdf"

// pen draws recorded items. It remembers what the page already knows, so that
// the PDF says each setting once.
type pen struct {
	f     *fpdf.Fpdf
	face  Face
	pt    float64
	line  float64
	dash  Stroke
	light bool
}

func (p *pen) page() {
	p.f.AddPage()
	p.face, p.line = 255, -1
	p.broken(Unbroken)
	if p.light {
		p.ink(false)
	}
}

// margin draws head and foot of a page, marked as no part of what is read on.
func (p *pen) margin(items []Item) {
	if len(items) == 0 {
		return
	}
	p.f.RawWriteStr("/Artifact <</Type /Pagination>> BDC")
	for i := range items {
		p.item(&items[i])
	}
	p.f.RawWriteStr("EMC")
}

func (p *pen) ink(light bool) {
	p.light = light
	if light {
		p.f.SetTextColor(255, 255, 255)
	} else {
		p.f.SetTextColor(0, 0, 0)
	}
}

// dashes are the lengths of strokes and gaps in mm.
var dashes = map[Stroke][]float64{Unbroken: {}, Hidden: {1.2, 0.8}, Centre: {4, 0.7, 0.4, 0.7}, Other: {3, 0.6, 0.4, 0.6, 0.4, 0.6}}

func (p *pen) broken(s Stroke) {
	if s == p.dash {
		return
	}
	p.dash = s
	p.f.SetDashPattern(dashes[s], 0)
}

func (p *pen) item(it *Item) {
	if it.Kind == KindText {
		p.text(it)
		return
	}
	if it.Fill == Open {
		if p.line != it.Line {
			p.f.SetLineWidth(it.Line)
			p.line = it.Line
		}
		p.broken(it.Stroke)
	}
	style := "D"
	switch it.Fill {
	case Black:
		style = "F"
		p.f.SetFillColor(0, 0, 0)
	case White:
		style = "F"
		p.f.SetFillColor(255, 255, 255)
	}
	switch it.Kind {
	case KindLine:
		p.f.Line(it.Points[0][0], it.Points[0][1], it.Points[1][0], it.Points[1][1])
	case KindRect:
		p.f.Rect(it.Box.X, it.Box.Y, it.Box.W, it.Box.H, style)
	case KindCircle:
		p.f.Circle(it.X, it.Y, it.R, style)
	case KindPath:
		p.f.MoveTo(it.Points[0][0], it.Points[0][1])
		for _, q := range it.Points[1:] {
			p.f.LineTo(q[0], q[1])
		}
		if it.Closed {
			p.f.ClosePath()
		}
		p.f.DrawPath(style)
	}
}

func (p *pen) text(it *Item) {
	if p.face != it.Face || p.pt != it.PT {
		p.f.SetFont(family[it.Face], "", it.PT)
		p.face, p.pt = it.Face, it.PT
	}
	if p.light != it.Light {
		p.ink(it.Light)
	}
	p.f.Text(it.X, it.Y, it.Text)
}
