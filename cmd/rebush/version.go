package main

import "runtime/debug"

// program is the name and version that stand on paper.
const program = "rebush 1"

// versionLine is what --version says: the version and of which state of the
// source it was built.
func versionLine() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		info = &debug.BuildInfo{}
	}
	return program + ", build " + buildOf(info)
}

// buildOf is the revision that a program was built of, with a plus where files
// had been changed since; "source" where that is not known.
func buildOf(info *debug.BuildInfo) string {
	revision, changed := "", ""
	for _, s := range info.Settings {
		switch {
		case s.Key == "vcs.revision":
			revision = s.Value
		case s.Key == "vcs.modified" && s.Value == "true":
			changed = "+"
		}
	}
	if revision == "" {
		return "source"
	}
	return revision[:min(12, len(revision))] + changed
}
