package verdict

// Name is a way that a truck, or one hole of it, can go.
type Name string

// The names of the ways. What each of them is stands in options.
const (
	Leave       Name = "leave"
	Shim        Name = "shim"
	Renew       Name = "renew"
	Rebush      Name = "re-bush"
	MadeToFit   Name = "made to fit"
	BushInABush Name = "bush in a bush"
	Plug        Name = "plug"
	NewAxle     Name = "new axle too"
	Swap        Name = "swap"
)

// What is chosen where something has to be known or bought before any way can.
const (
	MeasureFirst Name = "measure first"
	BuyFirst     Name = "buy first"
)

// Names are all the ways of a truck, that with which the least is done first.
func Names() []Name {
	return []Name{Leave, Shim, Renew, Rebush, MadeToFit, BushInABush, Plug, NewAxle, Swap}
}

// Owner is what an owner calls it: "new bearings in the old seats".
func (n Name) Owner() string {
	if o, ok := n.option(); ok {
		return o.owner
	}
	return string(n)
}

// Cuts says whether this truck is machined that way.
func (n Name) Cuts() bool {
	o, ok := n.option()
	return ok && o.cuts
}

func (n Name) option() (option, bool) {
	for _, o := range options() {
		if o.name == n {
			return o, true
		}
	}
	return option{}, false
}
