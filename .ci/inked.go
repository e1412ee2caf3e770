// Command inked says whether pictures of pages have ink on them: neither blank
// nor black. Arguments are PNG files.
package main

import (
	"fmt"
	"image/color"
	"image/png"
	"os"
)

// Shares of dark points between which a page counts as printed. A page with
// one line of text has about 0.002 at 60 points to the inch.
const least, most = 0.002, 0.5

func main() {
	if len(os.Args) < 2 {
		fmt.Fprintln(os.Stderr, "inked: no pictures")
		os.Exit(2)
	}
	code := 0
	for _, name := range os.Args[1:] {
		share, err := ink(name)
		if err != nil || share < least || share > most {
			fmt.Fprintf(os.Stderr, "%s: %.4f of it is ink (%v)\n", name, share, err)
			code = 1
		}
	}
	os.Exit(code)
}

// ink is the share of points darker than the middle grey.
func ink(name string) (float64, error) {
	f, err := os.Open(name)
	if err != nil {
		return 0, err
	}
	defer f.Close()
	img, err := png.Decode(f)
	if err != nil {
		return 0, err
	}
	box := img.Bounds()
	dark := 0
	for y := box.Min.Y; y < box.Max.Y; y++ {
		for x := box.Min.X; x < box.Max.X; x++ {
			if color.GrayModel.Convert(img.At(x, y)).(color.Gray).Y < 128 {
				dark++
			}
		}
	}
	return float64(dark) / float64(box.Dx()*box.Dy()), nil
}
