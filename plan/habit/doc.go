// Package habit is what a shop really does: how much larger than its own limits
// a tool cuts, how far that scatters from hole to hole, how far a hole stands
// from its target, how much larger than planned a bore runs, and how often
// something slips.
//
// Of joins the rules (what shops do) with the shop's record (what this one did);
// Learn works a record out of what was gauged in past jobs. It knows no plan:
// who calls it says what each plan expected. Sizes are on diameter in
// micrometres, places in mm per axis; METHODS.md 1 has the formulas.
package habit
