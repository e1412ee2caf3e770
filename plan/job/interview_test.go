package job

import (
	"bytes"
	"slices"
	"strings"
	"testing"
)

// answered goes through the short way with answers by their address; what is not
// among them is answered with Enter.
func answered(t *testing.T, iv *Interview, by map[string]string) (put []string) {
	t.Helper()
	for range 400 {
		st, ok := iv.Next()
		if !ok {
			return put
		}
		text, ok := by[st.at()]
		if !ok {
			text, _ = iv.Otherwise(st)
		}
		if wrong := iv.Answer(st, text); wrong != "" {
			t.Fatalf("%s: %q: %s", st.at(), text, wrong)
		}
		if d := iv.Doubts(st); len(d) > 0 {
			t.Errorf("%s: %q: %s", st.at(), text, d)
		}
		put = append(put, st.at())
	}
	t.Fatal("the questions do not end")
	return nil
}

// tram is a stepped axle under a worm, in inches with millimetres between them.
var tram = map[string]string{"job/title": "Arcade tram 3", "job/units": "inch", "running/wrong": "binds and rubs",
	"look-alikes/loose": "hubs", "plates/material": "brass", "plates/condition": "sound", "plates/thickness": "2 mm 2,1 mm",
	"plates/outline": "2 1/2 x 1", "plates/width": ".75", "shaft 1/journal": "0.125 #31", "shaft 1/pass": "0.126 0.121",
	"shaft 1/state": "pit", "bore 1 left/centre": "0.5, 0.4", "bore 1 left/across": "0.133 0.1275",
	"bore 1 left/worn to": "12 o'clock", "bore 1 left/edge": "6 mm down", "bore 1 right/centre": "12,70 mm; 10,16 mm",
	"bore 1 right/across": "0.1265 0.122", "bore 1 right/edge": "0.25 in 9 o'clock", "gear/kind": "w", "gear/module": "48 DP",
	"gear/teeth": "24 teeth", "worm/starts": "1", "worm/tip": "7.4 mm", "worm/height": "0.775", "bush 1/size": "1/8 x 3/16 x 3/16",
	"owner/price": "€ 65,50 1", "owner/keep": "y", "shop/machine": "mill", "shop/reamers": "3/16 5 mm", "shop/lathe": "yes",
	"shop/rate": "$40"}

// TestShortWay: the answers of the short way make a job that reads without a
// mistake, each in its place, and a shop file that does.
func TestShortWay(t *testing.T) {
	iv := NewInterview("tram.yaml")
	iv.Folder = t.TempDir()
	put := answered(t, iv, tram)
	shop, err := parseShop(ShopName, iv.Folder, iv.ShopText())
	if err != nil {
		t.Fatalf("%v\n%s", err, iv.ShopText())
	}
	if shop.MachineKind != "mill" || !shop.Lathe || *shop.PerHour != 40 || shop.Currency != "$" || len(shop.Reamers) != 2 ||
		shop.Reamers[0].Size.String() != "4.7625 mm" || shop.Reamers[1].Size.String() != "5 mm" || shop.Jig != "" {
		t.Errorf("%s", iv.ShopText())
	}
	text := bytes.Replace(iv.Text(), []byte("\nshop: shop.yaml"), nil, 1)
	j, err := Parse("tram.yaml", ".", text, Options{})
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	s, left := j.Bore("front axle.left")
	_, right := j.Bore("front axle.right")
	for i, c := range []struct{ have, want string }{{j.Title, "Arcade tram 3"}, {j.Chassis.Thickness.Left.String(), "2 mm"},
		{j.Chassis.Thickness.Right.String(), "2.1 mm"}, {j.Chassis.Length.String(), "63.5 mm"}, {j.Chassis.Height.String(), "25.4 mm"},
		{j.Chassis.Width.String(), "19.05 mm"}, {s.Journal.Left.String(), "3.175 mm"}, {s.Journal.Right.String(), "3.048 mm"},
		{s.MustPass.Right.String(), "3.0734 mm"}, {s.JournalState, "pitted"}, {left.Centre.Y.String(), "10.16 mm"},
		{right.Centre.X.String(), "12.7 mm"}, {left.Narrowest.String(), "3.2385 mm"}, {left.Edges[0].Metal.String(), "6 mm"},
		{j.Symptoms.Hubs + j.Symptoms.Rims, "loosetight"}, {j.Gears[0].Worm.Height.String(), "19.685 mm"},
		{j.Gears[0].Wheel.On, "front axle"}, {j.Bushes[0].Material, "sintered bronze"}, {j.Bushes[0].Code, "drawer 1"},
		{j.Bushes[1].Code, "own turning"}, {j.Bushes[0].OD.Low.String(), "4.8133 mm"}, // 3/16 in and 2 to 3 thou, bush_series
		{j.Bushes[0].OD.High.String(), "4.8387 mm"}, {j.Bushes[0].Bore.High.String(), "3.2258 mm"}} {
		if c.have != c.want {
			t.Errorf("%d: %s, want %s", i, c.have, c.want)
		}
	}
	if right.Edges[0].AtDeg != 180 || right.WornTo[0] != 90 || left.Edges[0].AtDeg != 270 || j.Swap.Price != 65.5 ||
		!j.Chassis.KeepOriginal || j.Binds != Yes || j.Rubs != Yes || j.Noisy != No || !sameFigure(j.Gears[0].Module, 25.4/48) {
		t.Errorf("%s", text)
	}
	// without the shop, which is asked once
	if put = slices.DeleteFunc(put, func(at string) bool { return strings.HasPrefix(at, "shop/") && at != "shop/file" }); len(put) > 33 {
		t.Errorf("%d questions are put", len(put))
	}
}

func sameFigure(a, b float64) bool { return a-b < 1e-9 && b-a < 1e-9 }

// TestSoldOrMeasured: a bush of a whole size is sold by it, a finer figure was read
// on a gauge.
func TestSoldOrMeasured(t *testing.T) {
	for size, want := range map[string]string{"4 x 6 x 4": "sold", "4.0 x 6.0 x 4": "sold", "4 x 6.02 x 4": "measured",
		"4.00 6.00 4": "measured", "1/8 x 3/16 x 1/4": "sold", "0.125 in 0.1895 in 0.25 in": "measured"} {
		iv := NewInterview("new.yaml")
		iv.said["bush 1/size"] = size
		if got, _ := iv.Otherwise(Step{question("bush", "class"), 0, ""}); got != want {
			t.Errorf("%s is taken as %s, want %s", size, got, want)
		}
	}
}

// TestResume: an interview that is broken off after any answer and taken up
// again from its file comes to the same file.
func TestResume(t *testing.T) {
	folder := t.TempDir()
	whole := NewInterview("tram.yaml")
	whole.Folder = folder
	answered(t, whole, tram)
	whole.More("mesh")
	answered(t, whole, map[string]string{"gear/tip": "0.54", "gear/runout": "1 thou"})
	want := whole.Text()
	for n := 0; n <= len(whole.order); n++ {
		iv := NewInterview("tram.yaml")
		iv.Folder = folder
		for k, at := range whole.order {
			if k == n {
				text := iv.Text()
				iv = NewInterview("tram.yaml")
				iv.Folder = folder
				if err := iv.Resume(text); err != nil && n > 0 {
					t.Fatalf("after %d: %v", n, err)
				}
			}
			if strings.HasPrefix(at, "more ") {
				iv.More(whole.said[at])
				continue
			}
			st, ok := iv.Next()
			if !ok || st.at() != at {
				t.Fatalf("after %d: %s is put, want %s", n, st.at(), at)
			}
			iv.Answer(st, whole.said[at])
		}
		if got := iv.Text(); !bytes.Equal(got, want) {
			t.Fatalf("after %d:\n%s\nwant\n%s", n, got, want)
		}
	}
	iv := NewInterview("tram.yaml")
	if err := iv.Resume(bytes.Replace(want, []byte("brass"), []byte("steel"), 1)); err != ErrByHand {
		t.Errorf("a file that was changed by hand: %v", err)
	}
	if err := NewInterview("x.yaml").Resume([]byte("rebush: 1\n")); err != ErrNoAnswers {
		t.Errorf("a file without answers: %v", err)
	}
}

// TestBack: what is gone back from is put again, with what was said, and a shorter
// way afterwards leaves nothing of the longer one behind.
func TestBack(t *testing.T) {
	iv := NewInterview("tram.yaml")
	iv.Folder = t.TempDir()
	answered(t, iv, tram)
	for iv.order[len(iv.order)-1] != "gear/kind" {
		iv.Back()
	}
	iv.Back()
	st, _ := iv.Next()
	if was, _ := iv.Otherwise(st); st.at() != "gear/kind" || was != "w" {
		t.Errorf("%s is put, with %q", st.at(), was)
	}
	iv.Answer(st, "none")
	answered(t, iv, tram)
	if text := iv.Text(); bytes.Contains(text, []byte("worm")) || bytes.Contains(text, []byte("48")) {
		t.Errorf("%s", text)
	}
	for iv.Back() {
	}
	if len(iv.said) != 0 {
		t.Errorf("%v is left", iv.said)
	}
}

// TestDoubts: an answer that does not go with those before it is doubted at once,
// and one that is kept is not doubted again.
func TestDoubts(t *testing.T) {
	base := map[string]string{"plates/thickness": "3", "plates/outline": "60 24", "plates/width": "18", "shaft 1/journal": "3.5",
		"bore 1 left/centre": "12 8", "bore 1 left/across": "3.6 3.5", "bore 1 right/centre": "12 8", "bore 1 right/across": "3.6 3.5",
		"gear/kind": "spur", "gear/module": "0.5", "gear/teeth": "30", "pinion/teeth": "12", "pinion/at": "22.5 8",
		"bush 1/size": "3.5 6 4"}
	for at, c := range map[string]struct{ text, says string }{
		"bore 1 left/across":  {"3.5 3.6", "less than narrowest"},
		"bore 1 right/across": {"7.1 7.0", "journal"},
		"bore 1 left/centre":  {"12 30", "not inside the outline"},
		"bore 1 right/centre": {"15 8", "differ by"},
		"pinion/at":           {"40 8", "does not go with their teeth"},
		"bush 1/size":         {"6 5 4", "wall"},
		"shop/file":           {"nowhere.yaml", "there is no such file"},
	} {
		iv := NewInterview("new.yaml")
		iv.Folder = t.TempDir()
		for range 100 {
			st, ok := iv.Next()
			if !ok {
				t.Errorf("%s is never put", at)
				break
			}
			if st.at() != at {
				text, ok := base[st.at()]
				if !ok {
					text, _ = iv.Otherwise(st)
				}
				if iv.Answer(st, text); len(iv.Doubts(st)) > 0 {
					t.Errorf("%s: %q is doubted: %s", st.at(), text, iv.Doubts(st))
				}
				continue
			}
			if wrong := iv.Answer(st, c.text); wrong != "" {
				t.Errorf("%s: %s", at, wrong)
			}
			if d := strings.Join(iv.Doubts(st), "; "); !strings.Contains(d, c.says) {
				t.Errorf("%s: %q says %q, want %q", at, c.text, d, c.says)
			}
			iv.Keep(st)
			if d := iv.Doubts(st); len(d) > 0 {
				t.Errorf("%s is doubted though it is kept: %s", at, d)
			}
			break
		}
	}
}

// FuzzAnswers: any answers to the questions make a file that is YAML, and that an
// interview goes on from.
func FuzzAnswers(f *testing.F) {
	var lines []string
	for _, text := range tram {
		lines = append(lines, text)
	}
	slices.Sort(lines)
	f.Add(strings.Join(lines, "\n"))
	f.Add("a: b\n#= x/y: z\n'\n\"\n- [\n{\n🚂\n\\")
	f.Fuzz(func(t *testing.T, text string) {
		iv := NewInterview("new.yaml")
		iv.Folder = "."
		for i, line := range strings.Split(text, "\n") {
			if i > 60 {
				break
			}
			st, ok := iv.Next()
			if !ok {
				iv.More(Groups()[i%len(Groups())].Name)
				continue
			}
			if iv.Answer(st, line) != "" {
				iv.Answer(st, "")
			}
			if line == "back" {
				iv.Back()
			}
		}
		out := iv.Text()
		if root, problems, _ := scan("new.yaml", out); root == nil {
			t.Fatalf("%v\n%s", problems, out)
		}
		if err := NewInterview("new.yaml").resumed(out); err != nil && len(iv.order) > 0 {
			t.Fatalf("%v\n%s", err, out)
		}
	})
}

// resumed is Resume of a file of this folder.
func (iv *Interview) resumed(data []byte) error {
	iv.Folder = "."
	return iv.Resume(data)
}

// TestLike: of a truck that is like a pattern only what is its own is asked, and
// the file goes together with the pattern.
func TestLike(t *testing.T) {
	folder := laid(t, map[string]string{"kinds/kind.yaml": kindOfTruck, "own.yaml": string(smallShop)})
	begin := func() *Interview {
		iv := NewInterview("second.yaml")
		iv.Folder = folder
		return iv
	}
	iv := begin()
	if err := iv.Like("kinds/kind.yaml"); err != nil {
		t.Fatal(err)
	}
	put := answered(t, iv, map[string]string{"bore 1 left/centre": "12 8", "bore 1 left/across": "3.4 3.3", "bore 1 left/worn to": "up",
		"bore 1 right/centre": "12 8", "bore 1 right/across": "3.38 3.3", "job/units": "mm"})
	if !slices.Contains(put, "job/units") || len(put) > 14 {
		t.Errorf("%q are asked", put)
	}
	iv.More("mesh")
	put = append(put, answered(t, iv, map[string]string{"gear/runout": "0.03"})...)
	for _, at := range put {
		switch part, id, _ := strings.Cut(at, "/"); {
		case part == "plates" && id != "condition", strings.HasPrefix(part, "bush"), part == "shop", part == "worm" && id != "pitch",
			id == "journal", id == "edge", id == "name", id == "kind", id == "teeth", id == "module":
			t.Errorf("%s is asked though the pattern has it", at)
		}
	}
	j, err := Parse("second.yaml", folder, iv.Text(), Options{})
	if err != nil {
		t.Fatalf("%v\n%s", err, iv.Text())
	}
	_, b := j.Bore("front axle.left")
	if len(j.Shafts) != 1 || b.Widest.String() != "3.4 mm" || len(b.Edges) != 1 || len(j.Gears) != 1 ||
		j.Gears[0].Wheel.Runout.String() != "0.03 mm" || j.Gears[0].Wheel.Teeth != 24 || len(j.Bushes) != 2 ||
		j.Chassis.Width.String() != "19.05 mm" {
		t.Errorf("%+v\n%s", j, iv.Text())
	}
	again := begin()
	if err := again.Resume(iv.Text()); err != nil || again.IsLike() != "kinds/kind.yaml" {
		t.Errorf("%v, like %q", err, again.IsLike())
	}
	for again.Back() {
	}
	if again.IsLike() == "" || len(again.said) != 1 {
		t.Errorf("%v is left", again.said)
	}
	if err := begin().Like("kinds/none.yaml"); err == nil {
		t.Error("a pattern that is not there is taken")
	}
}

// TestSaidOnce: a direction that is not said is down, as the question offers; a
// part too thick for its journal is doubted; and the schema tells what a question
// of a key is for.
func TestSaidOnce(t *testing.T) {
	iv := NewInterview("new.yaml")
	put := map[string]string{"shaft 1/journal": "3.5", "bore 1 left/edge": "6.3"}
	for st, ok := iv.Next(); ok; st, ok = iv.Next() {
		iv.Answer(st, put[st.at()])
		if st.at() != "shaft 1/pass" {
			continue
		}
		for text, doubted := range map[string]bool{"3.55": false, "3.6 3.5": true, "3.5 3.6": true} {
			iv.Answer(st, text)
			if got := len(iv.Doubts(st)) > 0; got != doubted {
				t.Errorf("%s over a journal of 3.5 is doubted: %v", text, got)
			}
		}
		iv.Answer(st, "")
	}
	if text := string(iv.Text()); !strings.Contains(text, "edges: [{at: 270, metal: 6.3}]") {
		t.Error(text)
	}
	q := question("bore", "edge")
	if text := string(Schema("job")); strings.Count(text, q.Why) < 2 {
		t.Errorf("the schema does not say of metal to the edge: %s", q.Why)
	}
}
