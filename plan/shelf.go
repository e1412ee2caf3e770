package plan

import (
	"path/filepath"
	"slices"

	"rebush/fits/say"
	"rebush/plan/job"
	"rebush/plan/route"
)

// Shelf is one bush that the jobs of a batch take from the drawer of one shop.
// A batch changes the plan of no job: what runs short is said.
type Shelf struct {
	Shop     string   // file of the shop; "." the built-in small one
	Code     string   // of the bush
	Currency string   // of the shop
	Turned   bool     // made, from no drawer
	Wanted   int      // by all jobs together
	OnHand   *int     // the fewest that a job says are there; nil where none says
	Differ   bool     // the jobs do not say the same number
	Short    int      // to be bought
	Price    *float64 // of one, the dearest that a job gives
	Cost     *float64 // of those that are to be bought
	Takers   []Taker  // in the order of the batch
}

// Taker is what one job takes of a bush, and how many of these are not there
// when the jobs before it have taken theirs.
type Taker struct {
	Job           string // its number, else its title or file
	Wanted, Short int

	of *job.Job // two jobs may have one number
}

// BatchBuy is a tool to buy before a batch is begun, and the jobs that want it.
type BatchBuy struct {
	Shop string
	What say.Text
	Jobs []string
}

// Shelves sums the bushes of a batch by shop file and code, over all jobs that
// are to be cut, in the order in which they come.
func Shelves(batch []*Plan) []Shelf {
	var out []Shelf
	for _, p := range batch {
		if !p.OK || p.Job == nil {
			continue
		}
		shop := shopOf(p.Job)
		for _, s := range p.Seats {
			if s.Bush == "" {
				continue
			}
			i := slices.IndexFunc(out, func(x Shelf) bool { return x.Shop == shop && x.Code == s.Bush })
			if i < 0 {
				i, out = len(out), append(out, Shelf{Shop: shop, Code: s.Bush})
			}
			out[i].take(p.Job)
		}
	}
	for i := range out {
		out[i].count()
	}
	return out
}

// take adds one bush for a job.
func (x *Shelf) take(j *job.Job) {
	x.Wanted++
	if n := len(x.Takers); n > 0 && x.Takers[n-1].of == j {
		x.Takers[n-1].Wanted++
		return
	}
	x.Takers = append(x.Takers, Taker{Job: calledOf(j), Wanted: 1, of: j})
	none := 0
	there := &none // of a series: all have to be bought
	if i := slices.IndexFunc(j.Bushes, func(b job.Bush) bool { return b.Code == x.Code }); i >= 0 {
		b := j.Bushes[i]
		there, x.Turned = b.OnHand, b.Turned
		if b.Price != nil && (x.Price == nil || *b.Price > *x.Price) {
			x.Price = b.Price
		}
	}
	if j.Shop != nil && x.Currency == "" {
		x.Currency = j.Shop.Currency
	}
	switch {
	case there == nil:
	case x.OnHand == nil:
		x.OnHand = there
	default:
		x.Differ = x.Differ || *there != *x.OnHand
		x.OnHand = ptr(min(*there, *x.OnHand))
	}
}

// count gives each job what is there, in the order of the batch.
func (x *Shelf) count() {
	if x.Turned || x.OnHand == nil {
		return
	}
	left := *x.OnHand
	for i := range x.Takers {
		t := &x.Takers[i]
		t.Short = max(0, t.Wanted-left)
		left -= t.Wanted - t.Short
		x.Short += t.Short
	}
	if x.Price != nil {
		x.Cost = ptr(float64(x.Short) * *x.Price)
	}
}

// BuyTools are the tools that the jobs of a batch want bought, each once for a
// shop. Bushes are counted by Shelves.
func BuyTools(batch []*Plan) []BatchBuy {
	var out []BatchBuy
	for _, p := range batch {
		if !p.OK || p.Job == nil {
			continue
		}
		shop := shopOf(p.Job)
		for _, l := range p.Buy {
			if l.Kind == route.BuyBush {
				continue
			}
			i := slices.IndexFunc(out, func(x BatchBuy) bool { return x.Shop == shop && x.What == l.What })
			if i < 0 {
				i, out = len(out), append(out, BatchBuy{Shop: shop, What: l.What})
			}
			if name := calledOf(p.Job); !slices.Contains(out[i].Jobs, name) {
				out[i].Jobs = append(out[i].Jobs, name)
			}
		}
	}
	return out
}

// shopOf is the file of a job's shop.
func shopOf(j *job.Job) string {
	if j.Shop == nil {
		return ""
	}
	return filepath.Clean(j.Shop.File)
}

// calledOf is how a job of a batch is called.
func calledOf(j *job.Job) string {
	switch {
	case j.Number != "":
		return j.Number
	case j.Title != "":
		return j.Title
	}
	return filepath.Base(j.File)
}

func ptr[T any](v T) *T { return &v }
