package route

// rests marks where the work may be left. With a cut begun and the hole not
// gauged it may not: the clamps have to hold what the next tool stands on. So it
// rests before the first cut of a set-up, after the last gauge of a block, and
// while compound cures.
func (b *builder) rests() {
	ops := b.out.Operations
	for i := range ops {
		o := &ops[i]
		switch o.Kind {
		case KindSetUp, KindCure:
			o.MayWait = true
		case KindGauge:
			o.MayWait = i+1 == len(ops) || ops[i+1].Kind != KindGauge
		}
	}
}
