package press

import (
	"fmt"
	"math"
)

// The least wall the mechanics are asked about, as a share of the seat
// diameter, and the span of every length and stress. Within them no answer is
// other than finite.
const (
	thinnest = 1e-6
	smallest = 1e-6
	largest  = 1e9
)

// Validate says what is wrong with a seat, in words of the bench, nil where
// nothing is.
func (s Seat) Validate() error {
	if err := size("the outside of the bush", s.D); err != nil {
		return err
	}
	switch {
	case !(s.Di >= 0):
		return fmt.Errorf("the bush's bore is %v mm; it cannot be below 0 (0 is a solid shaft)", s.Di)
	case s.Di >= s.D:
		return fmt.Errorf("the bush's bore, %v mm, is not smaller than its outside, %v mm", s.Di, s.D)
	case s.D-s.Di < thinnest*s.D:
		return fmt.Errorf("the bush's wall, %v mm, is too thin to work with", (s.D-s.Di)/2)
	case !(s.L >= 0 && s.L <= largest):
		return fmt.Errorf("the seat's length is %v mm; it must be 0 or more", s.L)
	}
	if err := s.Bush.validate("bush"); err != nil {
		return err
	}
	if err := s.Housing.validate("housing"); err != nil {
		return err
	}
	return s.checkWall()
}

func (s Seat) checkWall() error {
	switch w := s.Wall.(type) {
	case nil:
		return fmt.Errorf("nothing is said of the metal round the seat: give its outside diameter or the metal left to the edge")
	case Ring:
		if err := size("the outside of the housing", w.OD); err != nil {
			return err
		}
		if w.OD <= s.D {
			return fmt.Errorf("the housing's outside, %v mm, is not larger than its seat, %v mm", w.OD, s.D)
		}
	case Boss:
		if err := size("the outside of the boss", w.OD); err != nil {
			return err
		}
		if w.OD <= s.D {
			return fmt.Errorf("the boss's outside, %v mm, is not larger than its seat, %v mm", w.OD, s.D)
		}
		if !(w.Ecc >= 0) {
			return fmt.Errorf("the seat lies %v mm off the middle of the boss; that must be 0 or more", w.Ecc)
		}
	case Edge:
		if w.Ligament > largest || math.IsNaN(w.Ligament) {
			return fmt.Errorf("the metal left to the edge is %v mm; that is no measure", w.Ligament)
		}
	}
	if t, ok := s.Ligament(); ok && !(t > 0) {
		return fmt.Errorf("the metal left to the edge is %v mm: the seat breaks out; there must be some", t)
	} else if ok && t < thinnest*s.D {
		return fmt.Errorf("the metal left to the edge, %v mm, is too thin to work with", t)
	}
	return nil
}

func (e Elastic) validate(of string) error {
	switch {
	case !(e.E >= smallest && e.E <= 1e12):
		return fmt.Errorf("the %s's modulus is %v MPa; metals lie between 40000 and 210000", of, e.E)
	case !(e.Nu >= 0 && e.Nu <= 0.5):
		return fmt.Errorf("the %s's Poisson's ratio is %v; it lies between 0 and 0.5", of, e.Nu)
	case !(e.Yield >= 0 && e.Yield <= 1e12):
		return fmt.Errorf("the %s's yield is %v MPa; it must be 0 (not known) or more", of, e.Yield)
	}
	return nil
}

func size(what string, d float64) error {
	if !(d >= smallest && d <= largest) {
		return fmt.Errorf("%s is %v mm; it must be greater than 0", what, d)
	}
	return nil
}

// CheckInterference says what is wrong with a diametral interference, nil where
// nothing is: it must be a number from 0 up to a tenth of the seat.
func (s Seat) CheckInterference(U float64) error {
	switch {
	case !(U >= 0):
		return fmt.Errorf("the interference is %v mm; a press needs 0 or more (less is play)", U)
	case U > s.D/10:
		return fmt.Errorf("an interference of %v mm on a seat of %v mm is no press; a tenth of the seat is far too much already", U, s.D)
	}
	return nil
}
