// Package survey says where the centre of a worn bore was before it wore, how
// far the wear went, and how sure that is.
//
// FromJob reads a job into sources: for each way of finding a centre the figures
// that were read for it, with their instruments, and the function that makes
// evidence of them. Holes asks them all and takes the best: a Hole is what later
// steps lean on. Explain writes to the ledger how each came about, by the same
// functions over the same figures; Row is what is printed.
//
// The ways themselves (FromDiameters, FromProbe, FromWalls, FromSpans, FromFrame)
// work on plain numbers: points are [2]float64 in mm in the frame of the
// left plate (x along the truck, y up), directions are radians anticlockwise
// from +x unless the name says Deg. Uncertainties called u or U are standard
// uncertainties in mm; covariances are in mm^2.
//
// The model of a worn bore: a circle of radius R about the old centre O,
// united with the round journal of radius r swept from O to D, a distance d
// away. The journal first crosses the clearance c = R - r and then eats w of
// metal, so d = c + w. A journal that rocked sweeps a pie slice; one that was
// pressed two ways sweeps two segments.
//
// The package trusts the job for units and frame. It knows nothing of gears, new
// bushes or machines.
package survey
