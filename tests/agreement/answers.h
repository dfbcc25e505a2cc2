// What other programs answered on the trials of this folder, as their scripts wrote it; and the
// same trials as Keenfall takes them in.
#pragma once

#include "trials/trial.h"

#include <map>
#include <string>
#include <vector>

namespace keenfall::agreement {

// One row of rstan.csv, nlme.csv, tmb.csv or classical.csv; numbers by the name of their column.
struct Answer {
  std::string trial;
  std::string what;  // "mu[2]", "s_tau", "half_keenness[2:1]", "start_mean"
  std::map<std::string, double> numbers;
};

// In the order of the file. Throws where the file is not there or not as the scripts write it.
[[nodiscard]] std::vector<Answer> answers_in(const std::string& file);

[[nodiscard]] std::vector<Answer> answers_about(const std::string& trial,
                                                const std::vector<Answer>& answers);

// "trial_01" to "trial_20", and "reference", on which the plain model was first held against Stan.
[[nodiscard]] std::vector<std::string> trial_names();
[[nodiscard]] trials::Trial trial_named(const std::string& name);

}  // namespace keenfall::agreement
