// Command alike says whether two pictures show the same page: they have one
// size, and no patch of eight by eight points differs by more than a quarter
// of the way from white to black. Programs that draw pages differ in the edges
// of letters.
package main

import (
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
)

const patch, most = 8, 0.25

func main() {
	if len(os.Args) != 3 {
		fmt.Fprintln(os.Stderr, "alike: two pictures")
		os.Exit(2)
	}
	a, err := read(os.Args[1])
	if err != nil {
		fmt.Fprintln(os.Stderr, "alike:", err)
		os.Exit(2)
	}
	b, err := read(os.Args[2])
	if err != nil {
		fmt.Fprintln(os.Stderr, "alike:", err)
		os.Exit(2)
	}
	if a.Bounds().Size() != b.Bounds().Size() {
		fmt.Fprintf(os.Stderr, "alike: %v and %v\n", a.Bounds().Size(), b.Bounds().Size())
		os.Exit(1)
	}
	size := a.Bounds().Size()
	for y := 0; y+patch <= size.Y; y += patch {
		for x := 0; x+patch <= size.X; x += patch {
			if d := math.Abs(grey(a, x, y) - grey(b, x, y)); d > most {
				fmt.Fprintf(os.Stderr, "alike: the patch at %d, %d differs by %.2f\n", x, y, d)
				os.Exit(1)
			}
		}
	}
}

func read(name string) (image.Image, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return png.Decode(f)
}

// grey is the mean of a patch, 0 black to 1 white.
func grey(img image.Image, x, y int) float64 {
	sum := 0.0
	from := img.Bounds().Min
	for dy := range patch {
		for dx := range patch {
			sum += float64(color.GrayModel.Convert(img.At(from.X+x+dx, from.Y+y+dy)).(color.Gray).Y)
		}
	}
	return sum / (255 * patch * patch)
}
