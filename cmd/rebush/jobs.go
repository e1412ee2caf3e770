package main

// jobCommands are the commands that read job files.
func jobCommands() []*command { return []*command{sheetPlaceholder()} }

func sheetPlaceholder() *command { return &command{name: "sheet"} }
