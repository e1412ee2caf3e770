package main

import (
	"os"
	"syscall"
	"unsafe"
)

var kernel = syscall.NewLazyDLL("kernel32.dll")

// ownWindow says whether the window of the program is its own: nobody else,
// such as a shell, is in it.
func ownWindow() bool {
	var ids [2]uint32
	n, _, _ := kernel.NewProc("GetConsoleProcessList").Call(uintptr(unsafe.Pointer(&ids[0])), uintptr(len(ids)))
	return n == 1
}

// understandsCodes switches a window on to codes of colour, which the older
// ones would print.
func understandsCodes(f *os.File) bool {
	const codesOn = 0x0004 // ENABLE_VIRTUAL_TERMINAL_PROCESSING
	var mode uint32
	if err := syscall.GetConsoleMode(syscall.Handle(f.Fd()), &mode); err != nil {
		return false
	}
	ok, _, _ := kernel.NewProc("SetConsoleMode").Call(f.Fd(), uintptr(mode|codesOn))
	return ok != 0
}
