package seat

import (
	"math"
	"testing"
)

// One seat worked by hand: a porous flanged bush 3.2 F7 / 5 s7 in a 3 mm zinc
// plate, reamed 5 H7, the edge 5.928 mm from the target. Formulas: Lame and
// Jeffery as in fits/press; moduli, strengths and limits from the tables.
//
//	bush   5 s7 +19/+31: 5.019 to 5.031; 3.2 F7 +10/+22: 3.210 to 3.222
//	seat   reamer 5 H7 +5/+10, and 0.15 x 12 um over: 5.005 to 5.0118
//	1      s = 2.5025, S = 1.7765, allow = 2 hypot(0.0141, 0.0285) + 0.02 = 0.0836; needs 1.8601
//	2      U = 5.019 - 5.0118 = 7.2 um to 5.031 - 5.005 = 26 um
//	3      metal left 5.928 - 2.5059 = 3.4221, above one seat radius: no light wall
//	       at d = 5.005: k = 5.928/2.5025 = 2.36883, k2 - 1 = 4.61136
//	       hole max (k2+1)/(k2-1) = 1.43371, edge 4/(k2-1) = 0.86742, H = 2k/sqrt(k2-1) - 1 = 1.20622
//	       elastic p = (0.026/5.005)/((1.20622+0.29)/85500 + 2.12646/55000) = 92.5, above what the bush bears:
//	       1.155 x 120 x (5.005-3.216)/5.005 = 49.54 MPa; tension 49.54 x 1.43371 = 71.03 of 0.5 x 269 = 134.5
//	       above 15 MPa: slackens, a second hold, and E = 20700 for holding
//	4      contact 3.0 - (0.3 + 0.1) - 0.2 = 2.4 (a flange's root is cleared; wall 0.8985: lead 0.2)
//	       at d = 5.0118: H = 1.20687; p = (0.0072/5.0118)/((1.20687+0.29)/20700 + 2.11998/40000) = 11.464
//	       along 0.05 x pi x 5.0118 x 2.4 x 11.464 = 21.66 N (needs 10); round 21.66 x 2.5059 = 54.28 N mm
//	       (needs 3 x 0.3 x 1.25 x 1.58 = 1.7775); pressing 0.20 x pi x 5.005 x 2.4 x 49.54 = 373.9 N
//	       the flange holds along, so the press must give the torque alone:
//	       p = 2 x 1.7775/5.0118/(0.05 x pi x 5.0118 x 2.4) = 0.3754 MPa, U = 0.236 um
//	5      least at 7.2 um: p = 25.63 (E 85500 and 55000), 2 x 25.63 x 3.216/(55000 x 0.58824) = 5.095 um
//	       most at 26 um: flows at 75 x 0.357443 = 26.81 MPa; the stiffest bush flows first:
//	       U = 26.81 x 5.005 x (1.49624/85500 + 2.12644/55000) = 7.536 um, closed by then
//	       2 x 26.81 x 3.216/(55000 x 0.58712) = 5.340 um;
//	       slope (3 x 5.005 + 3.216)/(5.005 + 3 x 3.216) = 1.24418: 5.340 + 1.24418 x 18.464 = 28.312 um
//	       bore 3.210 - 0.02831 = 3.18169 to 3.222 - 0.0051 = 3.2169
//	       loose at 20 + 0.0072/(5.0118 x 9.4e-6) = 172.8 C
//	6      3.16 + 0.015 = 3.175 to 3.16 + 0.060 = 3.220; at 5 C 0.82 um less clearance
//	7      the whole band lies inside: as delivered
//	9      p = 1.25/(3.16 x 3.8) = 0.1041, v = pi x 3.16 x 420/60000 = 0.06949, pv = 0.007234
func TestWorkedSeat(t *testing.T) {
	s := scenery(t)
	a := s.only(t)
	if !a.Feasible {
		t.Fatal(a.Fail.Text())
	}
	for _, c := range []struct {
		what           string
		got, want, tol float64
	}{
		{"allow", Allow(s.h, s.r), 0.0836, 5e-5},
		{"clean-up", a.CleanUp, 0.726, 1e-9},
		{"U least", a.ULow * 1000, 7.2, 1e-9}, {"U most", a.UHigh * 1000, 26, 1e-9},
		{"metal left", a.Ligament, 3.4221, 1e-9},
		{"pressure most", a.PHigh, 49.54, 0.005}, {"tension", a.Peak, 71.03, 0.01}, {"its limit", a.PeakLimit, 134.5, 1e-9},
		{"contact", a.Contact, 2.4, 1e-9}, {"pressure least", a.PLow, 11.464, 0.001},
		{"along", a.Force[0], 21.66, 0.01}, {"round", a.Torque[0], 54.28, 0.05}, {"pressing", a.Force[1], 373.9, 0.1},
		{"window", a.WindowLow * 1000, 0.236, 0.001},
		{"closure least", a.Closure[0] * 1000, 5.095, 0.001}, {"closure most", a.Closure[1] * 1000, 28.312, 0.002},
		{"bore least", a.Closed[0], 3.18169, 1e-5}, {"bore most", a.Closed[1], 3.2169, 1e-5},
		{"loose at", a.LooseAt, 172.8, 0.1},
		{"limit least", a.Bore[0], 3.175, 1e-9}, {"limit most", a.Bore[1], 3.220, 1e-9},
		{"clearance at 5 C", a.RunCold * 1000, 15 - 0.82, 0.01},
		{"pv", a.PV, 0.007234, 1e-6},
	} {
		if !(math.Abs(c.got-c.want) <= c.tol) {
			t.Errorf("%s: %v, by hand %v", c.what, c.got, c.want)
		}
	}
	if !a.Slackens || a.Second != Flange || a.Finish != AsDelivered || !math.IsInf(a.WinHigh, 1) {
		t.Errorf("slackens %v, second hold %q, finish %q, window to %v", a.Slackens, a.Second, a.Finish, a.WinHigh)
	}
	if a.Chance < 0.95 || a.Chance > 1 {
		t.Errorf("chance %v", a.Chance)
	}
}
