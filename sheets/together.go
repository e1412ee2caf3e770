package sheets

import (
	"regexp"
	"slices"
	"strings"

	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan/job"
)

// alike are findings by their level, in the words of the bench. Those that say the
// same of several places, or differ in nothing but their figures, are put
// together: their figures stand beside each other, in the order of the places.
func alike(list finding.List, b bench) finding.List {
	var out finding.List
	var texts [][]string // that stand together in each of out
	at := map[string]int{}
	for _, l := range levels {
		for _, f := range list {
			if f.Level != l || f.Rule == job.KeyNotUsed {
				continue
			}
			text := b.say(f.Text.String())
			f.Text = say.Words(text)
			key := string(l) + "\x00" + string(f.Rule) + "\x00" + skeleton(text) + "\x00" + f.Fix.String()
			i, have := at[key]
			if have && f.Where != "" && out[i].Where != "" && len(f.Tried) == 0 && abreastOf(append(slices.Clone(texts[i]), text)) {
				texts[i] = append(texts[i], text)
				out[i].Where += ", " + f.Where
				continue
			}
			at[key], out, texts = len(out), append(out, f), append(texts, []string{text})
		}
	}
	for i := range out {
		if s := together(texts[i]); s != texts[i][0] {
			out[i].Text, out[i].Where = say.Words(s), out[i].Where+" (in this order)"
			out[i].Fix = say.Words(strings.ReplaceAll(out[i].Fix.String(), "this bore", "each of these bores"))
		}
	}
	return out
}

// measured is a figure of a text: with places, or before its unit; not the number
// of a shaft.
var measured = regexp.MustCompile(`\d+\.\d+|\d+( (?:mm|in|N|kg|lb|MPa|psi|degrees)\b)`)

// split parts a text at its figures.
func split(s string) (words, figures []string) {
	from := 0
	for _, m := range measured.FindAllStringSubmatchIndex(s, -1) {
		end := m[1]
		if m[2] >= 0 {
			end = m[2]
		}
		words, figures = append(words, s[from:m[0]]), append(figures, s[m[0]:end])
		from = end
	}
	return append(words, s[from:]), figures
}

// skeleton is a text without its figures.
func skeleton(s string) string {
	words, _ := split(s)
	return strings.Join(words, "#")
}

// abreastOf says whether the figures of texts that differ in nothing else can
// stand beside each other: not the ends of a range, which would be misread.
func abreastOf(texts []string) bool {
	words, first := split(texts[0])
	for _, s := range texts[1:] {
		_, figures := split(s)
		for k, f := range figures {
			if f != first[k] && (slices.Contains(listing, words[k]) || slices.Contains(listing, words[k+1])) {
				return false
			}
		}
	}
	return true
}

// listing is what stands between figures that belong together already.
var listing = []string{" to ", " and ", ", ", " or ", " x "}

// together is one text for several that differ in their figures.
func together(texts []string) string {
	words, _ := split(texts[0])
	var b strings.Builder
	for k, w := range words {
		b.WriteString(w)
		if k == len(words)-1 {
			break
		}
		var list []string
		same := true
		for _, s := range texts {
			_, figures := split(s)
			list = append(list, figures[k])
			same = same && figures[k] == list[0]
		}
		if same {
			list = list[:1]
		}
		if n := len(list); n > 1 {
			b.WriteString(strings.Join(list[:n-1], ", ") + " and ")
		}
		b.WriteString(list[len(list)-1])
	}
	return b.String()
}
