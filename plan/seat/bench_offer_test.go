package seat

import "testing"

// Every mend of both holes of a truck whose slot takes no bush without a plug.
func BenchmarkOffer(b *testing.B) {
	in, _ := read(b, bench1+lathe+compound, truck)
	all := sites(in.Job)
	b.ReportAllocs()
	for b.Loop() {
		if got, _ := Offer(in, all); len(got) != 2 {
			b.Fatal("no offer")
		}
	}
}
