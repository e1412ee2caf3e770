package seat

import (
	"sync"

	"rebush/fits/odds"
	"rebush/plan/survey"
)

// Memo keeps what is the same for many plans by the same tables: the bushes that
// are sold, how much of a worn wall may stay, and the chances of seats. It changes no figure, and may be
// shared. The zero Memo is ready, a nil one keeps nothing.
type Memo struct {
	lock    sync.Mutex
	series  []Bush
	fill    map[filled]float64
	chances map[odds.Seat]float64
}

// filled is a question after fillRadius.
type filled struct {
	worn    survey.WornBore
	at      [2]float64
	degrees float64
}

// sold are the bushes that are sold.
func (m *Memo) sold(read func() ([]Bush, error)) ([]Bush, error) {
	if m == nil {
		return read()
	}
	m.lock.Lock()
	defer m.lock.Unlock()
	if m.series != nil {
		return m.series, nil
	}
	list, err := read()
	m.series = list
	return list, err
}

// radius is a fill radius.
func (m *Memo) radius(of filled, work func() float64) float64 {
	if m == nil {
		return work()
	}
	m.lock.Lock()
	defer m.lock.Unlock()
	if v, ok := m.fill[of]; ok {
		return v
	}
	if m.fill == nil {
		m.fill = map[filled]float64{}
	}
	v := work()
	m.fill[of] = v
	return v
}

// chance is that of a seat.
func (m *Memo) chance(of *odds.Seat) float64 {
	if m == nil {
		return of.Chance()
	}
	m.lock.Lock()
	defer m.lock.Unlock()
	if v, ok := m.chances[*of]; ok {
		return v
	}
	if m.chances == nil {
		m.chances = map[odds.Seat]float64{}
	}
	v := of.Chance()
	m.chances[*of] = v
	return v
}
