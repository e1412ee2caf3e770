package main

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"rebush/plan/job"
)

// ask puts one question until it is answered, left open, or gone back from.
func (t *talk) ask(st job.Step) error {
	t.heading(st)
	otherwise, needed := t.iv.Otherwise(st)
	doubtful := "" // an answer that does not go with others
	for again := false; !t.ended; again = true {
		if again {
			fmt.Fprint(t.out, "   again: ")
		} else {
			fmt.Fprint(t.out, prompt(st, otherwise))
		}
		text := t.line()
		if t.ended {
			return nil
		}
		switch word := strings.ToLower(text); {
		case word == "?" || word == "help":
			t.explain(st, otherwise)
			continue
		case word == "back":
			if !t.iv.Back() {
				t.note("This is the first question.")
				continue
			}
			return t.save()
		case word == "keep" && doubtful != "":
			t.iv.Answer(st, doubtful)
			t.iv.Keep(st)
			return t.save()
		case word == "skip" || !slices.Contains(st.Words, word) && slices.Contains(notKnown, word):
			text = t.iv.NotKnown(st)
			if needed || word != "skip" {
				t.note("Not known. " + st.Unknown)
			}
		case !needed && otherwise == "" && st.Words == nil && (word == "none" || word == "no" || word == "nothing"):
			text = ""
		case text == "" && needed:
			t.note("This one is needed. " + st.Why + " With skip it stays open for now.")
			continue
		case text == "":
			text = otherwise
		}
		if wrong := t.iv.Answer(st, text); wrong != "" {
			t.note(sentence(wrong))
			continue
		}
		if doubts := t.iv.Doubts(st); len(doubts) > 0 {
			t.iv.Back()
			doubtful = text
			for _, d := range doubts {
				t.note("That does not go with what was said: " + d + ".")
			}
			t.note("Type it again, or keep if it is so, or back to mend the answer before.")
			continue
		}
		if err := t.save(); err != nil {
			return err
		}
		t.picture(st)
		return nil
	}
	return nil
}

// notKnown is what people say to what they do not know.
var notKnown = []string{"unknown", "don't know", "dont know", "don’t know", "do not know", "not known",
	"not sure", "no idea", "dunno", "not measured", "not looked at", "n/a", "-", "--"}

// prompt is a question with its number, and what an empty answer means.
func prompt(st job.Step, otherwise string) string {
	number := "  "
	if st.Number > 0 {
		number = fmt.Sprintf("%2d", st.Number)
	}
	lines := wrap(st.Ask, 72)
	s := number + " " + strings.Join(lines, "\n   ")
	if otherwise != "" {
		s += " [" + otherwise + "]"
	}
	return s + " "
}

// note says something below a question.
func (t *talk) note(s string) {
	for _, l := range wrap(s, 74) {
		fmt.Fprintln(t.out, "   "+l)
	}
}

// explain says what a question is for.
func (t *talk) explain(st job.Step, otherwise string) {
	t.note(st.Why)
	if st.Picture != "" {
		t.note(fmt.Sprintf("In the drawing of the measuring form it is %s.", strings.Join(strings.Fields(st.Picture), " and ")))
	}
	if st.Example != "" {
		t.note("Such as " + st.Example + ".")
	}
	if otherwise != "" {
		t.note("Enter alone: " + otherwise + ".")
	}
	t.note("Not known: " + st.Unknown)
}

// heading says of what the next questions are, where that changes.
func (t *talk) heading(st job.Step) {
	head := map[string]string{"job": "The job", "running": "Before it is taken apart", "look-alikes": "Before it is taken apart",
		"plates": "The plates", "wheelbase": "The casting", "gear": "The gear", "worm": "The gear", "pinion": "The gear",
		"owner": "What else could be done", "shop": "Your shop", "feature": "Unworn holes"}[st.Part]
	switch st.Part {
	case "shaft":
		head = sentence(t.iv.Called(st.Index))
	case "bore":
		head = sentence(t.iv.Called(st.Index)) + ", " + string(st.Side) + " hole"
	case "bush":
		head = "The drawer"
		if st.Index > 0 {
			head += ", bush " + strconv.Itoa(st.Index+1)
		}
	}
	if head != t.head {
		fmt.Fprintf(t.out, "\n%s\n", t.e.paint(bold, head))
		t.head = head
	}
}

// sentence begins with a capital letter.
func sentence(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
