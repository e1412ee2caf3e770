// Package checks carries the figures that were printed by somebody outside, so
// that the program itself can work them out again (rebush tables checks).
// README.md of the folder above says what a row may be.
package checks

import "embed"

// Files are the CSV files of this folder, each row with where it is printed.
//
//go:embed *.csv
var Files embed.FS
