package job

import (
	"fmt"
)

func has(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}

func at(p Pos) string { return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Column) }

func checkJob(r *reader, j *Job, root *value)                  {}
func checkShop(r *reader, s *Shop, root *value)                {}
func checkShopWithJob(r *reader, j *Job, root *value, s *Shop) {}
