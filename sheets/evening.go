package sheets

import (
	"strconv"

	"rebush/sheets/draw"
)

// Step is a step of the first evening: what it is, and what is done.
type Step struct{ Name, Do string }

// EveningLead says what the first evening is.
const EveningLead = "From the archive to a sheet of your own truck. You need the truck, a caliper, drills or pins to try " +
	"holes with, a printer and this page. Nothing is cut tonight."

// EveningSteps are the steps of the first evening, in their order.
func EveningSteps() []Step {
	return []Step{
		{"Unpack", "Put all of the archive into a folder. Windows: double-click rebush.exe. macOS and Linux: open a " +
			"terminal in that folder and type ./rebush. It asks what you want: type a number, then Enter."},
		{"See one that is done", "Choose 3 and drag pellinthwaite.yaml from the folder demos into the window. Its sheet, " +
			"pellinthwaite.pdf, stands beside it: read page one and look at a card."},
		{"Print the form", "In a terminal: rebush form. It makes measuring-form.pdf; rebush form --example makes one that is " +
			"filled in. Print both."},
		{"Measure, still together", "Side play of each axle, backlash of each gear, wheels back to back. What complains: " +
			"does it bind, is it noisy, does something rub?"},
		{"Measure, taken apart", "Of each hole: where its middle is, how wide at the widest and at the narrowest, which way " +
			"it is widest, how much metal is left to the nearest edge. Of each axle: the journal, and the thickest part " +
			"that has to go through. Twice, and write down both. What you cannot measure leave blank."},
		{"Answer the questions", "Choose 1. The questions have the numbers of the form. Your answers become a file of plain " +
			"text that any editor opens."},
		{"Have it checked", "Choose 2 and name that file. What is wrong is told with its line, and what would be right."},
		{"Ask what to do", "In a terminal: rebush verdict truck.yaml, with the name of your file. It says leave it, bush it or " +
			"swap it, and why."},
		{"Make the sheet", "Choose 3. If it says DO NOT MACHINE it says what stands in the way and what was tried: measure " +
			"that first. If not, read the cautions, and sleep on it."},
	}
}

// EveningEnd is what to know besides.
const EveningEnd = "It cannot see a casting that is swollen, cracked or rotten, and knows no more than you measured: rebush " +
	"help cautions. A word that you do not know: rebush help words. The rest: rebush help job."

// Evening makes the page of the first evening, with boxes to tick.
func Evening(o Options) (*draw.Document, error) {
	p, err := newPaper(o, nil, "First evening")
	if err != nil {
		return nil, err
	}
	p.batch, p.section = true, "First evening"
	p.page()
	p.heading("First evening", "evening")
	b := p.block()
	b.para(EveningLead, draw.Regular, p.st.body)
	p.add(b)
	for i, s := range EveningSteps() {
		b := p.block()
		b.ticked(strconv.Itoa(i+1)+"  "+s.Name+". "+s.Do, draw.Regular)
		p.add(b)
	}
	b = p.block()
	b.para(EveningEnd, draw.Regular, p.st.body)
	p.add(b)
	return p.finish()
}
