package draw

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"unicode/utf16"
)

// entry is a bookmark in the tree of bookmarks. Numbers are those of objects,
// or places in the list while it is built; 0 in the list is the root.
type entry struct {
	placedMark
	parent, prev, next, first, last, inside int
}

// tree nests the bookmarks of a document by their levels, page by page and from
// top to bottom as they were placed. A level that skips one hangs under what
// stands before it.
func (d *Document) tree() []entry {
	marks := slices.Clone(d.marks)
	slices.SortStableFunc(marks, func(a, b placedMark) int { return a.page - b.page })
	list := []entry{{}}
	open := []int{0} // the last entry of each level above the next
	for _, m := range marks {
		level := min(max(m.level, 0), len(open)-1)
		open = open[:level+1]
		i, up := len(list), open[level]
		e := entry{placedMark: m, parent: up, prev: list[up].last}
		if list[up].first == 0 {
			list[up].first = i
		} else {
			list[list[up].last].next = i
		}
		list[up].last = i
		list = append(list, e)
		open = append(open, i)
	}
	for i := len(list) - 1; i > 0; i-- {
		list[list[i].parent].inside += 1 + list[i].inside
	}
	return list
}

// outline writes the bookmarks and returns the number of their root, 0 where
// there are none. The parts of the document stand open, what is in them closed.
func (u *update) outline(d *Document, pages []int) int {
	list := d.tree()
	if len(list) == 1 {
		return 0
	}
	base := u.next
	for i, e := range list {
		u.add(func(w *bytes.Buffer) {
			w.WriteString("<<")
			if i == 0 {
				top := 0
				for k := e.first; k != 0; k = list[k].next {
					top++
				}
				fmt.Fprintf(w, " /Type /Outlines /First %d 0 R /Last %d 0 R /Count %d >>", base+e.first, base+e.last, top)
				return
			}
			fmt.Fprintf(w, " /Title %s /Parent %d 0 R", textString(plain(e.title)), base+e.parent)
			for _, x := range []struct {
				key string
				to  int
			}{{"Prev", e.prev}, {"Next", e.next}, {"First", e.first}, {"Last", e.last}} {
				if x.to != 0 {
					fmt.Fprintf(w, " /%s %d 0 R", x.key, base+x.to)
				}
			}
			if e.inside > 0 {
				fmt.Fprintf(w, " /Count %d", -e.inside)
			}
			y := (d.Paper.Height - e.y) / MMPerPt
			fmt.Fprintf(w, " /Dest [%d 0 R /XYZ 0 %.2f null] >>", pages[e.page-1], y)
		})
	}
	return base
}

// textString writes a text as a PDF reads it: as it stands where it is plain,
// else in 16 bits a sign.
func textString(s string) string {
	if strings.IndexFunc(s, func(r rune) bool { return r < 0x20 || r > 0x7E }) < 0 {
		return "(" + strings.NewReplacer(`\`, `\\`, "(", `\(`, ")", `\)`).Replace(s) + ")"
	}
	var b strings.Builder
	b.WriteString("<FEFF")
	for _, u := range utf16.Encode([]rune(s)) {
		fmt.Fprintf(&b, "%04X", u)
	}
	return b.String() + ">"
}
