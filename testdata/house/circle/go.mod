module circle

go 1.26
