package stock

import (
	"fmt"

	"rebush/fits/dim"
)

// Bush is one plain or flanged bush as it is known.
type Bush struct {
	Code            string
	Bore, OD        Size
	Length          dim.Length // with the flange
	FlangeOD        dim.Length // not given: a plain bush
	FlangeThickness dim.Length
	Material        string
	Source          string // of a row of the series
	Address         string
	ToBuy           bool // from the built-in series, not in the drawer
}

// Known is a bush with its limits.
type Known struct {
	Bore, OD        Limits
	WallMin         dim.Length // the thinnest its wall may be
	WallMax         dim.Length
	UnderFlange     dim.Length // length that goes into the plate
	FlangeThickness dim.Length // not given: a plain bush
}

// Resolve works out the limits of a bush and refuses what cannot be one: a bore
// not smaller than the outside, a wall thinner than the tolerances it rests on,
// a flange not larger than the bush, a length that is all flange. uBore and uOD
// are the standard uncertainties with which single sizes were measured.
func (b Bush) Resolve(classes Classes, uBore, uOD dim.Length) (Known, error) {
	var k Known
	var err error
	if k.Bore, err = b.Bore.Limits(classes, uBore); err != nil {
		return Known{}, b.fault("bore: %w", err)
	}
	if k.OD, err = b.OD.Limits(classes, uOD); err != nil {
		return Known{}, b.fault("outside: %w", err)
	}
	if k.OD.Middle().Cmp(k.Bore.Middle()) <= 0 {
		return Known{}, b.fault("its bore, %s, is not smaller than its outside, %s: are the two changed round?", k.Bore.How, k.OD.How)
	}
	k.WallMin = k.OD.Low.Sub(k.Bore.High).Half()
	k.WallMax = k.OD.High.Sub(k.Bore.Low).Half()
	if slack := k.OD.Width().Add(k.Bore.Width()).Half(); k.WallMin.Sign() <= 0 || k.WallMin.Less(slack) {
		return Known{}, b.fault("its wall, from %s to %s, is thinner than the doubt about it: is the bore or the outside misread?", k.WallMin, k.WallMax)
	}
	if k.UnderFlange, err = b.length(k); err != nil {
		return Known{}, err
	}
	k.FlangeThickness = b.FlangeThickness
	return k, nil
}

// length checks length and flange, and returns what goes into the plate; not
// given where the length is not.
func (b Bush) length(k Known) (dim.Length, error) {
	if b.Length.Given() && b.Length.Sign() <= 0 {
		return dim.Length{}, b.fault("its length is %s; it must be greater than 0", b.Length)
	}
	if b.FlangeOD.Given() != b.FlangeThickness.Given() {
		return dim.Length{}, b.fault("a flange needs both its diameter and its thickness")
	}
	if !b.FlangeOD.Given() {
		return b.Length, nil
	}
	if b.FlangeOD.Cmp(k.OD.High) <= 0 {
		return dim.Length{}, b.fault("its flange, %s, is not larger than its outside, up to %s", b.FlangeOD, k.OD.High)
	}
	if b.FlangeThickness.Sign() <= 0 {
		return dim.Length{}, b.fault("its flange is %s thick; it must be more than 0", b.FlangeThickness)
	}
	if !b.Length.Given() {
		return dim.Length{}, nil
	}
	if b.Length.Cmp(b.FlangeThickness) <= 0 {
		return dim.Length{}, b.fault("its length, %s, is not more than its flange, %s; the length is measured with the flange", b.Length, b.FlangeThickness)
	}
	return b.Length.Sub(b.FlangeThickness), nil
}

func (b Bush) fault(format string, args ...any) error {
	name := b.Code
	if name == "" {
		name = "a bush"
	}
	return fmt.Errorf("%s: "+format, append([]any{name}, args...)...)
}
