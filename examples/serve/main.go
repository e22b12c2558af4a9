// Command serve answers a job file that is posted to /plan with its plan as JSON, and what
// is wrong with the file with one line for each fault. It listens on this machine only.
package main

import (
	"errors"
	"log"
	"net/http"
	"time"

	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
)

func main() {
	http.HandleFunc("POST /plan", serve)
	server := http.Server{Addr: "localhost:8080", ReadTimeout: 10 * time.Second}
	log.Fatal(server.ListenAndServe())
}

// serve plans the job in the body of a request. The search ends when the client goes.
func serve(w http.ResponseWriter, r *http.Request) {
	job, err := jobfile.Read(http.MaxBytesReader(w, r.Body, jobfile.MaxBytes))
	if err != nil {
		http.Error(w, err.Error(), http.StatusBadRequest)
		return
	}
	p, err := plan.Make(r.Context(), job, plan.Options{})
	switch {
	case errors.As(err, new(*fault.Fault)):
		http.Error(w, err.Error(), http.StatusBadRequest)
		return
	case err != nil:
		http.Error(w, err.Error(), http.StatusUnprocessableEntity)
		return
	}
	data, err := p.JSON()
	if err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "application/json")
	w.Write(data)
}
