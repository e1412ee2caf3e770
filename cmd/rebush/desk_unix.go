//go:build unix

package main

import (
	"io/fs"
	"os"
	"os/signal"
	"syscall"
)

// keepOwner gives a file to whom the one before it belonged. Only the system's
// keeper may give files away; anybody else keeps the group where he is in it.
func keepOwner(f *os.File, old fs.FileInfo) {
	s, ok := old.Sys().(*syscall.Stat_t)
	if !ok {
		return
	}
	if f.Chown(int(s.Uid), int(s.Gid)) != nil {
		_ = f.Chown(-1, int(s.Gid)) // or nobody's
	}
}

// syncFolder makes a renaming last. Not every file system can.
func syncFolder(path string) {
	if f, err := os.Open(path); err == nil {
		_ = f.Sync()
		f.Close()
	}
}

// endBy ends the program by a signal.
func endBy(s os.Signal) {
	signal.Reset(s)
	if n, ok := s.(syscall.Signal); ok && syscall.Kill(os.Getpid(), n) == nil {
		select {}
	}
	os.Exit(unreadable)
}
