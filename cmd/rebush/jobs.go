package main

// jobCommands are the commands that read or write job files.
func jobCommands() []*command {
	chance := []string{"seed", "trials"}
	paper := []string{"units", "paper", "large", "date", "output", "force"}
	flags := func(lists ...[]string) (out []string) {
		out = []string{"shop"}
		for _, l := range lists {
			out = append(out, l...)
		}
		return out
	}
	reading, way := []string{"json"}, []string{"way"}
	return []*command{
		{name: "start", args: "[FILE]", what: "asks questions and writes a job file", flags: []string{"from", "like"},
			run: runStart,
			more: "Without a name the file is job.yaml; - writes it to standard output. Each answer is kept in the file at " +
				"once, and the same command goes on from there; a file that somebody else wrote, or changed by hand, is " +
				"left alone. Answers may be ? (what it is for), back, and skip. What the shop has is asked once and kept in " +
				"shop.yaml beside the file. With --like a truck of the same kind is asked for what is its own alone. --from CSV makes the file of a table of bores instead of questions.",
			examples: []string{"rebush start truck.yaml", "rebush start truck.yaml --from bores.csv",
				"rebush start second.yaml --like truck-kind.yaml"}},
		{name: "check", args: "JOB...", what: "reads and checks; says what is wrong, by line", flags: flags(reading),
			run: runCheck, jobs: true, keeps: aShopFile,
			more:     "A shop file is read and checked too.",
			examples: []string{"rebush check testdata/jobs/pellinthwaite.yaml"}},
		{name: "survey", args: "JOB...", what: "what the measurements say: where each centre was, how worn",
			flags: flags(reading, []string{"units"}), run: runSurvey, jobs: true,
			examples: []string{"rebush survey testdata/jobs/pellinthwaite.yaml"}},
		{name: "verdict", args: "JOB...", what: "re-bush, swap or leave: the options side by side",
			flags: flags(reading, chance, paper), run: runVerdict, jobs: true,
			more:     "-o makes the page for the owner.",
			examples: []string{"rebush verdict testdata/jobs/pellinthwaite.yaml"}},
		{name: "plan", args: "JOB...", what: "the whole plan on the screen",
			flags: flags(reading, way, chance, []string{"units"}), run: runPlan, jobs: true,
			more: "It is the plan of the advised way; --way plans another one of the nine. Exit is 1 where no way that " +
				"cuts may be machined, or that of --way may not.",
			examples: []string{"rebush plan testdata/jobs/pellinthwaite.yaml",
				"rebush plan testdata/jobs/pellinthwaite.yaml --json --seed 7",
				`rebush plan testdata/jobs/pellinthwaite.yaml --way "re-bush"`}},
		{name: "sheet", args: "JOB...", what: "the setup sheet as PDF",
			flags: flags(reading, way, chance, paper, []string{"sources"}),
			run:   runSheet, jobs: true,
			more: "The PDF stands beside the job unless -o says otherwise. It is the sheet of the advised way: where " +
				"nothing is cut, a page or two of what to do or to check. --way draws that of another way, and every " +
				"page says NOT ADVISED then. --sources adds where its numbers come from. A plan that must not be machined says so on page one, and exit is 1. " +
				"Several jobs, or a folder of them, with -o FOLDER get a traveller for the whole batch too: traveller.pdf. " +
				"A file that is there is replaced if it is named .pdf, any other with --force alone, and one that was " +
				"read never.",
			examples: []string{"rebush sheet testdata/jobs/pellinthwaite.yaml -o sheet.pdf"}},
		{name: "form", args: "[JOB]", what: "blank measuring form as PDF", flags: flags(paper, []string{"example"}), run: runForm,
			more: "Its boxes have the numbers of the questions of start. --example makes a page that is filled in, to be " +
				"printed once.",
			examples: []string{"rebush form -o form.pdf", "rebush form --example -o example.pdf",
				"rebush form testdata/jobs/pellinthwaite.yaml -o form.pdf"}},
		{name: "template", args: "JOB", what: "1:1 drilling and jig template as PDF", flags: flags(way, chance, paper),
			run:      runTemplate,
			more:     "It is that of the advised way, or of --way; where nothing is cut, none is drawn.",
			examples: []string{"rebush template testdata/jobs/pellinthwaite.yaml -o template.pdf"}},
		{name: "inspect", args: "JOB", what: "sizes as made against the plan: accept, or what to do next",
			flags: flags(reading, way, chance, paper), run: runInspect,
			more: "Write what was made under `made:` in the job: made: {front axle.left: " +
				"{seat: 5.008, with: pins}}. -o makes the rework sheet: what is right, and the operations that remain " +
				"of the advised way, or of --way.",
			examples: nil},
		{name: "learn", args: "SHOP JOB...", what: "what a shop really does, from the sizes as made of past jobs",
			flags: append(append([]string{}, reading...), "units", "way", "seed", "trials"), run: runLearn, jobs: true, before: 1,
			more: "Every job has what was made under `made:`, as for inspect, and is planned with SHOP; a shop file that it " +
				"names itself is taken as it is, if it is the same or differs in money and record alone. Told are: how much " +
				"larger than their own limits its reamers cut, how far holes stand off their targets, how much larger than " +
				"planned bores run, how far all that scatters, how often something slips, and how sure that is. The rows that " +
				"it prints go into the shop file under `record:`; with fewer than three jobs the rules stand.",
			examples: nil},
		{name: "why", args: "JOB [NUMBER|KEY|WORD]", what: "where a number came from, down to what was measured",
			flags: flags(reading, way, chance), run: runWhy,
			more: "NUMBER is the short number that the sources of a sheet print, KEY the place of the figure in rebush " +
				"plan --json, WORD a word of either. " +
				"With the job alone it lists what can be asked.",
			examples: []string{`rebush why testdata/jobs/pellinthwaite.yaml "seats/drive axle.left/pressure_mpa/max"`,
				"rebush why testdata/jobs/pellinthwaite.yaml 1"}},
	}
}
