//go:build !windows

package main

import "os"

// A window belongs to the shell that runs in it.
func ownWindow() bool { return false }

// Terminals understand codes of colour, but for those that say they are dumb.
func understandsCodes(*os.File) bool { return true }
