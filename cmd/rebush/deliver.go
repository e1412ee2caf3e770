package main

import (
	"bytes"
	"fmt"
	"io"

	"rebush/fits/finding"
	"rebush/plan"
	"rebush/sheets/draw"
)

// deliver writes one document and says where it stands.
func (e *env) deliver(o options, doc *draw.Document, path string) error {
	var raw bytes.Buffer
	if err := e.save(o, doc, path, &raw); err != nil {
		return err
	}
	if path != "-" {
		return e.say(fmt.Appendf(nil, "%s: %d pages\n", path, doc.Pages()))
	}
	return e.write(raw.Bytes())
}

// stopLines says why a plan may not be machined, and nothing where it may.
func stopLines(e *env, w io.Writer, p *plan.Plan) {
	if p.OK {
		return
	}
	fmt.Fprintln(w, e.paint(red, "DO NOT MACHINE"))
	for _, f := range p.Findings {
		if f.Level == finding.Stop {
			fmt.Fprintln(w, findingLine(e, f))
			showTried(&page{w: w}, f.Tried, currencyOf(p), p.OK)
		}
	}
}

// currencyOf is that of the verdict; "" where there is none.
func currencyOf(p *plan.Plan) string {
	if p.Verdict == nil {
		return ""
	}
	return p.Verdict.Currency
}

// findingLine is a finding on one line: "stop: front axle.left: ...; fix".
func findingLine(e *env, f finding.Finding) string {
	code := map[finding.Level]string{finding.Stop: red, finding.Caution: yellow, finding.Note: bold}[f.Level]
	s := e.paint(code, string(f.Level)) + ": "
	if f.Where != "" {
		s += f.Where + ": "
	}
	s += f.Text.String()
	if fix := f.Else(); fix != "" {
		s += "; " + fix.String()
	}
	if f.File != "" && f.Line > 0 {
		s += fmt.Sprintf(" (%s:%d)", f.File, f.Line)
	}
	return s
}

func findingLines(e *env, w io.Writer, list finding.List) {
	for _, f := range list {
		fmt.Fprintln(w, findingLine(e, f))
	}
}
