package job

import (
	"strconv"
	"strings"
)

// likeAt is where an interview keeps the name of its pattern.
const likeAt = "job/like"

// Like begins an interview of a truck that is like a pattern: what that gives is
// not asked. name resolves from the folder of the job. Errors are those of
// ReadPattern.
func (iv *Interview) Like(name string) error {
	p, err := ReadPattern(beside(iv.Folder, name))
	if err != nil {
		return err
	}
	iv.pattern = p
	if _, there := iv.said[likeAt]; !there {
		iv.said[likeAt] = name
		iv.order = append(iv.order, likeAt)
	}
	return nil
}

// IsLike is the name of the pattern, "" without one.
func (iv *Interview) IsLike() string { return iv.said[likeAt] }

// named are the things of a list that the pattern names.
func (iv *Interview) named(list string) []string {
	if iv.pattern == nil {
		return nil
	}
	return iv.pattern.Names(list)
}

// given says whether the pattern answers a question.
func (iv *Interview) given(st Step) bool {
	if iv.pattern == nil {
		return false
	}
	switch {
	case st.Part == "plates" && st.ID == "shafts", st.Part == "shaft" && st.ID == "name":
		return len(iv.named("shafts")) > st.Index
	case st.Part == "job": // each file has units of its own
		return false
	case st.Part == "bush":
		return len(iv.named("bushes")) > 0
	case len(st.figures) == 0 || st.ofShop:
		return false
	case st.Part == "gear" && st.ID == "module" && iv.gives("gears/#/diametral_pitch", st):
		return true
	}
	return iv.gives(st.figures[0].keys[0], st)
}

// gives says whether the pattern gives a key of a question.
func (iv *Interview) gives(key string, st Step) bool {
	list, rest, ok := strings.Cut(key, "/#/")
	if !ok {
		return iv.pattern.Gives(key)
	}
	names := iv.named(list)
	if st.Index >= len(names) {
		return false
	}
	path := list + "/" + names[st.Index] + "/" + strings.Replace(rest, "@", string(st.Side), 1)
	if before, after, ok := strings.Cut(path, "/#"); ok { // an item of a list without names
		number, _, _ := strings.Cut(after, "/")
		n, _ := strconv.Atoi(number)
		return iv.pattern.Gives(before + "/" + strconv.Itoa(n-1))
	}
	end := strings.TrimSuffix(strings.TrimSuffix(path, "/left"), "/right") // of one figure for both ends
	if !strings.HasSuffix(end, "/bores") && iv.pattern.Gives(end) {
		return true
	}
	return iv.pattern.Gives(path)
}

// kindOfGear is that of the first gear of the pattern, "" where it has none.
func (iv *Interview) kindOfGear() string {
	if iv.pattern == nil {
		return ""
	}
	for _, g := range iv.pattern.root.get("gears").items() {
		return g.get("kind").text()
	}
	return ""
}
