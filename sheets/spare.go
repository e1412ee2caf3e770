package sheets

import "slices"

// spare is a picture that is worth having where a page has room for it, at a
// place where it may stand.
type spare struct{ picture, place string }

// spare offers a picture at a place: it is drawn where this layout is one that has
// room for it there.
func (p *paper) spare(picture, place string, draw func() *block) {
	s := spare{picture, place}
	if !slices.Contains(p.offered, s) { // a card is laid out more than once
		p.offered = append(p.offered, s)
	}
	if slices.Contains(p.with, s) {
		p.tight(draw())
	}
}

// pictured takes into a sheet, one after the other, the pictures that it has room
// for, each at the first place where it costs no page, tears no card, makes none
// stand closer and moves no part to another page.
func pictured(best sheet, build func(with []spare) (sheet, error)) (sheet, error) {
	for _, s := range best.offered {
		if slices.ContainsFunc(best.with, func(x spare) bool { return x.picture == s.picture }) {
			continue
		}
		x, err := build(append(slices.Clone(best.with), s))
		if err != nil {
			return best, err
		}
		if x.pages == best.pages && x.torn == best.torn && x.steps == best.steps && slices.Equal(x.sections, best.sections) {
			best = x
		}
	}
	return best, nil
}
