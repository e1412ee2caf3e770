package job

// merged is what a pattern gives with what a job says: records and names merge by
// key, lists of things that have a name or a code by it, and all else is the
// job's where the job says it. Neither is changed.
func merged(pattern, job *value) *value {
	switch {
	case pattern == nil:
		return job
	case job == nil:
		return pattern
	case pattern.shape != job.shape:
		return job
	}
	switch job.shape.kind {
	case aRecord, aNamed:
		return mergedKeys(pattern, job)
	case aList:
		if named(pattern) && named(job) {
			return mergedList(pattern, job)
		}
	}
	return job
}

func mergedKeys(pattern, job *value) *value {
	out := *job
	out.by, out.order = map[string]*value{}, nil
	for _, of := range []*value{pattern, job} {
		for _, key := range of.order {
			if _, there := out.by[key]; !there {
				out.order = append(out.order, key)
			}
			out.by[key] = merged(pattern.by[key], job.by[key])
		}
		for key, v := range of.by { // what could not be read is said, and not missing
			if _, there := out.by[key]; v == nil && !there {
				out.by[key] = nil
			}
		}
	}
	return &out
}

func mergedList(pattern, job *value) *value {
	out := *job
	out.list = nil
	of := map[string]*value{}
	for _, item := range job.list {
		of[item.id()] = item
	}
	gave := map[string]bool{}
	for _, item := range pattern.list {
		out.list = append(out.list, merged(item, of[item.id()]))
		gave[item.id()] = true
	}
	for _, item := range job.list {
		if !gave[item.id()] {
			out.list = append(out.list, item)
		}
	}
	return &out
}

// named says that all the items of a list are records with a name or a code.
func named(list *value) bool {
	for _, item := range list.list {
		if item == nil || item.id() == "" {
			return false
		}
	}
	return true
}

// id is the name or the code of a record, "" of anything else.
func (v *value) id() string {
	if v == nil || v.shape.kind != aRecord {
		return ""
	}
	if name := v.get("name").text(); name != "" && v.shape.find("name") != nil {
		return name
	}
	return v.get("code").text()
}
