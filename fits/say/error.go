package say

import "strings"

// Failure is an error whose message carries its figures.
type Failure struct {
	text  Text
	under error
}

// Errorf is fmt.Errorf for a message that carries its figures; %w wraps.
func Errorf(format string, args ...any) error {
	f := Failure{text: F(strings.ReplaceAll(format, "%w", "%v"), args...)}
	if strings.Contains(format, "%w") {
		for _, a := range args {
			if err, ok := a.(error); ok {
				f.under = err
			}
		}
	}
	return &f
}

// Error prints in mm.
func (f *Failure) Error() string { return f.text.String() }

// Unwrap is what %w wrapped.
func (f *Failure) Unwrap() error { return f.under }

// Said is the message.
func (f *Failure) Said() Text { return f.text }

// speaker is an error, or anything else, that says itself with figures.
type speaker interface{ Said() Text }
