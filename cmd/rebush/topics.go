package main

import (
	"strings"

	"rebush/plan/job"
)

// topics are things to read that are no commands.
var topics = []struct{ name, text string }{
	{"job", `A whole job, from the measuring to the paper:

 1  rebush form                   print the measuring form; measure before you
                                  take the truck apart, and fill it in
 2  rebush start truck.yaml       asks for those figures and writes them down;
                                  the file is plain text: mend it in any editor
 3  rebush check truck.yaml       says which line is wrong, and what to write
 4  rebush survey truck.yaml      where each hole was before it wore. Does it
                                  agree with what you saw? If not, measure again
 5  rebush verdict truck.yaml     leave it, bush it or swap it, with reasons;
                                  -o verdict.pdf makes the page for the owner
 6  rebush plan truck.yaml        every size and step on the screen
 7  rebush sheet truck.yaml       truck.pdf, to take to the machine
    rebush template truck.yaml    for a jig: print it at 100 %, lay a rule on it
 8  write the sizes as made into the file, under made:
    rebush inspect truck.yaml     accept, or what to do next, before you press
 9  rebush why truck.yaml 12      where the figure with the number 12 in the
                                  sources of the paper (--sources) is from
10  rebush learn shop.yaml *.yaml what your shop really does, after three jobs or
                                  more, as lines for the shop file

Several jobs at once: rebush sheet *.yaml -o batch/
Your own drills, reamers, gauges and spindle stand in a shop file that the job
names (shop: shop.yaml). rebush help file shows how both are written.`},
	{"file", fileHelp + "\nA list of a job holds at most: " + job.Caps("job") + ".\nA list of a shop: " + job.Caps("shop") + ".\n"},
	{"measuring", measuringHelp()},
	{"cautions", `What rebush cannot see, and you must look at first:

- An old zinc casting that is swollen, cracked or crumbles at the edges is not
  pressed into, heated or clamped hard. rebush works with sound metal.
- A figure is as good as the reading behind it. Measure twice; try the pins.
- Speeds and feeds are for sharp tools and work that is held down. Wear eye
  protection; let no drill grab thin brass or bronze by hand.
- Magnesium looks like zinc at a quarter of the weight. Its chips burn; water,
  foam and CO2 feed the fire. It is a stop that only accept: [magnesium] in the
  job lowers: dry sand, graphite or salt powder within reach, no water, no spirit.
- Supply off and unplugged before ohms are read or anything is stripped.
- Porous bronze is neither drilled nor reamed on its running face: the pores
  smear shut.
- Gauge before every step that cannot be undone, and try the press in scrap.
- A price or an hour is only what your shop file says. rebush invents none.
- The plan is advice to somebody who knows the machine, and no more.`},
	{"words", ""},   // of the table of words
	{"evening", ""}, // as on its page
	{"lengths", `A length may be typed as at the bench:

  3.2   3.2 mm   3,2   0.126 in   0.126"   1/8 in   1 1/8 in   5 thou   12 um
  #31   no 31   F

A bare number is in the units of the job file; in lookup it is mm, and inch
under --units in. A bare fraction is inch. In a shell put quotes round #31.`},
	{"ways", `Each truck can go nine ways; the plan works out every one of them the same way and
advises one. --way NAME makes the plan, the sheet or the template of another.

leave           it stays as it is
shim            a washer, no hole is touched
renew           new bushes in the seats that are there; no seat is cut
re-bush         new seats are cut and take in the wear
made to fit     bushes turned for the holes as they are; no seat is cut
bush in a bush  a new bush inside a sleeve, or inside the old bush
plug            the holes are filled, and the seats cut in the filling
new axle too    any of these, with a new axle where the old one would eat them
swap            another truck

way: in a job file says it hole by hole: way: {front axle.left: plug}; keep leaves
a hole as it is. The verdict may also be measure first or buy first: what is to be
measured or bought, what it should give, and what would be chosen then.`},
	{"exit", `Exit codes:

  0  done
  1  understood, but the plan says: do not machine (plan, sheet, inspect),
     or a made size is rejected, or a printed figure is not met (tables checks)
  2  the command line or a file is wrong
  3  a file could not be read or written
  4  a fault in rebush: please report it

For several jobs the highest.`},
	{"licences", licences},
}

// measuringHelp says what is measured and what for, by the numbers of the form.
func measuringHelp() string {
	return "What to measure, by the numbers of the measuring form (rebush form) and of\nrebush start. All is seen from the " +
		"left side. Measure before the truck is taken\napart; write what you read, and leave open what you cannot.\n\n" +
		strings.Join(job.Measuring(80), "\n")
}

// fileHelp teaches the writing of a job file; a test plans the job in it.
const fileHelp = `A job file is plain text: a name, a colon, a space, a value. What belongs to
something stands below it, indented with spaces (no tabs). # begins a comment.

rebush: 1
title: Pump trolley of a garden line, driving axle
units: mm                  # or in; any length may carry its own unit
shop: shop.yaml            # what your shop has; leave it out for a small one
chassis:
  material: mild steel
  condition: sound         # sound, cracked, swollen or unknown
  plates: {left: {thickness: 2.5}, right: {thickness: 2.5}}
  outline: {length: 70, height: 24}
  width: 20.0              # over both plates
shafts:
  - name: front axle
    journal: 4.98                  # ends that differ: {left: 4.98, right: 3.98}
    must_pass: 4.99                # largest diameter to go through these holes
    bores:
      left:
        centre: [15.00, 11.07]     # the middle of the hole as it is now
        widest: 5.16
        narrowest: 5.02
        widest_at: 90              # up is 90, down 270, along +x 0
        worn_to: 90                # the side that the axle has worn
        edges: [{at: 270, metal: 8.4}]
      right: {centre: [15.00, 11.05], widest: 5.12, narrowest: 5.02, widest_at: 90, worn_to: 90}
bushes:
  - {code: drawer 3, bore: 5.05, od: 7.03, length: 3.3, flange: {od: 9, thickness: 0.8}, material: sintered bronze}
  - {code: own turning, make: turned, material: bearing bronze C93200}
complaint: {binds: no, noisy: yes, rubs: no}

Inside { } and [ ] write decimal points and a space behind each comma. A drill
number needs quotes: "#31". rebush schema lists every key; rebush check names
the line of a mistake and what would be right. A shop file begins with
rebush_shop: 1 and holds machine, drills, reamers, pins, instruments.`
