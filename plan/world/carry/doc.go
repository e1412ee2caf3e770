// Package carry carries plans out on trucks whose truth is known, with errors of
// the machine that are drawn here and nowhere else, and says whether the truck
// came right. It reads a plan as anybody does who has only the JSON, and shares
// nothing with the planner: what a seat clears, what a press holds and how
// teeth run is worked out here once more.
package carry
