package main

import _ "embed"

// licences is the notice of everything that the built program holds: its own
// code, the modules linked into it on any system it is built for, Go's library
// and runtime, and the fonts of the paper. TestLicences keeps it complete;
// `go test ./cmd/rebush -run Licences -update` writes it anew.
//
//go:embed licences.txt
var licences string
