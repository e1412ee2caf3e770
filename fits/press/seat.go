// Package press is the mechanics of a bush pressed into a seat: pressure,
// stresses, how far the bore closes, what force and torque it holds, and what
// temperature does to it.
//
// Plane stress throughout: a thin plate or a short boss with free ends. The
// unit of length is mm, of stress MPa, of force N; any other set in which they
// agree gives the same answers. An interference is always the diametral one.
// Nothing here allocates, reads a table or decides: that is the caller's.
//
// It trusts that the seat is round and the bush alone in it. For a corner (two
// near edges) and for two near holes none of it holds.
package press

// Elastic is what the mechanics need of a material. E is Young's modulus in
// MPa, Nu is Poisson's ratio, Yield the flow stress in MPa or 0 where it does
// not flow or is not known.
type Elastic struct{ E, Nu, Yield float64 }

// Wall is the metal round a seat: a Ring, an Edge, a Boss or Infinite.
type Wall interface{ wall() }

// Ring is a boss with the seat in its middle. OD is its outside diameter, mm.
type Ring struct{ OD float64 }

// Edge is a plate whose nearest free edge is straight. Ligament is the metal
// left between the seat and the edge, mm.
type Edge struct{ Ligament float64 }

// Boss is a round boss with the seat off its middle by Ecc, mm.
type Boss struct{ OD, Ecc float64 }

// Infinite is a plate without an edge near.
type Infinite struct{}

func (Ring) wall()     {}
func (Edge) wall()     {}
func (Boss) wall()     {}
func (Infinite) wall() {}

// Seat is one press: a bush of outside D and bore Di (0 for a solid shaft) in
// a seat of diameter D and length L, all mm.
type Seat struct {
	D, Di, L      float64
	Housing, Bush Elastic
	Wall          Wall
}

// State is a seat with its bush in it.
type State struct {
	U       float64 // diametral interference it stands for, mm
	P       float64 // seat pressure, MPa: where the bush flows, the least it can be (Tresca)
	PMid    float64 // the pressure expected (von Mises)
	PHigh   float64 // the most it can be: 1.155 times P where the bush flows
	Elastic float64 // the pressure if nothing flowed, MPa
	Flows   bool    // the whole wall of the bush flows
	Spring  float64 // diametral interference that springs back, mm: all of U where nothing flows

	BushHoopBore float64 // hoop stress of the bush at its bore, MPa, below zero, at P as if elastic
	BushHoopSeat float64 // the same at its outside
	BushTresca   float64 // equivalent stress of the bush, MPa, at P as if elastic

	HoleHoop       float64 // largest hoop tension at the seat, MPa, at P
	EdgeHoop       float64 // largest tension on the outer edge, MPa, at P
	HousingHoopMax float64 // the larger of the two
	HousingMises   float64 // largest von Mises stress of the housing, MPa, at P
	HousingTresca  float64 // largest Tresca stress of the housing, MPa, at P
	HousingUse     float64 // HousingTresca as a share of its yield; 0 where no yield is known
	HousingFlows   bool    // P is above what a ring of this yield can bear; P is not lowered for it

	Closure     float64 // how much the bore closes on diameter, mm
	ClosureLow  float64 // the band of it where the bush flows, else the same
	ClosureHigh float64
	Opening     float64 // mean growth of the seat on diameter, mm
	Growth      float64 // mean growth of the outside of a ring or boss on diameter, mm; 0 for a plate
}

// At presses the bush in with the diametral interference U, mm:
//
//	p = (U/D) / ((H+nuA)/EA + ((1+Q^2)/(1-Q^2)-nuI)/EI),  Q = Di/D
//
// with H the mean hoop stress round the seat for unit pressure (Factors). No
// interference gives no pressure, and none above D is meant: it is taken as D.
// The seat must have passed Validate.
//
// Sources: Lame thick cylinders; Shigley ch. 3, equation 3-56, for a ring;
// with the mean hoop of Jeffery 1921 off the middle (METHODS.md 2).
func (s Seat) At(U float64) State {
	if !(U > 0) {
		return State{}
	}
	U = min(U, s.D)
	f := s.Factors()
	perP := s.compliance(f)
	st := State{U: U, Elastic: U / perP}
	st.P, st.PMid, st.PHigh = st.Elastic, st.Elastic, st.Elastic
	angle := 0.0
	if s.Bush.Yield > 0 && st.Elastic > s.FlowPressure() {
		st.Flows = true
		st.P = s.FlowPressure()
		angle = s.flowAngle()
		st.PMid = min(st.Elastic, s.misesAt(angle))
		st.PHigh = min(st.Elastic, misesOverTresca*st.P)
	}
	st.Spring = st.P * perP
	s.bush(&st)
	s.housing(&st, f)
	s.closure(&st, perP, angle)
	return st
}

// compliance is the diametral interference per unit of pressure.
func (s Seat) compliance(f Factors) float64 {
	return s.D * ((f.MeanHoop+s.Housing.Nu)/s.Housing.E + s.bushFlexibility()/s.Bush.E)
}

// bushFlexibility is KI, the shrinking of the bush's outside per unit of
// pressure, in D/EI.
func (s Seat) bushFlexibility() float64 {
	q2, rest := s.squares()
	return (1+q2)/rest - s.Bush.Nu
}

// squares are Q^2 and 1-Q^2, the second without loss for a thin wall.
func (s Seat) squares() (q2, rest float64) {
	q := s.Di / s.D
	return q * q, (s.D - s.Di) / s.D * (1 + q)
}

// InterferenceFor is the diametral interference that makes a pressure p while
// nothing flows, mm.
func (s Seat) InterferenceFor(p float64) float64 { return p * s.compliance(s.Factors()) }

// HeldAt is the seat pressure and the largest tension in the housing while a
// mandrel stands in the bore and keeps it from closing, MPa. The mandrel is
// taken as rigid and the bush as elastic, so both are upper figures.
//
// Source: ring with its bore held, plane stress: METHODS.md 4.
func (s Seat) HeldAt(U float64) (p, hoop float64) {
	if !(U > 0) {
		return 0, 0
	}
	f, nu := s.Factors(), s.Bush.Nu
	q2, rest := s.squares()
	k := (1 - nu*nu) * rest / (1 + nu + (1-nu)*q2)
	p = min(U, s.D) / s.D / ((f.MeanHoop+s.Housing.Nu)/s.Housing.E + k/s.Bush.E)
	return p, p * max(f.HoleMax, f.EdgeMax)
}

// Force is the force along the axis that the seat holds, or that presses the
// bush in, N:
//
//	F = mu pi D L p
func (s Seat) Force(mu, p float64) float64 { return mu * pi * s.D * s.L * p }

// Torque is the torque that the seat holds, N mm: the force times half of D.
func (s Seat) Torque(mu, p float64) float64 { return s.Force(mu, p) * s.D / 2 }
