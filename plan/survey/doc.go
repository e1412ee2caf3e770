// Package survey says where the centre of a worn bore was before it wore, how
// far the wear went, and how sure that is.
//
// It works on plain numbers: points are [2]float64 in mm in the frame of the
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
// The package trusts its caller for units and frame only. It knows nothing of
// files, gears or bushes.
package survey
